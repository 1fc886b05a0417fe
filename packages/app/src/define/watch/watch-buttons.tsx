import type { TimeStudy } from '@evenhand/core/ground/study';
import type { BenchWatch, WatchShown, WatchSitting } from './bench-watch.ts';
import {
  mainPress,
  mainWord,
  onPress,
  type PlainPress,
  pressTime,
  ratedNow,
  standardOf,
} from './watch-presses.ts';

interface Shared {
  readonly bench: BenchWatch;
  readonly shown: WatchShown;
  readonly timeStudy: TimeStudy;
}

/** What a thumb reaches: rating, the rarer presses, and the one that reads. */
export function WatchButtons(props: Shared & { readonly sitting: WatchSitting }) {
  const { bench, shown, sitting } = props;
  const { watch } = shown;
  const used = watch.phase === 'running' || watch.phase === 'paused';
  return (
    <section className="watch-presses" aria-label="Presses">
      {used || watch.last !== undefined ? <Rating {...props} /> : null}
      {used || watch.before !== undefined ? <RarerPresses {...props} /> : null}
      <button
        type="button"
        className="watch-read primary"
        disabled={watch.plan.order.length === 0}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          mainPress(bench, pressTime(event), sitting);
          if ('vibrate' in navigator) navigator.vibrate(15);
        }}
        // A press by a reader comes without a pointer; the space bar is taken by the page.
        onClick={(event) => {
          if (event.detail === 0) mainPress(bench, pressTime(event), sitting);
        }}
      >
        {mainWord(shown)}
      </button>
    </section>
  );
}

function RarerPresses({ bench, shown }: Shared) {
  const { watch } = shown;
  const running = watch.phase === 'running';
  const used = running || watch.phase === 'paused';
  const reads = running && watch.foreign === undefined;
  const press = (doing: PlainPress) => onPress((at) => bench.press({ do: doing, at }));
  return (
    <div className="watch-rarer">
      <button type="button" disabled={!reads} {...press('miss')}>
        Missed
      </button>
      <button type="button" disabled={!reads} {...press('skip')}>
        Not done
      </button>
      <button
        type="button"
        aria-pressed={watch.foreign !== undefined}
        disabled={!running}
        {...press('foreign')}
      >
        Foreign
      </button>
      <button type="button" disabled={!reads} {...press('new-cycle')}>
        Next cycle
      </button>
      <button
        type="button"
        className="watch-back"
        disabled={watch.before === undefined}
        onClick={() => bench.press({ do: 'take-back' })}
      >
        Take back
      </button>
      <button type="button" aria-pressed={watch.phase === 'paused'} disabled={!used} {...press('pause')}>
        Pause
      </button>
      <button type="button" disabled={!used} {...press('end')}>
        End
      </button>
    </div>
  );
}

/** Ratings in steps of five about the standard; the steps follow a rating that lies outside them. */
function Rating({ bench, timeStudy }: Shared) {
  const { running, element, cycle, rating, own } = ratedNow(bench, timeStudy);
  const first = firstStep(standardOf(timeStudy), rating);
  const steps = Array.from({ length: 9 }, (_, index) => first + index * 5);
  return (
    <div className="watch-rating" role="group" aria-label="Rating">
      <p>
        <span>
          Rating of {element?.name ?? 'the reading'}, cycle {cycle}
          {own === undefined ? '' : `: ${own}`}
        </span>
        <button type="button" className="quiet" onClick={() => bench.rateThe(running ? 'last' : 'running')}>
          {running ? 'rate the last' : 'rate the running'}
        </button>
      </p>
      <div>
        {steps.map((step) => (
          <button
            key={step}
            type="button"
            aria-pressed={step === rating}
            onClick={() => bench.rate(own === step ? undefined : step)}
          >
            {step}
          </button>
        ))}
      </div>
    </div>
  );
}

/** Of nine steps of five: about the standard, moved just so far that the rating is among them. */
function firstStep(standard: number, rating: number): number {
  const usual = Math.round(standard / 5) * 5 - 20;
  const lowest = Math.ceil(rating / 5) * 5 - 40;
  const highest = Math.floor(rating / 5) * 5;
  return Math.max(5, Math.min(highest, Math.max(lowest, usual)));
}
