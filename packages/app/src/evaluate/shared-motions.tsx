import type { EqualPace, SharedSide } from '@evenhand/core/evaluate';
import { roundMicros } from '@evenhand/core/ground/base';
import { numberText, percentText, type TimeUnit, timeNumber, timeUnits } from '@evenhand/core/ground/units';

/** The motions from which pace is told. */
export function SharedMotions(props: { readonly pace: EqualPace; readonly unit: TimeUnit }) {
  const { pace, unit } = props;
  if (pace.motions.length === 0) return null;
  const time = (us: number) => timeNumber(roundMicros(us), unit);
  return (
    <details className="shared-motions">
      <summary>The motions that both share</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Motion</th>
            <th scope="col" className="number">
              cycles
            </th>
            <th scope="col" className="number">
              before, {timeUnits[unit].symbol}
            </th>
            <th scope="col" className="number">
              after
            </th>
            <th scope="col" className="number">
              ratio
            </th>
            <th scope="col" className="number">
              weight
            </th>
          </tr>
        </thead>
        <tbody>
          {pace.motions.map((motion) => (
            <tr key={`${motion.name} ${motion.hand} ${motion.meanBefore}`}>
              <th scope="row">
                {motion.name}
                {motion.hand === undefined ? null : <small>{motion.hand} hand</small>}
              </th>
              <td className="number">
                {timed(motion.before)}, {timed(motion.after)}
              </td>
              <td className="number">{time(motion.meanBefore)}</td>
              <td className="number">{time(motion.meanAfter)}</td>
              <td className="number">{numberText(motion.ratio, 2)}</td>
              <td className="number">{percentText(motion.weight, 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft">{pace.rule}</p>
    </details>
  );
}

/** In how many cycles of a method it was timed. */
function timed({ perCycle }: SharedSide): number {
  return perCycle.filter((time) => time !== undefined).length;
}
