import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../../../tests/helpers/plain-study.ts';
import { shortestTwoHanded, type Task } from '../../../../../../tests/oracles/two-hand-schedule.ts';
import { type Step, walkedCycle } from '../../../../../../tests/oracles/two-hand-walk.ts';
import type { Motion } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { type CycleReading, type Piece, readMethod, segmentsOf } from '../reading/index.ts';
import { cycleModel } from './cycle-model.ts';
import { effectTable, gone, shortened } from './effect.ts';
import { individualsOf } from './individuals.ts';
import { keptOrderCycle } from './kept-order.ts';
import { sharedWorkBound } from './shared-work.ts';
import { stakeOf } from './stake.ts';

type Row = readonly (readonly [kind: MotionKind, length: number, details?: Partial<Motion>])[];
const unit = 100_000;

/** One cycle of two rows; lengths in tenths of a second. */
function cycleOf(left: Row, right: Row): CycleReading {
  const base = plainStudy();
  const row = (hand: string, motions: Row) => {
    let start = 0;
    const items = motions.map(([kind, length, details], index): Motion => {
      const motion: Motion = { id: `${hand}${index}`, start, kind, said: 'marked', ...details };
      start += length * unit;
      return motion;
    });
    return { items, end: start };
  };
  const [method] = base.methods;
  if (method === undefined) throw new Error('no method');
  const rows = { left: row('l', left), right: row('r', right) };
  const end = Math.max(rows.left.end, rows.right.end);
  const places = ['bin', 'front', 'other'].map((id) => ({ id, name: id }));
  const made = { ...method, ...rows, cycles: { items: [{ id: 'c', start: 0 }], end } };
  const reading = readMethod({ ...base, places, methods: [made] }, 'm');
  const cycle = reading.ok ? reading.value.cycles[0] : undefined;
  if (cycle === undefined) throw new Error('nothing read');
  return cycle;
}

const stake = (cycle: CycleReading, pieces: readonly Piece[], arrangement: 'kept' | 'shared' = 'kept') => {
  const { low, high } = stakeOf(cycleModel(cycle), pieces.map(gone), arrangement);
  return [low / unit, high / unit];
};
const all = (cycle: CycleReading, kind: MotionKind) =>
  [...cycle.left, ...cycle.right].filter((piece) => piece.kind === kind);

describe('what a change is worth, worked out by hand', () => {
  it('a search while the other hand waits for it: all of it', () => {
    // right: search 4, assemble 6; left waits 4, then assembles 6. Without the search: 6.
    const cycle = cycleOf(
      [
        ['UD', 4],
        ['A', 6],
      ],
      [
        ['Sh', 4],
        ['A', 6],
      ],
    );
    expect(stake(cycle, all(cycle, 'Sh'))).toEqual([4, 4]);
  });

  it('a search while the other hand works on: nothing', () => {
    const cycle = cycleOf(
      [['A', 10]],
      [
        ['Sh', 4],
        ['A', 6],
      ],
    );
    expect(stake(cycle, all(cycle, 'Sh'))).toEqual([0, 0]);
  });

  it('a motion beside a hold takes the hold along', () => {
    const cycle = cycleOf(
      [['H', 10]],
      [
        ['P', 3],
        ['A', 7],
      ],
    );
    expect(stake(cycle, all(cycle, 'P'))).toEqual([3, 3]);
  });

  it('a hold: at least nothing, at most half of what the other hand does alone', () => {
    const cycle = cycleOf([['H', 10]], [['A', 10]]);
    expect(stake(cycle, all(cycle, 'H'), 'shared')).toEqual([0, 5]);
  });

  it('a hold while one thing goes through every motion: nothing can be shared', () => {
    const ring = { object: 'ring' };
    const cycle = cycleOf(
      [['H', 10]],
      [
        ['G', 2, ring],
        ['TL', 3, ring],
        ['A', 5, ring],
      ],
    );
    expect(stake(cycle, all(cycle, 'H'), 'shared')).toEqual([0, 0]);
  });

  it('a machine that both hands wait for stays when only one of them is freed', () => {
    const cycle = cycleOf(
      [
        ['A', 4],
        ['UD', 6],
      ],
      [
        ['H', 4],
        ['UD', 6],
      ],
    );
    const [left, right] = all(cycle, 'UD');
    expect(stake(cycle, left === undefined ? [] : [left])).toEqual([0, 0]);
    expect(
      stake(
        cycle,
        [left, right].filter((piece) => piece !== undefined),
      ),
    ).toEqual([6, 6]);
  });

  it('a motion half as long', () => {
    const cycle = cycleOf(
      [['UD', 10]],
      [
        ['P', 4],
        ['A', 6],
      ],
    );
    const effects = all(cycle, 'P').map((piece) => shortened(piece, unit, 2 * unit));
    const { low, high } = stakeOf(cycleModel(cycle), effects, 'kept');
    expect([low / unit, high / unit]).toEqual([2, 3]);
  });
});

