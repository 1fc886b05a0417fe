import { emptyStudy, type Motion, type Study } from '@evenhand/core/ground/study';

type Item = readonly [start: number, kind: Motion['kind'], object?: string];

const row = (hand: string, end: number, items: readonly Item[]) => ({
  items: items.map(([start, kind, object], index) => ({
    id: `${hand}${index}`,
    start,
    kind,
    ...(object === undefined ? {} : { object }),
    said: 'marked' as const,
  })),
  end,
});

/** Two methods in microseconds, complete: nothing to advise. */
export const smallStudy: Study = {
  ...emptyStudy('s', 'Hose couplings'),
  methods: [
    {
      id: 'present',
      name: 'Present method',
      kind: 'recorded',
      base: { kind: 'micros' },
      unitsPerCycle: 1,
      left: row('l', 4_000_000, [[0, 'H', 'body']]),
      right: row('r', 4_000_000, [
        [0, 'TE'],
        [1_000_000, 'G', 'ring'],
        [1_500_000, 'TL', 'ring'],
        [2_500_000, 'A', 'ring'],
      ]),
      cycles: {
        items: [
          { id: 'c1', start: 0 },
          { id: 'c2', start: 2_500_000 },
        ],
        end: 4_000_000,
      },
    },
    {
      id: 'better',
      name: 'Better method',
      kind: 'composed',
      base: { kind: 'micros' },
      unitsPerCycle: 2,
      left: row('l', 2_000_000, [
        [0, 'TE'],
        [1_000_000, 'G', 'body'],
      ]),
      right: row('r', 2_000_000, [
        [0, 'TE'],
        [1_000_000, 'G', 'ring'],
      ]),
      cycles: { items: [{ id: 'c1', start: 0 }], end: 2_000_000 },
    },
  ],
};
