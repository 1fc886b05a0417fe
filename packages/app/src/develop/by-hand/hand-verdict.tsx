import { micros } from '@evenhand/core/ground/base';
import { findingTexts } from '@evenhand/core/ground/findings';
import { percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import type { PlainMethod } from '../developed-plain.ts';
import type { ByHand } from './use-by-hand.ts';

/**
 * What a change by hand breaks, or what it costs against the composed method, in the line below the rows that are changed; that
 * line is always there, so that nothing else moves when it is filled.
 */
export function HandVerdict(props: {
  readonly byHand: ByHand;
  readonly composed: PlainMethod;
  readonly unit: TimeUnit;
}) {
  const { byHand, composed, unit } = props;
  const { changed, judged, method, back, reset } = byHand;
  return (
    <div className="hand-verdict-line">
      {!changed ? null : judged.faults.length > 0 ? (
        <Broken faults={judged.faults.map(({ message }) => message.replace(before, ''))} />
      ) : (
        <p className="hand-verdict" role="status">
          {costWords(method, composed, unit)}
        </p>
      )}
      {back === undefined ? null : (
        <span className="hand-back">
          <button type="button" className="quiet" onClick={back}>
            One step back
          </button>
          <button type="button" className="quiet" onClick={reset}>
            Back to the composed one
          </button>
        </span>
      )}
    </div>
  );
}

/** The first thing that is broken in one line, all of them when it is opened. */
function Broken({ faults }: { readonly faults: readonly string[] }) {
  const [first] = faults;
  const reasons = faults.length === 1 ? '' : `, for ${faults.length} reasons`;
  return (
    <details className="hand-verdict" role="alert">
      <summary title={first}>
        <strong>Changed by hand, this cannot be done{reasons}:</strong> {first}
      </summary>
      {faults.length === 1 ? null : (
        <ul>
          {faults.map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      )}
      <p>It is shown as far as it can be kept, and cannot be added to the study.</p>
    </details>
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
      : ` Expected ${time(expected.likely / units)}, ${percentText(expected.interval.confidence, 0)} interval ${time(expected.interval.low / units)} to ${time(expected.interval.high / units)}.`;
  return `Changed by hand, this can be done: ${time(changed.unitTime)} a unit, ${cost}.${sure}`;
}
