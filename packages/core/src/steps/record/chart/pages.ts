import { lastAtOrBefore } from '../../../ground/base/index.ts';
import type { ChartMotion } from './facts.ts';
import type { ChartScale } from './scale.ts';

/** A motion with the height that its label takes. */
export interface LabelledMotion {
  readonly motion: ChartMotion;
  readonly height: number;
}

/** Heights in points that a sheet leaves for the chart itself. */
export interface SheetRoom {
  readonly first: number;
  readonly later: number;
  /** Height of the foot, which stands on the last sheet. */
  readonly foot: number;
}

/** The part of the time that one sheet shows, in microseconds from the start of the chart. */
export interface ChartPage {
  readonly from: number;
  readonly to: number;
  /** Height for bars and labels. */
  readonly room: number;
  readonly last: boolean;
}

type HandRows = readonly (readonly LabelledMotion[])[];

/** The part of a sheet, from its end upwards, in which a better place for a break is looked for. */
const breakZone = 0.2;

/**
 * Breaks a chart over sheets at one scale. Every sheet has room for its stretch of time and for the label of every
 * motion that it shows, a motion that crosses a break being shown on both; the last sheet has room for the foot too.
 * @param rows the motions of each hand, without gaps, both ending at `end`
 */
export function breakIntoPages(
  rows: HandRows,
  end: number,
  scale: ChartScale,
  sheet: SheetRoom,
): readonly ChartPage[] {
  const pages: ChartPage[] = [];
  let from = 0;
  for (;;) {
    const room = pages.length === 0 ? sheet.first : sheet.later;
    if (reach(rows, from, end, scale, room - sheet.foot) >= end) {
      pages.push({ from, to: end, room: room - sheet.foot, last: true });
      return pages;
    }
    let limit = reach(rows, from, end, scale, room);
    // What is left fits, but not together with the foot: share it between two sheets.
    if (limit >= end) limit = Math.max(from + 1, Math.floor(from + (end - from) * 0.6));
    const to = breakAt(rows, from, limit);
    pages.push({ from, to, room, last: false });
    from = to;
  }
}

/** How far a sheet that begins at `from` can reach. */
function reach(rows: HandRows, from: number, end: number, scale: ChartScale, room: number): number {
  let limit = Math.min(end, Math.floor(from + room / scale.pointsPerMicro + 1e-6));
  for (const row of rows) {
    let height = 0;
    for (let index = firstFrom(row, from); index < row.length; index += 1) {
      const item = row[index];
      if (item === undefined || item.motion.start >= limit) break;
      height += item.height;
      if (height > room) limit = item.motion.start;
    }
  }
  return Math.max(limit, from + 1);
}

/** A boundary of both hands near the end of the sheet; else the last boundary of either; else the end itself. */
function breakAt(rows: HandRows, from: number, limit: number): number {
  const earliest = limit - (limit - from) * breakZone;
  const near = rows.map((row) => {
    const starts: number[] = [];
    for (let index = firstFrom(row, earliest); index < row.length; index += 1) {
      const start = row[index]?.motion.start ?? limit;
      if (start > limit) break;
      if (start > from && start >= earliest) starts.push(start);
    }
    return starts;
  });
  const common = near[0]?.filter((start) => near.every((starts) => starts.includes(start))).at(-1);
  const either = Math.max(...near.map((starts) => starts.at(-1) ?? Number.NEGATIVE_INFINITY));
  return common ?? (Number.isFinite(either) ? either : limit);
}

/** The motions that a sheet shows. */
export function motionsOn(
  row: readonly LabelledMotion[],
  page: Pick<ChartPage, 'from' | 'to'>,
): readonly LabelledMotion[] {
  const shown: LabelledMotion[] = [];
  for (let index = firstFrom(row, page.from); index < row.length; index += 1) {
    const item = row[index];
    if (item === undefined || item.motion.start >= page.to) break;
    if (item.motion.end > page.from) shown.push(item);
  }
  return shown;
}

function firstFrom(row: readonly LabelledMotion[], time: number): number {
  return Math.max(
    0,
    lastAtOrBefore(row, time, (item) => item.motion.start),
  );
}

/** The scale that needs the fewest sheets; of equals the largest. @throws RangeError without a scale to choose from */
export function chooseScale(
  rows: HandRows,
  end: number,
  scales: readonly ChartScale[],
  sheet: SheetRoom,
): { readonly scale: ChartScale; readonly pages: readonly ChartPage[] } {
  let best: { scale: ChartScale; pages: readonly ChartPage[] } | undefined;
  for (const scale of scales) {
    const pages = breakIntoPages(rows, end, scale, sheet);
    if (best === undefined || pages.length < best.pages.length) best = { scale, pages };
  }
  if (best === undefined) throw new RangeError('there is no scale to choose from');
  return best;
}
