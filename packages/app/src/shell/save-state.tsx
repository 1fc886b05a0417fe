import { editName } from '@evenhand/core/ground/edit';
import { countText } from '@evenhand/core/ground/units';
import { useState, useSyncExternalStore } from 'react';
import type { StudyDocument } from '../editor/study-document.ts';
import { Dialog } from './dialog.tsx';

/** Says in words where the edits are: with the server, on their way, or waiting in this browser. */
export function SaveState(props: { readonly document: StudyDocument }) {
  const state = useSyncExternalStore(props.document.subscribe, props.document.state);
  const [showApart, setShowApart] = useState(false);
  const text =
    state.connection === 'away'
      ? `Server away – ${countText(state.waiting, 'edit')} wait${state.waiting === 1 ? 's' : ''} in this browser`
      : state.waiting > 0
        ? 'Saving …'
        : 'All saved';
  return (
    <>
      <span
        className={state.connection === 'away' ? 'save-state away' : 'save-state'}
        role="status"
        data-saved={state.waiting === 0}
      >
        {text}
        {state.windows > 1 ? ` · open in ${state.windows} windows` : ''}
      </span>
      {state.apart.length > 0 ? (
        <button type="button" className="warn" onClick={() => setShowApart(true)}>
          {countText(state.apart.length, 'edit')} set apart
        </button>
      ) : null}
      {showApart && state.apart.length > 0 ? (
        <Dialog title="Edits set apart" onClose={() => setShowApart(false)}>
          <p>
            These edits no longer fitted when they reached the server, because the same thing was changed
            elsewhere. They are kept here until you decide.
          </p>
          <ul className="apart">
            {state.apart.map((item) => (
              <li key={item.id}>
                <strong>{editName(item.edit)}</strong>
                <span>{item.finding.message}</span>
                <span className="actions">
                  <button type="button" onClick={() => props.document.retryApart(item.id)}>
                    Try again
                  </button>
                  <button type="button" className="quiet" onClick={() => props.document.dropApart(item.id)}>
                    Drop
                  </button>
                </span>
              </li>
            ))}
          </ul>
        </Dialog>
      ) : null}
    </>
  );
}
