import { micros } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import {
  type Hand,
  hands,
  itemsBetween,
  type Method,
  type MethodClock,
  type Motion,
  methodClock,
  rowStart,
  type Study,
} from '../../ground/study/index.ts';
import type { MotionKind } from '../../ground/tables/index.ts';
import { timeText } from '../../ground/units/index.ts';

/** Longer than this, a motion that should be short is worth a second look. Our own choice; no source settles it. */
const longMotion = 5_000_000;

/** Motions that may last: nothing is likely to be missing inside them. */
const lasting: readonly MotionKind[] = ['H', 'U', 'A', 'DA', 'I', 'Pn', 'UD', 'AD', 'R', 'unmarked'];

/**
 * What the analyst should look at before the record of a study is relied on: nothing marked, no cycles, time that is
 * not marked inside a cycle, rows that run on to the end of the film, motions that are suspiciously long. A valid
 * study may have all of these; none is an error. In the order of the document.
 */
export function recordAdvice(study: Study): Finding[] {
  return study.methods.flatMap((method, index) => methodAdvice(study, method, `/methods/${index}`));
}

function methodAdvice(study: Study, method: Method, pointer: string): Finding[] {
  const marked = hands.some((hand) => method[hand].items.some((motion) => motion.kind !== 'unmarked'));
  if (!marked) return [finding('record/nothing-marked', { pointer }, { method: method.name })];
  const clock = methodClock(study, method);
  return [
    ...hands.flatMap((hand) => longMotions(method, hand, clock, pointer)),
    ...hands.flatMap((hand) => openEnd(method, hand, clock, pointer)),
    ...cycleAdvice(method, clock, pointer),
  ];
}

function longMotions(method: Method, hand: Hand, clock: MethodClock, pointer: string): Finding[] {
  const row = method[hand];
  return itemsBetween<Motion>(row, rowStart(row), row.end).flatMap(({ item, index, start, end }) => {
    const time = clock.span(start, end);
    if (time <= longMotion || lasting.includes(item.kind)) return [];
    const where = { pointer: `${pointer}/${hand}/items/${index}`, hand };
    return [finding('record/long-motion', where, { hand, time: timeText(time, 'seconds') })];
  });
}

function openEnd(method: Method, hand: Hand, clock: MethodClock, pointer: string): Finding[] {
  const row = method[hand];
  const last = row.items.at(-1);
  if (last === undefined || last.kind === 'unmarked' || row.end !== clock.last) return [];
  return [finding('record/open-end', { pointer: `${pointer}/${hand}/end`, hand }, { hand })];
}

function cycleAdvice(method: Method, clock: MethodClock, pointer: string): Finding[] {
  const { items } = method.cycles;
  if (items.length === 0) return [finding('record/no-cycles', { pointer }, { method: method.name })];
  return itemsBetween(method.cycles, rowStart(method.cycles), method.cycles.end).flatMap(
    ({ item, index, start, end }) =>
      item.setAside !== undefined
        ? []
        : hands.flatMap((hand) => {
            const time = unmarkedTime(method, hand, clock, start, end);
            if (time === 0) return [];
            const where = { pointer: `${pointer}/cycles/items/${index}`, hand };
            const words = { cycle: index + 1, hand, time: timeText(micros(time), 'seconds') };
            return [finding('record/unmarked-in-cycle', where, words)];
          }),
  );
}

/** Time of a span in which a hand is not marked, whether its row says so or does not reach so far. */
function unmarkedTime(method: Method, hand: Hand, clock: MethodClock, from: number, to: number): number {
  const marked = itemsBetween<Motion>(method[hand], from, to)
    .filter(({ item }) => item.kind !== 'unmarked')
    .reduce((sum, { start, end }) => sum + clock.span(start, end), 0);
  return clock.span(from, to) - marked;
}
