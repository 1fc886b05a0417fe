import type { Hand } from '../../../ground/study/index.ts';
import type { Work, WorkStep } from '../work/index.ts';
import type { ReachChoice } from './people.ts';
import type { Trips } from './trips.ts';
import { areaOf, type PlaceArea, worseArea } from './working-areas.ts';

export interface ReachSentence {
  readonly place: string;
  readonly hand: Hand;
  readonly area: PlaceArea;
  readonly sentence: string;
}

export interface ReachWords {
  /** Places that somebody of the range does not reach with a hand that goes there. */
  readonly beyond: readonly ReachSentence[];
  /** Places that everybody reaches, but not all of them within the normal area. */
  readonly outside: readonly ReachSentence[];
}

const hands = ['left', 'right'] as const;

/**
 * Which places lie outside the areas of the hands that go there, in words. Without trips of a method a place of a step that
 * either hand may do counts for the hand that it lies better for.
 */
export function reachWords(work: Work, trips: Trips | undefined, reach: ReachChoice): ReachWords {
  const found = work.places.flatMap((place): ReachSentence[] => {
    const { id, name, at } = place;
    if (at === undefined) return [];
    const areas = hands.map((hand) => ({ hand, area: areaOf({ name, at }, hand, reach) }));
    const used = trips === undefined ? usersBySteps(work.steps, id) : usersByTrips(trips, id);
    const asked =
      used === 'either'
        ? [areas.reduce((one, other) => (badness(other.area) < badness(one.area) ? other : one))]
        : areas.filter(({ hand }) => used.includes(hand));
    return asked.map(({ hand, area }) => ({ place: id, hand, area, sentence: area.sentence }));
  });
  return {
    beyond: found.filter(({ area }) => !area.reached),
    outside: found.filter(({ area }) => area.reached && worseArea(area) !== 'normal'),
  };
}

/** Out of reach weighs most, then the maximum area, then the distance. */
function badness(area: PlaceArea): number {
  const rank = { normal: 0, maximum: 1, beyond: 2 }[worseArea(area)];
  return rank * 1e6 + Math.max(area.smallest.distance, area.largest.distance);
}

function usersByTrips({ list }: Trips, place: string): readonly Hand[] {
  return hands.filter((hand) =>
    list.some((trip) => trip.hand === hand && (trip.from === place || trip.to === place)),
  );
}

function usersBySteps(steps: readonly WorkStep[], place: string): readonly Hand[] | 'either' {
  const used = new Set<Hand>();
  let either = false;
  for (const step of steps) {
    const right = step.rightPlace ?? step.place;
    if (step.hand === 'both') {
      if (step.place === place) used.add('left');
      if (right === place) used.add('right');
    } else if (step.place === place) {
      if (step.hand === 'either') either = true;
      else used.add(step.hand);
    }
  }
  if (used.size > 0) return hands.filter((hand) => used.has(hand));
  return either ? 'either' : [];
}
