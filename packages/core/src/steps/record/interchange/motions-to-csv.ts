import { fail, lastAtOrBefore, type Micros, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  type Hand,
  hands,
  isProposed,
  itemsBetween,
  type Method,
  type Motion,
  methodClock,
  rowStart,
  type Study,
} from '../../../ground/study/index.ts';
import { exactSeconds, numberText } from '../../../ground/units/index.ts';
import { csvCell, guardText } from './csv-cells.ts';
import { csvColumns, proposalColumns } from './csv-columns.ts';

/** The method with this id, or a finding that names those there are. */
export function methodNamed(study: Study, id: string): Result<Method, Finding> {
  const method = study.methods.find((item) => item.id === id);
  if (method !== undefined) return ok(method);
  const known = study.methods.map((item) => item.id).join(', ') || 'no method';
  return fail(finding('record/no-method', {}, { method: id, known }));
}

/**
 * The motions of a method as comma-separated text after RFC 4180: lines end in CR LF, times are exact seconds of real
 * time, both hands in the order of time. What is not marked is left out. A byte order mark stands first when there is
 * a letter beyond ASCII, so that spreadsheets read it right. Two columns more say who says so where a motion is proposed.
 */
export function motionsToCsv(study: Study, methodId: string): Result<string, Finding> {
  const found = methodNamed(study, methodId);
  if (!found.ok) return found;
  const method = found.value;
  const lines = hands
    .flatMap((hand) => linesOf(study, method, hand))
    .sort((a, b) => a.start - b.start || Number(a.hand === 'right') - Number(b.hand === 'right'));
  const proposed = hands.some((hand) => method[hand].items.some(isCharted));
  const heads = proposed ? [...csvColumns, ...proposalColumns] : csvColumns;
  const text = [heads, ...lines.map(({ cells, said }) => (proposed ? [...cells, ...said] : cells))]
    .map((cells) => `${cells.map(csvCell).join(',')}\r\n`)
    .join('');
  return ok(isAscii(text) ? text : `\uFEFF${text}`);
}

interface Line {
  readonly start: Micros;
  readonly hand: Hand;
  readonly cells: readonly string[];
  /** Who says so, and how sure the program is of what it proposes. */
  readonly said: readonly string[];
}

/** A proposal that stands in the table. */
function isCharted(motion: Motion): boolean {
  return isProposed(motion) && motion.kind !== 'unmarked';
}

function linesOf(study: Study, method: Method, hand: Hand): Line[] {
  const clock = methodClock(study, method);
  const names = new Map(study.places.map((place) => [place.id, guardText(place.name)]));
  const place = (id: string | undefined) => (id === undefined ? '' : (names.get(id) ?? ''));
  const row = method[hand];
  return itemsBetween<Motion>(row, rowStart(row), row.end)
    .filter(({ item }) => item.kind !== 'unmarked')
    .map(({ item, start, end }) => ({
      start: clock.timeOf(start),
      hand,
      cells: [
        hand,
        item.kind,
        exactSeconds(clock.timeOf(start)),
        exactSeconds(clock.timeOf(end)),
        guardText(item.object ?? ''),
        place(item.from),
        place(item.to),
        cycleNumber(method, start),
      ],
      said: [item.said, item.confidence === undefined ? '' : numberText(item.confidence, 2)],
    }));
}

/** Number of the cycle in which a motion begins, counting those set aside too; empty outside the cycles. */
function cycleNumber({ cycles }: Method, start: number): string {
  if (start >= cycles.end) return '';
  const index = lastAtOrBefore(cycles.items, start, (cycle) => cycle.start);
  return index < 0 ? '' : String(index + 1);
}

function isAscii(text: string): boolean {
  for (let index = 0; index < text.length; index += 1) if (text.charCodeAt(index) > 127) return false;
  return true;
}
