import {
  type Finding,
  type FindingPlace,
  type NumberRange,
  rangeFault,
} from '../../ground/findings/index.ts';

export {
  firstFault as firstOf,
  foundText,
  largest,
  shortNumber as shortText,
} from '../../ground/findings/index.ts';

/** A finding when a number that a person gave to this step lies outside its range or is no number. */
export function boundsFault(
  what: string,
  value: number,
  range: NumberRange,
  where: FindingPlace = {},
): Finding | undefined {
  return rangeFault('evaluate/number', what, value, range, where);
}
