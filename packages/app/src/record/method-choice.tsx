import { useState } from 'react';
import { Dialog } from '../shell/dialog.tsx';
import { keepMethod } from '../shell/route.ts';
import { AddFilm } from './add-film.tsx';
import type { RecordDesk } from './desk.ts';
import { useDesk, useDocument } from './use-desk.ts';

/** Which method is on the desk, and the way to add another film. */
export function MethodChoice(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { methodId } = useDesk(desk);
  const { study } = useDocument(desk);
  const [adding, setAdding] = useState(false);
  if (study.methods.length === 0) return <span className="method-choice soft">No method yet</span>;
  return (
    <div className="method-choice">
      <label className="inline-choice">
        <span>Method</span>
        <select
          value={methodId}
          onChange={(event) => {
            desk.chooseMethod(event.target.value);
            keepMethod(event.target.value);
          }}
        >
          {study.methods.map((method) => (
            <option key={method.id} value={method.id}>
              {method.name}
            </option>
          ))}
        </select>
      </label>
      <button type="button" onClick={() => setAdding(true)}>
        Add a film
      </button>
      {adding ? (
        <Dialog title="Add a film" onClose={() => setAdding(false)}>
          <AddFilm desk={desk} onDone={() => setAdding(false)} />
        </Dialog>
      ) : null}
    </div>
  );
}