describe('which motions are made with the same thing', () => {
  const lengths = (cycle: CycleReading) =>
    individualsOf(cycle).map((pieces) => pieces.map(({ kind }) => kind));

  it('each grasp from the bin begins another ring, with the reach for it', () => {
    const reach = { object: 'ring', to: 'bin' };
    const grasp = { object: 'ring', from: 'bin' };
    const carry = { object: 'ring', to: 'front' };
    const once: Row = [
      ['TE', 1, reach],
      ['G', 1, grasp],
      ['TL', 1, carry],
      ['RL', 1, { object: 'ring' }],
    ];
    const cycle = cycleOf([['UD', 8]], [...once, ...once]);
    expect(lengths(cycle)).toEqual([
      ['TE', 'G', 'TL', 'RL'],
      ['TE', 'G', 'TL', 'RL'],
    ]);
  });

  it('a grasp where the ring was laid down takes up the same ring, in either hand', () => {
    const cycle = cycleOf(
      [
        ['UD', 3],
        ['TE', 1, { object: 'ring' }],
        ['G', 1, { object: 'ring', from: 'front' }],
        ['UD', 1],
      ],
      [
        ['G', 1, { object: 'ring', from: 'bin' }],
        ['TL', 1, { object: 'ring', to: 'front' }],
        ['RL', 1, { object: 'ring' }],
        ['UD', 3],
      ],
    );
    expect(lengths(cycle)).toEqual([['G', 'TL', 'RL', 'TE', 'G']]);
  });

  it('both hands grasp from one bin at once: two rings', () => {
    const grasp: Row = [
      ['G', 1, { object: 'ring', from: 'bin' }],
      ['TL', 1, { object: 'ring', to: 'front' }],
    ];
    expect(lengths(cycleOf(grasp, grasp))).toEqual([
      ['G', 'TL'],
      ['G', 'TL'],
    ]);
  });

  it('without places there is one of each name', () => {
    const grasp: Row = [
      ['G', 1, { object: 'ring' }],
      ['RL', 1, { object: 'ring' }],
    ];
    expect(lengths(cycleOf([['UD', 4]], [...grasp, ...grasp]))).toHaveLength(1);
  });
});

const kindArb = fc.constantFrom<MotionKind>('TE', 'G', 'TL', 'A', 'P', 'RL', 'H', 'UD', 'AD', 'Sh');
const objectArb = fc.constantFrom(undefined, 'ring', 'body');
const motionArb = fc.tuple(kindArb, fc.integer({ min: 1, max: 4 }), objectArb);
/** Both rows end together: the shorter one is filled up with a wait. */
const cycleArb = fc
  .tuple(
    fc.array(motionArb, { minLength: 1, maxLength: 7 }),
    fc.array(motionArb, { minLength: 1, maxLength: 7 }),
  )
  .map(([left, right]) => {
    const row = (motions: typeof left): Row =>
      motions.map(([kind, length, object]) => [kind, length, object === undefined ? {} : { object }]);
    const length = (motions: Row) => motions.reduce((sum, motion) => sum + motion[1], 0);
    const rows = [row(left), row(right)] as const;
    const end = Math.max(length(rows[0]), length(rows[1]));
    const filled = (motions: Row): Row =>
      length(motions) < end ? [...motions, ['UD', end - length(motions)]] : motions;
    return cycleOf(filled(rows[0]), filled(rows[1]));
  });
