import type { Sighting } from './sighting.ts';

/** What is kept of a sighting: everything but the single landmarks. */
export interface KeptSighting {
  readonly frame: number;
  readonly trail: number;
  readonly presence: number;
  readonly right: number;
  readonly x: number;
  readonly y: number;
  readonly palm: number;
  readonly opening: number;
}

/** How many numbers a sighting takes when packed. */
export const sightingNumbers = 8;

/** @param scale pixels of the film to a pixel of the picture that was searched */
export function packSightings(sightings: readonly Sighting[], scale: number): Float32Array {
  return Float32Array.from(
    sightings.flatMap(({ frame, trail, presence, right, place, palm, opening }) => [
      frame,
      trail,
      presence,
      right,
      place.x * scale,
      place.y * scale,
      palm * scale,
      opening,
    ]),
  );
}

export function unpackSightings(packed: Float32Array): KeptSighting[] {
  return Array.from({ length: packed.length / sightingNumbers }, (_, index) => {
    const at = (offset: number) => packed[index * sightingNumbers + offset] as number;
    return {
      frame: at(0),
      trail: at(1),
      presence: at(2),
      right: at(3),
      x: at(4),
      y: at(5),
      palm: at(6),
      opening: at(7),
    };
  });
}
