import type { Micros } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { FrameClock } from '@evenhand/core/ground/study';
import type { Direction, FrameHandle, FrameReader, FrameSpan } from './film.ts';
import { speeds } from './speeds.ts';

/** What a person sees of the player. A new object whenever something changed, the same one otherwise. */
export interface PlayerState {
  /** The frame that is shown; marks are made at this one. */
  readonly frame: number;
  /** Presentation time of the shown frame. */
  readonly time: Micros;
  /** The frame that was asked for; differs from `frame` while it is being decoded. */
  readonly asked: number;
  /** A picture has been shown. */
  readonly ready: boolean;
  readonly playing: boolean;
  /** Film seconds per second, negative backward; kept while paused. */
  readonly speed: number;
  /** Playing, but held back because decoding is behind. */
  readonly waiting: boolean;
  readonly loop: FrameSpan | undefined;
  /** Why the asked frame cannot be shown. */
  readonly finding: Finding | undefined;
}

/** A frame that has just come on screen. `handle` stays open until the next one is shown; do not close it. */
export interface ShownFrame {
  readonly frame: number;
  readonly time: Micros;
  readonly handle: FrameHandle;
}

export interface Player {
  readonly state: () => PlayerState;
  /** Called after every change of `state`. Fits React's `useSyncExternalStore`. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Called once for every frame that comes on screen, in order; and at once with the one on screen, if any. */
  readonly onShown: (listener: (shown: ShownFrame) => void) => () => void;
  /** The frame on screen, to draw again after a resize. */
  readonly shown: () => ShownFrame | undefined;
  /** Pauses and shows frame `k`, held within the film. */
  readonly jump: (k: number) => void;
  /** Pauses and moves by `n` frames from the asked frame; held within the film. Inside a loop it may leave it. */
  readonly step: (n: number) => void;
  /** Plays at `speed` (default: the last one); 1/16 … 4, negative backward. At the film's end it starts over. */
  readonly play: (speed?: number) => void;
  readonly pause: () => void;
  /** Repeats a span while playing; `undefined` ends it. */
  readonly setLoop: (span: FrameSpan | undefined) => void;
  readonly dispose: () => void;
}

/** What the player needs from the world. */
export interface PlayerPorts {
  /** Milliseconds that never go back. */
  readonly now: () => number;
  /** Calls back at the next repaint. Returns the way to call it off. */
  readonly schedule: (callback: () => void) => () => void;
}

/** Plays `reader`'s frames at the film's own times. It starts paused and shows frame 0 (or `start`). */
export function createPlayer(
  reader: FrameReader,
  clock: FrameClock,
  { ports = pagePorts, start = 0 }: { readonly ports?: PlayerPorts; readonly start?: number } = {},
): Player {
  return new FramePlayer(reader, clock, ports, start);
}

const pagePorts: PlayerPorts = {
  now: () => performance.now(),
  schedule: (callback) => {
    const id = requestAnimationFrame(callback);
    return () => cancelAnimationFrame(id);
  },
};

/** Decoding may be this late, in milliseconds on the wall, before the film's clock waits for it. */
const patience = 250;
/** Before playing, this many frames are decoded, or this long is waited, whatever comes first. */
const headStart = { frames: 8, milliseconds: 400 };
/** A repaint that comes later than this (a hidden window) does not move the film. Milliseconds. */
const longestGap = 500;
/** Where the film's clock stood at a moment of the wall's clock. */
interface Anchor {
  readonly wall: number;
  readonly media: number;
}

class FramePlayer implements Player {
  readonly #reader: FrameReader;
  readonly #clock: FrameClock;
  readonly #ports: PlayerPorts;
  readonly #listeners = new Set<() => void>();
  readonly #shownListeners = new Set<(shown: ShownFrame) => void>();
  #state: PlayerState;
  #shown: ShownFrame | undefined;
  #request: AbortController | undefined;
  #unschedule: (() => void) | undefined;
  #anchor: Anchor = { wall: 0, media: 0 };
  #lastTick = 0;
  /** Until when the head start is waited for; undefined once the film runs. */
  #startBy: number | undefined;
  #disposed = false;

