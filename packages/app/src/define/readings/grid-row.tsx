import type { SheetRow } from '@evenhand/core/define';
import { memo, useLayoutEffect, useRef } from 'react';
import { inSheetNumber } from '../sheet-words.ts';
import type { GridLine, Window } from './grid-columns.ts';
import { type CellView, cellView, type GridModel } from './grid-model.ts';
import { cellKey, type OpenCell, type WrongCell } from './grid-state.ts';

export interface RowProps {
  readonly model: GridModel;
  readonly line: GridLine;
  readonly place: number;
  readonly columns: Window;
  readonly row: SheetRow | undefined;
  /** Column of the cursor, when it stands in this line. */
  readonly cursor: number | undefined;
  readonly open: OpenCell | undefined;
  readonly wrong: ReadonlyMap<string, WrongCell>;
  readonly prefix: string;
  readonly onPick: (place: number, column: number, open: boolean) => void;
  readonly onName: (element: string) => void;
  readonly onType: (text: string) => void;
  readonly onLeave: () => void;
}

/** One line of the table: the times of an element over the cycles that are seen, or their ratings. */
export const GridRow = memo(function GridRow(props: RowProps) {
  const { model, line, place, columns, row } = props;
  const element = model.elements[line.element];
  if (element === undefined) return null;
  const cycles = model.cycles.slice(columns.from, columns.to);
  return (
    <div
      role="row"
      tabIndex={-1}
      aria-rowindex={place + 2}
      className={`grid-row ${line.kind}`}
      style={{ height: line.height }}
    >
      <div role="rowheader" tabIndex={-1} className="grid-name">
        {line.kind === 'rating' ? (
          <span className="soft">rating</span>
        ) : (
          <>
            <button
              type="button"
              className="quiet"
              tabIndex={-1}
              title={
                element.endsWhen === undefined
                  ? element.name
                  : `${element.name} – ends when ${element.endsWhen}`
              }
              onClick={() => props.onName(element.id)}
            >
              {element.name}
            </button>
            <ElementMark element={element} />
          </>
        )}
      </div>
      <div aria-hidden="true" style={{ width: columns.from * model.column }} className="grid-gap" />
      {cycles.map((cycle, index) => {
        const column = columns.from + index;
        const wrong = props.wrong.get(cellKey(element.id, line.kind, cycle));
        return (
          <GridCell
            key={cycle}
            id={`${props.prefix}-${place}-${column}`}
            column={column}
            width={model.column}
            view={cellView(model, line, cycle)}
            foreign={line.kind === 'time' && hasForeign(model, element.id, cycle)}
            current={props.cursor === column}
            open={props.cursor === column ? props.open : undefined}
            wrong={wrong}
            label={`${element.name}, cycle ${cycle}${line.kind === 'rating' ? ', rating' : ''}`}
            onPick={(open) => props.onPick(place, column, open)}
            onType={props.onType}
            onLeave={props.onLeave}
          />
        );
      })}
      <div
        aria-hidden="true"
        style={{ width: (model.cycles.length - columns.to) * model.column }}
        className="grid-gap"
      />
      {line.kind === 'time' ? (
        <RowSum row={row} model={model} />
      ) : (
        <div role="gridcell" tabIndex={-1} className="grid-sum" />
      )}
    </div>
  );
});

function hasForeign({ foreign }: GridModel, element: string, cycle: number): boolean {
  return foreign.get(cycle)?.some((item) => item.element === element) === true;
}

function ElementMark(props: { readonly element: GridModel['elements'][number] }) {
  const { work, occurs } = props.element;
  const words = [
    work === 'process' ? 'machine' : work === 'inside' ? 'inside' : undefined,
    occurs === undefined ? undefined : `${occurs.times} in ${occurs.cycles}`,
  ].filter((part) => part !== undefined);
  return words.length === 0 ? null : <span className="mark">{words.join(', ')}</span>;
}

/** Beside the readings: how many count, their mean, and how many are needed. */
function RowSum(props: { readonly row: SheetRow | undefined; readonly model: GridModel }) {
  const { summary, needed } = props.row ?? {};
  const had = summary?.n ?? 0;
  const lacking = needed !== undefined && needed.needed > had;
  return (
    <div role="gridcell" tabIndex={-1} className="grid-sum">
      <span className="n">{had}</span>
      <span className="mean">
        {summary === undefined ? '' : inSheetNumber(summary.mean, props.model.unit)}
      </span>
      <span className={lacking ? 'needs lacking' : 'needs'}>
        {needed === undefined ? '' : needed.needed > 99_999 ? 'very many' : needed.needed}
      </span>
    </div>
  );
}

