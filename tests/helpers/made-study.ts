import { emptyStudy, type Hand, type Method, type Study } from '@evenhand/core/ground/study';
import type { MadeTrack } from './made-tracks.ts';

/** A study of the made record in which the chosen cycles are marked and everything else is not. */
export function madeStudy(made: MadeTrack, cycles: readonly number[]): Study {
  const us = (frame: number) => Math.round((frame / made.framesPerSecond) * 1e6);
  const edges = [...made.cycles, made.ends.at(-1) ?? 0];
  const row = (hand: Hand): Method['left'] => {
    const items: Method['left']['items'][number][] = [
      { id: `${hand}-0`, start: 0, kind: 'unmarked', said: 'marked' },
    ];
    for (const index of cycles) {
      const [start, end] = [edges[index] as number, edges[index + 1] as number];
      const inside = made[hand].filter((motion) => motion.start >= start - 4 && motion.start < end - 4);
      for (const [number, { start: at, kind, object }] of inside.entries())
        items.push({
          id: `${hand}-${index}-${number}`,
          start: us(number === 0 ? start : at),
          kind,
          object,
          said: 'marked',
        });
      if (!cycles.includes(index + 1))
        items.push({ id: `${hand}-${index}-end`, start: us(end), kind: 'unmarked', said: 'marked' });
    }
    return { items: items.sort((a, b) => a.start - b.start), end: us(made.track.frames) };
  };
  const marks = cycles.map((index) => ({ id: `c${index}`, start: us(edges[index] as number) }));
  const method: Method = {
    id: 'm',
    name: 'Made',
    kind: 'recorded',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: row('left'),
    right: row('right'),
    cycles: { items: marks, end: us(edges[(cycles.at(-1) ?? 0) + 1] as number) },
  };
  return { ...emptyStudy('s', 'Made'), methods: [method] };
}
