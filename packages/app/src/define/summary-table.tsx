import type { SheetRow, StandardTime, TimeStudySheet } from '@evenhand/core/define';
import { shortNumber } from '@evenhand/core/ground/findings';
import { numberText, percentText, timeUnits } from '@evenhand/core/ground/units';
import { inSheetNumber } from './sheet-words.ts';

const none = '–';

const figureHeads = [
  'n',
  'Mean',
  'Median',
  'Standard deviation',
  'Coefficient of variation',
  'Interval of the mean',
  'Cycles needed / had',
  'Ratings',
  'Basic time',
  'In a cycle',
  'Allowance',
  'Standard a cycle',
];

/** The summary of every element, in the order of the sheet. */
export function SummaryTable(props: {
  readonly sheet: TimeStudySheet;
  readonly chosen: string | undefined;
  readonly onName: (element: string) => void;
}) {
  const { sheet } = props;
  const { timeStudy, unit, standard } = sheet;
  return (
    <section className="summary" aria-label="Summary">
      <header>
        <h3>
          Summary <span className="soft">in {timeUnits[unit].name}</span>
        </h3>
        <p className="soft">Intervals at {percentText(timeStudy.confidence, 0)}, by Student’s t.</p>
      </header>
      <p className={sheet.pilot.enough ? 'pilot' : 'pilot lacking'}>{sheet.pilot.words}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <div className="scroll-x" tabIndex={0} role="group" aria-label="Summary table">
        <table className="plain summary-table">
          <thead>
            <tr>
              <th scope="col">Element</th>
              {figureHeads.map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sheet.rows.map((row) => (
              <Row
                key={row.element.id}
                row={row}
                sheet={sheet}
                chosen={props.chosen === row.element.id}
                onName={props.onName}
              />
            ))}
          </tbody>
          {standard === undefined ? null : <SummaryFoot standard={standard.standard} sheet={sheet} />}
        </table>
      </div>
    </section>
  );
}

function SummaryFoot(props: { readonly standard: StandardTime; readonly sheet: TimeStudySheet }) {
  const { standard, sheet } = props;
  const { unit, timeStudy } = sheet;
  const machine = standard.parts.process > 0 || standard.parts.inside > 0;
  return (
    <tfoot>
      {standard.contingency === 0 ? null : (
        <tr>
          <th scope="row" colSpan={12}>
            Contingency {percentText(timeStudy.allowances.contingency)}
          </th>
          <td className="number">{inSheetNumber(standard.contingency, unit)}</td>
        </tr>
      )}
      <tr>
        <th scope="row" colSpan={9}>
          Cycle{machine ? ': outside work, and the longer of machine time and inside work' : ''}
        </th>
        <td className="number" colSpan={2}>
          {inSheetNumber(standard.basic, unit)}
        </td>
        <td />
        <td className="number">
          <strong>{inSheetNumber(standard.standard, unit)}</strong>
        </td>
      </tr>
    </tfoot>
  );
}

function Row(props: {
  readonly row: SheetRow;
  readonly sheet: TimeStudySheet;
  readonly chosen: boolean;
  readonly onName: (element: string) => void;
}) {
  const { row, sheet } = props;
  const { unit } = sheet;
  const { element, summary, rated, standard } = row;
  const number = (value: number | undefined) => (value === undefined ? none : inSheetNumber(value, unit));
  const aside = summary?.setAside.length ?? 0;
  return (
    <tr className={props.chosen ? 'chosen' : ''}>
      <th scope="row">
        <button type="button" className="quiet" onClick={() => props.onName(element.id)}>
          {element.name}
        </button>
      </th>
      <td className="number">
        {summary?.n ?? 0}
        {aside === 0 ? null : (
          <span className="soft" title={`${aside} set aside, each with its reason`}>
            {' '}
            (+{aside})
          </span>
        )}
      </td>
      <td className="number">{number(summary?.mean)}</td>
      <td className="number">{number(summary?.median)}</td>
      <td className="number">{number(summary?.deviation)}</td>
      <td className="number">
        {summary?.deviation === undefined ? none : percentText(summary.deviation / summary.mean)}
      </td>
      <td className="number">
        {summary?.interval === undefined
          ? none
          : `${number(Math.max(0, summary.interval.low))} to ${number(summary.interval.high)}`}
      </td>
      <NeededCell row={row} />
      <td className="number">
        {element.work === 'process' ? 'not rated' : rated === undefined ? none : ratingsText(rated.ratings)}
      </td>
      <td className="number">{number(element.work === 'process' ? summary?.mean : rated?.basic.mean)}</td>
      <td className="number">{number(standard?.perCycle)}</td>
      <td className="number">{standard === undefined ? none : `× ${numberText(standard.factor, 3)}`}</td>
      <td className="number">{number(standard?.standard)}</td>
    </tr>
  );
}

function NeededCell({ row }: { readonly row: SheetRow }) {
  const { needed, summary, reached, forms } = row;
  if (needed === undefined || summary === undefined) return <td className="number">{none}</td>;
  const lacking = needed.more > 0;
  const words = [
    `${numberText(Math.min(needed.unrounded, 1e9), 2)} before rounding up.`,
    reached === undefined ? '' : `The mean is known to ± ${percentText(reached.share)} so far.`,
    ...forms.map(
      ({ form, needed: each }) => `${formNames[form]}: ${numberText(Math.min(each.unrounded, 1e9), 2)}.`,
    ),
  ];
  return (
    <td className={lacking ? 'number lacking' : 'number'} title={words.join(' ')}>
      {needed.needed > 999_999 ? 'very many' : needed.needed} / {summary.n}
      <span className="hidden">{lacking ? `, ${needed.more} more are needed` : ', enough'}</span>
    </td>
  );
}

export const formNames = {
  population: 'Forty formula, deviation over n',
  normal: 'Normal distribution, deviation over n − 1',
  student: 'Student’s t of the pilot',
  'student-iterated': 'Student’s t of the number itself',
} as const;

function ratingsText({ mean, least, most }: { mean: number; least: number; most: number }): string {
  return least === most
    ? shortNumber(least)
    : `${numberText(mean, 1)} (${shortNumber(least)}–${shortNumber(most)})`;
}
