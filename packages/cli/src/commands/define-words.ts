import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type TimeUnit, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';

/** A number that a person typed, with a decimal point or a decimal comma. The error is a sentence. */
export function readNumber(option: string, text: string): Result<number, string> {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return /^[+-]?(?:\d+\.?\d*|\.\d+)$/.test(plain)
    ? ok(Number(plain))
    : fail(`--${option} ${text} is no number.`);
}

/** A whole number of 0 or more. */
export function readWhole(option: string, text: string): Result<number, string> {
  return /^\d{1,15}$/.test(text.trim())
    ? ok(Number(text))
    : fail(`--${option} ${text} is no whole number of 0 or more.`);
}

/**
 * A percentage as a share of 1. A bare number between 0 and 1 is refused, for 0.95 may be meant as 95 % or as it stands;
 * with the sign it is taken as it stands.
 */
export function readPercent(option: string, text: string): Result<number, string> {
  const bare = text.trim().replace(/\s*%$/, '');
  const number = readNumber(option, bare);
  if (!number.ok) return fail(`--${option} ${text} is no percentage. Write such as 5 or 5%.`);
  const signed = bare !== text.trim();
  if (!signed && number.value > 0 && number.value < 1) {
    return fail(
      `--${option} ${text} is a percentage: write ${number.value * 100} or, if it is meant so, ${text}%.`,
    );
  }
  return ok(number.value / 100);
}

/** Numbers with commas between them; with semicolons or blanks between them, a comma is a decimal comma. */
export function readNumbers(option: string, text: string): Result<readonly number[], string> {
  const parts = /[;\s]/.test(text.trim()) ? text.trim().split(/\s*;\s*|\s+/) : text.trim().split(',');
  const numbers: number[] = [];
  for (const [index, part] of parts.filter((item) => item !== '').entries()) {
    // "8, 7, 8" has blanks and commas: a comma at the end of a part is no decimal comma.
    const number = readNumber(option, part.replace(/,$/, ''));
    if (!number.ok) return fail(`--${option}: number ${index + 1}, “${part}”, is no number.`);
    numbers.push(number.value);
  }
  return ok(numbers);
}

/** "NAME=WORD; NAME=WORD" by the key of the name; what stands behind the last = is the word. */
export function readPairs(
  option: string,
  text: string,
  form: string,
): Result<ReadonlyMap<string, string>, string> {
  const found = new Map<string, string>();
  for (const part of text.split(';').filter((item) => item.trim() !== '')) {
    const at = part.lastIndexOf('=');
    const [name, word] = [part.slice(0, Math.max(0, at)).trim(), part.slice(at + 1).trim()];
    if (at < 0 || name === '' || word === '') return fail(`--${option}: “${part.trim()}” is not ${form}.`);
    if (found.has(nameKey(name))) return fail(`--${option} names “${name}” twice.`);
    found.set(nameKey(name), word);
  }
  return ok(found);
}

/** One number for all, or "NAME=N; NAME=N" for single elements. */
export interface NamedNumbers {
  readonly all: number | undefined;
  readonly byName: ReadonlyMap<string, number>;
}

export function readNamed(
  option: string,
  text: string,
  read: typeof readNumber = readAmount,
): Result<NamedNumbers, string> {
  const byName = new Map<string, number>();
  let all: number | undefined;
  for (const part of text.split(';').filter((item) => item.trim() !== '')) {
    const at = part.lastIndexOf('=');
    const number = read(option, part.slice(at + 1).trim());
    if (!number.ok) return number;
    const name = part.slice(0, Math.max(0, at)).trim();
    if (at < 0) all = number.value;
    else if (name === '') return fail(`--${option}: no name stands before “${part.trim()}”.`);
    else if (byName.has(nameKey(name))) return fail(`--${option} names “${name}” twice.`);
    else byName.set(nameKey(name), number.value);
  }
  return ok({ all, byName });
}

function readAmount(option: string, text: string): Result<number, string> {
  const number = readNumber(option, text);
  return number.ok ? number : fail(`--${option}: “${text}” is neither a number nor NAME=NUMBER.`);
}

/** The first name that no element bears, as a sentence. */
export function strayName(
  option: string,
  named: ReadonlyMap<string, unknown>,
  names: readonly string[],
): string | undefined {
  const keys = names.map(nameKey);
  const stray = [...named.keys()].find((name) => !keys.includes(name));
  return stray === undefined
    ? undefined
    : `--${option} names “${stray}”, which is no element. There are: ${names.join('; ')}.`;
}

export function nameKey(name: string): string {
  return name.trim().toLowerCase();
}

export function readUnit(text: string | undefined): Result<TimeUnit, string> {
  const word = (text ?? 'seconds').toLowerCase();
  const unit = timeUnitNames.find((name) => name === word || timeUnits[name].symbol.toLowerCase() === word);
  return unit === undefined
    ? fail(`--unit ${word} is not known; it can be ${timeUnitNames.join(', ')}.`)
    : ok(unit);
}

export const confidenceDefault = 0.95;
export const precisionDefault = 0.05;

/** The confidence of an interval as a share of 1; 95 % when nothing is given. */
export function readConfidence(text: string | undefined): Result<number, string> {
  if (text === undefined) return ok(confidenceDefault);
  const share = readPercent('confidence', text);
  if (!share.ok || (share.value >= 0.01 && share.value <= 0.999999)) return share;
  return fail(`--confidence ${text} is not between 1 and 99.9999 %.`);
}
