import { type RepeatedRun, repeatedSequences, type SequenceRow, type TokenBy } from '@evenhand/core/examine';
import { roundMicros } from '@evenhand/core/ground/base';
import { numberText, timeNumber, timeUnits } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import { FigureBlock } from './figure-block.tsx';
import { none, sampleInterval } from './figure-text.ts';
import type { SectionProps } from './section.ts';
import type { TableData, TableRow } from './table-text.ts';
import { useComputed } from './use-computed.ts';

type Rank = 'byCost' | 'byCount';

/** Runs of motions that come again, found in the record and not in a list. */
export function SequencesSection({ reading, unit, onTrace, open }: SectionProps) {
  const [row, setRow] = useState<SequenceRow>('right');
  const [rank, setRank] = useState<Rank>('byCost');
  const [by, setBy] = useState<TokenBy>('kind-object');
  const [tolerance, setTolerance] = useState<0 | 1>(0);
  const found = useComputed(reading, () => repeatedSequences(reading, { by, tolerance }), [
    reading,
    by,
    tolerance,
  ]);
  const title = `Repeated sequences, ${rowWords[row]}, ${rank === 'byCost' ? 'those that cost most first' : 'the most frequent first'}`;
  const runs = found?.[row][rank];
  const table = useMemo(
    () => (runs === undefined ? undefined : runsTable(title, runs, row, tolerance, unit)),
    [title, runs, row, tolerance, unit],
  );
  return (
    <>
      <div className="figure-choices">
        <Choice
          label="Motions of"
          value={row}
          options={rowOptions}
          onChange={(value) => setRow(value as SequenceRow)}
        />
        <Choice
          label="In order of"
          value={rank}
          options={rankOptions}
          onChange={(value) => setRank(value as Rank)}
        />
        <Choice
          label="The same when"
          value={by}
          options={byOptions}
          onChange={(value) => setBy(value as TokenBy)}
        />
        <label className="check">
          <input
            type="checkbox"
            checked={tolerance === 1}
            onChange={(event) => setTolerance(event.target.checked ? 1 : 0)}
          />
          <span>one differing motion allowed</span>
        </label>
      </div>
      {table === undefined || found === undefined ? (
        <p role="status">Looking for sequences …</p>
      ) : (
        <FigureBlock
          title={title}
          tables={table.rows.length === 0 ? [] : [table]}
          onTrace={onTrace}
          open={open}
        >
          {table.rows.length === 0 ? <p>No sequence of two motions or more comes twice.</p> : null}
          <details>
            <summary>What counts as a sequence</summary>
            <p>{found.rule}</p>
          </details>
        </FigureBlock>
      )}
    </>
  );
}

const rowWords: Readonly<Record<SequenceRow, string>> = {
  left: 'left hand',
  right: 'right hand',
  both: 'both hands at once',
};
const rowOptions = Object.entries(rowWords);
const rankOptions: readonly (readonly [Rank, string])[] = [
  ['byCost', 'their time'],
  ['byCount', 'their number'],
];
const byOptions: readonly (readonly [TokenBy, string])[] = [
  ['kind', 'the motion is the same'],
  ['kind-object', 'the object too'],
  ['kind-object-place', 'the places too'],
];

function Choice(props: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onChange: (value: string) => void;
}) {
  return (
    <label className="inline-choice">
      <span>{props.label}</span>
      <select value={props.value} onChange={(event) => props.onChange(event.target.value)}>
        {props.options.map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}

function runsTable(
  caption: string,
  runs: readonly RepeatedRun[],
  row: SequenceRow,
  tolerance: 0 | 1,
  unit: SectionProps['unit'],
): TableData {
  const symbol = timeUnits[unit].symbol;
  const near = tolerance === 1 ? [{ head: 'of these not exact', number: true }] : [];
  return {
    caption,
    columns: [
      { head: 'Motions' },
      { head: 'times', number: true },
      ...near,
      { head: `${symbol} a cycle`, number: true },
      { head: 'times a cycle', number: true },
      { head: `${symbol} each, mean`, number: true },
      { head: 'deviation', number: true },
      { head: '95 % interval of the mean', number: true },
      { head: 'most in one cycle', number: true },
    ],
    rows: runs.map((run): TableRow => {
      const { count, inexact, countACycle, mostInACycle, timeACycle, sample } = run;
      const deviation =
        sample.deviation === undefined ? none : timeNumber(roundMicros(sample.deviation), unit);
      return {
        key: run.words,
        cells: [
          run.words,
          `${count}`,
          ...(tolerance === 1 ? [`${inexact}`] : []),
          timeNumber(timeACycle, unit),
          numberText(countACycle, 2),
          timeNumber(roundMicros(sample.mean), unit),
          deviation,
          sampleInterval('time', sample, unit),
          `${mostInACycle}`,
        ],
        traces: () => run.occurrences,
        kinds:
          row === 'both'
            ? undefined
            : run.steps.flatMap((step) => {
                const token = step[row];
                return token === undefined ? [] : [token.kind];
              }),
      };
    }),
  };
}