const seeded = (seed: number) => ({ seed, numRuns: 400 });
const some = fc.array(fc.nat(13), { maxLength: 8 });
const chosen = (cycle: CycleReading, picks: readonly number[]) => {
  const pieces = [...cycle.left, ...cycle.right];
  return [...new Set(picks)].flatMap((pick) => pieces[pick] ?? []);
};

describe('laws', () => {
  it('without a change the cycle is the recorded one', () => {
    fc.assert(
      fc.property(cycleArb, (cycle) => {
        expect(keptOrderCycle(segmentsOf(cycle), effectTable(cycle, []))).toBe(cycle.duration);
      }),
      seeded(301),
    );
  });

  it('the shorter cycle is that of two hands walking tick by tick', () => {
    fc.assert(
      fc.property(cycleArb, some, (cycle, picks) => {
        const out = new Set(chosen(cycle, picks));
        const steps = (pieces: readonly Piece[]) =>
          pieces.map((piece): Step => {
            const follows = piece.kind === 'H' || piece.kind === 'UD';
            return {
              length: piece.duration / unit,
              does: out.has(piece) ? 'gone' : follows ? 'follow' : 'work',
            };
          });
        // A process stays when only one of its two waits goes: the walk knows no such case, so it is left to the examples.
        const half = segmentsOf(cycle).some(
          ({ left, right }) =>
            [left, right].every(({ kind }) => kind === 'H' || kind === 'UD') &&
            out.has(left) !== out.has(right),
        );
        fc.pre(!half);
        const found = keptOrderCycle(segmentsOf(cycle), effectTable(cycle, [...out].map(gone)));
        expect(found / unit).toBe(walkedCycle(steps(cycle.left), steps(cycle.right)));
      }),
      seeded(302),
    );
  });

  it('what one lead was worth leaves no trace in the next', () => {
    fc.assert(
      fc.property(cycleArb, some, some, (cycle, a, b) => {
        const model = cycleModel(cycle);
        const first = stakeOf(model, chosen(cycle, a).map(gone), 'shared');
        stakeOf(model, chosen(cycle, b).map(gone), 'kept');
        expect(stakeOf(model, chosen(cycle, a).map(gone), 'shared')).toEqual(first);
      }),
      seeded(305),
    );
  });

  it('never negative, never more than the cycle, low before high; more taken out is worth no less', () => {
    fc.assert(
      fc.property(
        cycleArb,
        some,
        some,
        fc.constantFrom('kept' as const, 'shared' as const),
        (cycle, a, b, way) => {
          const few = stakeOf(cycleModel(cycle), chosen(cycle, a).map(gone), way);
          const more = stakeOf(cycleModel(cycle), chosen(cycle, [...a, ...b]).map(gone), way);
          for (const { low, high } of [few, more]) {
            expect(low).toBeGreaterThanOrEqual(0);
            expect(high).toBeGreaterThanOrEqual(low);
            expect(high).toBeLessThanOrEqual(cycle.duration);
          }
          expect(more.low).toBeGreaterThanOrEqual(few.low);
          expect(more.high).toBeGreaterThanOrEqual(few.high);
        },
      ),
      seeded(303),
    );
  });

  it('no arrangement of the work is shorter than the bound (all arrangements tried)', () => {
    const small = fc.array(
      fc.tuple(fc.constantFrom<MotionKind>('G', 'A', 'TL'), fc.integer({ min: 1, max: 5 }), objectArb),
      {
        minLength: 1,
        maxLength: 6,
      },
    );
    fc.assert(
      fc.property(small, (motions) => {
        const right: Row = motions.map(([kind, length, object]) => [
          kind,
          length,
          object === undefined ? {} : { object },
        ]);
        const end = right.reduce((sum, motion) => sum + motion[1], 0);
        const cycle = cycleOf([['H', end]], right);
        const tasks = motions.map(
          ([, length, object], index): Task => ({
            length,
            after: motions.flatMap(([, , known], other) =>
              object !== undefined && known === object && other < index ? [other] : [],
            ),
          }),
        );
        const bound = sharedWorkBound(cycleModel(cycle), effectTable(cycle, all(cycle, 'H').map(gone)));
        expect(bound / unit).toBeLessThanOrEqual(shortestTwoHanded(tasks) + 1e-9);
      }),
      seeded(304),
    );
  });
});
