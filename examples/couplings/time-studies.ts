import { seededRandom } from '@evenhand/core/ground/numerics';
import type { Comparison, ElementMark, TimeStudy, TimeStudyElement } from '@evenhand/core/ground/study';

/** Names of the elements, the same in both methods, so that their films can be shown in step. */
export const elementNames = ['get body and ring', 'fit ring', 'fit collar', 'tighten and lay down'] as const;

/** Where the elements begin in the first cycle of each method: frames of its film, by the hand whose motion begins them. */
export const presentElements: readonly ElementMark[] = marks('left', 15, 'right', [67, 101, 174]);
export const improvedElements: readonly ElementMark[] = marks('left', 15, 'left', [129, 166, 252]);

function marks(
  firstHand: ElementMark['hand'],
  first: number,
  hand: ElementMark['hand'],
  others: readonly number[],
): readonly ElementMark[] {
  return elementNames.map((name, index) =>
    index === 0
      ? { id: `e${index + 1}`, name, hand: firstHand, at: first }
      : { id: `e${index + 1}`, name, hand, at: others[index - 1] ?? 0 },
  );
}

const cycles = 20;

/** Invented readings that vary by about a tenth, the same for the same seed, to the millisecond of a watch. */
function readings(seed: number, mean: number): TimeStudyElement['readings'] {
  const random = seededRandom(seed);
  return Array.from({ length: cycles }, (_, index) => ({
    cycle: index + 1,
    // The second operator works a little otherwise: half a tenth more.
    us: Math.round(mean * (0.82 + 0.18 * (random() + random())) * (index >= 10 ? 1.05 : 1) * 1000) * 1000,
  }));
}

/** With a watch at the bench, leak test included, which the films do not show. */
function watchStudy(): TimeStudy {
  const elements: TimeStudyElement[] = [
    {
      id: 'get',
      name: elementNames[0],
      work: 'worker',
      endsWhen: 'ring touches body',
      rating: 95,
      readings: readings(1, 1.75),
    },
    {
      id: 'ring',
      name: elementNames[1],
      work: 'worker',
      endsWhen: 'hand leaves ring',
      rating: 95,
      readings: readings(2, 1.1).map((reading) =>
        reading.cycle === 9 ? { ...reading, us: 4_870_000, setAside: 'ring fell on the floor' } : reading,
      ),
    },
    {
      id: 'collar',
      name: elementNames[2],
      work: 'worker',
      endsWhen: 'hand leaves collar',
      rating: 100,
      readings: readings(3, 2.4).map(({ cycle, us }) => (cycle === 14 ? { cycle } : { cycle, us })),
    },
    {
      id: 'tighten',
      name: elementNames[3],
      work: 'worker',
      endsWhen: 'coupling lands in the box',
      readings: readings(4, 2.05).map((reading) => ({
        ...reading,
        rating: reading.cycle % 4 === 0 ? 105 : 100,
      })),
    },
    {
      id: 'test',
      name: 'leak test runs',
      work: 'process',
      endsWhen: 'lamp turns green',
      readings: readings(5, 5.2),
    },
    {
      id: 'wipe',
      name: 'wipe the last coupling',
      work: 'inside',
      endsWhen: 'cloth is laid down',
      rating: 100,
      readings: readings(6, 2.3),
    },
    {
      id: 'box',
      name: 'change the box of bodies',
      work: 'worker',
      endsWhen: 'new box stands in its place',
      occurs: { times: 1, cycles: 10 },
      rating: 100,
      readings: [
        { cycle: 7, us: 11_400_000 },
        { cycle: 17, us: 12_900_000 },
      ],
    },
  ];
  return {
    id: 'bench-watch',
    name: 'Present method by the watch',
    source: { kind: 'readings', method: 'present', timing: 'continuous' },
    unit: 'minutes',
    scale: '0-100',
    rating: 100,
    ratingError: 0.05,
    confidence: 0.95,
    precision: { kind: 'relative', share: 0.05 },
    allowances: {
      convention: 'share-of-basic-time',
      relaxation: {
        kind: 'table',
        edition: 'kilograms',
        column: 'women',
        choices: [
          { row: 'personal', level: 0 },
          { row: 'basic-fatigue', level: 0 },
          { row: 'attention', level: 0 },
          { row: 'monotony', level: 1 },
        ],
      },
      process: 0.05,
      contingency: 0.02,
    },
    piecesPerCycle: 1,
    elements,
    sittings: [
      { id: 's1', start: 1, operatorCode: 'K1', observer: 'invented', date: '2026-03-02' },
      { id: 's2', start: 11, operatorCode: 'K2', observer: 'invented', date: '2026-03-03' },
    ],
    foreign: [{ id: 'f1', cycle: 6, element: 'collar', us: 14_200_000, what: 'spoken to by the foreman' }],
    note: 'Invented figures. The leak test stands at the end of the bench and is not in the films.',
  };
}

/** From the marked film of the improved method. */
function filmStudy(): TimeStudy {
  return {
    id: 'bench-film',
    name: 'Improved method from its film',
    source: { kind: 'record', method: 'improved' },
    unit: 'seconds',
    scale: '0-100',
    rating: 100,
    ratingError: 0.05,
    confidence: 0.95,
    precision: { kind: 'relative', share: 0.05 },
    allowances: {
      convention: 'share-of-basic-time',
      relaxation: { kind: 'share', share: 0.12 },
      process: 0,
      contingency: 0,
    },
    piecesPerCycle: 2,
    elements: elementNames.map((name, index) => ({
      id: `e${index + 1}`,
      name,
      work: 'worker' as const,
      readings: [],
    })),
    note: 'Invented, as the film is.',
  };
}

export function demoTimeStudies(): readonly TimeStudy[] {
  return [watchStudy(), filmStudy()];
}

/** Present against improved, with what an invented change would cost. */
export function demoComparisons(): readonly Comparison[] {
  return [
    {
      id: 'present-improved',
      name: 'Present and improved',
      before: { method: 'present' },
      after: { method: 'improved' },
      confidence: 0.95,
      money: {
        currency: '€',
        basis: 'measured',
        unitsAYear: 180_000,
        hourlyCost: 34,
        cost: 5200,
        years: 3,
        discountRate: 0.08,
        runningCost: 200,
        learning: { firstUnit: 1.6, rate: 0.9 },
        ranges: {
          unitsAYear: { low: 120_000, high: 200_000 },
          hourlyCost: { low: 30, high: 40 },
          cost: { low: 4000, high: 8000 },
        },
      },
      note: 'Invented figures.',
    },
  ];
}
