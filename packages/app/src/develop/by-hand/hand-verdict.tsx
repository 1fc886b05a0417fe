import { micros } from '@evenhand/core/ground/base';
import { findingTexts } from '@evenhand/core/ground/findings';
import { percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import type { PlainMethod } from '../developed-plain.ts';
import type { ByHand } from './use-by-hand.ts';

/** What a change by hand breaks, or what it costs against the composed method. */
export function HandVerdict(props: {
  readonly byHand: ByHand;
  readonly composed: PlainMethod;
  readonly unit: TimeUnit;
}) {
  const { byHand, composed, unit } = props;
  const { faults } = byHand.judged;
  if (!byHand.changed) return null;
  if (faults.length > 0)
    return (
      <div className="hand-verdict" role="alert">
        <p>
          <strong>Changed by hand, this cannot be done,</strong> so it cannot be added to the study. It is
          shown as far as it can be kept.
        </p>
        <ul>
          {faults.map(({ message }) => (
            <li key={message}>{message.replace(before, '')}</li>
          ))}
        </ul>
      </div>
    );
  return (
    <p className="hand-verdict" role="status">
      {costWords(byHand.method, composed, unit)}
    </p>
  );
}

/** What stands in every sentence of the checker, said once above them all. */
const before = findingTexts['develop/schedule'].text.split('{reason}')[0] ?? '';

function costWords(changed: PlainMethod, composed: PlainMethod, unit: TimeUnit): string {
  const time = (us: number) => timeText(micros(Math.round(us)), unit);
  const units = changed.work.unitsPerCycle;
  const longer = changed.unitTime - composed.unitTime;
  const against = composed.proven ? 'the proven one' : 'the one that was found';
  const cost =
    longer === 0
      ? `as long as ${against}`
      : `${time(Math.abs(longer))} (${percentText(Math.abs(longer) / composed.unitTime)}) ${longer > 0 ? 'longer' : 'shorter'} than ${against}`;
  const { expected } = changed;
  const sure =
    expected === undefined
      ? ''
      : ` Expected at work ${time(expected.likely / units)}, ${percentText(expected.interval.confidence, 0)} interval ${time(expected.interval.low / units)} to ${time(expected.interval.high / units)}.`;
  return `Changed by hand, this can be done: ${time(changed.unitTime)} a unit, ${cost}.${sure}`;
}
