import { exactAssignment } from './branch-and-bound.ts';
import { assignmentCost, type QuadraticAssignment } from './quadratic-assignment.ts';
import { tabuAssignment } from './tabu-search.ts';

export interface AssignmentWish {
  readonly seed: number;
  /** Starts of the search that goes before the proof; 10 when left out. */
  readonly starts?: number | undefined;
  /** Changes from each start; 1,000 when left out. */
  readonly moves?: number | undefined;
  /** Nodes that the proof may open; 200,000 when left out. */
  readonly nodes?: number | undefined;
  /** Where to start from. */
  readonly known?: ArrayLike<number> | undefined;
  readonly stop?: (() => boolean) | undefined;
}

export interface BestAssignment {
  /** Spot of each item; undefined when no assignment that keeps the rules was found. */
  readonly spotOf: Int32Array | undefined;
  /** Infinite when none was found. */
  readonly cost: number;
  /** No assignment is cheaper. */
  readonly bound: number;
  /** Nothing cheaper exists; or, without an assignment, that none keeps the rules. */
  readonly proven: boolean;
  readonly nodes: number;
}

/** A good assignment first, then the proof as far as its nodes reach. The same seed gives the same assignment. */
export function bestAssignment(problem: QuadraticAssignment, wish: AssignmentWish): BestAssignment {
  const { seed, starts = 10, moves = 1000, nodes = 200_000, known, stop } = wish;
  if (problem.items > problem.spots) {
    const none = Number.POSITIVE_INFINITY;
    return { spotOf: undefined, cost: none, bound: none, proven: true, nodes: 0 };
  }
  const allowed = known !== undefined && assignmentCost(problem, known) < Number.POSITIVE_INFINITY;
  const good = tabuAssignment(problem, { seed, starts, moves, known: allowed ? known : undefined, stop });
  return exactAssignment(problem, { known: good, nodes, stop });
}
