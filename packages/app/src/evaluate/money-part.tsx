import { type ComparedMoney, moneyRows, outlookRule, tornadoPicture } from '@evenhand/core/evaluate';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Comparison, MoneyCase, Study } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { CheckedField } from '../define/checked-field.tsx';
import { type Bounds, orNone, percentNumber, readNumber, readPercent } from '../define/field-numbers.ts';
import type { RecordDesk } from '../record/desk.ts';
import { useLook } from '../shell/preferences.ts';
import { changeComparison, firstMoney } from './comparison-edits.ts';
import { ScenePicture } from './scene-picture.tsx';
import { useWidth } from './use-width.ts';

interface Line {
  readonly name: string;
  readonly range: keyof NonNullable<MoneyCase['ranges']>;
  readonly bounds: Bounds;
  readonly percent?: boolean;
  readonly unit?: string;
  readonly value: (money: MoneyCase) => number | undefined;
  readonly with: (money: MoneyCase, value: number | null) => MoneyCase;
  readonly none?: string;
}

const lines: readonly Line[] = [
  {
    name: 'Units a year',
    range: 'unitsAYear',
    bounds: { least: 0, most: 1e9 },
    value: (money) => money.unitsAYear,
    with: (money, value) => ({ ...money, unitsAYear: value ?? 0 }),
  },
  {
    name: 'Cost of an hour',
    range: 'hourlyCost',
    bounds: { least: 0, most: 1e6 },
    value: (money) => money.hourlyCost,
    with: (money, value) => ({ ...money, hourlyCost: value ?? 0 }),
  },
  {
    name: 'Cost of the change',
    range: 'cost',
    bounds: { least: 0, most: 1e12 },
    value: (money) => money.cost,
    with: (money, value) => ({ ...money, cost: value ?? 0 }),
  },
  {
    name: 'Years',
    range: 'years',
    bounds: { least: 1, most: 50, whole: true },
    value: (money) => money.years,
    with: (money, value) => ({ ...money, years: value ?? 1 }),
  },
  {
    name: 'Discount a year',
    range: 'discountRate',
    percent: true,
    unit: '%',
    bounds: { least: 0, most: 1000 },
    value: (money) => money.discountRate,
    with: (money, value) => ({ ...money, discountRate: value ?? 0 }),
  },
  {
    name: 'Running cost a year',
    range: 'runningCost',
    bounds: { least: -1e12, most: 1e12 },
    none: '0',
    value: (money) => money.runningCost,
    with: ({ runningCost: _, ...money }, value) =>
      value === null ? money : { ...money, runningCost: value },
  },
  {
    name: 'First unit, times the learned time',
    range: 'firstUnit',
    bounds: { least: 1, most: 1000 },
    none: 'none',
    value: (money) => money.learning?.firstUnit,
    with: (money, value) => withLearning(money, value === null ? undefined : { firstUnit: value }),
  },
  {
    name: 'Learning rate',
    range: 'learningRate',
    percent: true,
    unit: '%',
    bounds: { above: 0, below: 100 },
    none: 'none',
    value: (money) => money.learning?.rate,
    with: (money, value) => withLearning(money, value === null ? undefined : { rate: value }),
  },
];

/** Learning has a first unit and a rate together; the one that is not written yet begins with a usual value of ours. */
function withLearning(
  money: MoneyCase,
  change: Partial<NonNullable<MoneyCase['learning']>> | undefined,
): MoneyCase {
  const { learning, ...rest } = money;
  if (change !== undefined)
    return { ...rest, learning: { firstUnit: 1.5, rate: 0.9, ...learning, ...change } };
  const { firstUnit: _, learningRate: __, ...ranges } = money.ranges ?? {};
  return withRanges(rest, ranges);
}

function withRanges(money: MoneyCase, ranges: NonNullable<MoneyCase['ranges']>): MoneyCase {
  const { ranges: _, ...rest } = money;
  return Object.values(ranges).some((range) => range !== undefined) ? { ...rest, ranges } : rest;
}

