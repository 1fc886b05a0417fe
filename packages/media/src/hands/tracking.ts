import type { Finding } from '@evenhand/core/ground/findings';
import type { Track } from '@evenhand/core/record';
import type { CameraMoves } from './camera-watch.ts';
import type { TrackerSettings } from './hand-tracker.ts';

/** How far the search for hands has come. */
export interface HandProgress {
  readonly done: number;
  readonly frames: number;
  /** Frames a second over the last few seconds; undefined before it can be told. */
  readonly rate: number | undefined;
  /** Undefined before it can be told. */
  readonly secondsLeft: number | undefined;
}

/**
 * What was seen in one stretch of the film, finished: plain data that may be kept in the browser's database, so that a
 * search that was ended can go on later. It rests on the film and on `handsVersion` alone.
 */
export interface HandStretch {
  /** `handsVersion` of the program that made it; others are searched anew. */
  readonly version: number;
  /** Frames from `from` up to, and without, `to`. */
  readonly from: number;
  readonly to: number;
  /** Sightings, `sightingNumbers` to each, ordered by frame. */
  readonly sightings: Float32Array;
  readonly camera: CameraMoves;
}

export interface TrackFilmOptions {
  /** One or two workers (default 2); two are faster where the machine has two processors to spare. */
  readonly workers?: 1 | 2;
  /** The picture is a mirror image: what looks like the left hand is the right one. */
  readonly mirrored?: boolean;
  /** Called a few times a second. */
  readonly onProgress?: (progress: HandProgress) => void;
  /** Called with each finished stretch, to be kept for `resumeFrom`. */
  readonly onStretch?: (stretch: HandStretch) => void;
  /** Stretches that an earlier search finished in the same film. */
  readonly resumeFrom?: readonly HandStretch[];
  readonly signal?: AbortSignal;
  /** Other settings than the usual ones, for trials; stretches of an earlier search must have had the same. */
  readonly settings?: Partial<TrackerSettings>;
}

/** The hands of a film, and what a person should know before they rely on it. */
export interface TrackedFilm {
  readonly track: Track;
  readonly report: HandReport;
  /** Warnings and notes: no hands, one hand only, more than two, a camera that moves. */
  readonly findings: readonly Finding[];
}

/** What was found, counted in frames. */
export interface HandReport {
  readonly frames: number;
  readonly both: number;
  readonly leftOnly: number;
  readonly rightOnly: number;
  readonly none: number;
  /** Frames in which three hands or more were seen; the two that go on best are kept. */
  readonly more: number;
}

/** Counts up when the same film gives other sightings. */
export const handsVersion = 2;
