import { emptyStudy, type Hand, type Motion, type Study } from '@evenhand/core/ground/study';
import { parseMotionKind } from '@evenhand/core/ground/tables';

/** One cycle: the motions of each hand with their lengths in tenths of a second, "TE ring 3, G ring 2, – 1". */
export type CycleText = Readonly<Record<Hand, string>>;

/** Microseconds in a tenth of a second, the unit of the lengths. */
export const tenth = 100_000;

interface Parsed {
  readonly kind: Motion['kind'];
  readonly object?: string;
  readonly length: number;
}

/** Motions of a row; an object is one word, places stand after it as "bin>front". */
function motionsOf(text: string): (Parsed & Pick<Motion, 'from' | 'to'>)[] {
  if (text.trim() === '') return [];
  return text.split(',').map((part) => {
    const words = part.trim().split(/\s+/);
    const kind = parseMotionKind(words[0] ?? '');
    const length = Number(words.at(-1));
    if (kind === undefined || !Number.isInteger(length) || length < 1)
      throw new Error(`not a motion: ${part}`);
    const between = words.slice(1, -1);
    const places = between.find((word) => word.includes('>'))?.split('>');
    const object = between.find((word) => !word.includes('>'));
    return {
      kind,
      length,
      ...(object === undefined ? {} : { object }),
      ...(places?.[0] ? { from: places[0] } : {}),
      ...(places?.[1] ? { to: places[1] } : {}),
    };
  });
}

/**
 * A study with one composed method `m`, its cycles one after another. A row that is shorter than the other one of its
 * cycle is unmarked for the rest.
 */
export function twoHandStudy(cycles: readonly CycleText[]): Study {
  const rows: Record<Hand, Motion[]> = { left: [], right: [] };
  const starts: number[] = [];
  let at = 0;
  for (const cycle of cycles) {
    starts.push(at);
    const ends = (['left', 'right'] as const).map((hand) => {
      let start = at;
      for (const { length, ...motion } of motionsOf(cycle[hand])) {
        rows[hand].push({ id: `${hand[0]}${rows[hand].length}`, start, said: 'marked', ...motion });
        start += length * tenth;
      }
      return start;
    });
    const end = Math.max(...ends);
    ends.forEach((stop, index) => {
      const hand = index === 0 ? 'left' : 'right';
      if (stop < end) {
        const id = `${hand[0]}${rows[hand].length}`;
        rows[hand].push({ id, start: stop, kind: 'unmarked', said: 'marked' });
      }
    });
    at = end;
  }
  const method = {
    id: 'm',
    name: 'Method',
    kind: 'composed' as const,
    base: { kind: 'micros' as const },
    unitsPerCycle: 1,
    left: { items: rows.left, end: at },
    right: { items: rows.right, end: at },
    cycles: { items: starts.map((start, index) => ({ id: `c${index + 1}`, start })), end: at },
  };
  const names = new Set([...rows.left, ...rows.right].flatMap(({ from, to }) => [from, to]));
  const places = [...names].flatMap((id) => (id === undefined ? [] : [{ id, name: id }]));
  return { ...emptyStudy('s', 'Couplings'), places, methods: [method] };
}