/** The change as a matter of money: what is known of it, low, likely and high, and what matters most. */
export function MoneyPart(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly comparison: Comparison;
  readonly money: ComparedMoney | undefined;
  readonly unit: TimeUnit;
}) {
  const { desk, study, comparison, money, unit } = props;
  const given = comparison.money;
  const write = (next: MoneyCase | null) => {
    const edit = changeComparison(comparison, { money: next });
    if (edit !== undefined) desk.dispatch(edit);
  };
  if (given === undefined) {
    return (
      <section className="money" aria-label="Money">
        <h2>Money</h2>
        <p>
          <button type="button" onClick={() => write(firstMoney(study))}>
            Reckon what it is worth
          </button>
        </p>
      </section>
    );
  }
  return (
    <section className="money" aria-label="Money">
      <h2>Money</h2>
      <div className="money-head">
        <CheckedField
          label="Currency"
          value={given.currency}
          read={(text) =>
            /^\S{1,10}$/.test(text.trim()) ? ok(text.trim()) : fail('Write a sign such as €.')
          }
          onCommit={(currency) => write({ ...given, currency })}
        />
        <label className="inline-choice">
          <span>Saving</span>
          <select
            value={given.basis}
            onChange={(event) => write({ ...given, basis: event.target.value as MoneyCase['basis'] })}
          >
            <option value="measured">as measured</option>
            <option value="equal-pace">at equal pace</option>
          </select>
        </label>
        <button type="button" className="quiet" onClick={() => write(null)}>
          Without money
        </button>
      </div>
      <table className="money-case">
        <thead>
          <tr>
            <th scope="col">Reckoned with</th>
            <th scope="col" className="number">
              likely
            </th>
            <th scope="col" className="number">
              lowest
            </th>
            <th scope="col" className="number">
              highest
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <CaseLine key={line.name} line={line} given={given} onChange={write} />
          ))}
        </tbody>
      </table>
      <Outcome money={money} unit={unit} />
    </section>
  );
}

function CaseLine(props: {
  readonly line: Line;
  readonly given: MoneyCase;
  readonly onChange: (next: MoneyCase) => void;
}) {
  const { line, given, onChange } = props;
  const read: (text: string) => Result<number, string> =
    line.percent === true ? readPercent(line.bounds) : readNumber(line.bounds);
  const text = (value: number | undefined) =>
    value === undefined ? '' : line.percent === true ? percentNumber(value) : String(value);
  const range = given.ranges?.[line.range];
  const likely = line.value(given);
  const end = (which: 'low' | 'high', value: number | null) => {
    const { [line.range]: _, ...others } = given.ranges ?? {};
    const base = likely ?? 0;
    if (value === null && (range === undefined || range[which === 'low' ? 'high' : 'low'] === base))
      return onChange(withRanges(given, others));
    const known = range ?? { low: base, high: base };
    onChange(withRanges(given, { ...others, [line.range]: { ...known, [which]: value ?? base } }));
  };
  return (
    <tr>
      <th scope="row">{line.name}</th>
      <td>
        <CheckedField<number | null>
          label={`${line.name}, likely`}
          bare
          value={text(likely)}
          unit={line.unit}
          placeholder={line.none}
          read={
            line.none === undefined ? (read as (text: string) => Result<number | null, string>) : orNone(read)
          }
          onCommit={(value: number | null) => onChange(line.with(given, value))}
        />
      </td>
      {(['low', 'high'] as const).map((which) => (
        <td key={which}>
          <CheckedField
            label={`${line.name}, ${which === 'low' ? 'lowest' : 'highest'}`}
            bare
            disabled={likely === undefined}
            value={text(range?.[which])}
            unit={line.unit}
            read={orNone(read)}
            onCommit={(value) => end(which, value)}
          />
        </td>
      ))}
    </tr>
  );
}

function Outcome(props: { readonly money: ComparedMoney | undefined; readonly unit: TimeUnit }) {
  const { money, unit } = props;
  const look = useLook();
  const [host, width] = useWidth(340);
  const outlook = money?.outlook;
  const currency = money?.given.currency ?? '';
  const tornado = useMemo(
    () =>
      outlook === undefined || outlook.tornado.length === 0
        ? undefined
        : tornadoPicture(outlook, { width, unit, currency }),
    [outlook, width, unit, currency],
  );
  return (
    <div ref={host}>
      {money?.fault === undefined ? null : (
        <p className="fault" role="alert">
          {money.fault.message}
        </p>
      )}
      {outlook === undefined ? null : (
        <>
          <table className="money-rows">
            <thead>
              <tr>
                <th scope="col">What it brings</th>
                <th scope="col" className="number">
                  low
                </th>
                <th scope="col" className="number">
                  likely
                </th>
                <th scope="col" className="number">
                  high
                </th>
              </tr>
            </thead>
            <tbody>
              {moneyRows(outlook, currency).map(({ name, low, likely, high }) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td className="number">{low}</td>
                  <td className="number strong">{likely}</td>
                  <td className="number">{high}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {tornado === undefined ? null : (
            <>
              <h3>What matters most for the net present value</h3>
              <ScenePicture scene={tornado} look={look} id="evaluate-tornado" />
            </>
          )}
          <details>
            <summary>Conventions</summary>
            <ul>
              {[money?.basis ?? '', outlookRule, ...outlook.likely.conventions].map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </details>
        </>
      )}
    </div>
  );
}