  constructor(reader: FrameReader, clock: FrameClock, ports: PlayerPorts, start: number) {
    this.#reader = reader;
    this.#clock = clock;
    this.#ports = ports;
    const asked = this.#held(start);
    this.#state = {
      frame: asked,
      time: clock.timeOf(asked),
      asked,
      ready: false,
      playing: false,
      speed: 1,
      waiting: false,
      loop: undefined,
      finding: undefined,
    };
    this.#ask(asked);
  }

  readonly state = (): PlayerState => this.#state;

  readonly shown = (): ShownFrame | undefined => this.#shown;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly onShown = (listener: (shown: ShownFrame) => void): (() => void) => {
    this.#shownListeners.add(listener);
    if (this.#shown !== undefined) listener(this.#shown);
    return () => this.#shownListeners.delete(listener);
  };

  readonly jump = (k: number): void => {
    if (this.#disposed) return;
    this.#stop();
    this.#ask(this.#held(k));
  };

  readonly step = (n: number): void => {
    const { playing, frame, asked } = this.#state;
    this.jump((playing ? frame : asked) + n);
  };

  readonly play = (speed: number = this.#state.speed): void => {
    const size = Math.abs(speed);
    if (!(size >= speeds[0] && size <= 4))
      throw new RangeError(`a speed lies between 1/16 and 4, not at ${speed}`);
    if (this.#disposed) return;
    this.#request?.abort();
    this.#set({ playing: true, speed, waiting: true, finding: undefined });
    const from = this.#entry();
    const now = this.#ports.now();
    this.#anchor = { wall: now, media: this.#edge(from) };
    this.#startBy = this.#hasHeadStart(from) ? undefined : now + headStart.milliseconds;
    this.#lastTick = now;
    this.#keepLoop();
    this.#reader.follow(from, this.#direction());
    this.#schedule();
  };

  readonly pause = (): void => {
    if (!this.#state.playing) return;
    this.#stop();
    // What is on screen is what was paused at; without a picture yet, the asked frame is still waited for.
    if (this.#shown === undefined) this.#ask(this.#state.asked);
    else this.#set({ asked: this.#state.frame });
  };

  readonly setLoop = (span: FrameSpan | undefined): void => {
    const fits =
      span === undefined || (span.from >= 0 && span.from < span.to && span.to <= this.#clock.frames);
    if (!fits) throw new RangeError(`a loop of frames ${span?.from} to ${span?.to} does not lie in the film`);
    this.#set({ loop: span });
    this.#keepLoop();
    if (this.#state.playing) this.play();
  };

  readonly dispose = (): void => {
    if (this.#disposed) return;
    this.#disposed = true;
    this.#request?.abort();
    this.#unschedule?.();
    this.#reader.keep(undefined);
    this.#shown?.handle.close();
    this.#shown = undefined;
    this.#listeners.clear();
    this.#shownListeners.clear();
  };

  #held(k: number): number {
    if (!Number.isFinite(k)) throw new RangeError(`a frame must be a number, got ${k}`);
    return Math.max(0, Math.min(this.#clock.frames - 1, Math.round(k)));
  }

  #direction(): Direction {
    return this.#state.speed < 0 ? -1 : 1;
  }

  /** The span that is played: the loop, or the whole film. */
  #span(): FrameSpan {
    return this.#state.loop ?? { from: 0, to: this.#clock.frames };
  }

  /** The frame that playing begins with: the present one, or the other end of the span when it has run out of it. */
  #entry(): number {
    const { from, to } = this.#span();
    const present = this.#state.asked;
    const { loop } = this.#state;
    const outside = present < from || present >= to;
    if (this.#direction() > 0) return outside || (loop === undefined && present === to - 1) ? from : present;
    return outside || (loop === undefined && present === from) ? to - 1 : present;
  }

  /** Film time at which a frame is entered in the direction of play: its start, or the last moment of it. */
  #edge(frame: number): number {
    return this.#direction() > 0 ? this.#clock.timeOf(frame) : this.#clock.timeOf(frame + 1) - 1;
  }

  #keepLoop(): void {
    this.#reader.keep(this.#state.loop, this.#direction());
  }

  #schedule(): void {
    this.#unschedule?.();
    this.#unschedule = this.#ports.schedule(() => this.#tick());
  }

  #stop(): void {
    this.#unschedule?.();
    this.#unschedule = undefined;
    this.#request?.abort();
    this.#request = undefined;
    if (this.#state.playing) this.#set({ playing: false, waiting: false });
  }

  /** One repaint while playing. */
  #tick(): void {
    if (this.#disposed || !this.#state.playing) return;
    const now = this.#ports.now();
    const gap = now - this.#lastTick;
    this.#lastTick = now;
    if (this.#startBy !== undefined) this.#awaitHeadStart(now, this.#startBy);
    else {
      if (gap > longestGap) this.#anchor = { ...this.#anchor, wall: this.#anchor.wall + gap };
      this.#advance(now);
    }
    if (this.#state.playing) this.#schedule();
  }

  #hasHeadStart(from: number): boolean {
    const span = this.#span();
    const left = this.#direction() > 0 ? span.to - from : from - span.from + 1;
    return this.#reader.buffered(from, this.#direction()) >= Math.min(headStart.frames, left);
  }

  #awaitHeadStart(now: number, startBy: number): void {
    if (now < startBy && !this.#hasHeadStart(this.#clock.frameAt(this.#anchor.media))) return;
    this.#startBy = undefined;
    this.#anchor = { ...this.#anchor, wall: now };
    this.#advance(now);
  }

  #advance(now: number): void {
    const media = this.#mediaAt(now);
    if (media === undefined) return;
    const target = this.#clock.frameAt(media);
    this.#reader.follow(target, this.#direction());
    if (this.#shown?.frame === target || this.#present(target)) {
      this.#set({ asked: target, waiting: false, finding: undefined });
      return;
    }
    const fault = this.#reader.fault(target);
    if (fault !== undefined) {
      this.#set({ asked: target, waiting: false, finding: fault });
      return;
    }
    this.#presentLatest(target);
    this.#waitFor(target, media, now);
  }

  /** Film time now, wrapped at the ends of a loop; at the end of the film playing stops and there is none. */
  #mediaAt(now: number): number | undefined {
    const { from, to } = this.#span();
    const [low, high] = [this.#clock.timeOf(from), this.#clock.timeOf(to)];
    const media = this.#anchor.media + Math.trunc((now - this.#anchor.wall) * 1000 * this.#state.speed);
    if (media >= low && media < high) return media;
    if (this.#state.loop === undefined) {
      this.#stop();
      this.#ask(this.#direction() > 0 ? to - 1 : from);
      return undefined;
    }
    const length = high - low;
    const wrapped = low + ((((media - low) % length) + length) % length);
    this.#anchor = { wall: now, media: wrapped };
    return wrapped;
  }

  /** Late: of the frames between the one on screen and the target, shows the newest that is decoded. */
  #presentLatest(target: number): void {
    const direction = this.#direction();
    const from = this.#shown?.frame ?? target;
    for (let frame = target - direction; (frame - from) * direction > 0; frame -= direction) {
      if (this.#present(frame)) return;
    }
  }

  /** When decoding is too late, the film's clock stands before the next frame until it comes: no frame is left behind. */
  #waitFor(target: number, media: number, now: number): void {
    const present = this.#shown?.frame ?? target;
    const next = this.#held(present + this.#direction());
    const inOrder = (target - present) * this.#direction() > 0;
    const due = inOrder ? this.#edge(next) : this.#edge(target);
    const late = Math.abs(media - due) / 1000 / Math.abs(this.#state.speed);
    if (!this.#state.waiting && late <= patience) return;
    this.#anchor = { wall: now, media: due };
    this.#set({ asked: this.#clock.frameAt(due), waiting: true });
  }

  #present(frame: number): boolean {
    const handle = this.#reader.peek(frame);
    if (handle === undefined) return false;
    this.#show(handle);
    return true;
  }

  #show(handle: FrameHandle): void {
    const before = this.#shown;
    this.#shown = { frame: handle.frame, time: handle.time, handle };
    this.#set({ frame: handle.frame, time: handle.time, ready: true });
    for (const listener of [...this.#shownListeners]) listener(this.#shown);
    before?.handle.close();
  }

  #ask(k: number): void {
    this.#request?.abort();
    const request = new AbortController();
    this.#request = request;
    this.#set({ asked: k, finding: undefined });
    // It is asked for even when it is there: decoding then runs ahead of it.
    const there = this.#shown?.frame === k || this.#present(k);
    this.#reader.frame(k, { signal: request.signal }).then(
      (result) => {
        if (result.ok && (there || request.signal.aborted)) result.value.close();
        else if (result.ok) this.#show(result.value);
        else if (!request.signal.aborted) this.#set({ finding: result.error });
      },
      (error: unknown) => {
        // Given up for another frame, or the film was closed: nothing to tell.
        if (!(error instanceof DOMException && error.name === 'AbortError')) throw error;
      },
    );
  }

  #set(change: Partial<PlayerState>): void {
    const names = Object.keys(change) as (keyof PlayerState)[];
    if (names.every((name) => this.#state[name] === change[name])) return;
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener();
  }
}
