import type { Decoder, MakeDecoder, Picture } from './decoder.ts';
import type { Feed } from './demux.ts';
import type { Run } from './film-index.ts';
import { reasonOf } from './reason.ts';

/** What a session decodes. */
export interface DecodePlan {
  readonly run: Run;
  /** The frame this is all for. */
  readonly target: number;
  /** Frames before this one are decoded only for the sake of later ones. */
  readonly keepFrom: number;
  /** The last frame wanted, with how many pictures must be decoded from the run's key on; undefined: on to the film's end. */
  readonly until: { readonly frame: number; readonly pictures: number } | undefined;
  /** Where to stop for now. */
  readonly goal: number;
}

export interface SessionFilm<P> {
  readonly frames: number;
  readonly feed: Feed;
  readonly makeDecoder: MakeDecoder<P>;
  /** The frame at a time stamp in microseconds; undefined for a picture that is no frame of the film. */
  readonly frameOf: (timestamp: number) => number | undefined;
}

export interface SessionEvents<P> {
  /** A frame came out, in growing order; the receiver closes it. */
  readonly picture: (frame: number, picture: P) => void;
  /** The decoder passed over a frame without a picture for it. */
  readonly missed: (frame: number) => void;
  readonly ended: () => void;
  readonly failed: (reason: string) => void;
}

/** Coded pictures given to the decoder ahead: many on the way to the target, few beyond it, where little room is left. */
const mostWaiting = { before: 24, beyond: 6 };

/**
 * One decoder at work from a key frame on. It decodes without pause up to its goal, then rests until the goal is
 * raised. It never jumps: to decode elsewhere, close it and begin another.
 */
export class DecodeSession<P extends Picture<P>> {
  readonly plan: DecodePlan;
  readonly #film: SessionFilm<P>;
  readonly #events: SessionEvents<P>;
  readonly #decoder: Decoder;
  #goal: number;
  #emitted: number;
  #over = false;
  #wake: () => void = () => {};

  constructor(plan: DecodePlan, film: SessionFilm<P>, events: SessionEvents<P>) {
    this.plan = plan;
    this.#film = film;
    this.#events = events;
    this.#goal = plan.goal;
    this.#emitted = plan.run.first - 1;
    this.#decoder = film.makeDecoder({
      output: (picture) => this.#output(picture),
      error: (reason) => this.#fail(reason),
      room: () => this.#wake(),
    });
    void this.#pump();
  }

  /** The last frame that came out; one before the run's first at the beginning. */
  get emitted(): number {
    return this.#emitted;
  }

  get over(): boolean {
    return this.#over;
  }

  /** Whether a frame is still going to come out and be kept. */
  covers(frame: number): boolean {
    const { keepFrom, until } = this.plan;
    return !this.#over && frame > this.#emitted && frame >= keepFrom && frame <= (until?.frame ?? frame);
  }

  /** Decodes on, up to `goal`. */
  raise(goal: number): void {
    if (goal <= this.#goal) return;
    this.#goal = goal;
    this.#wake();
  }

  close(): void {
    if (this.#over) return;
    this.#over = true;
    this.#decoder.close();
    this.#wake();
  }

  async #pump(): Promise<void> {
    try {
      let given = 0;
      for await (const coded of this.#film.feed.from(this.plan.run)) {
        await this.#room();
        if (this.#over) return;
        this.#decoder.decode(coded);
        given += 1;
        if (given === this.plan.until?.pictures) break;
      }
      if (this.#over) return;
      await this.#decoder.flush();
      this.#end();
    } catch (error) {
      this.#fail(reasonOf(error));
    }
  }

  async #room(): Promise<void> {
    while (!this.#over && (this.#isFull() || this.#emitted >= this.#goal)) {
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
  }

  #isFull(): boolean {
    const most = this.#emitted < this.plan.target ? mostWaiting.before : mostWaiting.beyond;
    return this.#decoder.waiting() >= most;
  }

  #output(picture: P): void {
    const frame = this.#film.frameOf(picture.timestamp);
    if (this.#over || frame === undefined || frame <= this.#emitted) {
      picture.close();
      return;
    }
    const { keepFrom, until } = this.plan;
    this.#missUpTo(frame);
    this.#emitted = frame;
    if (frame < keepFrom || frame > (until?.frame ?? frame)) picture.close();
    else this.#events.picture(frame, picture);
  }

  /** Frames come out in order: what lies between the last one and this one will not come any more. */
  #missUpTo(frame: number): void {
    const from = Math.max(this.plan.keepFrom, this.#emitted + 1);
    const to = Math.min(frame, (this.plan.until?.frame ?? frame) + 1);
    for (let missed = from; missed < to; missed += 1) this.#events.missed(missed);
  }

  #end(): void {
    if (this.#over) return;
    this.#missUpTo((this.plan.until?.frame ?? this.#film.frames - 1) + 1);
    this.close();
    this.#events.ended();
  }

  #fail(reason: string): void {
    if (this.#over) return;
    this.close();
    this.#events.failed(reason);
  }
}
