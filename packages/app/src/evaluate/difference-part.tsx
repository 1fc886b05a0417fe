import {
  type ComparisonFacts,
  cycleTimesPicture,
  type DecompositionRow,
  decompositionPicture,
  pictureSteps,
  unitTimes,
} from '@evenhand/core/evaluate';
import { type TimeUnit, timeNumber, timeUnits } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { useLook } from '../shell/preferences.ts';
import type { Side } from './film-pair.ts';
import { stepAreas, tellingSide } from './row-frames.ts';
import { ScenePicture } from './scene-picture.tsx';
import { useWidth } from './use-width.ts';

/** So many of the largest steps stand alone in the picture. Ours. */
const most = 12;

type OnRow = (row: DecompositionRow, side: Side) => void;

/** Where the difference comes from, as a picture whose rows play their frames, and every cycle that counts. */
export function DifferencePart(props: {
  readonly facts: ComparisonFacts;
  readonly unit: TimeUnit;
  readonly onRow: OnRow;
}) {
  const { facts, unit, onRow } = props;
  const { proof } = facts;
  const { decomposition, difference } = proof;
  const look = useLook();
  const [host, width] = useWidth(320);
  const times = useMemo(
    () =>
      cycleTimesPicture(
        difference,
        { before: unitTimes(proof.before), after: unitTimes(proof.after) },
        { width, unit },
      ),
    [difference, proof, width, unit],
  );
  return (
    <section className="difference" aria-label="Where the difference comes from">
      <h2>Where the difference comes from</h2>
      <div ref={host}>
        <StepsPicture facts={facts} width={width} unit={unit} onRow={onRow} />
      </div>
      <p className="soft">A row plays its frames; asked again, it plays the next place.</p>
      <details>
        <summary>Every motion, with its reasons</summary>
        <RowsTable rows={decomposition.rows} unit={unit} onRow={onRow} />
        <p className="soft">{decomposition.rule}</p>
      </details>
      <h2>Every cycle that counts</h2>
      <ScenePicture scene={times} look={look} id="evaluate-times" />
    </section>
  );
}

function StepsPicture(props: {
  readonly facts: ComparisonFacts;
  readonly width: number;
  readonly unit: TimeUnit;
  readonly onRow: OnRow;
}) {
  const { facts, width, unit, onRow } = props;
  const { decomposition, difference } = facts.proof;
  const look = useLook();
  const { picture, areas, steps } = useMemo(() => {
    const names = { before: difference.before.name, after: difference.after.name };
    const made = decompositionPicture(decomposition, { width, unit, names, most });
    return { picture: made, areas: stepAreas(made), steps: pictureSteps(decomposition, most) };
  }, [decomposition, difference, width, unit]);
  return (
    <div className="steps-picture">
      <ScenePicture scene={picture} look={look} id="evaluate-difference" />
      {steps.map(({ row, name, cause }, index) => {
        const area = areas[index];
        const found = row === undefined ? undefined : decomposition.rows[row];
        if (area === undefined || found === undefined) return null;
        const side = tellingSide(found);
        return (
          <button
            key={`${cause} ${name}`}
            type="button"
            style={{ top: area.top, height: area.height }}
            title={`Plays the frames of ${found.name}, ${side}`}
            aria-label={`${cause}: play ${name}, ${side}`}
            onClick={() => onRow(found, side)}
          />
        );
      })}
    </div>
  );
}

function RowsTable(props: {
  readonly rows: readonly DecompositionRow[];
  readonly unit: TimeUnit;
  readonly onRow: OnRow;
}) {
  const { rows, unit, onRow } = props;
  const play = (side: Side, row: DecompositionRow) =>
    row[side].count === 0 ? null : (
      <button
        type="button"
        className="quiet"
        aria-label={`Play ${row.name}, ${side}`}
        onClick={() => onRow(row, side)}
      >
        {side}
      </button>
    );
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Motion</th>
          <th scope="col" className="number">
            saved, {timeUnits[unit].symbol}
          </th>
          <th scope="col">why</th>
          <th scope="col">play</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.name}>
            <th scope="row">{row.name}</th>
            <td className="number">{timeNumber(row.saved, unit)}</td>
            <td>{row.parts.map(({ cause, saved }) => `${cause} ${timeNumber(saved, unit)}`).join(', ')}</td>
            <td className="show">
              {play('before', row)} {play('after', row)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
