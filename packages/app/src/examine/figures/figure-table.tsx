import type { Trace } from '@evenhand/core/examine';
import { countText } from '@evenhand/core/ground/units';
import { MotionSwatch } from '../../record/motion-swatch.tsx';
import type { TableData, TableRow } from './table-text.ts';

/** More rows than this are not put on the page; a copy has them all. */
const mostRows = 200;

/** A table whose rows lead to the frames behind them. */
export function FigureTable(props: {
  readonly table: TableData;
  readonly onTrace: (traces: readonly Trace[]) => void;
}) {
  const { columns, rows, caption } = props.table;
  const more = rows.length - mostRows;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard
    <section className="figure-table" aria-label={`${caption}: table`} tabIndex={0}>
      <table className="plain">
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ head, number }) => (
              <th key={head} scope="col" className={number ? 'number' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, mostRows).map((row) => (
            <tr key={row.key}>
              <th scope="row" className={columns[0]?.number ? 'number' : undefined}>
                <RowHead row={row} onTrace={props.onTrace} />
              </th>
              {row.cells.slice(1).map((cell, index) => {
                const column = columns[index + 1];
                return (
                  <td key={column?.head} className={column?.number ? 'number' : undefined}>
                    {cell}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      {more > 0 ? <p className="soft">{countText(more, 'more row')}: a copy has all of them.</p> : null}
    </section>
  );
}

function RowHead(props: { readonly row: TableRow; readonly onTrace: (traces: readonly Trace[]) => void }) {
  const { cells, kinds, traces } = props.row;
  const text = (
    <>
      {kinds === undefined ? null : (
        <span className="swatches">
          {kinds.slice(0, 24).map((kind, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a motion may come twice, and its place is what it is
            <MotionSwatch key={`${index} ${kind}`} kind={kind} />
          ))}
        </span>
      )}
      {cells[0]}
    </>
  );
  if (traces === undefined) return text;
  return (
    <button
      type="button"
      className="quiet"
      title="Show it on the film and in the score"
      onClick={() => props.onTrace(traces())}
    >
      {text}
    </button>
  );
}
