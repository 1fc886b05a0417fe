import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';

/** Keeps the data of tracks under the hash of their bytes, beside the films. A track never changes under its hash. */
export interface TrackStore {
  /**
   * Keeps the bytes of a track file once they are flushed; asked again, it does nothing. Findings `track/hash` when
   * they are not those the hash names, and those of `decodeTrack`.
   */
  put(sha256: string, bytes: Uint8Array): Promise<Result<true, Finding>>;
  /** The bytes. Findings `store/not-found`, and `track/hash` when they were changed on the disk. */
  read(sha256: string): Promise<Result<Uint8Array, Finding>>;
  /** Removes what a cut-off writing left. Tracks stay when no study names them: undo may bring them back. */
  sweep(): Promise<readonly string[]>;
}
