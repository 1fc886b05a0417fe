import { micros } from '@evenhand/core/ground/base';
import { percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import type { PlainMethod } from './developed-plain.ts';
import type { Search } from './use-developed.ts';
import type { WorkFaults } from './work/work-faults.ts';

/** The time of the composed method for a unit, how sure it is, and how far the search has come. */
export function Verdict(props: {
  readonly method: PlainMethod | undefined;
  readonly search: Search;
  readonly faults: WorkFaults;
  readonly unit: TimeUnit;
  /** Microseconds for a unit with places that were moved since, before the composer has answered. */
  readonly atOnce?: number | undefined;
}) {
  const { method, search, faults, unit, atOnce } = props;
  const { found, stop, longer } = search;
  const time = (us: number) => timeText(micros(Math.round(us)), unit);
  return (
    <section className="develop-verdict" aria-label="The composed method">
      {faults.count > 0 ? (
        <p role="alert" className="fault">
          {faults.count === 1 ? 'One thing stands' : `${faults.count} things stand`} in the way of a method,
          named at the steps on the left.{' '}
          {method === undefined ? '' : 'What stands here is the last method that could be found.'}
        </p>
      ) : found.refused === undefined ? null : (
        <p role="alert" className="fault">
          {found.refused}
        </p>
      )}
      {method === undefined ? (
        faults.count > 0 || found.refused !== undefined ? null : (
          <p role="status">
            Looking for the shortest method …{' '}
            <button type="button" className="quiet" onClick={stop}>
              Stop
            </button>
          </p>
        )
      ) : (
        <>
          <div className="verdict-head">
            <div className="sentence">
              <strong>{time(atOnce ?? method.unitTime)} a unit</strong>
              <span>
                {atOnce === undefined
                  ? found.stale
                    ? 'of the work before the last change'
                    : proofWords(method, found.searching, unit)
                  : 'with the places here, in the order found before; the proof follows'}
              </span>
              {found.searching ? (
                <button type="button" onClick={stop}>
                  Stop here
                </button>
              ) : (method.proven && !found.stale) || faults.count > 0 ? null : (
                <button type="button" onClick={longer}>
                  Search longer
                </button>
              )}
            </div>
            <p className="soft verdict-state" role="status">
              {found.working && !found.searching ? (
                <>
                  Changes are being reckoned …{' '}
                  <button type="button" className="quiet" onClick={stop}>
                    Stop
                  </button>
                </>
              ) : found.stopped ? (
                found.stale ? (
                  'Stopped before a method was found. What stands here is of the work before the last change.'
                ) : (
                  'Stopped. What stands here is the best so far.'
                )
              ) : null}
            </p>
          </div>
          <Expected method={method} unit={unit} />
        </>
      )}
    </section>
  );
}

function proofWords(method: PlainMethod, searching: boolean, unit: TimeUnit): string {
  const units = method.work.unitsPerCycle;
  if (method.proven) return 'proven: no method is shorter with these times';
  const gap = method.period === 0 ? 0 : 1 - method.bound / method.period;
  const bound = timeText(micros(Math.round(method.bound / units)), unit);
  return searching
    ? `so far; no method is shorter than ${bound}, and the search goes on`
    : `shortest found; no method is shorter than ${bound}, so at most ${percentText(gap)} could still be saved`;
}

function Expected(props: { readonly method: PlainMethod; readonly unit: TimeUnit }) {
  const { method, unit } = props;
  const { expected, work } = method;
  const time = (us: number) => timeText(micros(Math.round(us)), unit);
  const units = work.unitsPerCycle;
  return (
    <div className="develop-expected">
      <p>
        {units === 1 ? '' : `${time(method.period)} a cycle of ${units} units. `}
        {expected === undefined
          ? ''
          : `Expected at work ${time(expected.likely / units)} a unit, ${percentText(expected.interval.confidence, 0)} interval ${time(expected.interval.low / units)} to ${time(expected.interval.high / units)}.`}{' '}
      </p>
      <details className="develop-notes">
        <summary>What is proven, and what is not known of the times</summary>
        <p className="soft">{method.words}</p>
        <p className="soft">
          Times that nobody has made yet are not certain, and people do not work like a clock: the interval
          takes both into account.
        </p>
        {method.notes.map((note) => (
          <p key={note} className="soft">
            {note}
          </p>
        ))}
      </details>
    </div>
  );
}
