import { type MotionKind, motionFacts, sources } from '@evenhand/core/ground/tables';
import { defaultKeyMap, keyFor, mirrorKey, withKey } from '@evenhand/core/record';
import { useEffect, useState } from 'react';
import { Dialog } from '../shell/dialog.tsx';
import { preferences, usePreferences } from '../shell/preferences.ts';
import { type DeskCommand, deskCommands } from './desk-commands.ts';
import { chordText, useKeyLabels } from './key-labels.ts';
import { MotionSwatch } from './motion-swatch.tsx';

const groups: readonly (readonly [DeskCommand['group'], string])[] = [
  ['film', 'Film'],
  ['score', 'Score and selection'],
  ['marks', 'Marks'],
  ['cycles', 'Cycles'],
  ['proposals', 'Proposals'],
  ['study', 'Study'],
];

/** All keys of the desk; the marking keys can be changed. */
export function KeyDialog(props: { readonly onClose: () => void }) {
  const { keyMap, carryObject, showKeys } = usePreferences();
  const labels = useKeyLabels();
  const [asking, setAsking] = useState<MotionKind>();
  useEffect(() => {
    if (asking === undefined) return;
    const onKey = (event: KeyboardEvent) => {
      event.preventDefault();
      event.stopPropagation();
      const changed = event.code === 'Escape' ? undefined : withKey(keyMap, asking, event.code);
      if (changed !== undefined) preferences.change({ keyMap: changed });
      if (changed !== undefined || event.code === 'Escape') setAsking(undefined);
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [asking, keyMap]);
  return (
    <Dialog title="Keys" onClose={props.onClose} wide>
      <div className="key-dialog">
        <section>
          <h3>Marking</h3>
          <p>
            The left half of the keyboard marks the left hand, the right half the right hand; the same finger
            means the same motion. Keys are taken by their place, whatever is printed on them.
          </p>
          <table className="plain keys">
            <thead>
              <tr>
                <th scope="col">Left</th>
                <th scope="col">Right</th>
                <th scope="col">Motion</th>
                <th scope="col">
                  <span className="hidden">Change</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {motionFacts.map((facts) => {
                const left = keyFor(keyMap, 'left', facts.kind);
                const right = left === undefined ? undefined : mirrorKey(left);
                return (
                  <tr key={facts.kind}>
                    <td>{left === undefined ? '–' : <kbd>{labels(left)}</kbd>}</td>
                    <td>{right === undefined ? '–' : <kbd>{labels(right)}</kbd>}</td>
                    <th scope="row">
                      <MotionSwatch kind={facts.kind} /> <span className="code">{facts.code}</span>{' '}
                      {facts.name}
                      <small>
                        Begins when {facts.begins}; ends when {facts.ends}.{' '}
                        <cite>{sources[facts.definitionSource].reference}</cite>
                      </small>
                    </th>
                    <td>
                      <button
                        type="button"
                        className="quiet"
                        aria-pressed={asking === facts.kind}
                        onClick={() => setAsking(facts.kind)}
                      >
                        {asking === facts.kind ? 'Press the new key …' : 'Change'}
                      </button>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
          <p className="actions">
            <button type="button" onClick={() => preferences.change({ keyMap: defaultKeyMap })}>
              Back to the first key map
            </button>
          </p>
          <label className="check">
            <input
              type="checkbox"
              checked={carryObject}
              onChange={(event) => preferences.change({ carryObject: event.target.checked })}
            />
            Carry the object on from grasp to release while marking
          </label>
          <label className="check">
            <input
              type="checkbox"
              checked={showKeys}
              onChange={(event) => preferences.change({ showKeys: event.target.checked })}
            />
            Show the keys beside the film
          </label>
        </section>
        <section>
          {groups.map(([group, title]) => (
            <div key={group}>
              <h3>{title}</h3>
              <dl className="chords">
                {deskCommands
                  .filter((command) => command.group === group)
                  .map((command) => (
                    <div key={command.id}>
                      <dt>{command.title}</dt>
                      <dd>
                        {command.keys.map((key) => (
                          <kbd key={key}>{chordText(key, labels)}</kbd>
                        ))}
                      </dd>
                    </div>
                  ))}
              </dl>
            </div>
          ))}
          <p className="soft">On a Mac, Command serves as Ctrl. F1 opens this page.</p>
        </section>
      </div>
    </Dialog>
  );
}
