import type { MotionKind } from '../../../ground/tables/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';

/** A tool in one hand from the reach for it to the letting go. */
export interface ToolUptake {
  readonly tool: string;
  /** Position of the cycle in the reading. */
  readonly cycle: number;
  /** Boundaries of the method. */
  readonly from: number;
  readonly to: number;
  /** The motions that bring it to its first use and away from its last. */
  readonly handling: readonly Piece[];
}

const towards: ReadonlySet<MotionKind> = new Set(['TE', 'Sh', 'St', 'F']);
const bringing: ReadonlySet<MotionKind> = new Set(['TL', 'PP', 'RL']);

/** Every time that the hand takes up a named thing, uses it (or something with it) and lets it go. In order of time. */
export function toolUptakes(pieces: CycleReading['left']): readonly ToolUptake[] {
  const found: ToolUptake[] = [];
  let grasp = -1;
  pieces.forEach((piece, at) => {
    if (piece.kind === 'G') grasp = at;
    if (piece.kind !== 'RL' || grasp < 0) return;
    const uptake = uptakeBetween(pieces, grasp, at);
    if (uptake !== undefined) found.push(uptake);
    grasp = -1;
  });
  return found;
}

function uptakeBetween(pieces: CycleReading['left'], grasp: number, release: number): ToolUptake | undefined {
  const held = pieces.slice(grasp, release + 1);
  const [first, last] = [held[0], held.at(-1)];
  const tool = first?.object;
  const firstUse = held.findIndex(({ kind }) => kind === 'U');
  const lastUse = held.findLastIndex(({ kind }) => kind === 'U');
  if (first === undefined || last === undefined || tool === undefined) return undefined;
  if (last.object !== tool || firstUse < 0) return undefined;
  const reach = reachBefore(pieces, grasp, tool);
  const around = held.filter(
    ({ kind }, index) => (index < firstUse || index > lastUse) && bringing.has(kind),
  );
  const handling = [...reach, first, ...around];
  return { tool, cycle: first.cycle, from: (reach[0] ?? first).from, to: last.to, handling };
}

/** The reaching and searching right before a grasp that is for the same thing, or names none. */
function reachBefore(pieces: CycleReading['left'], grasp: number, tool: string): readonly Piece[] {
  let start = grasp;
  for (let at = grasp - 1; at >= 0; at -= 1) {
    const piece = pieces[at];
    if (piece === undefined || !towards.has(piece.kind)) break;
    if (piece.object !== undefined && piece.object !== tool) break;
    start = at;
  }
  return pieces.slice(start, grasp);
}
