import { micros } from '@evenhand/core/ground/base';
import { timeText } from '@evenhand/core/ground/units';
import { useEffect } from 'react';
import type { BenchWatch } from './bench-watch.ts';

/** The screen stays lit while the watch runs, where the browser can do that; a page that was hidden asks again. */
export function useWakeLock(running: boolean): void {
  useEffect(() => {
    if (!running || !('wakeLock' in navigator)) return;
    let lock: { readonly release: () => Promise<void> } | undefined;
    let over = false;
    const ask = () => {
      if (over || document.visibilityState !== 'visible') return;
      navigator.wakeLock.request('screen').then(
        (held) => {
          if (over) void held.release();
          else lock = held;
        },
        // A lamp that may go out is no reason to stop timing.
        () => undefined,
      );
    };
    ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, [running]);
}

/** A device that slept may have stopped the clock that stamps the presses. Differences below this are not told, ms. Ours. */
const slept = 500;

/** Says so when the clock of the presses fell behind the clock of the day while the page was hidden. */
export function useSleepWarning(bench: BenchWatch, running: boolean): void {
  useEffect(() => {
    if (!running) return;
    const difference = () => Date.now() - performance.now();
    const atFirst = difference();
    const look = () => {
      const behind = difference() - atFirst;
      if (document.visibilityState !== 'visible' || behind < slept) return;
      const time = timeText(micros(Math.round(behind * 1000)), 'seconds', 1);
      bench.say(
        `The clock of this device seems to have stood still for ${time}: mark what was running as missed.`,
      );
    };
    document.addEventListener('visibilitychange', look);
    return () => document.removeEventListener('visibilitychange', look);
  }, [bench, running]);
}
