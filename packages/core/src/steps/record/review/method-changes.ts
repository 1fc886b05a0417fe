import {
  type CycleFields,
  type GroupEdit,
  type MotionFields,
  type SingleEdit,
  sameData,
} from '../../../ground/edit/index.ts';
import { hands, type Method } from '../../../ground/study/index.ts';

type Fields = Readonly<Record<string, unknown>>;

interface Item {
  readonly id: string;
  readonly start: number;
}

interface RowLike<One extends Item> {
  readonly items: readonly One[];
  readonly end: number;
}

interface Makers<One extends Item> {
  readonly remove: (item: One) => SingleEdit;
  readonly mark: (item: One) => SingleEdit;
  readonly change: (id: string, to: Fields, was: Fields) => SingleEdit;
  readonly end: (to: number, was: number) => SingleEdit;
}

/**
 * The edits that lead from a method to another state of its rows and cycles, as one undo step. Ids tell what is the same
 * item; an item that begins elsewhere is taken away and marked again. Undefined when nothing differs.
 */
export function methodChanges(before: Method, after: Method, name: string): GroupEdit | undefined {
  const method = before.id;
  const edits = hands.flatMap((hand) => {
    const where = { method, hand };
    return rowChanges(before[hand], after[hand], {
      remove: (motion) => ({ type: 'motion.remove', ...where, motion }),
      mark: (motion) => ({ type: 'motion.mark', ...where, motion }),
      change: (motion, to, was) => ({
        type: 'motion.change',
        ...where,
        motion,
        to: to as MotionFields,
        was: was as MotionFields,
      }),
      end: (to, was) => ({ type: 'row.end', ...where, to, was }),
    });
  });
  edits.push(
    ...rowChanges(before.cycles, after.cycles, {
      remove: (cycle) => ({ type: 'cycle.remove', method, cycle }),
      mark: (cycle) => ({ type: 'cycle.mark', method, cycle }),
      change: (cycle, to, was) => ({
        type: 'cycle.change',
        method,
        cycle,
        to: to as CycleFields,
        was: was as CycleFields,
      }),
      end: (to, was) => ({ type: 'cycles.end', method, to, was }),
    }),
  );
  return edits.length === 0 ? undefined : { type: 'group', name, edits };
}

function rowChanges<One extends Item>(
  before: RowLike<One>,
  after: RowLike<One>,
  make: Makers<One>,
): SingleEdit[] {
  const wanted = new Map(after.items.map((item) => [item.id, item]));
  const known = new Map(before.items.map((item) => [item.id, item]));
  const stays = (item: One, other: One | undefined) => other !== undefined && other.start === item.start;
  const removes = before.items.filter((item) => !stays(item, wanted.get(item.id))).map(make.remove);
  const marks = after.items.filter((item) => !stays(item, known.get(item.id))).map(make.mark);
  const changes = after.items.flatMap((item) => {
    const old = known.get(item.id);
    if (old === undefined || !stays(item, old) || sameData(old, item)) return [];
    const [to, was] = changedFields(old, item);
    return [make.change(item.id, to, was)];
  });
  // A row grows before anything is put there, and shrinks when nothing stands there any more.
  const end = after.end === before.end ? [] : [make.end(after.end, before.end)];
  const grows = after.end > before.end;
  return [...(grows ? end : []), ...removes, ...changes, ...marks, ...(grows ? [] : end)];
}

function changedFields(old: Item, next: Item): [to: Fields, was: Fields] {
  const [a, b] = [old as unknown as Fields, next as unknown as Fields];
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])].filter(
    (key) => !sameData(a[key], b[key]),
  );
  const pick = (from: Fields) => Object.fromEntries(keys.map((key) => [key, from[key] ?? null]));
  return [pick(b), pick(a)];
}
