import { readFileSync } from 'node:fs';
import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import {
  endOf,
  findItem,
  type Hand,
  hands,
  itemsBetween,
  type Method,
  type Motion,
  methodClock,
  parseStudy,
  type Study,
} from '@evenhand/core/ground/study';
import {
  confirmAbove,
  confirmProposed,
  decodeTrack,
  markCycle,
  markMotion,
  moveCycleMark,
  moveStart,
  nextToReview,
  proposalEdit,
  proposeFromTrack,
  type ReviewItem,
  refuseMotion,
} from '@evenhand/core/record';

/**
 * Keys that finish the present method of the demo film, one cycle of which is marked, and what stands there at the end. A
 * frame stepped over or moved is a key, ten frames too; objects, places and the looking itself are not counted.
 */
export interface Keystrokes {
  readonly way: string;
  readonly keys: number;
  /** Boundaries of the other cycles that stand within a tenth of a second of the study's own, and how many there are. */
  readonly right: number;
  readonly of: number;
  /** Motions that stand there at the end and have no like in the study itself. */
  readonly extra: number;
}

/** A boundary that is this near is left as it is: a tenth of a second of the demo film. */
const near = 3;

class Desk {
  study: Study;
  keys = 0;
  #ids = 0;
  readonly newId = (): string => `k${this.#ids++}`;

  constructor(study: Study) {
    this.study = study;
  }

  get method(): Method {
    return this.study.methods[0] as Method;
  }

  do(edit: Edit | undefined, keys: number): boolean {
    if (edit === undefined) return false;
    const applied = applyEdit(this.study, edit);
    if (!applied.ok) throw new Error(applied.error.message);
    this.study = applied.value.study;
    this.keys += keys;
    return true;
  }
}

/** Keys that step over so many frames: by ten, by one, and back where that is shorter. */
function steps(frames: number): number {
  const far = Math.abs(frames);
  return Math.floor(far / 10) + Math.min(far % 10, 11 - (far % 10));
}

/** @param folder of the checkout */
export function proposeKeystrokes(folder = '.'): readonly Keystrokes[] {
  const { full, one, keep } = demo(folder);
  const told = (way: string, desk: Desk): Keystrokes => ({
    way,
    keys: desk.keys,
    ...standing(desk.method, full, keep),
  });
  return [
    told('motion by motion', byHand(new Desk(one), full, keep)),
    told('proposed, every boundary looked at', byProposal(new Desk(one), { full, keep }, folder)),
    told('proposed, all from 90 % confirmed at once', byProposal(new Desk(one), { full, keep }, folder, 0.9)),
  ];
}

interface Demo {
  readonly full: Method;
  /** The study with one cycle marked. */
  readonly one: Study;
  readonly keep: number;
}

function demo(folder: string): Demo {
  const read = parseStudy(readFileSync(`${folder}/examples/couplings/couplings.evenhand.json`, 'utf8'));
  if (!read.ok) throw new Error(read.error.map(({ message }) => message).join(' '));
  const { formatVersion, id, title, operation, films, places, methods } = read.value;
  const full = methods[0] as Method;
  const keep = 0;
  const [from, to] = [full.cycles.items[keep]?.start ?? 0, endOf(full.cycles, keep)];
  const row = (hand: Hand) => ({
    end: full[hand].end,
    items: [
      ...(from > 0 ? [{ id: `${hand}a`, start: 0, kind: 'unmarked' as const, said: 'marked' as const }] : []),
      ...itemsBetween(full[hand], from, to).map(({ item, start }) => ({ ...item, start })),
      { id: `${hand}z`, start: to, kind: 'unmarked' as const, said: 'marked' as const },
    ],
  });
  const { elements: _, ...rest } = full;
  const cycles = { items: full.cycles.items.slice(keep, keep + 1), end: to };
  const method = { ...rest, left: row('left'), right: row('right'), cycles };
  return { full, keep, one: { formatVersion, id, title, operation, films, places, methods: [method] } };
}

interface Wanted {
  readonly hand: Hand;
  readonly motion: Motion;
}

/** The motions that are still to be marked, in order of time. */
function wanted(full: Method, keep: number): Wanted[] {
  const from = endOf(full.cycles, keep);
  return hands
    .flatMap((hand) =>
      full[hand].items.filter(({ start }) => start >= from).map((motion) => ({ hand, motion })),
    )
    .sort((a, b) => a.motion.start - b.motion.start);
}

