import {
  conventionWords,
  observationsNeeded,
  type SharePrecision,
  shareChart,
  shareSeen,
  standardFromSampling,
} from '@evenhand/core/define';
import { fail, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import { countText, numberText, percentText } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import { PlotView } from '../../examine/figures/plot-view.tsx';
import { all, numberOf } from './calculator-input.ts';
import { Answer, Calculator, Choice, Field, Pasted } from './calculator-parts.tsx';
import { readDays, readSpans, rounds, shiftsOf } from './sampling.ts';
import { shareplot } from './share-plot.ts';

function said<Value>(result: Result<Value, Finding>): Result<Value, string> {
  return result.ok ? result : fail(result.error.message);
}

const confidenceOf = (text: string) => numberOf(text, 'The confidence in percent', { above: 50, below: 100 });

/** How many observations a share needs. */
export function ObservationsCalculator() {
  const [share, setShare] = useState('25');
  const [kind, setKind] = useState<SharePrecision['kind']>('of-the-whole');
  const [amount, setAmount] = useState('3');
  const [confidence, setConfidence] = useState('95');
  const read = all(
    numberOf(share, 'The expected share in percent', { above: 0, below: 100 }),
    numberOf(amount, 'The precision in percent', { above: 0, below: 100 }),
    confidenceOf(confidence),
  );
  const answer = read.ok
    ? said(
        observationsNeeded(
          read.value[0] / 100,
          { kind, amount: read.value[1] / 100 },
          { kind: 'confidence', confidence: read.value[2] / 100 },
        ),
      )
    : read;
  return (
    <Calculator
      title="How many observations"
      about="A share that is seen in random observations, such as waiting or setting up."
      fields={
        <>
          <Field label="Expected share" unit="%" value={share} onChange={setShare} />
          <Choice
            label="Precision"
            value={kind}
            options={[
              ['of-the-whole', 'in points of the whole'],
              ['of-the-share', 'as a part of the share'],
            ]}
            onChange={setKind}
          />
          <Field label="±" unit="%" value={amount} onChange={setAmount} />
          <Field label="Confidence" unit="%" value={confidence} onChange={setConfidence} />
        </>
      }
    >
      <Answer of={answer}>
        {({ needed, unrounded, multiplier }) => (
          <p>
            <strong className="calc-big">{needed}</strong> observations{' '}
            <span className="soft">
              ({numberText(unrounded, 2)} before rounding up; multiplier {numberText(multiplier, 3)})
            </span>
          </p>
        )}
      </Answer>
    </Calculator>
  );
}

/** What was seen, with its interval. */
export function SeenCalculator() {
  const [seen, setSeen] = useState('');
  const [count, setCount] = useState('');
  const [confidence, setConfidence] = useState('95');
  const read = all(
    numberOf(seen, 'How often it was seen', { least: 0, whole: true }),
    numberOf(count, 'The number of observations', { least: 1, whole: true }),
    confidenceOf(confidence),
  );
  const answer = read.ok
    ? said(shareSeen(read.value[0], read.value[1], { kind: 'confidence', confidence: read.value[2] / 100 }))
    : read;
  return (
    <Calculator
      title="What was seen"
      about="The share and how close it is known."
      fields={
        <>
          <Field label="Seen" value={seen} onChange={setSeen} />
          <Field label="Of observations" value={count} onChange={setCount} />
          <Field label="Confidence" unit="%" value={confidence} onChange={setConfidence} />
        </>
      }
    >
      <Answer of={answer}>
        {({ share, halfWidth, interval, wilson, notes }) => (
          <>
            <p>
              <strong className="calc-big">{percentText(share)}</strong> ± {percentText(halfWidth)}, that is{' '}
              {percentText(interval.low)} to {percentText(interval.high)}
            </p>
            <p className="soft">
              After Wilson {percentText(wilson.low)} to {percentText(wilson.high)}, which also holds where it
              was seen rarely or nearly always.
            </p>
            {notes.map(({ message }) => (
              <p key={message} className="sheet-note">
                {message}
              </p>
            ))}
          </>
        )}
      </Answer>
    </Calculator>
  );
}

/** Random times of rounds, within shifts and without breaks. */
export function RoundsCalculator() {
  const [shifts, setShifts] = useState('06:00–14:00');
  const [breaks, setBreaks] = useState('09:00–09:15, 11:30–12:00');
  const [days, setDays] = useState('5');
  const [count, setCount] = useState('40');
  const [step, setStep] = useState('1');
  const [seed, setSeed] = useState('1');
  const answer = useMemo(() => {
    const read = all(
      readSpans(shifts, 'shift'),
      readSpans(breaks, 'break'),
      numberOf(days, 'The number of days', { least: 1, most: 366, whole: true }),
      numberOf(count, 'The number of observations', { least: 1, most: 20_000, whole: true }),
      numberOf(step, 'The step in minutes', { least: 1, most: 600, whole: true }),
      numberOf(seed, 'The seed', { least: 0, most: 4_294_967_295, whole: true }),
    );
    if (!read.ok) return read;
    const [spans, rests, number, wanted, stepMinutes, drawn] = read.value;
    const whole = shiftsOf(spans, rests, number);
    return whole.ok ? rounds(whole.value, { count: wanted, stepMinutes, seed: drawn }) : whole;
  }, [shifts, breaks, days, count, step, seed]);
  return (
    <Calculator
      title="When to look: random times"
      about="Every moment of the shifts is as likely as any other, breaks are left out. The same seed gives the same times, so the plan can be shown to have been random."
      fields={
        <>
          <Field label="Shifts" wide value={shifts} onChange={setShifts} />
          <Field label="Breaks" wide value={breaks} onChange={setBreaks} />
          <Field label="Days" value={days} onChange={setDays} />
          <Field label="Observations in all" value={count} onChange={setCount} />
          <Field label="Step" unit="min" value={step} onChange={setStep} />
          <Field label="Seed" value={seed} onChange={setSeed} />
        </>
      }
    >
      <Answer of={answer}>
        {(plan) => (
          <table className="plain rounds">
            <tbody>
              {plan.map(({ day, times }) => (
                <tr key={day}>
                  <th scope="row">Day {day}</th>
                  <td>{times.join('  ')}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </Answer>
    </Calculator>
  );
}

/** The share of each day against limits about all days together. */
export function ChartCalculator() {
  const [text, setText] = useState('');
  const answer = useMemo(() => {
    const read = readDays(text);
    return read.ok ? said(shareChart(read.value)) : read;
  }, [text]);
  const plot = useMemo(() => (answer.ok ? shareplot(answer.value) : undefined), [answer]);
  return (
    <Calculator
      title="Does the share hold: p-chart"
      about="The share of each day or shift against limits three standard errors about the share of all. A day outside was another kind of day: look at it before it is counted with the others."
      fields={
        <Pasted
          label="One line a day: name, how often seen, observations"
          rows={8}
          value={text}
          placeholder={'Monday 12 80\nTuesday 9 80\nWednesday 31 80'}
          onChange={setText}
        />
      }
    >
      <Answer of={answer}>
        {({ share, days }) => {
          const outside = days.filter((day) => day.outside);
          return (
            <>
              <p>
                Share of all {percentText(share)} in {countText(days.length, 'day')}.{' '}
                {outside.length === 0
                  ? 'No day lies outside its limits.'
                  : outside
                      .map(
                        (day) =>
                          `${day.name} with ${percentText(day.share)} lies outside ${percentText(day.low)} to ${percentText(day.high)}.`,
                      )
                      .join(' ')}
              </p>
              {plot === undefined ? null : (
                <PlotView make={plot} label="Share of each day with its limits" onTrace={() => {}} />
              )}
            </>
          );
        }}
      </Answer>
    </Calculator>
  );
}

/** The standard time of a piece from work sampling. */
export function SampledStandardCalculator() {
  const [time, setTime] = useState('');
  const [share, setShare] = useState('');
  const [rating, setRating] = useState('100');
  const [pieces, setPieces] = useState('');
  const [allowance, setAllowance] = useState('12');
  const [convention, setConvention] = useState<keyof typeof conventionWords>('share-of-basic-time');
  const read = all(
    numberOf(time, 'The time in hours', { above: 0 }),
    numberOf(share, 'The share at this work in percent', { above: 0, most: 100 }),
    numberOf(rating, 'The rating in percent of standard', { above: 0, most: 200 }),
    numberOf(pieces, 'The number of pieces', { above: 0 }),
    numberOf(allowance, 'The allowance in percent', {
      least: 0,
      below: convention === 'share-of-shift' ? 100 : 1000,
    }),
  );
  const answer = read.ok
    ? said(
        standardFromSampling({
          time: read.value[0] * 60,
          share: read.value[1] / 100,
          pace: read.value[2] / 100,
          pieces: read.value[3],
          allowance: read.value[4] / 100,
          convention,
        }),
      )
    : read;
  return (
    <Calculator
      title="Standard from work sampling"
      about="Time × share × rating ÷ pieces, with the allowance."
      fields={
        <>
          <Field label="Time observed over" unit="h" value={time} onChange={setTime} />
          <Field label="Share at this work" unit="%" value={share} onChange={setShare} />
          <Field label="Rating" unit="% of standard" value={rating} onChange={setRating} />
          <Field label="Pieces finished" value={pieces} onChange={setPieces} />
          <Field label="Allowance" unit="%" value={allowance} onChange={setAllowance} />
          <Choice
            label="The allowance is"
            value={convention}
            options={[
              ['share-of-basic-time', 'a share of the basic time'],
              ['share-of-shift', 'a share of the shift'],
            ]}
            onChange={setConvention}
          />
        </>
      }
    >
      <Answer of={answer}>
        {({ observed, basic, standard }) => (
          <>
            <p>
              <strong className="calc-big">{numberText(standard, 4)} min</strong> a piece
            </p>
            <p className="soft">
              Observed {numberText(observed, 4)} min, basic {numberText(basic, 4)} min. The allowance is{' '}
              {conventionWords[convention]}.
            </p>
          </>
        )}
      </Answer>
    </Calculator>
  );
}
