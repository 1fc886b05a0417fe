import {
  comingElement,
  elapsedTime,
  runningElement,
  runningTime,
  type WatchReading,
  type WatchState,
} from '@evenhand/core/define';
import { micros } from '@evenhand/core/ground/base';
import type { TimeStudy } from '@evenhand/core/ground/study';
import { type TimeUnit, timeNumber, timeText, timeUnits } from '@evenhand/core/ground/units';
import { useEffect, useRef } from 'react';
import type { BenchWatch, WatchShown } from './bench-watch.ts';
import { pressTime } from './watch-presses.ts';

/** Decimal places of the running time: a hundredth of a second or what is nearest to it and can be read. */
const decimals: Readonly<Record<TimeUnit, number>> = { seconds: 2, minutes: 3, winks: 0, tmu: 0, hours: 5 };

/** The running time, what runs, what comes, and what was read last. */
export function WatchFace(props: {
  readonly bench: BenchWatch;
  readonly shown: WatchShown;
  readonly timeStudy: TimeStudy;
}) {
  const { shown, timeStudy } = props;
  const { watch } = shown;
  const nameOf = (id: string | undefined) =>
    timeStudy.elements.find((element) => element.id === id)?.name ?? '';
  const used = watch.phase === 'running' || watch.phase === 'paused';
  const now = nameOf(runningElement(watch));
  return (
    <section className="watch-face" aria-label="Stopwatch">
      <p className="watch-cycle">
        <span>
          Cycle <strong>{watch.cycle}</strong>
        </span>
        {watch.phase === 'paused' ? <strong>stands still</strong> : null}
        <OtherTime watch={watch} unit={timeStudy.unit} />
      </p>
      <RunningTime watch={watch} unit={timeStudy.unit} />
      <p className={watch.foreign === undefined ? 'watch-now' : 'watch-now foreign'}>
        {watch.phase === 'ended'
          ? 'Ended'
          : watch.foreign === undefined
            ? now || 'No element yet'
            : 'Foreign element'}
      </p>
      {used ? (
        <>
          <p className="watch-next">
            {watch.plan.order.length > 1 ? `then ${nameOf(comingElement(watch))}` : ''}
            {watch.unsplit === undefined ? '' : ' · its beginning was missed, so no time'}
          </p>
          <Recent shown={shown} unit={timeStudy.unit} nameOf={nameOf} />
        </>
      ) : null}
      <p className="watch-said" role="status">
        {shown.said ?? jointWords(watch, timeStudy.unit, nameOf) ?? wholeWords(shown, timeStudy.unit)}
      </p>
    </section>
  );
}

/** Told once for each cycle: what a listener needs, without a word for every press. */
function wholeWords({ whole }: WatchShown, unit: TimeUnit): string {
  if (whole === undefined) return '';
  const { cycle, us } = whole;
  return us === undefined
    ? `Cycle ${cycle} has no time as a whole.`
    : `Cycle ${cycle}: ${timeText(micros(us), unit)}`;
}

function Recent(props: {
  readonly shown: WatchShown;
  readonly unit: TimeUnit;
  readonly nameOf: (id: string) => string;
}) {
  const { shown, unit, nameOf } = props;
  return (
    <ol className="watch-recent" aria-label="Last readings, the newest first">
      {shown.recent.map(({ element, reading }) => (
        <li key={`${element} ${reading.cycle}`}>
          {nameOf(element)} <strong>{timeOf({ element, reading }, unit)}</strong>
          {reading.rating === undefined ? '' : ` at ${reading.rating}`}
        </li>
      ))}
    </ol>
  );
}

/** Said until the next reading: the study keeps no joint times. */
function jointWords(
  { joint, last }: WatchState,
  unit: TimeUnit,
  nameOf: (id: string) => string,
): string | undefined {
  if (joint === undefined || last === undefined) return undefined;
  if (joint.elements.at(-1) !== last.element || last.reading.us !== undefined) return undefined;
  return `${joint.elements.map(nameOf).join(' + ')}: ${timeText(micros(joint.us), unit)} together, none alone.`;
}

function timeOf({ reading }: WatchReading, unit: TimeUnit): string {
  return reading.us === undefined ? 'missed' : timeNumber(micros(reading.us), unit);
}

/** A watch that runs on shows the time since it began, one that goes back the time of the element. */
function RunningTime({ watch, unit }: { readonly watch: WatchState; readonly unit: TimeUnit }) {
  const figure = useRunning(watch, unit, watch.timing === 'continuous');
  return (
    <p className="watch-time" role="timer" aria-live="off">
      <span ref={figure} />
      <small>{timeUnits[unit].symbol}</small>
    </p>
  );
}

/** The one that the large figure is not. */
function OtherTime({ watch, unit }: { readonly watch: WatchState; readonly unit: TimeUnit }) {
  const isContinuous = watch.timing === 'continuous';
  const figure = useRunning(watch, unit, !isContinuous);
  return (
    <span>
      {isContinuous ? 'element' : 'in all'} <strong className="watch-own" ref={figure} />
    </span>
  );
}

/** Writes a running figure past React: the page has nothing else to do sixty times a second. */
function useRunning(watch: WatchState, unit: TimeUnit, isWhole: boolean) {
  const host = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    let frame = 0;
    const write = () => {
      const now = pressTime({ timeStamp: performance.now() });
      const us = isWhole ? elapsedTime(watch, now) : runningTime(watch, now);
      if (host.current !== null) host.current.textContent = passed(us, unit);
      if (watch.phase === 'running') frame = requestAnimationFrame(write);
    };
    write();
    return () => cancelAnimationFrame(frame);
  }, [watch, unit, isWhole]);
  return host;
}

/** A watch shows what has passed: cut, not rounded. */
function passed(us: number, unit: TimeUnit): string {
  const step = timeUnits[unit].microseconds / 10 ** decimals[unit];
  return timeNumber(micros(Math.round(Math.floor(us / step) * step)), unit, decimals[unit]);
}
