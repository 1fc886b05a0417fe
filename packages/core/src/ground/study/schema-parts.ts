import { z } from 'zod';
import { type MotionKind, motionKinds } from '../tables/index.ts';

/** Shapes that several parts of the study document share. */
export const id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'an id is 1 to 64 letters, digits, “-” or “_”');
export const shortText = z.string().max(200);
export const longText = z.string().max(20_000);
export const count = z.int().min(0);
/** A boundary: a frame index in a filmed method, microseconds in any other. */
export const boundary = z.int().min(0);

export const hand = z.enum(['left', 'right']);
export const motionKind = z.enum(motionKinds as [MotionKind, ...MotionKind[]]);

/** Data that nobody changes in place. */
export type Frozen<T> = T extends (infer Item)[]
  ? readonly Frozen<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Frozen<T[Key]> }
    : T;
