import type { Micros } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { FrameClock } from '@evenhand/core/ground/study';
import type { FrameHandle, FrameReader, FrameSpan } from './film.ts';

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
  _reader: FrameReader,
  _clock: FrameClock,
  _options: { readonly ports?: PlayerPorts; readonly start?: number } = {},
): Player {
  throw new Error('not built yet');
}
