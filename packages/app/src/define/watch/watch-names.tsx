import type { Edit } from '@evenhand/core/ground/edit';
import type { TimeStudy, TimeStudyElement } from '@evenhand/core/ground/study';
import { useState } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import { addElement, changeElement, freeName, moveElement } from '../define-edits.ts';
import type { BenchWatch, WatchShown } from './bench-watch.ts';

interface Shared {
  readonly desk: RecordDesk;
  readonly bench: BenchWatch;
  readonly shown: WatchShown;
  readonly timeStudy: TimeStudy;
}

/** Names, order and choice of the elements, also while the watch runs. */
export function ElementNames(props: Shared) {
  return (
    <ol className="watch-names">
      {props.timeStudy.elements.map((element, index) => (
        <NameRow key={element.id} {...props} element={element} index={index} />
      ))}
    </ol>
  );
}

function NameRow(props: Shared & { readonly element: TimeStudyElement; readonly index: number }) {
  const { desk, bench, shown, timeStudy, element, index } = props;
  const dispatch = (edit: Edit | undefined) => edit !== undefined && desk.dispatch(edit);
  const label = `element ${index + 1}`;
  const order = (direction: -1 | 1) => dispatch(moveElement(timeStudy, element, direction));
  return (
    <li>
      <input
        type="checkbox"
        aria-label={`${label}: timed in this run`}
        title="timed in this run"
        checked={!shown.leftOut.has(element.id)}
        onChange={({ target }) => bench.time(timeStudy, element.id, target.checked)}
      />
      <NameField
        label={`Name of ${label}`}
        name={element.name}
        onName={(name) => dispatch(changeElement(timeStudy, element, { name }))}
      />
      <button type="button" disabled={index === 0} aria-label={`${label}: up`} onClick={() => order(-1)}>
        up
      </button>
      <button
        type="button"
        disabled={index === timeStudy.elements.length - 1}
        aria-label={`${label}: down`}
        onClick={() => order(1)}
      >
        down
      </button>
    </li>
  );
}

/** Written when it is left or with Enter; an empty name goes back to what it was. */
function NameField(props: {
  readonly label: string;
  readonly name: string;
  readonly onName: (name: string) => void;
}) {
  const { label, name, onName } = props;
  const [text, setText] = useState<string>();
  const write = () => {
    const trimmed = text?.trim() ?? '';
    if (trimmed !== '' && trimmed !== name) onName(trimmed);
    setText(undefined);
  };
  return (
    <input
      aria-label={label}
      maxLength={200}
      value={text ?? name}
      onChange={(event) => setText(event.target.value)}
      onBlur={write}
      onKeyDown={({ key, currentTarget }) => {
        if (key === 'Escape') setText(undefined);
        if (key === 'Enter') currentTarget.blur();
      }}
    />
  );
}

/** Without a name it is called by its number, to be named when there is time. */
export function NewElement(props: { readonly desk: RecordDesk; readonly timeStudy: TimeStudy }) {
  const { desk, timeStudy } = props;
  const [text, setText] = useState('');
  return (
    <form
      className="watch-line"
      onSubmit={(event) => {
        event.preventDefault();
        const names = timeStudy.elements.map(({ name }) => name);
        const name = text.trim() || freeName(`element ${names.length + 1}`, names);
        if (desk.dispatch(addElement(timeStudy, name, crypto.randomUUID()))) setText('');
      }}
    >
      <input
        aria-label="New element"
        placeholder="new element"
        maxLength={200}
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit">Add</button>
    </form>
  );
}
