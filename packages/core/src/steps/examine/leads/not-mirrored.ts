import { lastAtOrBefore } from '../../../ground/base/index.ts';
import { type Hand, hands, otherHand } from '../../../ground/study/index.ts';
import { type MotionKind, principleOf } from '../../../ground/tables/index.ts';
import { percentText } from '../../../ground/units/index.ts';
import { type CycleReading, type Piece, stateOf } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleShare, cycleWords, timeWords } from './stretches.ts';

/** Two trips that share this much of the shorter one are done at once; a hand that works less than this beside a trip is free for another. Ours. */
const half = 0.5;
/** Shorter runs of motions are no work of their own. Ours. */
const fewest = 3;

/** From one reach to the next letting go: what a hand does with one thing. */
interface Trip {
  readonly hand: Hand;
  readonly object: string;
  /** "TE G TL RL": the motions without searching, holding and waiting. */
  readonly kinds: string;
  readonly key: string;
  readonly pieces: readonly Piece[];
  readonly first: Piece;
  readonly last: Piece;
  readonly time: number;
}

/** Two trips of which the second could take place during the first. */
interface Pair {
  readonly hand: Hand | 'both';
  readonly trips: readonly [Trip, Trip];
  readonly shorter: Trip;
}

/** The same is done twice in a cycle, one after the other. */
export const notMirrored: LeadRule = {
  code: 'not-mirrored',
  name: 'The same work done twice, one after the other',
  principles: [3],
  limit: `The same work: from a reach to the next letting go, at least ${fewest} motions of the same kinds with things of the same name, while the other hand works less than ${percentText(half, 0)} of that time. The limits are ours. What is at stake is doing two at once. Symmetry itself is advice: ${principleOf(3).note?.text ?? ''} ${noiseLimit}`,
  arrangement: 'kept',
  change:
    'Of each two the shorter one takes place during the other at best; at the worst it stays where it is.',
  remedies: [
    {
      how: 'combine',
      text: 'Both hands do it at once, each with a thing of its own, from bins on both sides.',
    },
    { how: 'combine', text: 'A fixture with two nests, so that both hands are free.' },
    { how: 'rearrange', text: 'Bring the two together in the cycle, then do them at once.' },
    {
      how: 'simplify',
      text: 'Mirror the places left and right, so that both hands move alike, away and back.',
    },
  ],
  questions: [
    'Are they two things, or the same one taken up again?',
    'What hinders the other hand: a hold, the side of the bin, the eyes needed at two places?',
    'Can the eyes follow both ends at once? If not, could a guide or a stop make that needless?',
  ],
  find: (context) => {
    const pairs = context.cycles.flatMap((cycle) => pairsIn(context, cycle));
    return [...groupedBy(pairs, ({ hand, shorter }) => `${hand} ${shorter.object}`).values()].flatMap(
      (group) => draft(context, group),
    );
  },
};

function draft(context: LeadContext, pairs: readonly Pair[]): LeadDraft[] {
  const [first] = pairs;
  const total = pairs.reduce((sum, { shorter }) => sum + shorter.time, 0);
  if (first === undefined || isNoise(context, aCycle(context, total))) return [];
  const { hand, shorter } = first;
  const who = hand === 'both' ? 'The hands do' : `The ${hand} hand does`;
  const trips = pairs.flatMap((pair) => pair.trips);
  const where = trips.map(({ first: from }) => from);
  return [
    {
      hand,
      about: shorter.object,
      traces: trips.map(({ first: { cycle, from }, hand: own, last: { to } }) => ({
        cycle,
        hand: own,
        from,
        to,
      })),
      evidence: `${who} the same work with ${shorter.object} one after the other (${shorter.kinds}), ${cycleWords(context, where)}. The shorter one of each two takes ${timeWords(context, total)}, and could be done during the other.`,
      figures: [
        { name: 'shorter one of each two', value: aCycle(context, total), unit: 'time' },
        { name: 'share of the cycle', value: cycleShare(context, total), unit: 'share' },
        { name: 'pairs in all cycles', value: pairs.length, unit: 'count' },
      ],
      effects: pairs.flatMap((pair) =>
        pair.shorter.pieces.map((piece) => shortened(piece, 0, piece.duration)),
      ),
    },
  ];
}

function pairsIn(context: LeadContext, cycle: CycleReading): Pair[] {
  const trips = { left: tripsOf(cycle.left), right: tripsOf(cycle.right) };
  const groups = groupedBy([...trips.left, ...trips.right], ({ key }) => key);
  const repeated = [...groups.values()].filter((group) => group.length > 1);
  if (repeated.length === 0) return [];
  const things = thingsOf(context, cycle);
  return repeated.flatMap((group) => {
    const alone = notAtOnce(group).filter((trip) => isOtherFree(cycle, trip));
    return pairsOf(alone, things);
  });
}

