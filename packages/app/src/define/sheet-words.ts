import type { TimeStudySheet } from '@evenhand/core/define';
import { micros } from '@evenhand/core/ground/base';
import type { Sitting, TimeStudy } from '@evenhand/core/ground/study';
import { numberText, type TimeUnit, timeText, timeUnits } from '@evenhand/core/ground/units';

/** A time that is given in the unit of the sheet, with that unit. */
export function inSheet(time: number, unit: TimeUnit, more = 0): string {
  const us = micros(Math.round(time * timeUnits[unit].microseconds));
  return timeText(us, unit, Math.min(12, timeUnits[unit].decimals + more));
}

/** The same without its unit, for columns and ranges that name it once. */
export function inSheetNumber(time: number, unit: TimeUnit, more = 0): string {
  return numberText(time, Math.min(12, timeUnits[unit].decimals + more));
}

/** “cycles 1 to 20: operator A, 2026-03-31”, in the order of the sittings. */
export function sittingWords(sittings: readonly Sitting[], last: number): readonly string[] {
  return sittings.map((sitting, index) => {
    const next = sittings[index + 1];
    const to = next === undefined ? Math.max(sitting.start, last) : next.start - 1;
    const cycles = to <= sitting.start ? `cycle ${sitting.start}` : `cycles ${sitting.start}–${to}`;
    const parts = [
      sitting.operatorCode === undefined ? undefined : `operator ${sitting.operatorCode}`,
      sitting.date,
      sitting.observer === undefined ? undefined : `observed by ${sitting.observer}`,
    ].filter((part) => part !== undefined);
    return `${cycles}${parts.length === 0 ? '' : `: ${parts.join(', ')}`}`;
  });
}

export function sourceWords({ source }: TimeStudy, sheet: TimeStudySheet): string {
  if (source.kind === 'record') {
    const cycles = source.cycles === undefined ? 'all cycles' : `cycles ${source.cycles.join(', ')}`;
    return `the marked film of “${sheet.method?.name ?? source.method}”, ${cycles}`;
  }
  return {
    continuous: 'a watch that ran on',
    repetitive: 'a watch set back at each reading',
    typed: 'figures that were typed in',
  }[source.timing];
}

/** Whether a fault or a note was said already, so that it is shown once. */
export function once<Item>(items: readonly Item[], keyOf: (item: Item) => string): readonly Item[] {
  return [...new Map([...items].reverse().map((item) => [keyOf(item), item])).values()].reverse();
}
