import type { Micros, Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { FrameClock, FrameTimes } from '@evenhand/core/ground/study';

/** What a film is, read from its index alone; nothing of the picture was decoded. */
export interface FilmIndex {
  /** The file's name as the person knows it. */
  readonly name: string;
  readonly container: 'MP4' | 'MOV' | 'WebM' | 'MKV';
  /** The codec in plain words, such as `H.264`. */
  readonly codec: string;
  /** The codec with its profile and level, such as `avc1.640028`. */
  readonly codecString: string;
  /** The track's own time scale: ticks in one second, whole. */
  readonly ticksPerSecond: number;
  /** Presentation time of every shown frame in ticks, growing; frame k of the film is `ticks[k]`. */
  readonly ticks: readonly number[];
  /** End of the last frame, in ticks. */
  readonly endTick: number;
  /** The frames that can be decoded without another one, growing. */
  readonly keyFrames: readonly number[];
  /** Clockwise turn, in degrees, that brings the coded picture upright. */
  readonly rotation: 0 | 90 | 180 | 270;
  /** The upright picture is mirrored left to right (after the turn). */
  readonly flip: boolean;
  /** Size of the coded picture in pixels, before the turn. */
  readonly codedWidth: number;
  readonly codedHeight: number;
  /** Size as shown: after the turn and with square pixels. */
  readonly width: number;
  readonly height: number;
  /** The time between frames varies by more than the rounding of the film's time scale. */
  readonly variableRate: boolean;
}

/** An index in the document's form, with what the analyst should know about the film. */
export interface IndexedFilm {
  readonly index: FilmIndex;
  readonly frameTimes: FrameTimes;
  /** The same times unpacked: time of a frame in microseconds, frame at a time. */
  readonly clock: FrameClock;
  /** Notes and warnings, never errors. */
  readonly notes: readonly Finding[];
}

/** A film that is open: its frames can be read until `dispose`. */
export interface OpenFilm extends IndexedFilm {
  readonly reader: FrameReader;
  readonly dispose: () => void;
}

/** One decoded frame. The holder must `close` it, once, when it is no longer drawn: decoded pictures are large. */
export interface FrameHandle {
  readonly frame: number;
  /** The frame's own presentation time. */
  readonly time: Micros;
  /** Size as shown, upright, in pixels. */
  readonly width: number;
  readonly height: number;
  /** Draws the upright picture into the rectangle, stretched to fill it. Does nothing once closed. */
  readonly draw: (
    context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
    x: number,
    y: number,
    width: number,
    height: number,
  ) => void;
  readonly close: () => void;
}

export type Direction = 1 | -1;

/** Exact frames of one film. Frame k is always frame k: a picture that cannot be had is a finding, never a neighbour. */
export interface FrameReader {
  readonly frames: number;
  /**
   * The frame `k`, decoded. Frames near `k` are decoded ahead in the direction of the last moves.
   * A later call gives up the decoding of an earlier one that is far away, but every call is answered.
   * @throws RangeError when `k` is not a frame of the film
   * @throws DOMException `AbortError` when `signal` aborts or the reader is disposed
   */
  readonly frame: (
    k: number,
    options?: { readonly signal?: AbortSignal },
  ) => Promise<Result<FrameHandle, Finding>>;
  /** The frame `k` if it is decoded already. */
  readonly peek: (k: number) => FrameHandle | undefined;
  /** Why `k` could not be decoded, if that was tried and failed. */
  readonly fault: (k: number) => Finding | undefined;
  /** Says where the film is being shown and which way it moves, so that decoding runs ahead of it. */
  readonly follow: (k: number, direction: Direction) => void;
  /** How many frames from `k` on, in that direction, are decoded without a gap; stops at the film's ends. */
  readonly buffered: (k: number, direction: Direction) => number;
  /**
   * Holds decoded frames at the end of a span at which playing in that direction enters it, at most a fifth of what the
   * cache holds, so that a loop can begin again at once; `undefined` lets them go.
   */
  readonly keep: (span: FrameSpan | undefined, direction?: Direction) => void;
  /** Called when a frame was decoded or has failed. Returns the way to stop. */
  readonly onDecoded: (listener: () => void) => () => void;
  readonly dispose: () => void;
}

/** Frames from `from` up to, and without, `to`. */
export interface FrameSpan {
  readonly from: number;
  readonly to: number;
}
