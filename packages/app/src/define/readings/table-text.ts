import type { TimeStudyElement, TimeStudyReading } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { readingAt } from '../define-edits.ts';
import { fullCellText } from './cell-text.ts';

/**
 * The readings as a table for a spreadsheet: cycles down, elements across, with all their digits. Pasted back it gives the
 * same readings; ratings are not in it.
 */
export function readingsText(
  elements: readonly TimeStudyElement[],
  cycles: readonly number[],
  unit: TimeUnit,
): string {
  const head = ['cycle', ...elements.map(({ name }) => name.replace(/[\t\n\r]+/g, ' '))];
  const held = cycles.filter((cycle) => elements.some((element) => readingAt(element, cycle) !== undefined));
  const lines = held.map((cycle) => [
    String(cycle),
    ...elements.map((element) => textOf(readingAt(element, cycle), unit)),
  ]);
  return [head, ...lines].map((line) => line.join('\t')).join('\n');
}

function textOf(reading: TimeStudyReading | undefined, unit: TimeUnit): string {
  if (reading === undefined) return '';
  if (reading.us === undefined) return '-';
  const time = fullCellText(reading.us, unit);
  return reading.setAside === undefined ? time : `${time} (${reading.setAside.replace(/[\t\n\r]+/g, ' ')})`;
}
