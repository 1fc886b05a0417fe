declare const brand: unique symbol;

type Branded<Base, Name extends string> = Base & { readonly [brand]: Name };

/** A span or a moment of time: integer microseconds. */
export type Micros = Branded<number, 'Micros'>;

/** A frame of a film, counted from 0 in the order of presentation; the number of frames is the end of the film. */
export type FrameIndex = Branded<number, 'FrameIndex'>;

/** A length on the bench: millimetres, fractions allowed. */
export type Millimetres = Branded<number, 'Millimetres'>;

/**
 * @param value whole microseconds
 * @throws RangeError when the value is not a safe integer
 */
export function micros(value: number): Micros {
  if (!Number.isSafeInteger(value)) {
    throw new RangeError(`a time must be a whole number of microseconds, got ${value}`);
  }
  return value as Micros;
}

/**
 * @param value frame number, 0 or more
 * @throws RangeError when the value is not a safe integer of 0 or more
 */
export function frameIndex(value: number): FrameIndex {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new RangeError(`a frame must be a whole number of 0 or more, got ${value}`);
  }
  return value as FrameIndex;
}

/** Rounds half away from zero to whole microseconds. */
export function roundMicros(value: number): Micros {
  if (!Number.isFinite(value)) throw new RangeError(`a time must be finite, got ${value}`);
  const rounded = value < 0 ? -Math.round(-value) : Math.round(value);
  return micros(rounded === 0 ? 0 : rounded);
}
