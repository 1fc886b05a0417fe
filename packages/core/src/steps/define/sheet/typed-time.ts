import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, type FindingPlace, finding } from '../../../ground/findings/index.ts';
import { parseTime, type TimeUnit, timeUnits } from '../../../ground/units/index.ts';

/** What stands in the cell of a reading: nothing, a reading that was missed, or a time, perhaps set aside. */
export type TypedTime =
  | { readonly kind: 'empty' }
  | { readonly kind: 'missed' }
  | { readonly kind: 'time'; readonly us: number; readonly setAside?: string };

/** A reading that was missed, as people write it. */
const missedForms: ReadonlySet<string> = new Set(['-', '–', '—', '−', 'm', 'missed']);
/** The bounds of a reading in the study file: 11 days, and 200 letters of reason. */
const longestUs = 1e12;
const longestReason = 200;

/**
 * A time as a person types it into a cell, in whole microseconds: “2.35” or “2,35” in the unit of the sheet, “0.04 min”,
 * “65 TMU” or “1:02.5” in their own, “-”, “m” or “missed” for a reading that was missed, and “38.5 (part fell)” for one
 * that is set aside with its reason. A time of 0 is taken only when it is set aside.
 * @param where the place that a finding names
 */
export function toUs(text: string, unit: TimeUnit, where: FindingPlace = {}): Result<TypedTime, Finding> {
  const trimmed = text.trim();
  if (trimmed === '') return ok({ kind: 'empty' });
  if (missedForms.has(trimmed.toLowerCase())) return ok({ kind: 'missed' });
  const [, before = trimmed, inside] = /^(.*?)\s*\((.*)\)$/s.exec(trimmed) ?? [];
  const reason = inside?.trim();
  const time = parseTime(before, unit);
  const words = { found: shortened(trimmed), unit: timeUnits[unit].name };
  if (!time.ok) return fail(finding('define/cell-not-time', where, words));
  const wrong = timeFault(time.value, before, reason, where, words) ?? reasonFault(reason, where);
  if (wrong !== undefined) return fail(wrong);
  return ok({ kind: 'time', us: time.value, ...(reason === undefined ? {} : { setAside: reason }) });
}

function timeFault(
  us: number,
  text: string,
  reason: string | undefined,
  where: FindingPlace,
  words: { readonly found: string },
): Finding | undefined {
  if (us < 0) return finding('define/cell-negative', where, words);
  if (us > longestUs) return finding('define/cell-long', where, words);
  if (us > 0) return undefined;
  if (/[1-9]/.test(text)) return finding('define/cell-short', where, words);
  return reason === undefined ? finding('define/cell-zero', where, words) : undefined;
}

function reasonFault(reason: string | undefined, where: FindingPlace): Finding | undefined {
  if (reason === undefined) return undefined;
  if (reason === '') return finding('define/cell-reason', where);
  return reason.length > longestReason
    ? finding('define/cell-reason-long', where, { found: reason.length, most: longestReason })
    : undefined;
}

function shortened(text: string): string {
  return text.length <= 40 ? text : `${text.slice(0, 39)}…`;
}
