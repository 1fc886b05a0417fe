import { micros } from '../../../ground/base/index.ts';
import type { TimeStudy } from '../../../ground/study/index.ts';
import { countText, percentText, timeText } from '../../../ground/units/index.ts';
import { roundedUp } from '../rounding.ts';
import type { PilotGap, PilotProgress, SheetRow } from './sheet-types.ts';

/** More readings than these nobody takes; ours. */
const mostReadings = 1_000_000;

/** The readings there are beside those that are needed, in figures and in a sentence or two. */
export function pilotProgress(rows: readonly SheetRow[], timeStudy: TimeStudy): PilotProgress {
  const gaps = rows.map(gapOf).filter(({ more }) => more !== 0);
  const known = gaps.flatMap(({ moreCycles }) => (moreCycles === undefined ? [] : [moreCycles]));
  const untold = rows.length === 0 || known.length < gaps.length;
  return {
    gaps,
    enough: rows.length > 0 && gaps.length === 0,
    moreCycles: untold ? undefined : Math.max(0, ...known),
    words: progressWords(rows, gaps, timeStudy),
  };
}

function gapOf({ element, summary, needed }: SheetRow): PilotGap {
  const { times, cycles } = element.occurs ?? { times: 1, cycles: 1 };
  const more = needed === undefined || needed.needed > mostReadings ? undefined : needed.more;
  return {
    element: element.id,
    name: element.name,
    counted: summary?.n ?? 0,
    needed: needed?.needed,
    more,
    moreCycles: more === undefined ? undefined : roundedUp((more * cycles) / times),
  };
}

function progressWords(rows: readonly SheetRow[], gaps: readonly PilotGap[], timeStudy: TimeStudy): string {
  if (rows.length === 0) return 'There is no element yet.';
  const wish = wishWords(timeStudy);
  if (gaps.length === 0) {
    const whose =
      rows.length === 1 ? `of “${rows[0]?.element.name}”` : `of each of the ${rows.length} elements`;
    return `There are enough readings: the mean ${whose} is known to ${wish} or better.`;
  }
  const thin = gaps.filter(({ more, counted }) => more === undefined && counted < 2);
  const endless = gaps.filter(({ more, counted }) => more === undefined && counted >= 2);
  return [
    `For ${wish}, ${rows.length - gaps.length} of ${countText(rows.length, 'element')} ${rows.length - gaps.length === 1 ? 'has' : 'have'} enough readings.`,
    furthestWords(gaps, rows),
    thin.length === 0
      ? ''
      : `Fewer than two readings count of ${namesOf(thin)}; with two it can be told how many are needed.`,
    endless.length === 0
      ? ''
      : `More readings would be needed of ${namesOf(endless)} than can be taken: ask for less precision, or divide the element.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function wishWords({ precision, confidence, unit }: TimeStudy): string {
  const width =
    precision.kind === 'relative' ? percentText(precision.share) : timeText(micros(precision.us), unit);
  return `± ${width} at ${percentText(confidence, 0)} confidence`;
}

/** The element that keeps the study longest. */
function furthestWords(gaps: readonly PilotGap[], rows: readonly SheetRow[]): string {
  let furthest: PilotGap | undefined;
  for (const gap of gaps) {
    if (gap.moreCycles !== undefined && gap.moreCycles > (furthest?.moreCycles ?? 0)) furthest = gap;
  }
  if (furthest?.moreCycles === undefined || furthest.more === undefined) return '';
  const { element, name, counted, needed = 0, more, moreCycles } = furthest;
  const occurs = rows.find((row) => row.element.id === element)?.element.occurs;
  const rare =
    occurs === undefined
      ? ''
      : ` It comes ${countText(occurs.times, 'time')} in ${countText(occurs.cycles, 'cycle')}, so that takes about ${countText(moreCycles, 'cycle')}.`;
  return `“${name}” keeps the study longest: ${counted} of ${needed}, ${more} more.${rare}`;
}

function namesOf(gaps: readonly PilotGap[]): string {
  const names = gaps.slice(0, 3).map(({ name }) => `“${name}”`);
  const rest = gaps.length - names.length;
  return rest === 0 ? names.join(', ') : `${names.join(', ')} and ${rest} more`;
}
