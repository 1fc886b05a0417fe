import type { TimeStudy } from '@evenhand/core/ground/study';
import { useState } from 'react';
import { type BenchWatch, unnamedForeign } from './bench-watch.ts';

/** What happened in a foreign element, to be written when there is time. */
export function ForeignName(props: { readonly bench: BenchWatch; readonly timeStudy: TimeStudy }) {
  const { bench, timeStudy } = props;
  const [text, setText] = useState('');
  const open = (timeStudy.foreign ?? []).findLast(({ what }) => what === unnamedForeign);
  if (open === undefined) return null;
  const question = `Foreign element of cycle ${open.cycle}: what was it?`;
  return (
    <form
      className="watch-line"
      onSubmit={(event) => {
        event.preventDefault();
        bench.nameForeign(open.id, text);
        setText('');
        if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      }}
    >
      <input
        aria-label={question}
        placeholder={question}
        maxLength={200}
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit" disabled={text.trim() === ''}>
        Write
      </button>
    </form>
  );
}
