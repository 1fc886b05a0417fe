import { type Micros, micros } from '../../../ground/base/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { CycleReading, MethodReading, Piece, Trace } from '../reading/index.ts';
import type { Traced } from './figure.ts';
import { addPairs, emptyRampSum, overlapAt, rampReader, type Stretch } from './ramps.ts';
import { inOrder } from './traces.ts';

/**
 * How well the two rows agree when one is moved against the other. The agreement at a lag is the time in which the left
 * hand does a motion and the right hand, the lag later, does the same one, ÷ the time in which both are marked then;
 * each cycle by itself, summed over the cycles. A lag below 0 means that the left hand is the later one. Only lags that
 * leave at least half of the time that both are marked as recorded are compared.
 */
export interface LagAgreement {
  /**
   * Lags from −reach to +reach were tried: half the mean cycle, but no more than fifty motions of mean length. The fifty
   * are ours: a long record without cycles would else be compared with itself over hours.
   */
  readonly reach: Micros;
  /** Agreement as recorded. */
  readonly atZero: number;
  /** The highest agreement of all lags of whole microseconds, not only of those of the curve; of several the smallest lag. */
  readonly best: BestLag;
  /** Evenly spaced lags, rising, at most 201; undefined where too little is left to compare. */
  readonly curve: readonly LagPoint[];
}

export interface LagPoint {
  readonly lag: Micros;
  readonly agreement: number | undefined;
}

export interface BestLag extends Traced {
  /** 0 or more. */
  readonly lag: Micros;
  /** Which hand is first; `either` when both orders agree equally well. */
  readonly leads: 'left' | 'right' | 'either' | 'neither';
  readonly agreement: number;
}

const reachInMotions = 50;
const stepsOfCurve = 100;

/** Undefined when no time is marked in both hands. */
export function lagAgreementOf(reading: MethodReading, markedTogether: number): LagAgreement | undefined {
  if (markedTogether === 0) return undefined;
  const reach = reachOf(reading);
  const [same, marked] = [emptyRampSum(), emptyRampSum()];
  for (const cycle of reading.cycles) {
    const [left, right] = [byKind(cycle.left), byKind(cycle.right)];
    for (const [kind, pieces] of left) addPairs(same, pieces, right.get(kind) ?? [], reach);
    addPairs(marked, markedRuns(cycle.left), markedRuns(cycle.right), reach);
  }
  const lags = curveLags(reach);
  const readers = { same: rampReader(same, reach), marked: rampReader(marked, reach) };
  const walked = walk(readers, lags, markedTogether / 2);
  const { lag, agreement, mirrored } = walked.best;
  const leads = lag === 0 ? 'neither' : mirrored ? 'either' : lag > 0 ? 'left' : 'right';
  const shown = mirrored ? [lag, -lag] : [lag];
  return {
    reach: micros(reach),
    atZero: walked.curve[(lags.length - 1) / 2]?.agreement ?? 0,
    best: {
      lag: micros(Math.abs(lag)),
      leads,
      agreement,
      traces: () => agreeingPieces(reading, shown),
    },
    curve: walked.curve,
  };
}

function reachOf({ cycles }: MethodReading): number {
  let [time, marked, motions] = [0, 0, 0];
  for (const cycle of cycles) {
    time += cycle.duration;
    marked += cycle.marked.left + cycle.marked.right;
    for (const { kind } of cycle.left) motions += kind === 'unmarked' ? 0 : 1;
    for (const { kind } of cycle.right) motions += kind === 'unmarked' ? 0 : 1;
  }
  return Math.floor(Math.min(time / cycles.length / 2, (reachInMotions * marked) / motions));
}

function byKind(pieces: readonly Piece[]): Map<MotionKind, Piece[]> {
  const found = new Map<MotionKind, Piece[]>();
  for (const piece of pieces) {
    if (piece.kind === 'unmarked' || piece.duration === 0) continue;
    const list = found.get(piece.kind);
    if (list === undefined) found.set(piece.kind, [piece]);
    else list.push(piece);
  }
  return found;
}