const beside: ReadonlySet<MotionKind> = new Set(['Sh', 'F', 'St']);

function tripsOf(pieces: readonly Piece[]): Trip[] {
  const trips: Trip[] = [];
  let run: Piece[] = [];
  const close = () => {
    trips.push(...tripFrom(run));
    run = [];
  };
  for (const piece of pieces) {
    if (piece.kind === 'TE' || piece.kind === 'unmarked') close();
    if (piece.duration > 0 && stateOf(piece.kind) === 'working') run.push(piece);
    if (piece.kind === 'RL') close();
  }
  close();
  return trips;
}

function tripFrom(run: readonly Piece[]): Trip[] {
  const object = run.find(({ kind }) => kind === 'G')?.object;
  const work = run.filter(({ kind }) => !beside.has(kind));
  const [first, last] = [run[0], run.at(-1)];
  if (object === undefined || work.length < fewest || first === undefined || last === undefined) return [];
  const kinds = work.map(({ kind }) => kind).join(' ');
  const key = [object, ...work.map((piece) => `${piece.kind} ${piece.object ?? ''}`)].join('\n');
  const time = run.reduce((sum, { duration }) => sum + duration, 0);
  return [{ hand: first.hand, object, kinds, key, pieces: run, first, last, time }];
}

/** The trips of a group, in order of time, without those that both hands do at once. */
function notAtOnce(group: readonly Trip[]): Trip[] {
  const [left, right] = hands.map((hand) => group.filter((trip) => trip.hand === hand));
  const found: Trip[] = [];
  let [one, other] = [0, 0];
  for (;;) {
    const [a, b] = [left?.[one], right?.[other]];
    if (a === undefined && b === undefined) break;
    if (a !== undefined && b !== undefined && areAtOnce(a, b)) {
      one += 1;
      other += 1;
    } else if (b === undefined || (a !== undefined && a.last.end <= b.last.end)) {
      if (a !== undefined) found.push(a);
      one += 1;
    } else {
      found.push(b);
      other += 1;
    }
  }
  return found.sort((a, b) => a.first.start - b.first.start);
}

function areAtOnce(a: Trip, b: Trip): boolean {
  const common = Math.min(a.last.end, b.last.end) - Math.max(a.first.start, b.first.start);
  const shorter = Math.min(a.last.end - a.first.start, b.last.end - b.first.start);
  return common >= half * shorter;
}

function isOtherFree(cycle: CycleReading, { first, hand, last }: Trip): boolean {
  const others = cycle[otherHand(hand)];
  let busy = 0;
  for (
    let index = Math.max(
      0,
      lastAtOrBefore(others, first.start, ({ start }) => start),
    );
    ;
    index += 1
  ) {
    const piece = others[index];
    if (piece === undefined || piece.start >= last.end) break;
    const state = stateOf(piece.kind);
    if (state !== 'working' && state !== 'unmarked') continue;
    busy += Math.max(0, Math.min(piece.end, last.end) - Math.max(piece.start, first.start));
  }
  return busy < half * (last.end - first.start);
}

function pairsOf(trips: readonly Trip[], things: ReadonlyMap<Piece, number>): Pair[] {
  const pairs: Pair[] = [];
  for (let index = 0; index + 1 < trips.length; ) {
    const [a, b] = [trips[index], trips[index + 1]];
    if (a === undefined || b === undefined || !areTwoThings(a, b, things)) {
      index += 1;
      continue;
    }
    const hand = a.hand === b.hand ? a.hand : 'both';
    pairs.push({ hand, trips: [a, b], shorter: a.time < b.time ? a : b });
    index += 2;
  }
  return pairs;
}

/** Two rings, not one ring taken up twice: known by their places, else taken so when both are carried somewhere. */
function areTwoThings(a: Trip, b: Trip, things: ReadonlyMap<Piece, number>): boolean {
  const [one, other] = [a, b].map(({ pieces }) => pieces.find(({ kind }) => kind === 'G'));
  if (one === undefined || other === undefined) return false;
  if (things.get(one) !== things.get(other)) return true;
  const placed = one.motion?.from !== undefined && other.motion?.from !== undefined;
  return !placed && [a, b].every(({ pieces }) => pieces.some(({ kind }) => kind === 'TL'));
}

function thingsOf(context: LeadContext, cycle: CycleReading): Map<Piece, number> {
  const things = new Map<Piece, number>();
  context.models[cycle.position]?.individuals.forEach((pieces, index) => {
    for (const piece of pieces) things.set(piece, index);
  });
  return things;
}
