import { seededRandom } from '@evenhand/core/ground/numerics';
import { emptyStudy, type Motion, type Study } from '@evenhand/core/ground/study';
import type { MotionKind } from '@evenhand/core/ground/tables';

type Step = readonly [kind: MotionKind, time: number, details?: Partial<Motion>];

/** Twenty motions of a hand in each cycle: parts are fetched, put on, and the whole is laid away. Invented. */
const right: readonly Step[] = ['ring', 'collar', 'cap'].flatMap((object): Step[] => [
  ['TE', 420, { object, to: `${object}-bin` }],
  ['G', 310, { object, from: `${object}-bin` }],
  ['TL', 450, { object, from: `${object}-bin`, to: 'front' }],
  ['P', 380, { object, to: 'front' }],
  ['A', 520, { object, to: 'front' }],
  ['RL', 120, { object }],
]);
const left: readonly Step[] = [
  ['TE', 430, { object: 'body', to: 'body-bin' }],
  ['G', 300, { object: 'body', from: 'body-bin' }],
  ['TL', 460, { object: 'body', from: 'body-bin', to: 'front' }],
  ...Array.from(
    { length: 14 },
    (_, index): Step => [index % 2 === 0 ? 'H' : 'A', 400, { object: 'body', to: 'front' }],
  ),
  ['TL', 520, { object: 'coupling', from: 'front', to: 'box' }],
  ['RL', 130, { object: 'coupling', to: 'box' }],
];

/** Forty motions a cycle; times vary by a fifth, and one cycle in eight has a fumble or a search more. */
export function manyCycles(cycles: number): Study {
  const random = seededRandom(20_261_126);
  const rows = { left: [] as Motion[], right: [] as Motion[] };
  const starts: number[] = [];
  let at = 0;
  for (let cycle = 0; cycle < cycles; cycle += 1) {
    starts.push(at);
    const ends = [left, right].map((steps, hand) => {
      const row = hand === 0 ? rows.left : rows.right;
      let time = at;
      const add = ([kind, length, details]: Step) => {
        row.push({ id: `${hand}-${row.length}`, start: time, kind, said: 'marked', ...details });
        time += Math.round(length * 1000 * (0.9 + 0.2 * random()));
      };
      for (const step of steps) {
        add(step);
        if (step[0] === 'G' && random() < 1 / 40) add(['G', 200, step[2] ?? {}]);
      }
      return { row, time };
    });
    const end = Math.max(...ends.map(({ time }) => time)) + 200_000;
    for (const { row, time } of ends) {
      row.push({ id: `w-${row.length}`, start: time, kind: 'UD', said: 'marked' });
    }
    at = end;
  }
  const places = ['ring-bin', 'collar-bin', 'cap-bin', 'body-bin', 'front', 'box'];
  return {
    ...emptyStudy('long', 'Many cycles'),
    demo: true,
    operation: { name: 'Put couplings together', unitsAYear: 180_000 },
    places: places.map((id, index) => ({ id, name: id, at: { x: -300 + 120 * index, y: 250 } })),
    methods: [
      {
        id: 'm',
        name: 'Long record',
        kind: 'composed',
        base: { kind: 'micros' },
        unitsPerCycle: 1,
        left: { items: rows.left, end: at },
        right: { items: rows.right, end: at },
        cycles: { items: starts.map((start, index) => ({ id: `c${index}`, start })), end: at },
      },
    ],
  };
}
