import { fail, ok, type Result } from '../../../ground/base/index.ts';

const mostCycles = 100_000;

/**
 * Reads "1-4, 6": numbers of cycles from 1 and stretches of them, in any order, each once.
 * The error is a sentence that says what to write instead.
 */
export function parseCycles(text: string): Result<readonly number[], string> {
  const numbers = new Set<number>();
  for (const part of text.split(',')) {
    const match = /^\s*([1-9]\d{0,8})(?:\s*[-–]\s*([1-9]\d{0,8}))?\s*$/.exec(part);
    if (match === null) return fail(notCycles(text));
    const first = Number(match[1]);
    const last = Number(match[2] ?? match[1]);
    if (last < first) return fail(`${first}–${last} runs backwards. Write ${last}-${first}.`);
    if (last - first >= mostCycles) return fail(`${first}–${last} are too many cycles at once.`);
    for (let number = first; number <= last; number += 1) numbers.add(number);
  }
  return ok([...numbers].sort((a, b) => a - b));
}

function notCycles(text: string): string {
  return `“${text}” is no choice of cycles. Write numbers and stretches, such as 1-4, 6.`;
}
