import '../../examine/figures/figures.css';
import type { ChangeId } from '@evenhand/core/develop';
import { micros } from '@evenhand/core/ground/base';
import { type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { PlotView } from '../../examine/figures/plot-view.tsx';
import { costText } from './cost-text.ts';
import type { PlainFront, PlainPoint } from './front-plain.ts';
import { frontPlot } from './front-plot.ts';
import type { FrontSearch } from './use-front.ts';

/** Which changes together: what every amount of cost, or every number of changes, can reach. */
export function FrontSection(props: {
  readonly search: FrontSearch;
  readonly unit: TimeUnit;
  readonly currency: string;
  readonly onTake: (changes: readonly ChangeId[]) => void;
}) {
  const { search, unit, currency, onTake } = props;
  const { front, tried, stale, find, stop } = search;
  return (
    <section className="change-front" aria-label="Combinations of changes">
      <h3>Which of them together</h3>
      {tried === undefined ? (
        <p>
          <button type="button" onClick={find}>
            {front === undefined ? 'Combine the changes' : 'Combine anew'}
          </button>{' '}
          {stale ? <span className="soft">The work or the changes are others now than below.</span> : null}
        </p>
      ) : (
        <p role="status">
          {tried} combinations looked at …{' '}
          <button type="button" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {front === undefined ? (
        <p className="soft">
          Composes combinations of the changes and shows those that no other beats: shorter for each cost that
          is written above, or for each number of changes where no cost is.
        </p>
      ) : front.ok ? (
        <Front front={front.value} unit={unit} currency={currency} onTake={onTake} />
      ) : (
        <p role="alert">{front.reason}</p>
      )}
    </section>
  );
}

function Front(props: {
  readonly front: PlainFront;
  readonly unit: TimeUnit;
  readonly currency: string;
  readonly onTake: (changes: readonly ChangeId[]) => void;
}) {
  const { front, unit, currency, onTake } = props;
  const plot = useMemo(() => frontPlot(front, currency), [front, currency]);
  return (
    <>
      <PlotView
        make={plot}
        label="Time for a unit against cost or number of changes. The list below holds the same figures."
        onTrace={() => {}}
      />
      <ol className="front-points">
        {front.points.map((point) => (
          <FrontItem
            key={point.changes.join()}
            point={point}
            unit={unit}
            currency={currency}
            onTake={onTake}
          />
        ))}
      </ol>
      <p className="soft">
        {front.words}
        {front.withoutCost.length === 0
          ? ''
          : ` Left out, for they have no cost: ${front.withoutCost.join('; ')}.`}
      </p>
    </>
  );
}

function FrontItem(props: {
  readonly point: PlainPoint;
  readonly unit: TimeUnit;
  readonly currency: string;
  readonly onTake: (changes: readonly ChangeId[]) => void;
}) {
  const { point, unit, currency, onTake } = props;
  const time = (us: number) => timeText(micros(Math.round(us)), unit);
  const { cost, more, changes } = point;
  return (
    <li>
      <div className="step-head">
        <strong>{point.name}</strong>
        <span className="number">{time(point.unitTime)}</span>
      </div>
      <p className="soft">
        {cost === undefined || changes.length === 0 ? '' : `${costText(cost, currency)}. `}
        {more === undefined
          ? ''
          : `${time(more.saved)} less than the one before (${time(more.interval.low)} to ${time(more.interval.high)}). `}
        {point.proven ? '' : 'Not proven to be the shortest. '}
        {changes.length === 0 ? null : (
          <button type="button" className="quiet" onClick={() => onTake(changes)}>
            Take these
          </button>
        )}
      </p>
    </li>
  );
}
