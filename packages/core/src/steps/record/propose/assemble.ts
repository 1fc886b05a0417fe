import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import type { PlacedStart } from './boundaries.ts';
import { cycleChances, leastChance, trueChance } from './chance.ts';
import type { ConfirmedCycle, Stretch } from './confirmed.ts';
import type { FoundCycle } from './cycle-path.ts';
import type { MethodInput, MotionLabel } from './method-input.ts';
import type { Proposal, ProposedCycle, ProposedMotion, ProposedSpan } from './proposal.ts';
import type { ProposedRows } from './propose-rows.ts';
import { leastSight, withinSight } from './sight.ts';

/** Cycles closer than this follow each other without a gap, in seconds. */
const joined = 0.2;

interface Kept {
  readonly cycle: FoundCycle;
  /** Chance that it is a cycle at all. */
  readonly chance: number;
  readonly start: number;
  readonly end: number;
  readonly joins: boolean;
  readonly sure: number;
  readonly rows: Readonly<Record<Hand, readonly PlacedStart[]>>;
}

/** Makes a proposal in the method’s own boundaries of the rows that were found. */
export function assembled(method: MethodInput, rows: ProposedRows, before: readonly Finding[]): Proposal {
  const findings = [...before];
  const cycles = method.confirmed.length === 1 ? 'cycle' : 'cycles';
  const chances = cycleChances(rows);
  const kept = keptCycles(method, rows, chances);
  for (const [index, cycle] of rows.cycles.entries()) {
    if ((chances[index] as number) >= leastChance) continue;
    const words = { from: cycle.start.toFixed(1), to: cycle.end.toFixed(1), cycles };
    findings.push(finding('propose/unlike', placeOf(method, cycle.start), words));
  }
  if (rows.cycles.length === 0) findings.push(finding('propose/none-found', {}, { cycles }));
  for (const cycle of kept) findings.push(...oddities(method, cycle, cycles));
  return { ...inBoundaries(method, kept), kept: method.kept, findings };
}

function keptCycles(method: MethodInput, rows: ProposedRows, chances: readonly number[]): Kept[] {
  const isLike = (index: number) => (chances[index] ?? 0) >= leastChance;
  const rooms = roomsOf(method, rows.cycles);
  const bounds = rows.cycles.map((cycle, index) => {
    const of = (hand: Hand) => rows[hand].filter((start) => start.cycle === index);
    const own = { left: of('left'), right: of('right') };
    const both = [...own.left, ...own.right];
    const first = surest(both.filter((start) => start.first && !start.missing));
    const last = surest(both.filter(({ label }) => label === undefined));
    const { starts, ends } = rooms[index] as Room;
    return {
      cycle,
      chance: chances[index] as number,
      start: within(first?.at ?? cycle.start, starts),
      sure: first?.sure ?? 0.5,
      end: within(last?.at ?? cycle.end, ends),
      rows: own,
    };
  });
  return bounds.flatMap((bound, index) => {
    if (!isLike(index)) return [];
    const next = bounds[index + 1];
    const beside = rooms[index + 1]?.besideBefore === true;
    const joins = beside && next !== undefined && isLike(index + 1) && next.start - bound.end < joined;
    const end = joins ? next.start : bound.end;
    return end > bound.start ? [{ ...bound, end, joins }] : [];
  });
}

/** Where a found cycle may start and end. */
interface Room {
  readonly starts: Stretch;
  readonly ends: Stretch;
  /** Nothing that is confirmed lies between it and the found cycle before it. */
  readonly besideBefore: boolean;
}

/**
 * Boundaries are placed by what they look like, also a little outside of the found cycle. They may reach to the middle of
 * the cycle beside it, and never out of the stretch in which it was sought: what is confirmed begins there.
 */
function roomsOf({ free, given }: MethodInput, cycles: readonly FoundCycle[]): Room[] {
  const stretches = [...free, ...given];
  const middles = cycles.map(({ start, end }) => (start + end) / 2);
  const around = cycles.map(({ start, end }, index) => {
    const middle = middles[index] as number;
    return stretches.find((stretch) => stretch.start <= middle && middle <= stretch.end) ?? { start, end };
  });
  return middles.map((middle, index) => {
    const own = around[index] as Stretch;
    const [before, after] = [middles[index - 1] ?? own.start, middles[index + 1] ?? own.end];
    const ended = around[index - 1]?.end;
    return {
      starts: { start: Math.max(own.start, before), end: middle },
      ends: { start: middle, end: Math.min(own.end, after) },
      besideBefore: ended !== undefined && (around[index - 1] === own || own.start - ended < 1e-6),
    };
  });
}

