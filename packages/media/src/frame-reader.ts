import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type DecodePlan, DecodeSession, type SessionFilm } from './decode-session.ts';
import type { Picture } from './decoder.ts';
import type { Direction, FrameHandle, FrameReader, FrameSpan } from './film.ts';
import { type FrameTable, type Run, runOf } from './film-index.ts';
import { FrameCache } from './frame-cache.ts';

/** What the reader needs: the film's table, a way to decode it, and how a picture becomes a handle. */
export interface ReaderFilm<P> extends SessionFilm<P> {
  readonly table: Pick<FrameTable, 'runs' | 'orders'>;
  /** Makes a handle that takes the picture over. */
  readonly handle: (frame: number, picture: P) => FrameHandle;
  /** How many decoded frames may be held. */
  readonly capacity: number;
}

interface Waiter {
  readonly frame: number;
  readonly answer: (result: Result<FrameHandle, Finding>) => void;
  readonly abort: () => void;
}

/** A frame asked for that is this near to the work in hand is waited for; another decoder would not be faster. */
const nearFrames = 20;
/** Reading ahead does not begin anew when it is late: it catches up, up to this many frames. */
const lateFrames = 150;
const longestChunk = 48;

/** The reader behind the port, over any decoder. See `FrameReader` for what the methods promise. */
export class CachedFrameReader<P extends Picture<P>> implements FrameReader {
  readonly frames: number;
  readonly #film: ReaderFilm<P>;
  readonly #cache: FrameCache<P>;
  readonly #listeners = new Set<() => void>();
  readonly #faults = new Map<number, Finding>();
  /** Runs whose key frame does not stand alone, so that decoding cannot begin with it. */
  readonly #dependent = new Set<number>();
  #waiters: Waiter[] = [];
  #session: DecodeSession<P> | undefined;
  #position = 0;
  #direction: Direction = 1;
  #disposed = false;

  constructor(film: ReaderFilm<P>) {
    this.#film = film;
    this.frames = film.frames;
    this.#cache = new FrameCache(film.capacity);
  }

