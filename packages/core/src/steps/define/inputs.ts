import {
  type Finding,
  type FindingPlace,
  rangeFault as faultOfRange,
  type NumberRange,
} from '../../ground/findings/index.ts';

export {
  firstFault,
  foundText,
  largest,
  type NumberRange,
  shortNumber,
  smallest,
} from '../../ground/findings/index.ts';

/** A finding when a number that a person gave to this step lies outside its range or is no number. */
export function rangeFault(
  what: string,
  value: number,
  range: NumberRange,
  where: FindingPlace = {},
): Finding | undefined {
  return faultOfRange('define/number', what, value, range, where);
}
