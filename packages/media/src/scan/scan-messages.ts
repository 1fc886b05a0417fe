import type { Finding } from '@evenhand/core/ground/findings';
import type { FilmSource } from '../source.ts';
import type { BandColour } from './band-colour.ts';
import type { BandClick } from './band-path.ts';
import type { Region } from './movement.ts';
import type { ByHand, ScannedTrack } from './scan-tracks.ts';

/** A band that was clicked: its colour, and where it is in one frame, in pixels of the film as shown. */
export interface Band {
  readonly colour: BandColour;
  readonly click: BandClick;
}

/** What is looked for in a film. Places are in pixels of the film as shown. */
export type ScanWish =
  | { readonly kind: 'bands'; readonly bands: ByHand<Band> }
  | { readonly kind: 'energy'; readonly regions: ByHand<readonly Region[]> };

export interface ScanRequest {
  readonly film: FilmSource;
  readonly wish: ScanWish;
}

export type ScanAnswer =
  | { readonly kind: 'opened'; readonly frames: number }
  /** One more frame was looked at. */
  | { readonly kind: 'frame' }
  | { readonly kind: 'done'; readonly scanned: ScannedTrack }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] }
  | { readonly kind: 'failed'; readonly reason: string };