const GridCell = memo(
  function GridCell(props: {
    readonly id: string;
    readonly column: number;
    readonly width: number;
    readonly view: CellView;
    readonly foreign: boolean;
    readonly current: boolean;
    readonly open: OpenCell | undefined;
    readonly wrong: WrongCell | undefined;
    readonly label: string;
    readonly onPick: (open: boolean) => void;
    readonly onType: (text: string) => void;
    readonly onLeave: () => void;
  }) {
    const { view, open, wrong, current } = props;
    const message = open?.fault ?? (open === undefined ? wrong?.message : undefined);
    const said = [
      view.words,
      props.foreign ? 'something foreign happened here' : '',
      wrong === undefined ? '' : `not taken: ${wrong.message}`,
    ].filter((part) => part !== '');
    const classes = [
      'grid-cell',
      wrong === undefined ? view.state : 'wrong',
      view.proposal === undefined ? '' : 'proposed',
      props.foreign ? 'foreign' : '',
      current ? 'current' : '',
    ].filter((part) => part !== '');
    return (
      <div
        role="gridcell"
        tabIndex={-1}
        id={props.id}
        aria-colindex={props.column + 2}
        aria-selected={current}
        className={classes.join(' ')}
        title={open === undefined ? (view.proposal ?? (said.join('; ') || undefined)) : undefined}
        style={{ width: props.width }}
        onMouseDown={(event) => {
          if (open !== undefined) return;
          event.preventDefault();
          props.onPick(false);
        }}
        onDoubleClick={() => {
          if (open === undefined) props.onPick(true);
        }}
      >
        {open === undefined ? (
          <>
            {wrong?.text ?? view.text}
            {said.length === 0 ? null : <span className="hidden">, {said.join(', ')}</span>}
          </>
        ) : (
          <CellInput label={props.label} open={open} onType={props.onType} onLeave={props.onLeave} />
        )}
        {message !== undefined && current ? <CellFault message={message} /> : null}
      </div>
    );
  },
  (a, b) =>
    a.id === b.id &&
    a.width === b.width &&
    a.view.text === b.view.text &&
    a.view.state === b.view.state &&
    a.view.proposal === b.view.proposal &&
    a.view.words === b.view.words &&
    a.foreign === b.foreign &&
    a.current === b.current &&
    a.open === b.open &&
    a.wrong === b.wrong &&
    a.label === b.label,
);

/** What is wrong, beside its cell and over whatever lies there: the table may be too small to hold it. */
function CellFault(props: { readonly message: string }) {
  const span = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const place = () => {
      const element = span.current;
      const cell = element?.parentElement?.getBoundingClientRect();
      if (element === null || cell === undefined) return;
      const { offsetWidth: width, offsetHeight: height } = element;
      const under = cell.bottom + 2 + height <= innerHeight;
      element.style.left = `${Math.max(4, Math.min(cell.left - 1, innerWidth - width - 4))}px`;
      element.style.top = `${under ? cell.bottom + 2 : cell.top - height - 2}px`;
    };
    place();
    window.addEventListener('scroll', place, { capture: true, passive: true });
    window.addEventListener('resize', place);
    return () => {
      window.removeEventListener('scroll', place, { capture: true });
      window.removeEventListener('resize', place);
    };
  });
  return (
    <span ref={span} className="cell-fault" role="alert">
      {props.message}
    </span>
  );
}

function CellInput(props: {
  readonly label: string;
  readonly open: OpenCell;
  readonly onType: (text: string) => void;
  readonly onLeave: () => void;
}) {
  return (
    <input
      className={props.open.text.length > 6 ? 'long' : ''}
      // biome-ignore lint/a11y/noAutofocus: the cell was opened to write into it
      autoFocus
      aria-label={props.label}
      aria-invalid={props.open.fault !== undefined}
      value={props.open.text}
      maxLength={240}
      onFocus={(event) => {
        if (props.open.begun === 'opened') event.currentTarget.select();
      }}
      onChange={(event) => props.onType(event.target.value)}
      onBlur={props.onLeave}
    />
  );
}
