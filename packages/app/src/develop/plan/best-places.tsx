import { micros } from '@evenhand/core/ground/base';
import { numberText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import type { ArrangeSearch } from './use-arranged.ts';

/** Seeks the best places together with the method, and says what is proven of the pair before anything is moved. */
export function BestPlaces(props: {
  readonly search: ArrangeSearch;
  /** Microseconds for a unit as the places are. */
  readonly now: number | undefined;
  readonly unit: TimeUnit;
  readonly onAccept: () => void;
}) {
  const { search, now, unit, onAccept } = props;
  const { state, start, end } = search;
  const time = (us: number) => timeText(micros(Math.round(us)), unit);
  if (state.kind === 'none')
    return (
      <button type="button" onClick={start}>
        Best places
      </button>
    );
  if (state.kind === 'working')
    return (
      <p role="status">
        Seeking the best places with their method …{' '}
        {state.best === undefined ? '' : `so far ${time(state.best)} a unit. `}
        <button type="button" className="quiet" onClick={end}>
          Stop
        </button>
      </p>
    );
  if (state.kind === 'refused')
    return (
      <p role="alert" className="fault">
        {state.reason}{' '}
        <button type="button" className="quiet" onClick={end}>
          Close
        </button>
      </p>
    );
  const { arranged } = state;
  const saved = now === undefined ? undefined : now - arranged.unitTime;
  const better = arranged.moved.length > 0 && (saved === undefined || saved > 0);
  return (
    <section className="plan-proposal" aria-label="Best places">
      <p role="status">
        <strong>{time(arranged.unitTime)} a unit</strong>{' '}
        {better
          ? `with ${arranged.shown.length === 1 ? 'one place' : `${arranged.shown.length} places`} elsewhere${saved === undefined ? '' : `, ${time(saved)} less than now`}. `
          : 'is the best that was found, and the places as they are do as well. '}
        {arranged.words}
      </p>
      <details>
        <summary>{better ? 'Where to' : 'What was looked at'}</summary>
        {better ? (
          <p className="soft">
            {arranged.shown
              .map(({ name, to }) => `${name} to ${numberText(to.x, 0)}, ${numberText(to.y, 0)} mm`)
              .join('; ')}
            .
          </p>
        ) : null}
        <p className="soft">
          Chosen from {arranged.spots} spots, 100 mm apart, within reach of everybody the bench is laid out
          for.
        </p>
      </details>
      <div className="actions">
        {better ? (
          <button type="button" className="primary" onClick={onAccept}>
            Move them there
          </button>
        ) : null}
        <button type="button" onClick={end}>
          {better ? 'Leave them' : 'Close'}
        </button>
      </div>
    </section>
  );
}