/** Walks the film from boundary to boundary; each costs its steps and its key. Objects and places are not counted. */
function byHand(desk: Desk, full: Method, keep: number): Desk {
  let at = endOf(full.cycles, keep);
  desk.do({ type: 'cycles.end', method: full.id, to: full.cycles.end, was: desk.method.cycles.end }, 0);
  for (const { start } of full.cycles.items.slice(keep + 1))
    desk.do(markCycle(desk.method, start, desk.newId), 1);
  for (const { hand, motion } of wanted(full, keep)) {
    const target = { method: desk.method, hand };
    desk.do(
      markMotion(target, motion.start, motion.kind, desk.newId, { carryObject: true }),
      steps(motion.start - at) + 1,
    );
    at = motion.start;
  }
  return desk;
}

function byProposal(
  desk: Desk,
  { full, keep }: Pick<Demo, 'full' | 'keep'>,
  folder: string,
  above?: number,
): Desk {
  const track = decodeTrack(new Uint8Array(readFileSync(`${folder}/tests/films/tracks/present.track.bin`)));
  if (!track.ok) throw new Error(track.error.message);
  const proposal = proposeFromTrack({ study: desk.study, method: full.id, track: track.value });
  if (!proposal.ok) throw new Error(proposal.error.map(({ message }) => message).join(' '));
  desk.do(proposalEdit(desk.method, proposal.value, methodClock(desk.study, desk.method), desk.newId), 1);
  if (above !== undefined) desk.do(confirmAbove(desk.method, above), 1);
  let item: ReviewItem | undefined = nextToReview(desk.method, undefined);
  desk.keys += 1;
  while (item !== undefined) {
    review(desk, full, item);
    item = nextToReview(desk.method, item);
  }
  finish(desk, full, keep);
  return desk;
}

/** What the proposal missed, or was confirmed without a look and is wrong, is gone to and marked like any other motion. */
function finish(desk: Desk, full: Method, keep: number): void {
  let at = endOf(full.cycles, keep);
  for (const { hand, motion } of wanted(full, keep)) {
    if (motion.kind === 'unmarked' || stands(desk.method, hand, motion)) continue;
    const target = { method: desk.method, hand };
    const keys = steps(motion.start - at) + 1;
    desk.do(markMotion(target, motion.start, motion.kind, desk.newId, { carryObject: true }), keys);
    at = motion.start;
  }
}

function stands(method: Method, hand: Hand, { kind, start }: Motion): boolean {
  return method[hand].items.some((item) => item.kind === kind && Math.abs(item.start - start) <= near);
}

/** One boundary under review: confirmed with one key where it is near, moved by a key a frame, refused where nothing is. */
function review(desk: Desk, full: Method, item: ReviewItem): void {
  const { row, id, at } = item;
  if (row === 'cycles') {
    const goal = nearest(
      full.cycles.items.map(({ start }) => start),
      at,
    );
    if (goal === undefined || Math.abs(goal - at) <= near)
      return void desk.do(confirmProposed(desk.method, item), 1);
    return void desk.do(moveCycleMark(desk.method, id, goal), Math.abs(goal - at) + 1);
  }
  const motion = findItem(desk.method[row], id)?.item;
  const goal = nearest(
    full[row].items.filter(({ kind }) => kind === motion?.kind).map(({ start }) => start),
    at,
  );
  if (goal === undefined || Math.abs(goal - at) > 60)
    return void desk.do(refuseMotion(desk.method, row, id), 1);
  const target = { method: desk.method, hand: row };
  if (Math.abs(goal - at) > near && desk.do(moveStart(target, id, goal), Math.abs(goal - at) + 1)) return;
  desk.do(confirmProposed(desk.method, item), 1);
}

function nearest(all: readonly number[], at: number): number | undefined {
  return all.reduce<number | undefined>(
    (best, one) => (best === undefined || Math.abs(one - at) < Math.abs(best - at) ? one : best),
    undefined,
  );
}

/** How many of the boundaries that were to be marked stand there with their kind. */
function standing(method: Method, full: Method, keep: number): Pick<Keystrokes, 'right' | 'of' | 'extra'> {
  const all = wanted(full, keep).filter(({ motion }) => motion.kind !== 'unmarked');
  const right = all.filter(({ hand, motion }) => stands(method, hand, motion));
  const from = endOf(full.cycles, keep);
  const extra = hands.flatMap((hand) =>
    method[hand].items.filter(
      (motion) => motion.start >= from && motion.kind !== 'unmarked' && !stands(full, hand, motion),
    ),
  );
  return { right: right.length, of: all.length, extra: extra.length };
}
