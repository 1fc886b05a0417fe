import {
  bothHandsSlower,
  checkWork,
  compose,
  drawTimes,
  instanceOf,
  ordersOf,
  predictWork,
  scheduleOf,
  shareOfBothAtWork,
  slowedBy,
  type Work,
  type WorkPlace,
  type WorkStep,
} from '@evenhand/core/develop';
import { quantileOf, seededRandom } from '@evenhand/core/ground/numerics';
import { describe, expect, it } from 'vitest';

/**
 * Thirty pins into a board of 5 × 6 holes: 38 s when one hand holds the supply and the other places, 25 s when both hands
 * get and place, so 34 % less. Common practice, no source. Each work here is one cycle of two pins at the middle of the
 * board; thirty pins are fifteen such cycles, and the share that is saved is that of one.
 */
const practice = 0.34;
const cycles = 15;

/** What a write-up supposes, in millimetres. All ours. */
interface Assumptions {
  /** From the holes to the supply held in the hand, and to the box of each hand. */
  readonly supply: number;
  readonly box: number;
  /** Between the two holes that both hands fill at once. */
  readonly holes: number;
  readonly clearance: number;
  readonly supplyWidth: number;
  readonly boxWidth: number;
}

/**
 * The two write-ups that count. The model of the board was changed once (how far two working hands slow each other) after
 * it had missed with the earlier write-ups below. So these two were written afterwards, before either had been run, for two
 * boards that somebody might really have on a bench, and neither they nor the model were touched since: what the test says
 * of them is a prediction and no fit. The first run gave 15.8 to 42.9 % for the small board and 26.6 to 47.5 % for the
 * large one.
 */
const writeUps: readonly (readonly [string, Assumptions])[] = [
  [
    // Holes 25 mm apart as on a board that fits between two hands; pins of wood with the play of a drilled hole; the
    // supply held close above the board; a box a hand wide on either side, not far from it.
    'a small board: wooden pins with 1.6 mm play, supply 75 mm from the holes, boxes 200 mm away',
    { supply: 75, box: 200, holes: 25, clearance: 1.6, supplyWidth: 60, boxWidth: 120 },
  ],
  [
    // Holes 50 mm apart; turned pins that need aiming; the supply held in front of the board with room for it; a wide box
    // farther out on either side.
    'a large board: turned pins with 0.4 mm play, supply 180 mm from the holes, boxes 300 mm away',
    { supply: 180, box: 300, holes: 50, clearance: 0.4, supplyWidth: 80, boxWidth: 150 },
  ],
];

/** Those that the model had been seen with when it was made. They hold by now, which proves nothing. */
const earlier: readonly (readonly [string, Assumptions])[] = [
  [
    'supply close to the board, boxes beside it, a loose fit',
    { supply: 120, box: 200, holes: 40, clearance: 0.8, supplyWidth: 50, boxWidth: 80 },
  ],
  [
    'supply and boxes at one distance, a close fit, holes farther apart',
    { supply: 220, box: 260, holes: 100, clearance: 0.25, supplyWidth: 70, boxWidth: 120 },
  ],
];

type Side = 'left' | 'right';
const sides = ['left', 'right'] as const;

const place = (id: string, x: number, y: number, more: Partial<WorkPlace>): WorkPlace => ({
  id,
  name: id,
  kind: 'bin',
  at: { x, y },
  ...more,
});

/** Get a pin and put it into a hole. */
function pin(unit: number, hand: Side, get: string, hole: string, clearance: number): WorkStep[] {
  const object = 'pin';
  return [
    {
      id: `get-${unit}`,
      name: `Get pin ${unit}`,
      motions: [{ kind: 'G', object }],
      hand,
      place: get,
      after: object,
      eyes: false,
      unit,
    },
    {
      id: `put-${unit}`,
      name: `Put pin ${unit} in`,
      motions: [
        { kind: 'P', object, clearance },
        { kind: 'RL', object },
      ],
      hand,
      place: hole,
      before: object,
      eyes: true,
      unit,
      follows: [{ step: `get-${unit}` }],
    },
  ];
}

