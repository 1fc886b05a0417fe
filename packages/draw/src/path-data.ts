/** A step of a path in absolute coordinates; arcs have become cubic curves. */
export type PathStep =
  | { readonly kind: 'move' | 'line'; readonly to: Point }
  | { readonly kind: 'cubic'; readonly first: Point; readonly second: Point; readonly to: Point }
  | { readonly kind: 'close' };

export type Point = readonly [x: number, y: number];

const argumentsOf = { M: 2, L: 2, C: 6, A: 7, Z: 0 } as const;

/**
 * Reads the absolute path commands M, L, C, A and Z (SVG 2, chapter 9).
 * @throws RangeError for any other command, or where a number is missing
 */
export function readPath(d: string): readonly PathStep[] {
  const tokens = d.match(/[A-Za-z]|-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi) ?? [];
  const steps: PathStep[] = [];
  let at: Point = [0, 0];
  let command: keyof typeof argumentsOf | undefined;
  for (let index = 0; index < tokens.length; ) {
    const token = tokens[index] ?? '';
    if (/^[A-Za-z]$/.test(token)) {
      if (!(token in argumentsOf)) throw new RangeError(`a path may not use the command ${token}`);
      command = token as keyof typeof argumentsOf;
      index += 1;
    }
    if (command === undefined) throw new RangeError(`a path must begin with a command: ${d}`);
    const count = argumentsOf[command];
    const numbers = tokens.slice(index, index + count).map(Number);
    if (numbers.length < count || numbers.some((value) => !Number.isFinite(value))) {
      throw new RangeError(`the path command ${command} needs ${count} numbers: ${d}`);
    }
    index += count;
    const made = stepsOf(command, numbers, at);
    steps.push(...made);
    const last = made.at(-1);
    if (last !== undefined && last.kind !== 'close') at = last.to;
    if (command === 'M') command = 'L';
    if (command === 'Z') command = undefined;
  }
  return steps;
}

function stepsOf(
  command: keyof typeof argumentsOf,
  numbers: readonly number[],
  at: Point,
): readonly PathStep[] {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0] = numbers;
  switch (command) {
    case 'M':
      return [{ kind: 'move', to: [a, b] }];
    case 'L':
      return [{ kind: 'line', to: [a, b] }];
    case 'C':
      return [{ kind: 'cubic', first: [a, b], second: [c, d], to: [e, f] }];
    case 'A':
      return arcToCubics(at, { radii: [a, b], turn: c, large: d !== 0, sweep: e !== 0, to: [f, g] });
    case 'Z':
      return [{ kind: 'close' }];
  }
}

interface Arc {
  readonly radii: Point;
  /** Degrees. */
  readonly turn: number;
  readonly large: boolean;
  readonly sweep: boolean;
  readonly to: Point;
}

/**
 * An elliptical arc as cubic curves of at most a quarter turn each (SVG 2, appendix B.2.4, end points to centre). A
 * quarter is off by less than 0.03 % of the radius with handles of 4/3·tan(θ/4).
 */
function arcToCubics(from: Point, arc: Arc): readonly PathStep[] {
  const { to } = arc;
  if (from[0] === to[0] && from[1] === to[1]) return [];
  if (arc.radii[0] === 0 || arc.radii[1] === 0) return [{ kind: 'line', to }];
  const { centre, radii, start, sweep, turn } = centreOf(from, arc);
  const pieces = Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9);
  const step = sweep / pieces;
  const handle = (4 / 3) * Math.tan(step / 4);
  const point = (x: number, y: number): Point => [
    centre[0] + radii[0] * x * Math.cos(turn) - radii[1] * y * Math.sin(turn),
    centre[1] + radii[0] * x * Math.sin(turn) + radii[1] * y * Math.cos(turn),
  ];
  return Array.from({ length: pieces }, (_, index): PathStep => {
    const [a, b] = [start + index * step, start + (index + 1) * step];
    return {
      kind: 'cubic',
      first: point(Math.cos(a) - handle * Math.sin(a), Math.sin(a) + handle * Math.cos(a)),
      second: point(Math.cos(b) + handle * Math.sin(b), Math.sin(b) - handle * Math.cos(b)),
      to: index === pieces - 1 ? to : point(Math.cos(b), Math.sin(b)),
    };
  });
}

function centreOf(from: Point, arc: Arc) {
  const turn = (arc.turn * Math.PI) / 180;
  const [dx, dy] = [(from[0] - arc.to[0]) / 2, (from[1] - arc.to[1]) / 2];
  const x = Math.cos(turn) * dx + Math.sin(turn) * dy;
  const y = -Math.sin(turn) * dx + Math.cos(turn) * dy;
  // Radii too small to reach are enlarged until they do.
  const reach = Math.hypot(x / arc.radii[0], y / arc.radii[1]);
  const grow = Math.max(1, reach);
  const radii: Point = [Math.abs(arc.radii[0]) * grow, Math.abs(arc.radii[1]) * grow];
  const share = Math.hypot(x / radii[0], y / radii[1]) ** 2;
  const side = arc.large === arc.sweep ? -1 : 1;
  const factor = side * Math.sqrt(Math.max(0, 1 / share - 1));
  const [cx, cy] = [(factor * radii[0] * y) / radii[1], (-factor * radii[1] * x) / radii[0]];
  const centre: Point = [
    Math.cos(turn) * cx - Math.sin(turn) * cy + (from[0] + arc.to[0]) / 2,
    Math.sin(turn) * cx + Math.cos(turn) * cy + (from[1] + arc.to[1]) / 2,
  ];
  const start = Math.atan2((y - cy) / radii[1], (x - cx) / radii[0]);
  const end = Math.atan2((-y - cy) / radii[1], (-x - cx) / radii[0]);
  let sweep = end - start;
  if (arc.sweep && sweep < 0) sweep += 2 * Math.PI;
  if (!arc.sweep && sweep > 0) sweep -= 2 * Math.PI;
  return { centre, radii, start, sweep, turn };
}
