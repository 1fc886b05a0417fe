import type { TimeStudySheet } from '@evenhand/core/define';
import {
  type ClipboardEvent,
  type KeyboardEvent,
  type RefObject,
  useCallback,
  useEffect,
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { gridSize, scrollTo, type Window, windowOf } from './grid-columns.ts';
import { gridKey } from './grid-keys.ts';
import type { GridModel } from './grid-model.ts';
import { GridRow } from './grid-row.tsx';
import type { Grid } from './grid-state.ts';

export interface GridProps {
  readonly grid: Grid;
  readonly sheet: TimeStudySheet;
  readonly host: RefObject<HTMLDivElement | null>;
  readonly onPaste: (text: string, turned: boolean) => void;
  readonly onName: (element: string) => void;
  readonly onAside: () => void;
}

/** Elements down, cycles across; only what can be seen is drawn. */
export function ReadingGrid(props: GridProps) {
  const { grid, host } = props;
  const { model, cursor, open } = grid;
  const prefix = useId();
  const { seen, look } = useSeen(host, model);
  useCursorInView(host, grid);
  useFocusBack(host, grid);
  const page = Math.max(1, Math.floor(seen.room / model.column) - 1);
  const onKeyDown = useGridKeys(grid, page, props.onAside);
  const shift = useShift();
  const onPaste = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData('text/plain');
    const inside = open !== undefined && !/[\t\n;]/.test(text.trim());
    if (inside || text.trim() === '') return;
    event.preventDefault();
    props.onPaste(text, shift.current);
  };
  const { goTo, begin, leave } = grid;
  const onPick = useCallback(
    (line: number, column: number, opened: boolean) => {
      leave();
      goTo({ line, column });
      if (opened) begin();
      else host.current?.focus({ preventScroll: true });
    },
    [leave, goTo, begin, host],
  );
  const height = gridSize.head + (model.lines.at(-1)?.top ?? 0) + (model.lines.at(-1)?.height ?? 0);
  return (
    <div
      ref={host}
      className="reading-grid"
      role="grid"
      aria-label="Readings: elements down, cycles across"
      aria-rowcount={model.lines.length + 1}
      aria-colcount={model.cycles.length + 2}
      aria-activedescendant={open === undefined ? `${prefix}-${cursor.line}-${cursor.column}` : undefined}
      tabIndex={0}
      onScroll={look}
      onKeyDown={onKeyDown}
      onPaste={onPaste}
      onMouseDown={(event) => {
        if (event.target === event.currentTarget || event.target instanceof HTMLInputElement) return;
        event.preventDefault();
        leave();
        host.current?.focus({ preventScroll: true });
      }}
    >
      <div
        className="grid-body"
        role="presentation"
        style={{ width: gridSize.name + model.cycles.length * model.column + gridSize.sum, height }}
      >
        <GridHead
          model={model}
          columns={seen.columns}
          current={cursor.column}
          onPick={onPick}
          line={cursor.line}
        />
        <div style={{ height: model.lines[seen.lines.from]?.top ?? 0 }} aria-hidden="true" />
        <SeenRows {...props} columns={seen.columns} lines={seen.lines} prefix={prefix} onPick={onPick} />
      </div>
    </div>
  );
}

function SeenRows(
  props: GridProps & {
    readonly columns: Window;
    readonly lines: Window;
    readonly prefix: string;
    readonly onPick: (line: number, column: number, open: boolean) => void;
  },
) {
  const { grid, sheet, columns } = props;
  const { model, cursor } = grid;
  const rows = useMemo(() => new Map(sheet.rows.map((row) => [row.element.id, row])), [sheet]);
  return model.lines.slice(props.lines.from, props.lines.to).map((line, index) => {
    const place = props.lines.from + index;
    const element = model.elements[line.element];
    return (
      <GridRow
        key={`${element?.id} ${line.kind}`}
        model={model}
        line={line}
        place={place}
        columns={columns}
        row={element === undefined ? undefined : rows.get(element.id)}
        cursor={cursor.line === place ? cursor.column : undefined}
        open={cursor.line === place ? grid.open : undefined}
        wrong={grid.wrong}
        prefix={props.prefix}
        onPick={props.onPick}
        onName={props.onName}
        onType={grid.type}
        onLeave={grid.leave}
      />
    );
  });
}

function GridHead(props: {
  readonly model: GridModel;
  readonly columns: Window;
  readonly current: number;
  readonly line: number;
  readonly onPick: (line: number, column: number, open: boolean) => void;
}) {
  const { model, columns } = props;
  return (
    <div role="row" tabIndex={-1} aria-rowindex={1} className="grid-row head">
      <div role="columnheader" tabIndex={-1} className="grid-name">
        Element
      </div>
      <div aria-hidden="true" style={{ width: columns.from * model.column }} className="grid-gap" />
      {model.cycles.slice(columns.from, columns.to).map((cycle, index) => {
        const foreign = model.foreign.get(cycle);
        const aside = model.asideCycles.has(cycle);
        const marks = [
          aside ? 'aside' : '',
          foreign === undefined ? '' : 'foreign',
          props.current === columns.from + index ? 'here' : '',
        ];
        return (
          <div
            key={cycle}
            role="columnheader"
            tabIndex={-1}
            aria-colindex={columns.from + index + 2}
            className={`grid-cycle ${marks.join(' ')}`}
            style={{ width: model.column }}
            title={
              [
                aside ? 'The whole cycle is set aside.' : '',
                ...(foreign ?? []).map(({ what }) => `Foreign element: ${what}.`),
              ]
                .join(' ')
                .trim() || undefined
            }
            onMouseDown={(event) => {
              event.preventDefault();
              props.onPick(props.line, columns.from + index, false);
            }}
          >
            {cycle}
          </div>
        );
      })}
      <div
        aria-hidden="true"
        style={{ width: (model.cycles.length - columns.to) * model.column }}
        className="grid-gap"
      />
      <div role="columnheader" tabIndex={-1} className="grid-sum">
        <span className="n">n</span>
        <span className="mean">mean</span>
        <span className="needs">needs</span>
      </div>
    </div>
  );
}

