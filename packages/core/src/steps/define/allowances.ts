import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import {
  type AllowanceColumn,
  type AllowanceEditionId,
  type AllowanceRowId,
  allowanceEditions,
} from '../../ground/tables/index.ts';
import { percentText } from '../../ground/units/index.ts';
import { foundText, largest, rangeFault } from './inputs.ts';

/**
 * What an allowance is a share of: the basic time (standard = basic · (1 + share)), or the shift, so that the share of
 * the shift is left for it (standard = basic / (1 − share)). The same figure gives another standard time in each.
 */
export type AllowanceConvention = 'share-of-basic-time' | 'share-of-shift';

export const conventionWords: Readonly<Record<AllowanceConvention, string>> = {
  'share-of-basic-time': 'a share of the basic time: standard time = basic time × (1 + allowance)',
  'share-of-shift': 'a share of the shift: standard time = basic time ÷ (1 − allowance)',
};

/** An allowance is never a bare number. The share is 0 or more; of the shift it is below 1. */
export interface Allowance {
  readonly share: number;
  readonly convention: AllowanceConvention;
}

/** What basic time is multiplied with; 1 or more. */
export function allowanceFactor({ share, convention }: Allowance): Result<number, Finding> {
  const fault = allowanceFault({ share, convention });
  if (fault !== undefined) return fail(fault);
  return ok(convention === 'share-of-basic-time' ? 1 + share : 1 / (1 - share));
}

/** The same allowance in the other convention: share of the shift = share of basic time / (1 + share of basic time). */
export function inConvention(
  allowance: Allowance,
  convention: AllowanceConvention,
): Result<Allowance, Finding> {
  const fault = allowanceFault(allowance);
  if (fault !== undefined) return fail(fault);
  if (allowance.convention === convention) return ok(allowance);
  const { share } = allowance;
  return ok({
    share: convention === 'share-of-shift' ? share / (1 + share) : share / (1 - share),
    convention,
  });
}

/** A finding when an allowance cannot be given: below 0, no number, or the whole shift and more. */
export function allowanceFault(
  { share, convention }: Allowance,
  what = 'The allowance',
): Finding | undefined {
  if (convention === 'share-of-shift' && share >= 1) {
    return finding(
      'define/allowance-shift',
      {},
      { what, found: share > largest ? foundText(share) : percentText(share) },
    );
  }
  return rangeFault(what, share, { least: 0, most: 10 });
}

/** A row of the table with the level that was chosen: its position in the row, from 0. */
export interface AllowanceChoice {
  readonly row: AllowanceRowId;
  readonly level: number;
}

export interface AllowancePart {
  readonly row: AllowanceRowId;
  readonly words: string;
  readonly percent: number;
}

export interface Relaxation extends Allowance {
  readonly convention: 'share-of-basic-time';
  readonly percent: number;
  readonly parts: readonly AllowancePart[];
  readonly edition: AllowanceEditionId;
  readonly caution: string;
}

/**
 * The sum of the rows that apply, from one edition of the published table: a share of the basic time of the worker's own
 * work, never of machine time. Editions differ, so rows of two editions are never added.
 * @param column which of the edition's columns; a person chooses it
 */
export function relaxationFrom(
  edition: AllowanceEditionId,
  column: AllowanceColumn,
  choices: readonly AllowanceChoice[],
): Result<Relaxation, Finding> {
  const { rows, columns, caution, name } = allowanceEditions[edition];
  const at = columns.indexOf(column);
  if (at < 0)
    return fail(finding('define/allowance-column', {}, { column, edition: name, known: columns.join(', ') }));
  const parts: AllowancePart[] = [];
  for (const { row, level } of choices) {
    const facts = rows.find(({ id }) => id === row);
    const percent = facts?.levels[level]?.percents[at];
    if (facts === undefined || percent === undefined)
      return fail(finding('define/allowance-row', {}, { row, edition: name }));
    if (percent === null) {
      return fail(
        finding(
          'define/allowance-blank',
          {},
          { row: facts.words, level: facts.levels[level]?.words ?? '', column },
        ),
      );
    }
    if (parts.some((part) => part.row === row))
      return fail(finding('define/allowance-twice', {}, { row: facts.words }));
    parts.push({ row, words: `${facts.words}: ${facts.levels[level]?.words ?? ''}`, percent });
  }
  const percent = parts.reduce((sum, part) => sum + part.percent, 0);
  return ok({ share: percent / 100, percent, convention: 'share-of-basic-time', parts, edition, caution });
}
