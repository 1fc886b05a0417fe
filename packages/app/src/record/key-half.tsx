import type { Hand } from '@evenhand/core/ground/study';
import { type MotionFacts, type MotionKind, motionFacts } from '@evenhand/core/ground/tables';
import { keyFor } from '@evenhand/core/record';
import { usePreferences } from '../shell/preferences.ts';
import type { RecordDesk } from './desk.ts';
import { mark } from './desk-edits.ts';
import { useKeyLabels } from './key-labels.ts';
import { MotionSwatch } from './motion-swatch.tsx';
import { useDesk } from './use-desk.ts';

/** In the order of a hand's work: reach, take, carry, fit, do, let go; then what only looks; then idleness. */
const order: readonly MotionKind[] = [
  'TE',
  'G',
  'TL',
  'P',
  'A',
  'U',
  'DA',
  'RL',
  'PP',
  'H',
  'Sh',
  'F',
  'St',
  'I',
  'Pn',
  'UD',
  'AD',
  'R',
  'unmarked',
];
const factsInOrder = order
  .map((kind) => motionFacts.find((facts) => facts.kind === kind))
  .filter((facts): facts is MotionFacts => facts !== undefined);

/** One half of the keyboard beside the film: what each key marks for that hand. Each line can also be clicked. */
export function KeyHalf(props: { readonly desk: RecordDesk; readonly hand: Hand }) {
  const { desk, hand } = props;
  const { keyMap } = usePreferences();
  const { pressed } = useDesk(desk);
  const labels = useKeyLabels();
  return (
    <div className={`key-half ${hand}`} role="group" aria-label={`${hand} hand: keys`}>
      <h2>{hand === 'left' ? 'Left hand' : 'Right hand'}</h2>
      <ul>
        {factsInOrder.map((facts) => {
          const code = keyFor(keyMap, hand, facts.kind);
          const lit = pressed?.hand === hand && pressed.kind === facts.kind;
          return (
            <li key={facts.kind}>
              <button
                type="button"
                tabIndex={-1}
                className={lit ? 'lit' : ''}
                title={`${facts.name}: begins when ${facts.begins}; ends when ${facts.ends}.`}
                onClick={(event) => {
                  mark(desk, hand, facts.kind);
                  event.currentTarget.blur();
                }}
              >
                <kbd>{code === undefined ? '' : labels(code)}</kbd>
                <MotionSwatch kind={facts.kind} />
                <span className="code">{facts.code}</span>
                <span className="name">{facts.name}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
