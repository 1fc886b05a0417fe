import type { MethodReading } from '@evenhand/core/examine';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { countText } from '@evenhand/core/ground/units';
import type { RecordDesk } from '../record/desk.ts';
import { CriticalDetails } from './critical-panel.tsx';

/** The motion that is selected on the score: how many leads it is part of, the way to them, and its own examination. */
export function SelectedMotion(props: {
  readonly desk: RecordDesk;
  readonly reading: MethodReading;
  readonly count: number;
  /** Brings the first, then the next of its leads into sight. */
  readonly onNext: () => void;
}) {
  const { desk, reading, count } = props;
  const motion = desk.selectedMotion;
  if (motion === undefined) return null;
  const { name, code } = motionFactsOf(motion.item.kind);
  const counted = reading.cycles.some(({ from, to }) => motion.start < to && motion.end > from);
  const words = [`${name} (${code})`, motion.item.object].filter((part) => part !== undefined).join(' ');
  return (
    <section className="selected-motion" aria-label="Selected motion">
      <p role="status">
        Selected: {words}, {motion.hand} hand.{' '}
        <strong>
          {count > 0
            ? `${countText(count, 'lead')} with this motion.`
            : counted
              ? 'No lead with this motion.'
              : 'It lies in no cycle that is counted.'}
        </strong>
      </p>
      {count === 0 ? null : (
        <button type="button" className="quiet" onClick={props.onNext}>
          {count === 1 ? 'Go to it' : 'Go to the next of them'}
        </button>
      )}
      <CriticalDetails
        key={motion.item.id}
        desk={desk}
        what="of this motion"
        subject={{ kind: 'motion', method: reading.method.id, hand: motion.hand, motion: motion.item.id }}
      />
    </section>
  );
}
