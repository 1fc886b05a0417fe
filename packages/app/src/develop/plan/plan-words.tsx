import { type ReachWords, travelOver } from '@evenhand/core/develop';
import type { KeptWork } from '@evenhand/core/ground/study';
import { sources } from '@evenhand/core/ground/tables';
import { numberText } from '@evenhand/core/ground/units';
import { adviceOf } from './plan-choices.tsx';

/** Eight hours of work, microseconds; for the travel of a day. */
export const dayOfWork = 8 * 3_600_000_000;

/** What the drawing shows, in words: reach by name, travel of the hands, and the height of the work. */
export function PlanWords(props: {
  readonly kept: KeptWork;
  readonly reach: ReachWords;
  readonly travel: { readonly left: number; readonly right: number; readonly unmeasured: number } | undefined;
  /** Of the cycle, microseconds. */
  readonly period: number | undefined;
}) {
  const { kept, reach, travel, period } = props;
  const advice = adviceOf(kept);
  const unplaced = kept.work.places.filter(({ at }) => at === undefined).map(({ name }) => name);
  return (
    <div className="plan-words">
      {reach.beyond.map(({ place, hand, sentence }) => (
        <p key={`${place} ${hand}`} className="fault">
          {sentence}
        </p>
      ))}
      {reach.beyond.length > 0 ? null : (
        <p>
          Every place is within reach of everybody the bench is laid out for
          {reach.outside.length === 0 ? ', and in the normal area.' : '.'}
        </p>
      )}
      {reach.outside.length === 0 ? null : (
        <details>
          <summary>
            {reach.outside.length === 1
              ? 'One place asks somebody for more than the forearm'
              : `${reach.outside.length} ways to a place ask somebody for more than the forearm`}
          </summary>
          {reach.outside.map(({ place, hand, sentence }) => (
            <p key={`${place} ${hand}`} className="soft">
              {sentence}
            </p>
          ))}
        </details>
      )}
      {unplaced.length === 0 ? null : (
        <p className="soft">Without a position, so not drawn: {unplaced.join(', ')}.</p>
      )}
      {travel === undefined || period === undefined || period <= 0 ? null : (
        <p>
          Hands travel {metres(travel.left)} left and {metres(travel.right)} right a cycle, together{' '}
          {numberText(travelOver(travel.left + travel.right, period, dayOfWork) / 1000, 1)} km in 8 h of work
          {travel.unmeasured > 0
            ? `; ${numberText(travel.unmeasured, 0)} ways a cycle have no position and are left out`
            : ''}
          .
        </p>
      )}
      <p className="soft">{advice.sentence}</p>
      <details>
        <summary>What the areas and the height rest on</summary>
        <p className="soft">
          Inner arcs: the sweep of the forearm about the elbow; outer arcs, dashed: of the straight arm about
          the shoulder; one of each for each hand of the smallest person it is laid out for (
          {sources['ansur-2'].reference}; an arm of two links, ours). Ways of the right hand are drawn
          through, of the left hand dashed; what is gone more often is thicker.
        </p>
        <p className="soft">Height: {advice.source.reference}.</p>
        {advice.others.map(({ words, source }) => (
          <p key={words} className="soft">
            Elsewhere: {words} ({source.reference}).
          </p>
        ))}
        {advice.cautions.map((caution) => (
          <p key={caution} className="soft">
            {caution}
          </p>
        ))}
      </details>
    </div>
  );
}

function metres(mm: number): string {
  return `${numberText(mm / 1000, 2)} m`;
}