function within(at: number, { start, end }: Stretch): number {
  return Math.min(end, Math.max(start, at));
}

function surest(starts: readonly PlacedStart[]): PlacedStart | undefined {
  return starts.reduce<PlacedStart | undefined>(
    (best, start) => (best === undefined || start.sure > best.sure ? start : best),
    undefined,
  );
}

function inBoundaries(method: MethodInput, kept: readonly Kept[]): Omit<Proposal, 'findings'> {
  const cycles: ProposedCycle[] = [];
  const spans: ProposedSpan[] = [];
  const rows: Record<Hand, ProposedMotion[]> = { left: [], right: [] };
  let from = 0;
  kept.forEach((cycle, index) => {
    const goesOn = index > 0 && kept[index - 1]?.joins === true;
    const start = method.boundaryAt(cycle.start);
    const end = method.boundaryAt(cycle.end);
    if (end <= start) return;
    const seen = Math.max(...hands.map((hand) => method.sight(hand, cycle.start)));
    cycles.push({ start, end, confidence: withinSight(trueChance(cycle.sure) * cycle.chance, seen) });
    if (!goesOn) from = start;
    for (const hand of hands) addStarts(method, hand, cycle, { from, goesOn }, rows[hand]);
    if (cycle.joins) return;
    spans.push({ from, to: end });
    for (const hand of hands) while ((rows[hand].at(-1)?.start ?? -1) >= end) rows[hand].pop();
  });
  return { cycles, ...rows, spans };
}

function addStarts(
  method: MethodInput,
  hand: Hand,
  { cycle, chance, rows }: Kept,
  { from, goesOn }: { readonly from: number; readonly goesOn: boolean },
  row: ProposedMotion[],
): void {
  const starts = rows[hand].filter(({ label, missing }) => label !== undefined && !missing);
  // Of a hand that no confirmed cycle shows nobody can know what its boundaries look like.
  const blind = method.confirmed.every(({ start, end }) => {
    return method.sight(hand, (start + end) / 2, (end - start) / 2) < leastSight;
  });
  const put = (label: number, at: number, sure: number) => {
    const start = Math.max(method.boundaryAt(at), from);
    while ((row.at(-1)?.start ?? -1) >= start && (row.at(-1)?.start ?? 0) >= from) row.pop();
    const seen = blind ? 0 : method.sight(hand, at);
    const confidence = withinSight(trueChance(sure) * chance, seen);
    row.push({ start, ...(method.labels[label] as MotionLabel), confidence });
  };
  const [first] = starts;
  if (!goesOn) {
    const running = runningLabel(method.confirmed[cycle.follows] as ConfirmedCycle, hand);
    if (first?.first === true) put(first.label as number, method.timeAt(from), first.sure);
    else if (running !== undefined) put(running, method.timeAt(from), 0.5);
  }
  for (const start of starts)
    if (goesOn || start !== first || !start.first) put(start.label as number, start.at, start.sure);
}

/** The motion that a hand is at when the confirmed cycle begins. */
function runningLabel(cycle: ConfirmedCycle, hand: Hand): number | undefined {
  return cycle[hand][0]?.label;
}

/** The frame to look at; nothing in a method without a film. */
function placeOf({ method, boundaryAt }: MethodInput, at: number): { readonly frame?: number } {
  return method.base.kind === 'frames' ? { frame: boundaryAt(at) } : {};
}

/** What a person should look at in a cycle: motions left out, and time that the confirmed cycles do not have. */
function oddities(method: MethodInput, { start, rows }: Kept, cycles: string): Finding[] {
  const found: Finding[] = [];
  const at = start.toFixed(1);
  const missing = hands.flatMap((hand) =>
    rows[hand]
      .filter((motion) => motion.missing && motion.label !== undefined)
      .map(
        (motion) =>
          `${motionFactsOf(method.labels[motion.label as number]?.kind ?? 'unmarked').name} (${hand})`,
      ),
  );
  if (missing.length > 0)
    found.push(finding('propose/left-out', placeOf(method, start), { at, motions: missing.join(', ') }));
  for (const hand of hands)
    rows[hand].forEach(({ at: from, usual, missing: gone }, index) => {
      const to = rows[hand][index + 1]?.at;
      if (to === undefined || usual === undefined || gone || to - from < 2.2 * usual + 0.4) return;
      const words = { at, from: from.toFixed(1), to: to.toFixed(1), cycles };
      found.push(finding('propose/something-else', { hand, ...placeOf(method, from) }, words));
    });
  return found;
}