  readonly frame = (
    k: number,
    { signal }: { readonly signal?: AbortSignal } = {},
  ): Promise<Result<FrameHandle, Finding>> => {
    this.#check(k);
    if (this.#disposed || signal?.aborted) return Promise.reject(aborted());
    this.#approach(k);
    const known = this.#answerNow(k);
    if (known !== undefined) {
      this.#plan();
      return Promise.resolve(known);
    }
    return new Promise((resolve, reject) => {
      const stop = () => {
        this.#waiters = this.#waiters.filter((one) => one !== waiter);
        signal?.removeEventListener('abort', stop);
        reject(aborted());
      };
      const waiter: Waiter = {
        frame: k,
        answer: (result) => {
          signal?.removeEventListener('abort', stop);
          resolve(result);
        },
        abort: stop,
      };
      signal?.addEventListener('abort', stop);
      this.#waiters.push(waiter);
      this.#plan();
    });
  };

  readonly peek = (k: number): FrameHandle | undefined => {
    const picture = this.#cache.get(k);
    return picture && this.#film.handle(k, picture.clone());
  };

  readonly fault = (k: number): Finding | undefined => this.#faults.get(k);

  readonly follow = (k: number, direction: Direction): void => {
    this.#check(k);
    if (this.#disposed) return;
    this.#move(k, direction);
    this.#plan();
  };

  readonly buffered = (k: number, direction: Direction): number => {
    let count = 0;
    for (let at = k; at >= 0 && at < this.frames && this.#settled(at); at += direction) count += 1;
    return count;
  };

  readonly keep = (span: FrameSpan | undefined, direction: Direction = 1): void =>
    this.#cache.keep(span, direction);

  readonly onDecoded = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly dispose = (): void => {
    if (this.#disposed) return;
    this.#disposed = true;
    this.#session?.close();
    for (const waiter of [...this.#waiters]) waiter.abort();
    this.#cache.clear();
    this.#listeners.clear();
  };

  #check(k: number): void {
    if (!Number.isSafeInteger(k) || k < 0 || k >= this.frames) {
      throw new RangeError(`frame ${k} is not one of the film's ${this.frames} frames`);
    }
  }

  #settled(k: number): boolean {
    return this.#cache.has(k) || this.#faults.has(k);
  }

  #answerNow(k: number): Result<FrameHandle, Finding> | undefined {
    const handle = this.peek(k);
    if (handle !== undefined) return ok(handle);
    const fault = this.#faults.get(k);
    return fault && fail(fault);
  }

  /** A small move sets the direction of reading ahead; a jump looks forward. */
  #approach(k: number): void {
    const by = k - this.#position;
    const direction = by === 0 ? this.#direction : by < 0 && by >= -this.#chunkLength() ? -1 : 1;
    this.#move(k, direction);
  }

  #move(k: number, direction: Direction): void {
    this.#position = k;
    this.#direction = direction;
    this.#cache.follow(k, direction);
  }

  #chunkLength(): number {
    return Math.max(1, Math.min(longestChunk, Math.floor(this.#cache.capacity * 0.4)));
  }

  #aheadLength(): number {
    return Math.max(1, Math.min(longestChunk, Math.floor(this.#cache.capacity * 0.3)));
  }

  #plan(): void {
    if (this.#disposed) return;
    const want = this.#waiters.at(-1)?.frame;
    if (want !== undefined) this.#reach(want, nearFrames);
    else if (this.#direction > 0) this.#readAhead();
    else this.#readBack();
  }

  #readAhead(): void {
    const missing = this.#position + this.buffered(this.#position, 1);
    if (missing >= this.frames || missing - this.#position > this.#aheadLength()) return;
    this.#reach(missing, lateFrames);
  }

  #readBack(): void {
    const missing = this.#position - this.buffered(this.#position, -1);
    if (missing < 0 || this.#session?.covers(missing)) return;
    if (this.#position - missing + this.#chunkLength() > this.#cache.capacity * 0.85) return;
    this.#begin(missing);
  }

  #reach(want: number, slack: number): void {
    const session = this.#session;
    const near =
      session?.plan.until !== undefined || this.#run(want).first <= (session?.emitted ?? 0) + 1 + slack;
    if (session?.covers(want) && near) {
      session.raise(Math.max(want, this.#position + (this.#direction > 0 ? this.#aheadLength() : 0)));
    } else {
      this.#begin(want);
    }
  }

  #run(frame: number): Run {
    return this.#film.table.runs[runOf(this.#film.table.runs, frame)] as Run;
  }

  #begin(target: number): void {
    this.#session?.close();
    const plan = this.#direction > 0 ? this.#forwardPlan(target) : this.#backwardPlan(target);
    const session: DecodeSession<P> = new DecodeSession(plan, this.#film, {
      picture: (frame, picture) => this.#take(frame, picture),
      missed: (frame) => this.#miss(frame, 'the decoder gave no picture for it'),
      ended: () => this.#plan(),
      failed: (reason) => this.#fail(session, reason),
    });
    this.#session = session;
  }

  /** From the run's key frame on without an end; what lies shortly before the target is kept for steps back. */
  #forwardPlan(target: number): DecodePlan {
    const keepFrom = Math.max(this.#run(target).first, target - Math.floor(this.#cache.capacity * 0.3));
    const goal = Math.max(target, this.#position) + this.#aheadLength();
    return { run: this.#startRun(target), target, keepFrom, until: undefined, goal };
  }

  /** One chunk that ends with the target. Short runs before it are taken along whole. */
  #backwardPlan(target: number): DecodePlan {
    const { runs, orders } = this.#film.table;
    const length = this.#chunkLength();
    let at = runOf(runs, target);
    while (at > 0 && target - (runs[at - 1] as Run).first < length) at -= 1;
    const keepFrom = Math.max((runs[at] as Run).first, target - length + 1);
    const run = this.#startRun(keepFrom);
    const lastOrder = Math.max(...orders.slice(keepFrom, target + 1));
    const until = { frame: target, pictures: lastOrder - run.order + 1 };
    return { run, target, keepFrom, until, goal: target };
  }

  #startRun(frame: number): Run {
    const { runs } = this.#film.table;
    let at = runOf(runs, frame);
    while (at > 0 && this.#dependent.has(at)) at -= 1;
    return runs[at] as Run;
  }

  #take(frame: number, picture: P): void {
    const asked = this.#waiters.filter((waiter) => waiter.frame === frame);
    this.#waiters = this.#waiters.filter((waiter) => waiter.frame !== frame);
    for (const waiter of asked) waiter.answer(ok(this.#film.handle(frame, picture.clone())));
    this.#cache.put(frame, picture);
    this.#tell();
    this.#plan();
  }

  #miss(frame: number, reason: string): void {
    if (this.#settled(frame)) return;
    const fault = finding('film/decode', { frame }, { frame, reason });
    this.#faults.set(frame, fault);
    const asked = this.#waiters.filter((waiter) => waiter.frame === frame);
    this.#waiters = this.#waiters.filter((waiter) => waiter.frame !== frame);
    for (const waiter of asked) waiter.answer(fail(fault));
    this.#tell();
  }

  /**
   * When nothing at all came out, the key frame does not stand alone (an open group of pictures): begin one run earlier.
   * When something came out, the rest of the run is given up; the next run begins anew.
   */
  #fail({ plan, emitted }: DecodeSession<P>, reason: string): void {
    const { runs } = this.#film.table;
    const start = runOf(runs, plan.run.first);
    if (emitted < plan.run.first && start > 0) {
      this.#dependent.add(start);
    } else {
      const target = Math.min(Math.max(plan.target, emitted + 1), this.frames - 1);
      const { end } = this.#run(target);
      for (let frame = target; frame < end; frame += 1) this.#miss(frame, reason);
    }
    this.#plan();
  }

  #tell(): void {
    for (const listener of [...this.#listeners]) listener();
  }
}

function aborted(): DOMException {
  return new DOMException('the frame is not wanted any more', 'AbortError');
}
