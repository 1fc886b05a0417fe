import type { WatchState } from '@evenhand/core/define';
import { micros } from '@evenhand/core/ground/base';
import type { TimeStudy } from '@evenhand/core/ground/study';
import { timeText, timeUnits } from '@evenhand/core/ground/units';

/** Where the time of the run went; the parts add up to it, as they stand too. */
export function WatchSums(props: { readonly watch: WatchState; readonly timeStudy: TimeStudy }) {
  const { watch, timeStudy } = props;
  const { spent } = watch;
  const { microseconds, decimals } = timeUnits[timeStudy.unit];
  const step = microseconds / 10 ** decimals;
  const [readings, foreign, lost, whole] = inSteps([spent.readings, spent.foreign, spent.lost], step);
  const rows = [
    ['Timed, pauses not counted', whole],
    ['in readings', readings],
    ['in foreign elements', foreign],
    ['missed, given up or not finished', lost],
  ] as const;
  return (
    <dl className="watch-sums" aria-label="Where the time went">
      {rows.map(([words, steps = 0]) => (
        <div key={words}>
          <dt>{words}</dt>
          <dd>{timeText(micros(Math.round(steps * step)), timeStudy.unit)}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Whole steps of each part and of their sum: cut, and what is missing to the sum given to those that lost most. */
function inSteps(parts: readonly number[], step: number): readonly number[] {
  const whole = Math.round(parts.reduce((sum, part) => sum + part, 0) / step);
  const cut = parts.map((part) => Math.floor(part / step));
  const missing = Math.max(0, whole - cut.reduce((sum, part) => sum + part, 0));
  const first = parts
    .map((part, index) => ({ index, rest: part / step - (cut[index] ?? 0) }))
    .sort((a, b) => b.rest - a.rest || a.index - b.index)
    .slice(0, missing)
    .map(({ index }) => index);
  return [...cut.map((part, index) => part + (first.includes(index) ? 1 : 0)), whole];
}
