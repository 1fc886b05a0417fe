export {
  type Arranged,
  type ArrangeWish,
  arranged,
  arrangeSpots,
  type MovedPlace,
  movedBetween,
} from './arrange.ts';
export { type FigureAtOnce, figureAtOnce } from './at-once.ts';
export { type BenchMethod, type BenchWish, benchMethod } from './bench-method.ts';
export { benchPlan } from './bench-plan.ts';
export {
  type BenchSpot,
  cornersOf,
  gridSpots,
  type LayoutLimits,
  type LayoutSpace,
  layoutSpace,
  leastGap,
  movablePlaces,
  roomOf,
  sizeOf,
} from './bench-spots.ts';
export { type AssignmentWish, type BestAssignment, bestAssignment } from './best-assignment.ts';
export { type BestPlaces, bestPlaces, type PlacesWish } from './best-places.ts';
export { type ExactAssignment, type ExactWish, exactAssignment } from './branch-and-bound.ts';
export {
  elbowHeight,
  type PeopleRange,
  type Person,
  type Posture,
  peopleRanges,
  personText,
  type ReachChoice,
  reachOfBench,
  type SurfaceHeight,
  usualReach,
} from './people.ts';
export { benchSize, type PlanLook, type PlanPaper, type TitleBlock } from './plan-frame.ts';
export { assignmentCost, type QuadraticAssignment } from './quadratic-assignment.ts';
export { type ReachSentence, type ReachWords, reachWords } from './reach-words.ts';
export { type TabuWish, tabuAssignment } from './tabu-search.ts';
export {
  arrivals,
  type HandPath,
  type HandTravel,
  handPaths,
  handTravel,
  positionsOf,
  type Trip,
  type Trips,
  travelOver,
  tripsOfReading,
  tripsOfSchedule,
} from './trips.ts';
export { type HeightAdvice, heightAdvice, type SuitedHeight } from './work-height.ts';
export {
  type ArmReach,
  areaOf,
  areaOutline,
  armReach,
  type BenchPoint,
  type PlaceArea,
  worseArea,
} from './working-areas.ts';
