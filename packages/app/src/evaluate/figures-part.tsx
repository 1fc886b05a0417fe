import type { Proof } from '@evenhand/core/evaluate';
import { outputGainedFor } from '@evenhand/core/evaluate';
import { roundMicros } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Interval } from '@evenhand/core/ground/numerics';
import { countText, percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';

/** Time saved and output gained beside each other, raw and at equal pace, each with its interval. */
export function FiguresPart(props: { readonly proof: Proof; readonly unit: TimeUnit }) {
  const { proof, unit } = props;
  const { difference, pace } = proof;
  const time = (us: number) => timeText(roundMicros(us), unit);
  const { before, after, saving } = difference;
  const equal = pace.equal;
  const confidence = Number(((difference.timeSaved?.confidence ?? 0) * 100).toFixed(2));
  return (
    <section className="proof-figures" aria-label="Figures">
      <table>
        <thead>
          <tr>
            <th scope="col">For one unit</th>
            <th scope="col" className="number">
              as measured
            </th>
            <th scope="col" className="number">
              at equal pace
            </th>
          </tr>
        </thead>
        <tbody>
          <Row
            name={before.name}
            value={time(before.sample.mean)}
            range={rangeText(before.sample.interval, time)}
            count={before.sample.n}
          />
          <Row
            name={after.name}
            value={time(after.sample.mean)}
            range={rangeText(after.sample.interval, time)}
            count={after.sample.n}
            equal={equal === undefined ? undefined : time(equal.after)}
          />
          <Row
            name="Time saved"
            strong
            value={percentText(saving.timeSaved)}
            range={rangeText(difference.timeSaved, percentText)}
            equal={equal === undefined ? undefined : percentText(equal.saving.timeSaved)}
            equalRange={rangeText(equal?.timeSaved, percentText)}
          />
          <Row
            name="Output gained"
            strong
            value={percentText(saving.outputGained)}
            range={rangeText(difference.outputGained, percentText)}
            equal={equal === undefined ? undefined : percentText(equal.saving.outputGained)}
            equalRange={rangeText(outputRange(equal?.timeSaved), percentText)}
          />
        </tbody>
      </table>
      <p className="soft">
        Time saved and output gained are two figures: half the time is twice the output.
        {difference.timeSaved === undefined ? '' : ` Beneath each its ${confidence} % interval.`}
      </p>
      <p>{difference.odds}</p>
      {difference.more === undefined ? null : <p>{difference.more.words}</p>}
      <p>{paceWords(proof)}</p>
      {toTell(proof).map(({ code, severity, message }) => (
        <p key={code} className={severity === 'note' ? undefined : 'warning'}>
          {message}
        </p>
      ))}
    </section>
  );
}

function Row(props: {
  readonly name: string;
  readonly value: string;
  readonly range: string;
  /** How many cycles it is the mean of. */
  readonly count?: number;
  readonly equal?: string | undefined;
  readonly equalRange?: string;
  readonly strong?: boolean;
}) {
  return (
    <tr className={props.strong === true ? 'strong' : undefined}>
      <th scope="row">
        {props.name}
        {props.count === undefined ? null : <small>mean of {countText(props.count, 'cycle')}</small>}
      </th>
      <td className="number">
        {props.value}
        <small>{props.range}</small>
      </td>
      <td className="number">
        {props.equal ?? ''}
        <small>{props.equalRange ?? ''}</small>
      </td>
    </tr>
  );
}

/** Warnings, and what pace leaves open; the other notes stand among what the claim rests on. */
function toTell({ difference, pace }: Proof): readonly Finding[] {
  const warnings = [...difference.notes, ...pace.notes].filter(({ severity }) => severity !== 'note');
  return [...warnings, ...pace.notes.filter(({ severity }) => severity === 'note')];
}

function rangeText(
  interval: Pick<Interval, 'low' | 'high'> | undefined,
  text: (value: number) => string,
): string {
  return interval === undefined ? '' : `${text(interval.low)} to ${text(interval.high)}`;
}

/** More time saved is more output gained, so that the ends of one are the ends of the other. */
function outputRange(saved: Interval | undefined): Pick<Interval, 'low' | 'high'> | undefined {
  if (saved === undefined) return undefined;
  const [low, high] = [outputGainedFor(saved.low), outputGainedFor(saved.high)];
  return low.ok && high.ok ? { low: low.value, high: high.value } : undefined;
}

function paceWords({ pace }: Proof): string {
  const { ratio, interval, motions, explained } = pace;
  if (ratio === undefined) return 'A faster operator is no better method.';
  const range =
    interval === undefined ? '' : ` (${percentText(interval.low)} to ${percentText(interval.high)})`;
  const share =
    explained === undefined || explained <= 0
      ? ''
      : ` Pace explains ${percentText(explained)} of the time saved.`;
  const shared =
    motions.length === 1
      ? 'the one motion that both methods share'
      : `the ${motions.length} motions that both methods share`;
  return `Pace: ${shared} took ${percentText(ratio)}${range} of the time before.${share}`;
}
