import type { Place } from '@evenhand/core/ground/study';

/** A place on the bench, in millimetres: x to the operator's right, y away from the operator, 0,0 at the middle of the near edge. */
export interface BenchPlace {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly mirror?: string;
}

/** The workplace as it is now: one row of bins, everything put together in the left hand. */
export const presentPlaces: readonly BenchPlace[] = [
  { id: 'body-bin', name: 'Body bin', x: -265, y: 345 },
  { id: 'ring-bin', name: 'Ring bin', x: 175, y: 375 },
  { id: 'collar-bin', name: 'Collar bin', x: 335, y: 305 },
  { id: 'holding-place', name: 'Holding place in front', x: -5, y: 195 },
  { id: 'waiting-place', name: 'Waiting place, right', x: 130, y: 165 },
  { id: 'finished-box', name: 'Finished-parts box', x: -300, y: 155 },
];

/** The improved workplace: a fixture with two nests, each hand with its own bins and its own chute. */
export const improvedPlaces: readonly BenchPlace[] = [
  ...mirrored('body-bin', 'Body bin', 88, 385),
  ...mirrored('ring-bin', 'Ring bin', 230, 368),
  ...mirrored('collar-bin', 'Collar bin', 364, 245),
  ...mirrored('nest', 'Fixture nest', 75, 210),
  ...mirrored('chute', 'Drop chute', 185, 165),
];

function mirrored(id: string, name: string, x: number, y: number): readonly BenchPlace[] {
  const left = `${id}-left`;
  const right = `${id}-right`;
  return [
    { id: left, name: `${name}, left`, x: -x, y, mirror: right },
    { id: right, name: `${name}, right`, x, y, mirror: left },
  ];
}

/** Both workplaces as the places of the study document. */
export function studyPlaces(): readonly Place[] {
  return [...presentPlaces, ...improvedPlaces].map(({ id, name, x, y, mirror }) => ({
    id,
    name,
    at: { x, y },
    ...(mirror === undefined ? {} : { mirror }),
  }));
}