function markedRuns(pieces: readonly Piece[]): Stretch[] {
  const found: Stretch[] = [];
  for (const { kind, start, end } of pieces) {
    if (kind === 'unmarked' || start === end) continue;
    const last = found.at(-1);
    if (last?.end === start) found[found.length - 1] = { start: last.start, end };
    else found.push({ start, end });
  }
  return found;
}

/** Rising, with 0 in the middle, the same to both sides. */
function curveLags(reach: number): number[] {
  const above: number[] = [];
  for (let step = 1; step <= stepsOfCurve; step += 1) {
    const lag = Math.round((reach * step) / stepsOfCurve);
    if (lag > (above.at(-1) ?? 0)) above.push(lag);
  }
  return [...above.map((lag) => -lag).reverse(), 0, ...above];
}

type Readers = Readonly<Record<'same' | 'marked', ReturnType<typeof rampReader>>>;

interface Reading {
  readonly lag: number;
  readonly same: number;
  readonly marked: number;
}

interface Best {
  lag: number;
  agreement: number;
  /** The lag of the same size to the other side agrees as well. */
  mirrored: boolean;
}

/**
 * Between two breakpoints both sums are straight lines and their quotient only rises or only falls, so that the best lag
 * is a breakpoint, or the last lag before too little is left to compare.
 */
function walk({ same, marked }: Readers, lags: readonly number[], least: number) {
  const best: Best = { lag: 0, agreement: -1, mirrored: false };
  const curve: LagPoint[] = [];
  let before: Reading | undefined;
  for (let index = 0; index < lags.length; ) {
    const onCurve = lags[index] as number;
    const lag = Math.min(onCurve, same.next(), marked.next());
    const here = { lag, same: same.at(lag), marked: marked.at(lag) };
    const edge = before === undefined ? undefined : edgeBetween(before, here, least);
    if (edge !== undefined) improve(best, edge);
    if (here.marked >= least) improve(best, here);
    if (lag === onCurve) {
      curve.push({ lag: micros(lag), agreement: here.marked >= least ? here.same / here.marked : undefined });
      index += 1;
    }
    before = here;
  }
  return { best, curve };
}

function improve(best: Best, { lag, same, marked }: Reading): void {
  const agreement = same / marked;
  const nearer = Math.abs(lag) - Math.abs(best.lag);
  if (agreement < best.agreement || (agreement === best.agreement && nearer > 0)) return;
  if (agreement === best.agreement && nearer === 0 && lag !== best.lag) best.mirrored = true;
  else if (agreement > best.agreement || nearer < 0) best.mirrored = false;
  best.lag = lag;
  best.agreement = agreement;
}

/** The lag of whole microseconds at which just enough is left to compare, where that changes between two readings. */
function edgeBetween(a: Reading, b: Reading, least: number): Reading | undefined {
  if (a.marked >= least === b.marked >= least) return undefined;
  const slope = (b.marked - a.marked) / (b.lag - a.lag);
  const exact = a.lag + (least - a.marked) / slope;
  const lag = slope < 0 ? Math.floor(exact) : Math.ceil(exact);
  const way = lag - a.lag;
  return {
    lag,
    same: a.same + ((b.same - a.same) / (b.lag - a.lag)) * way,
    marked: a.marked + slope * way,
  };
}

/** The motions of both hands that meet their like at one of the lags. */
function agreeingPieces({ cycles }: MethodReading, lags: readonly number[]): Trace[] {
  return cycles.flatMap((cycle) => inOrder([...new Set(lags.flatMap((lag) => meeting(cycle, lag)))]));
}

function meeting(cycle: CycleReading, lag: number): Piece[] {
  const right = byKind(cycle.right);
  return [...byKind(cycle.left)].flatMap(([kind, firsts]) => {
    const seconds = right.get(kind) ?? [];
    const found: Piece[] = [];
    let index = 0;
    for (const first of firsts) {
      while ((seconds[index]?.end ?? Number.POSITIVE_INFINITY) - lag <= first.start) index += 1;
      for (let other = index; ; other += 1) {
        const second = seconds[other];
        if (second === undefined || overlapAt(first, second, lag) === 0) break;
        found.push(first, second);
      }
    }
    return found;
  });
}
