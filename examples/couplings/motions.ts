import type { MotionKind } from '@evenhand/core/ground/tables';

export type Hand = 'left' | 'right';

/** One motion of a script; it lasts until the next one in its row starts. */
export interface ScriptMotion {
  readonly kind: MotionKind;
  /** First frame. */
  readonly start: number;
  /** What is handled, as an analyst writes it. */
  readonly object?: string;
  /** The one thing that moves in the picture, for example `ring-3`. */
  readonly item?: string;
  readonly from?: string;
  readonly to?: string;
  readonly note?: string;
}

export interface ScriptCycle {
  readonly start: number;
  readonly setAside?: string;
}

/** What both hands do, frame by frame: the film is drawn from it, so its boundaries are the true ones. */
export interface Script {
  readonly id: 'present' | 'improved';
  readonly framesPerSecond: number;
  readonly left: readonly ScriptMotion[];
  readonly right: readonly ScriptMotion[];
  readonly cycles: readonly ScriptCycle[];
  /** End of the last cycle, in frames. */
  readonly cyclesEnd: number;
  /** Length of the film in frames. */
  readonly frames: number;
}

export const framesPerSecond = 30;

/** A repeatable stream of numbers in 0 … 1 (mulberry32, public domain). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A standard normal number (Box and Muller). */
export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

export type MotionDetails = Omit<ScriptMotion, 'kind' | 'start'>;

/** Writes the two rows of a script from left to right in time. */
export class ScriptWriter {
  readonly rows: Record<Hand, ScriptMotion[]> = { left: [], right: [] };
  readonly ends: Record<Hand, number> = { left: 0, right: 0 };
  readonly #random: () => number;

  constructor(seed: number) {
    this.#random = seededRandom(seed);
  }

  /** Adds a motion of about `seconds`: log-normal about it, `spread` being the standard deviation of the logarithm. */
  add(hand: Hand, kind: MotionKind, seconds: number, details: MotionDetails = {}, spread = 0.11): void {
    const varied = seconds * Math.exp(spread * normal(this.#random));
    this.addFrames(hand, kind, Math.max(3, Math.round(varied * framesPerSecond)), details);
  }

  addFrames(hand: Hand, kind: MotionKind, frames: number, details: MotionDetails = {}): void {
    this.rows[hand].push({ kind, start: this.ends[hand], ...details });
    this.ends[hand] += frames;
  }

  /** Lets the hand's last motion go on to a frame that is not before its end. */
  stretch(hand: Hand, frame: number): void {
    this.ends[hand] = Math.max(this.ends[hand], frame);
  }

  /** Fills the time up to a frame with one motion; less than three frames go to the motion before. */
  fill(hand: Hand, kind: MotionKind, frame: number, details: MotionDetails = {}): void {
    const gap = frame - this.ends[hand];
    if (gap >= 3) this.addFrames(hand, kind, gap, details);
    else this.stretch(hand, frame);
  }
}

/** End frame of the motion at `index`. */
export function motionEnd(row: readonly ScriptMotion[], index: number, frames: number): number {
  return row[index + 1]?.start ?? frames;
}
