import { formatVersion } from './schema.ts';

type Json = Readonly<Record<string, unknown>>;

/** One step a version: migrations[n] takes a document of format n to format n + 1. Format 1 is the first. */
const migrations: Readonly<Record<number, (document: Json) => Json>> = {
  // Format 2 adds elements and examinations, both optional.
  1: (document) => ({ ...document, formatVersion: 2 }),
  // Format 3 adds time studies and comparisons, both optional.
  2: (document) => ({ ...document, formatVersion: 3 }),
  // Format 4 adds tracks, calibration, confidence of proposals and kept works, all optional.
  3: (document) => ({ ...document, formatVersion: 4 }),
};

export type Migrated =
  | { readonly kind: 'ready'; readonly document: Json }
  | { readonly kind: 'newer'; readonly found: number }
  | { readonly kind: 'none' };

/** Brings a document of any known format up to the present one. */
export function migrate(document: unknown): Migrated {
  if (typeof document !== 'object' || document === null) return { kind: 'none' };
  let current = document as Json;
  let version = current.formatVersion;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return { kind: 'none' };
  if (version > formatVersion) return { kind: 'newer', found: version };
  while (version < formatVersion) {
    const step = migrations[version];
    if (step === undefined) return { kind: 'none' };
    current = step(current);
    version += 1;
  }
  return { kind: 'ready', document: current };
}
