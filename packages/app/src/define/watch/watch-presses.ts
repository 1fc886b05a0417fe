import type { WatchCommand } from '@evenhand/core/define';
import type { TimeStudy } from '@evenhand/core/ground/study';
import { ratingScales } from '@evenhand/core/ground/tables';
import type { MouseEvent, PointerEvent } from 'react';
import type { BenchWatch, WatchSitting } from './bench-watch.ts';

/** The moment of a press as the browser stamped it, in whole microseconds. */
export function pressTime(event: { readonly timeStamp: number }): number {
  return Math.round(event.timeStamp * 1000);
}

export type PlainPress = Exclude<WatchCommand['do'], 'read-as' | 'rate' | 'plan' | 'take-back' | 'begin'>;

/** The large button and the space bar: what the button says. */
export function mainPress(bench: BenchWatch, at: number, sitting: WatchSitting): void {
  const { phase, foreign } = bench.state().watch;
  if (phase === 'ended') return bench.anew();
  if (phase === 'ready') return bench.begin(at, sitting);
  bench.press({ do: phase === 'paused' ? 'pause' : foreign === undefined ? 'read' : 'foreign', at });
}

export function mainWord({ watch }: ReturnType<BenchWatch['state']>): string {
  if (watch.phase === 'ready') return 'Begin';
  if (watch.phase === 'ended') return 'Another run';
  if (watch.phase === 'paused') return 'Go on';
  return watch.foreign === undefined ? 'Read' : 'Foreign ends';
}

/** What a rating is of at present, and what holds for it. */
export function ratedNow(bench: BenchWatch, timeStudy: TimeStudy) {
  const { watch, rates } = bench.state();
  const running = rates === 'running' || watch.last === undefined;
  const id = running ? watch.plan.order.find((each) => !watch.done.includes(each)) : watch.last?.element;
  const element = timeStudy.elements.find((each) => each.id === id);
  const own = running ? watch.rating : watch.last?.reading.rating;
  return {
    running,
    element,
    cycle: running ? watch.cycle : watch.last?.reading.cycle,
    rating: own ?? element?.rating ?? timeStudy.rating ?? standardOf(timeStudy),
    own,
  };
}

/** Standard pace of the scale. */
export function standardOf({ scale }: TimeStudy): number {
  return ratingScales[scale].standard;
}

/** To the next step of five up or down. */
export function rateBy(bench: BenchWatch, timeStudy: TimeStudy, direction: -1 | 1): void {
  const { rating } = ratedNow(bench, timeStudy);
  const next = direction > 0 ? Math.floor(rating / 5 + 1) * 5 : Math.ceil(rating / 5 - 1) * 5;
  bench.rate(Math.min(1000, Math.max(5, next)));
}

/** For a button: the press is timed when it goes down and counts when it is let go, so that a swipe over it is none. */
export function onPress(press: (at: number) => void) {
  let down: number | undefined;
  return {
    onPointerDown: (event: PointerEvent) => {
      down = pressTime(event);
    },
    onClick: (event: MouseEvent) => {
      const at = event.detail === 0 ? pressTime(event) : (down ?? pressTime(event));
      down = undefined;
      press(at);
    },
  };
}