/** Which columns and lines can be seen. */
function useSeen(host: RefObject<HTMLDivElement | null>, model: GridModel) {
  const [view, setView] = useState({ left: 0, top: 0, width: 1200, height: 600 });
  const look = useCallback(() => {
    const element = host.current;
    if (element === null) return;
    const next = {
      left: element.scrollLeft,
      top: element.scrollTop,
      width: element.clientWidth,
      height: element.clientHeight,
    };
    setView((known) =>
      known.left === next.left &&
      known.top === next.top &&
      known.width === next.width &&
      known.height === next.height
        ? known
        : next,
    );
  }, [host]);
  useLayoutEffect(() => {
    look();
    const element = host.current;
    if (element === null) return;
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, [host, look]);
  const room = Math.max(model.column, view.width - gridSize.name - gridSize.sum);
  return {
    look,
    seen: {
      room,
      columns: windowOf(view.left, room, model.column, model.cycles.length),
      // Every line is at least as high as a line of ratings.
      lines: linesIn(model, view.top, view.height),
    },
  };
}

function linesIn({ lines }: GridModel, top: number, height: number): Window {
  let from = 0;
  while (from < lines.length && (lines[from]?.top ?? 0) + 40 < top) from += 1;
  let to = from;
  while (to < lines.length && (lines[to]?.top ?? 0) < top + height + 40) to += 1;
  return { from: Math.max(0, from - 4), to: Math.min(lines.length, to + 4) };
}

/** Scrolls no further than needed to see the cell in which the cursor stands. */
function useCursorInView(host: RefObject<HTMLDivElement | null>, { cursor, model }: Grid): void {
  const line = model.lines[cursor.line];
  useLayoutEffect(() => {
    const element = host.current;
    if (element === null || line === undefined) return;
    const room = element.clientWidth - gridSize.name - gridSize.sum;
    const left = cursor.column * model.column;
    const wanted = scrollTo(element.scrollLeft, room, left, left + model.column);
    if (wanted !== element.scrollLeft) element.scrollLeft = wanted;
    const down = scrollTo(
      element.scrollTop,
      element.clientHeight - gridSize.head,
      line.top,
      line.top + line.height,
    );
    if (down !== element.scrollTop) element.scrollTop = down;
  }, [host, cursor.column, line, model.column]);
}

/** When a cell was closed the table has the keyboard again, unless the person went elsewhere. */
function useFocusBack(host: RefObject<HTMLDivElement | null>, { open }: Grid): void {
  const was = useRef(false);
  useEffect(() => {
    const closed = was.current && open === undefined;
    was.current = open !== undefined;
    if (closed && (document.activeElement === document.body || document.activeElement === null))
      host.current?.focus({ preventScroll: true });
  }, [host, open]);
}

/** Whether the shift key is down: a block is then pasted turned. */
function useShift(): RefObject<boolean> {
  const shift = useRef(false);
  useEffect(() => {
    const note = (event: globalThis.KeyboardEvent) => {
      shift.current = event.shiftKey;
    };
    window.addEventListener('keydown', note, { capture: true });
    window.addEventListener('keyup', note, { capture: true });
    return () => {
      window.removeEventListener('keydown', note, { capture: true });
      window.removeEventListener('keyup', note, { capture: true });
    };
  }, []);
  return shift;
}

function useGridKeys(grid: Grid, page: number, onAside: () => void) {
  const leaving = useRef(false);
  return (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.nativeEvent.isComposing) return;
    if (grid.open !== undefined) return openKey(event, grid);
    if (event.target !== event.currentTarget) return;
    const asked = gridKey(event);
    if (asked === undefined) return;
    if (asked.kind === 'leave') {
      leaving.current = true;
      return;
    }
    // Escape, then Tab, leaves the table: Tab alone goes to the next cell.
    if (event.key === 'Tab' && leaving.current) {
      leaving.current = false;
      return;
    }
    leaving.current = false;
    event.preventDefault();
    event.stopPropagation();
    if (asked.kind === 'move') grid.move(asked.move, page);
    else if (asked.kind === 'open') grid.begin();
    else if (asked.kind === 'type') grid.begin(asked.text);
    else if (asked.kind === 'clear') grid.clear();
    else if (asked.kind === 'missed') grid.missed();
    else if (asked.kind === 'aside') onAside();
    else grid.ask('cycle');
  };
}

function openKey(event: KeyboardEvent<HTMLDivElement>, grid: Grid): void {
  event.stopPropagation();
  const { key, shiftKey } = event;
  if (key === 'Escape') {
    event.preventDefault();
    return grid.drop();
  }
  const typed = grid.open?.begun === 'typed';
  const asked = gridKey(event);
  const moves = key === 'Enter' || key === 'Tab' || (typed && key.startsWith('Arrow') && !shiftKey);
  if (!moves || asked?.kind !== 'move') return;
  event.preventDefault();
  const wrote = (grid.open?.text.trim() ?? '') !== '';
  if (grid.commit()) grid.move(asked.move, 1, wrote);
}