function workOf(title: string, places: readonly WorkPlace[], steps: readonly WorkStep[]): Work {
  return { workFormat: 1, title, unitsPerCycle: 2, home: 'free', places, steps };
}

function oneHand({ supply, supplyWidth, holes, clearance }: Assumptions): Work {
  const held = { object: 'supply', place: 'supply', by: 'hand' } as const;
  const steps = [1, 2].flatMap((unit) =>
    pin(unit, 'right', 'supply', `hole-${unit === 1 ? 'left' : 'right'}`, clearance).map((step) =>
      step.place === 'supply' ? { ...step, held } : step,
    ),
  );
  return workOf(
    'One hand places, the other holds the supply',
    [place('supply', 0, 250 - supply, { width: supplyWidth }), ...sides.map((side) => holeOf(side, holes))],
    steps,
  );
}

function bothHands({ box, boxWidth, holes, clearance }: Assumptions): Work {
  return workOf(
    'Both hands get and place',
    sides.flatMap((side) => [
      place(`box-${side}`, (side === 'left' ? -1 : 1) * (holes / 2 + box), 250, { width: boxWidth }),
      holeOf(side, holes),
    ]),
    sides.flatMap((side, index) => pin(index + 1, side, `box-${side}`, `hole-${side}`, clearance)),
  );
}

function holeOf(side: Side, holes: number): WorkPlace {
  const x = ((side === 'left' ? -1 : 1) * holes) / 2;
  return place(`hole-${side}`, x, 250, { kind: 'fixture', width: 25 });
}

/** Draws the time of a cycle of the best method. */
function drawerOf(work: Work) {
  expect(checkWork(work)).toEqual([]);
  const times = predictWork(work, []);
  const instance = instanceOf(work, times);
  const composed = compose(instance, { seed: 1 });
  if (!composed.ok) throw new Error(composed.error.message);
  const { schedule, proven } = composed.value;
  const orders = ordersOf(instance, schedule);
  const draw = (seed: number, slower: number) => {
    const drawn = instanceOf(work, drawTimes(times, seed));
    const found = scheduleOf(drawn, orders);
    if (found === undefined) throw new Error('the orders cannot be kept');
    return found.period * slowedBy(shareOfBothAtWork(work, drawn, found), slower);
  };
  return { period: schedule.period, proven, draw };
}

/** 90 % interval of the share that both hands save. */
function savedBy(assumptions: Assumptions) {
  const [one, both] = [drawerOf(oneHand(assumptions)), drawerOf(bothHands(assumptions))];
  const random = seededRandom(3);
  const { least, most } = bothHandsSlower;
  const saved = Array.from({ length: 600 }, (_, index) => {
    const slower = least + (most - least) * random();
    return 1 - both.draw(100 + 7919 * index, slower) / one.draw(100 + 7919 * index, slower);
  }).sort((a, b) => a - b);
  return { one, both, low: quantileOf(saved, 0.05), high: quantileOf(saved, 0.95) };
}

describe('pins into a board of thirty holes, composed (common practice, no source)', () => {
  it.each(writeUps)('%s: the interval of what is saved contains 34 %', (_title, assumptions) => {
    const { one, both, low, high } = savedBy(assumptions);
    expect(one.proven && both.proven).toBe(true);
    expect(low).toBeLessThan(practice);
    expect(high).toBeGreaterThan(practice);
    // An interval that holds anything says nothing.
    expect(high - low).toBeLessThan(0.4);
    // 38 s and 25 s themselves, at a pace that nobody has measured.
    expect((cycles * one.period) / 1e6).toBeGreaterThan(25);
    expect((cycles * one.period) / 1e6).toBeLessThan(58);
  });

  it.each(earlier)('the earlier write-up, %s, still contains it', (_title, assumptions) => {
    const { low, high } = savedBy(assumptions);
    expect(low).toBeLessThan(practice);
    expect(high).toBeGreaterThan(practice);
  });
});
