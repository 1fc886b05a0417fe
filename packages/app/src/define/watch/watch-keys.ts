import type { TimeStudy } from '@evenhand/core/ground/study';
import { useEffect } from 'react';
import { isFree } from '../../record/use-desk-keys.ts';
import type { BenchWatch, WatchSitting } from './bench-watch.ts';
import { mainPress, type PlainPress, pressTime, rateBy } from './watch-presses.ts';

/** The keys as the page shows them. */
export const keyWords: readonly (readonly [string, string])[] = [
  ['Space, Enter', 'begin, then read'],
  ['1 … 9, 0', 'what ended was that element'],
  ['M', 'the reading was missed'],
  ['S', 'not done in this cycle'],
  ['F', 'foreign element begins, ends'],
  ['+ −', 'rating, five up or down'],
  ['R', 'rate the running element or the last'],
  ['Z, Backspace', 'take back'],
  ['P', 'stand still, go on'],
  ['N', 'give the cycle up, begin the next'],
  ['Escape', 'end'],
];

const commands: Readonly<Record<string, PlainPress>> = {
  KeyM: 'miss',
  KeyS: 'skip',
  KeyF: 'foreign',
  KeyP: 'pause',
  KeyN: 'new-cycle',
  Escape: 'end',
};

/** Presses are taken when the key goes down; one that is held counts once. */
export function useWatchKeys(bench: BenchWatch, timeStudy: TimeStudy, sitting: WatchSitting): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!isFree(event) || event.ctrlKey || event.metaKey || event.altKey) return;
      if (isPressOf(event, bench) || !run(bench, timeStudy, sitting, event)) return;
      event.preventDefault();
    };
    // Some browsers press a focused button when the space bar comes up again.
    const onKeyUp = (event: KeyboardEvent) => {
      if (event.code === 'Space' && isFree(event) && !isPressOf(event, bench)) event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('keyup', onKeyUp);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('keyup', onKeyUp);
    };
  }, [bench, timeStudy, sitting]);
}

/** Enter presses what has the focus; the space bar too, except that it reads while the watch is in use. */
function isPressOf({ target, code }: KeyboardEvent, bench: BenchWatch): boolean {
  if (!(target instanceof Element) || (code !== 'Enter' && code !== 'Space')) return false;
  if (target.closest('.watch-read') !== null) return false;
  if (target.closest('summary, input, label') !== null) return true;
  const { phase } = bench.state().watch;
  return target.closest('button, a') !== null && (code === 'Enter' || phase === 'ready' || phase === 'ended');
}

function run(bench: BenchWatch, timeStudy: TimeStudy, sitting: WatchSitting, event: KeyboardEvent): boolean {
  const at = pressTime(event);
  if (event.code === 'Space' || event.code === 'Enter' || event.code === 'NumpadEnter') {
    if (!event.repeat) mainPress(bench, at, sitting);
    return true;
  }
  if (event.repeat) return false;
  const doing = commands[event.code];
  const direction = { '+': 1, '=': 1, '-': -1, _: -1 }[event.key] as 1 | -1 | undefined;
  if (doing !== undefined) bench.press({ do: doing, at });
  else if (event.code === 'KeyZ' || event.code === 'Backspace') bench.press({ do: 'take-back' });
  else if (event.code === 'KeyR') bench.rateThe(bench.state().rates === 'last' ? 'running' : 'last');
  else if (direction !== undefined) rateBy(bench, timeStudy, direction);
  else return readDigit(bench, timeStudy, event.code, at);
  return true;
}

function readDigit(bench: BenchWatch, { elements }: TimeStudy, code: string, at: number): boolean {
  const digit = /^(?:Digit|Numpad)(\d)$/.exec(code)?.[1];
  const element = digit === undefined ? undefined : elements[(Number(digit) + 9) % 10];
  if (element === undefined) return false;
  bench.press({ do: 'read-as', element: element.id, at });
  return true;
}
