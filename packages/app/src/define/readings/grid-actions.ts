import type { Edit } from '@evenhand/core/ground/edit';
import { changeReading, setCycleAside, setReading } from '../define-edits.ts';
import { type Cell, takeText, textOf } from './grid-cells.ts';
import { type Cursor, type Move, moved } from './grid-columns.ts';
import type { GridModel } from './grid-model.ts';
import type { Asking, OpenCell, WrongCell } from './grid-state.ts';

const recordTimes =
  'The times of this study come from the marked film, so they are changed there. Here a reading can be rated or set aside.';

const asideInRecord =
  'The whole cycle is set aside in the record. Take that back on the record desk, under Cycles.';

/** The table as it stands while a key is pressed. */
export interface GridNow {
  readonly model: GridModel;
  readonly cursor: Cursor;
  readonly open: OpenCell | undefined;
  readonly wrong: ReadonlyMap<string, WrongCell>;
  readonly asking: Asking;
  readonly here: Cell | undefined;
}

type Change<Value> = (next: Value | ((known: Value) => Value)) => void;

/** What the actions read and write. */
export interface GridBox {
  readonly now: () => GridNow;
  /** The open cell is closed at once, before the page is drawn anew. */
  readonly closed: () => void;
  readonly perform: (edit: Edit | undefined) => void;
  readonly say: (words: string) => void;
  readonly setPlace: Change<Cursor>;
  readonly setOpen: Change<OpenCell | undefined>;
  readonly setWrong: Change<ReadonlyMap<string, WrongCell>>;
  readonly setAsking: Change<Asking>;
}

export function movingActions(box: GridBox) {
  const goTo = (to: Cursor) => {
    box.setAsking(undefined);
    box.setPlace(to);
  };
  const move = (direction: Move, page: number, wrote = false) => {
    const { model, cursor } = box.now();
    const more = wrote && model.timeStudy.source.kind === 'readings' ? 1 : 0;
    goTo(moved(cursor, direction, model.lines, model.cycles.length + more, page));
  };
  return { goTo, move };
}

/** Opening a cell, writing in it, and what becomes of what was written. */
export function writingActions(box: GridBox) {
  const begin = (text?: string) => {
    const { here, model, wrong } = box.now();
    if (here === undefined) return;
    if (here.kind === 'time' && model.timeStudy.source.kind === 'record') return box.say(recordTimes);
    const kept = wrong.get(here.key);
    box.setAsking(undefined);
    box.setOpen({
      text: text ?? kept?.text ?? textOf(model, here),
      begun: text === undefined ? 'opened' : 'typed',
      fault: text === undefined ? kept?.message : undefined,
    });
  };
  const type = (text: string) => box.setOpen((known) => known && { ...known, text, fault: undefined });
  const commit = () => {
    const fault = take(box);
    if (fault === undefined) box.closed();
    box.setOpen((known) => (fault === undefined ? undefined : known && { ...known, fault }));
    return fault === undefined;
  };
  const leave = () => {
    const { open, here } = box.now();
    if (open === undefined || here === undefined) return;
    const message = take(box);
    box.closed();
    if (message !== undefined) {
      box.setWrong((known) => new Map(known).set(here.key, { text: open.text, message }));
    }
    box.setOpen(undefined);
  };
  const drop = () => {
    forget(box);
    box.setOpen(undefined);
  };
  const setWrong = (cells: ReadonlyMap<string, WrongCell>) =>
    box.setWrong((known) => new Map([...known, ...cells]));
  return { begin, type, commit, leave, drop, setWrong };
}

/** Takes what was written in the open cell; says why when it cannot be taken. */
function take(box: GridBox): string | undefined {
  const { open, here, model } = box.now();
  if (open === undefined || here === undefined) return undefined;
  const taken = takeText(model, here, open.text);
  if (typeof taken === 'string') return taken;
  forget(box);
  box.perform(taken.edit);
  return undefined;
}

/** The cell of the cursor holds nothing any more that could not be taken. */
function forget({ now, setWrong }: GridBox): void {
  const key = now().here?.key;
  if (key === undefined) return;
  setWrong((known) => (known.has(key) ? new Map([...known].filter(([each]) => each !== key)) : known));
}

/** Clearing a cell, a missed reading, setting aside and counting again. */
export function judgingActions(box: GridBox) {
  const clear = () => {
    const { here, model } = box.now();
    if (here === undefined) return;
    const { timeStudy } = model;
    forget(box);
    if (here.kind === 'rating') {
      if (here.stored === undefined) return;
      return box.perform(changeReading(timeStudy, here.element, here.cycle, { rating: null }));
    }
    if (timeStudy.source.kind === 'record') return box.say(recordTimes);
    box.perform(setReading(timeStudy, here.element, here.cycle, null));
  };
  const missed = () => {
    const { here, model } = box.now();
    if (here === undefined) return;
    if (model.timeStudy.source.kind === 'record') return box.say(recordTimes);
    forget(box);
    box.perform(setReading(model.timeStudy, here.element, here.cycle, { cycle: here.cycle }));
  };
  const ask = (next: Asking) => {
    const { here, model } = box.now();
    if (next !== 'cycle' || here === undefined || !model.asideCycles.has(here.cycle))
      return box.setAsking(next);
    const again = setCycleAside(model.timeStudy, here.cycle, null);
    if (again === undefined) box.say(asideInRecord);
    else box.perform(again);
  };
  const setAside = (reason: string) => {
    const { here, model, asking } = box.now();
    const because = reason.trim();
    if (here === undefined || because === '') return;
    const edit =
      asking === 'cycle'
        ? setCycleAside(model.timeStudy, here.cycle, because)
        : changeReading(model.timeStudy, here.element, here.cycle, { setAside: because });
    box.perform(edit);
    box.setAsking(undefined);
  };
  const countAgain = () => {
    const { here, model } = box.now();
    if (here === undefined) return;
    if (here.stored?.setAside === undefined) return box.say(asideInRecord);
    box.perform(changeReading(model.timeStudy, here.element, here.cycle, { setAside: null }));
  };
  return { clear, missed, ask, setAside, countAgain };
}
