import { emptyStudy, type Motion, type Study } from '@evenhand/core/ground/study';

/** Motions as they follow one another in plain assembly work; only their number matters here. */
const kinds = ['TE', 'G', 'TL', 'P', 'A', 'RL'] as const satisfies readonly Motion['kind'][];

/** A composed method with as many motions as asked for, half of them for each hand, 200 ms apart. */
export function longStudy(motions: number, id = 's'): Study {
  const each = motions / 2;
  const row = (hand: string) => ({
    items: Array.from({ length: each }, (_, index) => ({
      id: `${hand}${index}`,
      start: index * 200_000,
      kind: kinds[index % kinds.length] ?? ('TE' as const),
      object: 'body',
      said: 'marked' as const,
    })),
    end: each * 200_000,
  });
  const method = {
    id: 'm',
    name: 'Long method',
    kind: 'composed' as const,
    base: { kind: 'micros' as const },
    unitsPerCycle: 1,
    left: row('l'),
    right: row('r'),
    cycles: { items: [], end: each * 200_000 },
  };
  return { ...emptyStudy(id, 'Long study'), methods: [method] };
}
