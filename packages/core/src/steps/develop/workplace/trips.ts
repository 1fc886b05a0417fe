import type { Hand } from '../../../ground/study/index.ts';
import type { MethodReading, Piece } from '../../examine/index.ts';
import { type Instance, roleOf, type Schedule } from '../compose/index.ts';
import type { Work } from '../work/index.ts';
import type { BenchPoint } from './working-areas.ts';

/** Ways of one hand from one place to another, by their ids. */
export interface Trip {
  readonly hand: Hand;
  readonly from: string;
  readonly to: string;
  readonly loaded: boolean;
  /** How many a cycle; of a record the mean of the cycles that count. */
  readonly perCycle: number;
}

export interface Trips {
  /** By hand, then in the order in which they first occur. */
  readonly list: readonly Trip[];
  /** Moves a cycle of which the record does not say where they begin or end. */
  readonly unknown: number;
}

interface Move {
  readonly hand: Hand;
  readonly from: string;
  readonly to: string;
  readonly loaded: boolean;
}

const hands = ['left', 'right'] as const;

/** The trips of a composed method, the way back to where the next cycle begins included. */
export function tripsOfSchedule(work: Work, instance: Instance, schedule: Schedule): Trips {
  const id = (place: number) => work.places[place]?.id ?? '';
  const moves = hands.flatMap((hand) => {
    const order = schedule[hand];
    return order.flatMap((task, index): Move[] => {
      const last = index === order.length - 1;
      const role = roleIn(instance, schedule, task, hand);
      const next = roleIn(instance, schedule, order[last ? 0 : index + 1] ?? task, hand);
      if (role === undefined || next === undefined) return [];
      const loaded = role.after !== 0;
      if (!last || instance.home === 'free')
        return [{ hand, from: id(role.place), to: id(next.place), loaded }];
      const home = id(instance.home[hand]);
      return [
        { hand, from: id(role.place), to: home, loaded },
        { hand, from: home, to: id(next.place), loaded: false },
      ];
    });
  });
  return { list: counted(moves, 1), unknown: 0 };
}

function roleIn({ tasks }: Instance, { placed }: Schedule, task: number, hand: Hand) {
  const mode = tasks[task]?.modes[placed[task]?.mode ?? 0];
  return mode === undefined ? undefined : roleOf(mode, hand);
}

/** The trips of a recorded method: its transports, empty and loaded, over the cycles that were read. */
export function tripsOfReading({ cycles }: Pick<MethodReading, 'cycles'>): Trips {
  let unknown = 0;
  const moves = hands.flatMap((hand) => {
    let place: string | undefined;
    return cycles.flatMap((cycle, position) => {
      const before = cycles.at(position - 1);
      if (position === 0 || before?.to !== cycle.from) place = firstPlace(cycle[hand]);
      const goesOn = continues(before?.[hand].at(-1), cycle[hand][0]);
      return cycle[hand].flatMap((piece, index): Move[] => {
        if (!isMove(piece) || piece.cut || (index === 0 && goesOn)) return [];
        const [from, to] = [piece.motion?.from ?? place, piece.motion?.to];
        place = to;
        if (from === undefined || to === undefined) {
          unknown += 1;
          return [];
        }
        return [{ hand, from, to, loaded: piece.kind === 'TL' }];
      });
    });
  });
  const count = Math.max(1, cycles.length);
  return { list: counted(moves, count), unknown: unknown / count };
}

function isMove({ kind }: Piece): boolean {
  return kind === 'TE' || kind === 'TL';
}

/**
 * The same way twice without a way back is one trip that the end of the cycle cuts in two, as in a composed method, where
 * what runs beyond the end stands at the beginning.
 */
function continues(before: Piece | undefined, piece: Piece | undefined): boolean {
  const [one, other] = [before?.motion, piece?.motion];
  return (
    piece !== undefined &&
    isMove(piece) &&
    before?.kind === piece.kind &&
    one?.from !== undefined &&
    one.from === other?.from &&
    one.to === other?.to
  );
}

/** Where the hand stands when the cycle begins: where the move that began before it goes, else where its last one goes. */
function firstPlace(pieces: readonly Piece[]): string | undefined {
  const moves = pieces.filter(isMove);
  return moves[0]?.cut === true ? moves[0].motion?.to : moves.at(-1)?.motion?.to;
}

function counted(moves: readonly Move[], cycles: number): readonly Trip[] {
  const found = new Map<string, Move & { count: number }>();
  for (const move of moves) {
    if (move.from === move.to) continue;
    const key = JSON.stringify([move.hand, move.from, move.to, move.loaded]);
    const known = found.get(key);
    if (known === undefined) found.set(key, { ...move, count: 1 });
    else known.count += 1;
  }
  return [...found.values()].map(({ count, ...move }) => ({ ...move, perCycle: count / cycles }));
}

/** How often each hand comes to each place in a cycle. */
export function arrivals(trips: Trips): ReadonlyMap<string, Readonly<Record<Hand, number>>> {
  const found = new Map<string, Record<Hand, number>>();
  for (const { hand, to, perCycle } of trips.list) {
    const known = found.get(to) ?? { left: 0, right: 0 };
    known[hand] += perCycle;
    found.set(to, known);
  }
  return found;
}

/** Straight ways over the bench in a cycle, millimetres. */
export interface HandTravel {
  readonly left: number;
  readonly right: number;
  /** Trips a cycle to or from a place without a position, not in the sums. */
  readonly unmeasured: number;
}

export function handTravel(trips: Trips, at: (place: string) => BenchPoint | undefined): HandTravel {
  const travel = { left: 0, right: 0, unmeasured: trips.unknown };
  for (const { hand, from, to, perCycle } of trips.list) {
    const [start, end] = [at(from), at(to)];
    if (start === undefined || end === undefined) travel.unmeasured += perCycle;
    else travel[hand] += perCycle * Math.hypot(end.x - start.x, end.y - start.y);
  }
  return travel;
}

/**
 * Metres that a hand travels while so much time is worked.
 * @param perCycle millimetres
 * @param period microseconds for a cycle, above 0
 * @param worked microseconds of work, such as those of a day
 */
export function travelOver(perCycle: number, period: number, worked: number): number {
  if (!(period > 0)) throw new RangeError(`a cycle takes more than no time, got ${period}`);
  return (perCycle / 1000) * (worked / period);
}

/** A trip as it is drawn: bent to the right of its way, so that there and back do not cover each other. */
export interface HandPath {
  readonly trip: Trip;
  readonly from: BenchPoint;
  readonly to: BenchPoint;
  /** Control point of a quadratic curve. */
  readonly bend: BenchPoint;
}

/** How far a path is bent, as a share of its length. Ours. */
const bow = 0.12;

export function handPaths(trips: Trips, at: (place: string) => BenchPoint | undefined): readonly HandPath[] {
  return trips.list.flatMap((trip): HandPath[] => {
    const [from, to] = [at(trip.from), at(trip.to)];
    if (from === undefined || to === undefined) return [];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const bend = { x: (from.x + to.x) / 2 + dy * bow * 2, y: (from.y + to.y) / 2 - dx * bow * 2 };
    return [{ trip, from, to, bend }];
  });
}

/** Where the places of a work are, by their ids. */
export function positionsOf({ places }: Pick<Work, 'places'>): (place: string) => BenchPoint | undefined {
  const known = new Map(places.map(({ id, at }) => [id, at]));
  return (place) => known.get(place);
}
