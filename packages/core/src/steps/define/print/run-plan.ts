import { textWidth } from '../../../ground/scene/index.ts';
import { numberText, timeUnits } from '../../../ground/units/index.ts';
import type { RunFacts } from './run-facts.ts';
import { type AxisMark, axisMarks, timeSpan } from './run-scales.ts';

/** Where cycles and times lie in the picture. */
export interface RunPlan {
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** The times that the picture reaches. */
  readonly low: number;
  readonly high: number;
  /** Numbered times of the axis. */
  readonly marks: readonly AxisMark[];
  /** Width of one cycle. */
  readonly step: number;
  readonly x: (cycle: number) => number;
  readonly y: (time: number) => number;
}

/** @param caption height that is kept free at the foot */
export function planOf(run: RunFacts, width: number, height: number, size: number, caption: number): RunPlan {
  const timed = run.points.flatMap(({ time, setAside }) => (time === undefined ? [] : [{ time, setAside }]));
  const counted = timed.filter(({ setAside }) => setAside === undefined).map(({ time }) => time);
  const aside = timed.filter(({ setAside }) => setAside !== undefined).map(({ time }) => time);
  const { low, high } = timeSpan(counted, run.bounds, aside);
  const top = size * 1.5;
  const bottom = Math.max(top + size, height - caption - size * 1.7);
  const most = Math.max(2, Math.min(6, Math.floor((bottom - top) / (size * 1.6))));
  const marks = axisMarks(low, high, most);
  const numbers = marks.map(({ value, decimals }) => numberText(value, decimals));
  const widest = Math.max(
    ...numbers.map((text) => textWidth(text, size * 0.9, 400)),
    textWidth(timeUnits[run.unit].symbol, size * 0.9, 400),
  );
  const [left, right] = [widest + size * 0.8, width - size * 0.4];
  const first = run.points[0]?.cycle ?? 1;
  const last = run.points.at(-1)?.cycle ?? 1;
  const step = (right - left) / (last - first + 1);
  return {
    size,
    left,
    right,
    top,
    bottom,
    low,
    high,
    marks,
    step,
    x: (cycle) => left + (cycle - first + 0.5) * step,
    y: (time) => bottom - ((time - low) / (high - low)) * (bottom - top),
  };
}
