import {
  assuranceOf,
  type CyclesForm,
  type CyclesNeeded,
  cyclesNeeded,
  type Precision,
  precisionReached,
} from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { sampleOf } from '@evenhand/core/ground/numerics';
import { numberText, percentText } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import { formNames } from '../summary-table.tsx';
import { all, numberOf, numbersIn } from './calculator-input.ts';
import { Answer, Calculator, Choice, Field, Pasted } from './calculator-parts.tsx';

const forms: readonly CyclesForm[] = ['population', 'normal', 'student', 'student-iterated'];

/** How many cycles a pilot asks for, in the usual forms side by side. */
export function CyclesCalculator() {
  const [readings, setReadings] = useState('');
  const [kind, setKind] = useState<Precision['kind']>('relative');
  const [amount, setAmount] = useState('5');
  const [confidence, setConfidence] = useState('95');
  const answer = useMemo(
    () => neededFrom(readings, kind, amount, confidence),
    [readings, kind, amount, confidence],
  );
  return (
    <Calculator
      title="Cycles needed from a pilot"
      about="The forms differ in the deviation and the multiplier they take; the study sheet uses Student’s t of the number that comes out itself."
      fields={
        <>
          <Pasted
            label="Readings of one element, in one unit"
            value={readings}
            placeholder="0.052 0.049 0.055 …"
            onChange={setReadings}
          />
          <Choice
            label="Precision"
            value={kind}
            options={[
              ['relative', 'a share of the mean'],
              ['absolute', 'an amount in the unit of the readings'],
            ]}
            onChange={setKind}
          />
          <Field
            label="±"
            value={amount}
            {...(kind === 'relative' ? { unit: '%' } : {})}
            onChange={setAmount}
          />
          <Field label="Confidence" value={confidence} unit="%" onChange={setConfidence} />
        </>
      }
    >
      <Answer of={answer}>
        {({ sample, rows, reached }) => (
          <>
            <p>
              {sample.n} readings, mean {numberText(sample.mean, 4)}, standard deviation{' '}
              {numberText(sample.deviation, 4)}
              {reached === undefined ? '' : `; the mean is known to ± ${percentText(reached)} already`}.
            </p>
            <FormsTable rows={rows} />
          </>
        )}
      </Answer>
    </Calculator>
  );
}

interface FormRow {
  readonly form: CyclesForm;
  readonly needed: CyclesNeeded;
}

function FormsTable({ rows }: { readonly rows: readonly FormRow[] }) {
  return (
    <table className="plain">
      <thead>
        <tr>
          <th scope="col">Form</th>
          <th scope="col" className="number">
            Multiplier
          </th>
          <th scope="col" className="number">
            Before rounding up
          </th>
          <th scope="col" className="number">
            Cycles
          </th>
          <th scope="col" className="number">
            More
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ form, needed }) => (
          <tr key={form}>
            <th scope="row">{formNames[form]}</th>
            <td className="number">{numberText(needed.multiplier, 3)}</td>
            <td className="number">{numberText(needed.unrounded, 2)}</td>
            <td className="number">
              <strong>{needed.needed}</strong>
            </td>
            <td className="number">{needed.more}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function neededFrom(readings: string, kind: Precision['kind'], amount: string, confidence: string) {
  const read = all(
    numbersIn(readings),
    numberOf(amount, 'The precision', kind === 'relative' ? { above: 0, below: 100 } : { above: 0 }),
    numberOf(confidence, 'The confidence in percent', { above: 50, below: 100 }),
  );
  if (!read.ok) return read;
  const [times, size, percent] = read.value;
  const wrong = times.findIndex((time) => !(time > 0));
  if (wrong >= 0) return fail(`Reading ${wrong + 1} is not above 0.`);
  if (times.length < 2) return fail('Paste two readings or more.');
  const { n, mean, deviation = 0 } = sampleOf(times);
  const precision: Precision =
    kind === 'relative' ? { kind, share: size / 100 } : { kind: 'absolute', amount: size };
  const rows: {
    form: CyclesForm;
    needed: Extract<ReturnType<typeof cyclesNeeded>, { ok: true }>['value'];
  }[] = [];
  for (const form of forms) {
    const needed = cyclesNeeded(
      { n, mean, deviation },
      { form, precision, assurance: assuranceOf(form, percent / 100) },
    );
    if (!needed.ok) return fail(needed.error.message);
    rows.push({ form, needed: needed.value });
  }
  const reached = precisionReached({ n, mean, deviation }, percent / 100);
  return ok({
    sample: { n, mean, deviation },
    rows,
    reached: reached.ok ? reached.value.share : undefined,
  }) satisfies Result<unknown, string>;
}
