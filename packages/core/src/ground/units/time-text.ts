import { fail, type Micros, micros, ok, type Result } from '../base/index.ts';
import { numberText } from './number-text.ts';
import { fromUnit, inUnit, type TimeUnit, timeUnits } from './time-unit.ts';

/** A time as a person reads it: number, narrow gap, unit. */
export function timeText(time: Micros, unit: TimeUnit, decimals = timeUnits[unit].decimals): string {
  return `${timeNumber(time, unit, decimals)} ${timeUnits[unit].symbol}`;
}

/** The number alone, for columns whose head names the unit. */
export function timeNumber(time: Micros, unit: TimeUnit, decimals = timeUnits[unit].decimals): string {
  return numberText(inUnit(time, unit), decimals);
}

/** A time as exact decimal seconds with no needless zeros: 1234567 µs → "1.234567". For files, not for people. */
export function exactSeconds(time: Micros): string {
  const sign = time < 0 ? '-' : '';
  const whole = Math.floor(Math.abs(time) / 1_000_000);
  const rest = String(Math.abs(time) % 1_000_000)
    .padStart(6, '0')
    .replace(/0+$/, '');
  return `${sign}${whole}${rest === '' ? '' : `.${rest}`}`;
}

/** A running time as on a player: h:mm:ss.mmm, hours only when there are some. Cut, not rounded, to the millisecond. */
export function clockText(time: Micros): string {
  const sign = time < 0 ? '−' : '';
  const milliseconds = Math.floor(Math.abs(time) / 1000);
  const part = (value: number, digits: number) => String(value).padStart(digits, '0');
  const seconds = Math.floor(milliseconds / 1000);
  const tail = `${part(seconds % 60, 2)}.${part(milliseconds % 1000, 3)}`;
  const minutes = Math.floor(seconds / 60);
  return minutes < 60
    ? `${sign}${minutes}:${tail}`
    : `${sign}${Math.floor(minutes / 60)}:${part(minutes % 60, 2)}:${tail}`;
}

const symbols: Readonly<Record<string, TimeUnit>> = {
  s: 'seconds',
  sec: 'seconds',
  second: 'seconds',
  seconds: 'seconds',
  min: 'minutes',
  minute: 'minutes',
  minutes: 'minutes',
  wink: 'winks',
  winks: 'winks',
  tmu: 'tmu',
  h: 'hours',
  hour: 'hours',
  hours: 'hours',
};

/**
 * Reads a time that a person typed: "2.35", "2,35 s", "0.04 min", "65.4 TMU", "83 winks", "1:02.5", "1:00:00".
 * A bare number is in `unit`; a colon form is hours, minutes and seconds.
 * The error is a sentence that says what to write instead.
 */
export function parseTime(text: string, unit: TimeUnit): Result<Micros, string> {
  const trimmed = text.trim().replace(/−/g, '-').replace(',', '.');
  if (trimmed.includes(':')) return parseClock(trimmed, text);
  const match = /^(-?(?:\d+\.?\d*|\.\d+))\s*([a-z]*)$/i.exec(trimmed);
  const word = (match?.[2] ?? '').toLowerCase();
  const named = word === '' ? unit : symbols[word];
  if (match === null || named === undefined) return fail(notATime(text));
  const value = Number(match[1]);
  if (Math.abs(value) * timeUnits[named].microseconds > Number.MAX_SAFE_INTEGER) {
    return fail(`“${text}” is too large for a time.`);
  }
  return ok(fromUnit(value, named));
}

function parseClock(trimmed: string, text: string): Result<Micros, string> {
  const match = /^(?:(\d{1,6}):)?(\d{1,4}):(\d{1,2}(?:\.\d*)?)$/.exec(trimmed);
  if (match === null || Number(match[3]) >= 60 || (match[1] !== undefined && Number(match[2]) >= 60)) {
    return fail(notATime(text));
  }
  const minutes = Number(match[1] ?? 0) * 60 + Number(match[2]);
  return ok(micros(minutes * 60_000_000 + Math.round(Number(match[3]) * 1_000_000)));
}

function notATime(text: string): string {
  return `“${text}” is not a time. Write a number with a unit, such as 2.35 s, 0.04 min, 65 TMU, 78 winks or 1:02.5.`;
}
