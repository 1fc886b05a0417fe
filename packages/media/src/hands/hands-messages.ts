import type { Finding } from '@evenhand/core/ground/findings';
import type { FilmSource } from '../source.ts';
import type { CameraMoves } from './camera-watch.ts';
import type { TrackerSettings } from './hand-tracker.ts';
import type { Stretch } from './stretches.ts';

/** What the page asks of a worker that seeks hands. */
export type HandsRequest =
  | { readonly kind: 'open'; readonly film: FilmSource; readonly settings: TrackerSettings }
  | { readonly kind: 'search'; readonly stretch: Stretch };

/** What the worker tells. */
export type HandsAnswer =
  | { readonly kind: 'opened' }
  /** One more frame was searched. */
  | { readonly kind: 'frame' }
  | {
      readonly kind: 'searched';
      readonly stretch: Stretch;
      readonly sightings: Float32Array;
      readonly camera: CameraMoves;
    }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] }
  | { readonly kind: 'failed'; readonly reason: string };
