import { type MotionKind, motionFactsOf } from '@evenhand/core/ground/tables';
import { timeUnits } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import { MotionSwatch } from '../../record/motion-swatch.tsx';
import { FigureBlock } from './figure-block.tsx';
import { figureText, unitHead } from './figure-text.ts';
import type { SectionProps } from './section.ts';
import type { TableData } from './table-text.ts';
import { type TableLook, timeCells, timeColumns, withCount } from './time-tables.ts';

type By = 'time' | 'share';

/** Motion by motion what the hands do at once, as a square with the left hand down and the right hand across. */
export function OverlapBlock({ figures, unit, onTrace, open, reading }: SectionProps) {
  const { overlap } = figures;
  const [by, setBy] = useState<By>('time');
  const cells = useMemo(
    () => new Map(overlap.cells.map((cell) => [`${cell.left} ${cell.right}`, cell])),
    [overlap],
  );
  const most = useMemo(
    () => overlap.cells.reduce((found, { time }) => Math.max(found, time.value ?? 0), 0),
    [overlap],
  );
  const look = { unit, cycles: reading.cycles.length };
  const title = 'Motion with motion';
  const head = by === 'time' ? unitHead('time', unit) : '% of the cycle';
  return (
    <FigureBlock
      title={title}
      tables={open ? [overlapTable(overlap, look)] : []}
      copied={[overlapTable(overlap, look)]}
      onTrace={onTrace}
    >
      <div className="figure-choices">
        <label className="inline-choice">
          <span>Cells in</span>
          <select value={by} onChange={(event) => setBy(event.target.value as By)}>
            <option value="time">{timeUnits[unit].symbol} a cycle</option>
            <option value="share">% of the cycle</option>
          </select>
        </label>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <section className="figure-table" aria-label={`${title}, seconds and shares`} tabIndex={0}>
        <table className="overlap">
          <caption>Left hand down, right hand across; {head}. Empty: never at the same time.</caption>
          <thead>
            <tr>
              <th scope="col">left \ right</th>
              {overlap.right.map((kind) => (
                <th key={kind} scope="col">
                  <Kind kind={kind} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {overlap.left.map((left) => (
              <tr key={left}>
                <th scope="row">
                  <Kind kind={left} />
                </th>
                {overlap.right.map((right) => {
                  const cell = cells.get(`${left} ${right}`);
                  if (cell === undefined) return <td key={right} />;
                  const depth = most > 0 ? Math.round(((cell.time.value ?? 0) / most) * 40) : 0;
                  return (
                    <td
                      key={right}
                      style={{ background: `color-mix(in srgb, var(--ink) ${depth}%, transparent)` }}
                    >
                      <button
                        type="button"
                        className="quiet"
                        title={`${nameOf(left)} with ${nameOf(right)}: ${figureText(cell.time, unit)} ${unitHead('time', unit)}, ${figureText(cell.share, unit)} %`}
                        onClick={() => onTrace(cell.traces())}
                      >
                        {figureText(by === 'time' ? cell.time : cell.share, unit)}
                      </button>
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </FigureBlock>
  );
}

function Kind(props: { readonly kind: MotionKind }) {
  const { code, name } = motionFactsOf(props.kind);
  return (
    <abbr title={name}>
      <MotionSwatch kind={props.kind} /> {props.kind === 'unmarked' ? '–' : code}
    </abbr>
  );
}

function nameOf(kind: MotionKind): string {
  return motionFactsOf(kind).name;
}

/** The same as a list, for copying. */
function overlapTable({ cells }: SectionProps['figures']['overlap'], look: TableLook): TableData {
  return {
    caption: withCount('Motion with motion, as a list', look),
    columns: [
      { head: 'Left hand' },
      { head: 'Right hand' },
      ...timeColumns(look),
      { head: '% of the cycle', number: true },
    ],
    rows: cells.map((cell) => ({
      key: `${cell.left} ${cell.right}`,
      cells: [
        nameOf(cell.left),
        nameOf(cell.right),
        ...timeCells(cell.time, look),
        figureText(cell.share, look.unit),
      ],
      traces: cell.traces,
      kinds: [cell.left],
    })),
  };
}
