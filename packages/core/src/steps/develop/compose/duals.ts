import type { Instance, Role } from './instance.ts';
import { both, impossible, type WayTables } from './tables.ts';

/**
 * Prices of leaving and of entering a role. On each hand what is paid for leaving one role and entering the next is never
 * more than the move between them, so the sum over a whole cycle is never more than what both hands travel.
 */
export interface Duals {
  readonly leave: readonly [Int32Array, Int32Array];
  readonly enter: readonly [Int32Array, Int32Array];
  /** What a task takes at least of both hands together with these prices. */
  readonly cost: Int32Array;
}

/** Prices from the cheapest way to give each role one that comes before it (an assignment), where that is exact enough. */
export function dualsOf(
  { tasks }: Instance,
  ways: WayTables,
  setup: readonly [Int32Array, Int32Array],
  wrap: readonly [Int32Array, Int32Array],
): Duals {
  const plain = plainDuals(ways, setup, wrap);
  const nodes = alikeInAllModes(tasks.length, ways);
  if (nodes === undefined || nodes.length > 500) return plain;
  const leave = both((side) => new Int32Array(ways.roles[side].length));
  const enter = both((side) => new Int32Array(ways.roles[side].length));
  const loadOf = (node: Node, when: 'before' | 'after') => {
    const side = node[0].length > 0 ? 0 : 1;
    return ways.roles[side][node[side][0] as number]?.[when];
  };
  // A role that leaves a load is followed by one that takes it, so every load is an assignment of its own.
  for (const load of new Set(nodes.map((node) => loadOf(node, 'after')))) {
    const from = nodes.filter((node) => loadOf(node, 'after') === load);
    const to = nodes.filter((node) => loadOf(node, 'before') === load);
    if (from.length !== to.length) return plain;
    const least = Float64Array.from({ length: from.length ** 2 }, (_, at) => {
      const [a, b] = [from[Math.floor(at / to.length)] as Node, to[at % to.length] as Node];
      return leastBetween(a, b, ways, setup, wrap);
    });
    const prices = assignmentPrices(least, from.length);
    if (prices === undefined) return plain;
    from.forEach((node, index) => {
      for (const side of [0, 1] as const)
        for (const role of node[side]) leave[side][role] = prices.row[index] as number;
    });
    to.forEach((node, index) => {
      for (const side of [0, 1] as const)
        for (const role of node[side]) enter[side][role] = prices.column[index] as number;
    });
  }
  return { leave, enter, cost: costsOf(tasks.length, ways, leave, enter) };
}

function leastBetween(
  a: Node,
  b: Node,
  ways: WayTables,
  setup: readonly [Int32Array, Int32Array],
  wrap: readonly [Int32Array, Int32Array],
): number {
  let least = impossible;
  for (const side of [0, 1] as const) {
    const count = ways.roles[side].length;
    for (const from of a[side]) {
      for (const to of b[side]) {
        const at = from * count + to;
        least = Math.min(least, setup[side][at] as number, wrap[side][at] as number);
      }
    }
  }
  return least;
}

function plainDuals(
  ways: WayTables,
  setup: readonly [Int32Array, Int32Array],
  wrap: readonly [Int32Array, Int32Array],
): Duals {
  const leave = both((side) => new Int32Array(ways.roles[side].length));
  const enter = both((side) => {
    const count = ways.roles[side].length;
    return Int32Array.from({ length: count }, (_, to) => {
      let least = impossible;
      for (let from = 0; from < count; from += 1) {
        const at = from * count + to;
        least = Math.min(least, setup[side][at] as number, wrap[side][at] as number);
      }
      return least >= impossible ? 0 : least;
    });
  });
  return { leave, enter, cost: costsOf(ways.wayFrom.length - 1, ways, leave, enter) };
}

export function costsOf(
  count: number,
  { wayFrom, wayTime, wayRole }: WayTables,
  leave: readonly [Int32Array, Int32Array],
  enter: readonly [Int32Array, Int32Array],
): Int32Array {
  return Int32Array.from({ length: count }, (_, task) => {
    let least = 2 ** 31 - 1;
    for (let way = wayFrom[task] as number; way < (wayFrom[task + 1] as number); way += 1) {
      let cost = 0;
      for (const side of [0, 1] as const) {
        const role = wayRole[side][way] as number;
        if (role >= 0)
          cost += (wayTime[way] as number) + (leave[side][role] as number) + (enter[side][role] as number);
      }
      least = Math.min(least, cost);
    }
    return least;
  });
}

type Node = readonly [left: readonly number[], right: readonly number[]];

/**
 * Roles that are the same but for the hand, gathered over the modes of each task. Undefined when some task does other
 * things in another mode: then there is no one set of roles to price.
 */
function alikeInAllModes(count: number, { wayFrom, wayRole, roles }: WayTables): readonly Node[] | undefined {
  const nodes: Node[] = [];
  for (let task = 0; task < count; task += 1) {
    const kinds = new Map<string, [number[], number[]][]>();
    let names: string | undefined;
    for (let way = wayFrom[task] as number; way < (wayFrom[task + 1] as number); way += 1) {
      const seen = new Map<string, number>();
      for (const side of [0, 1] as const) {
        const role = wayRole[side][way] as number;
        if (role < 0) continue;
        const name = nameOf(roles[side][role]);
        const nth = seen.get(name) ?? 0;
        seen.set(name, nth + 1);
        const list = kinds.get(name) ?? [];
        kinds.set(name, list);
        list[nth] ??= [[], []];
        list[nth]?.[side].push(role);
      }
      const own = [...seen]
        .map(([name, times]) => `${name}×${times}`)
        .sort()
        .join(';');
      if (names !== undefined && names !== own) return undefined;
      names = own;
    }
    for (const list of kinds.values()) nodes.push(...list);
  }
  return nodes;
}

function nameOf(role: Role | undefined): string {
  return role === undefined ? '' : `${role.place}|${role.before}|${role.after}`;
}

/**
 * Dual prices of the assignment of least cost, by shortest augmenting paths (Jonker and Volgenant 1987, from memory):
 * row + column ≤ cost everywhere, equal where assigned. Whole numbers, as all costs are. Undefined when nothing fits.
 */
export function assignmentPrices(
  cost: Float64Array,
  size: number,
): { readonly row: Float64Array; readonly column: Float64Array; readonly total: number } | undefined {
  const row = new Float64Array(size + 1);
  const column = new Float64Array(size + 1);
  const rowOf = new Int32Array(size + 1);
  const way = new Int32Array(size + 1);
  for (let next = 1; next <= size; next += 1) {
    rowOf[0] = next;
    let at = 0;
    const least = new Float64Array(size + 1).fill(Number.POSITIVE_INFINITY);
    const used = new Uint8Array(size + 1);
    do {
      used[at] = 1;
      const from = rowOf[at] as number;
      let [delta, to] = [Number.POSITIVE_INFINITY, -1];
      for (let j = 1; j <= size; j += 1) {
        if (used[j] === 1) continue;
        const reduced =
          (cost[(from - 1) * size + j - 1] as number) - (row[from] as number) - (column[j] as number);
        if (reduced < (least[j] as number)) {
          least[j] = reduced;
          way[j] = at;
        }
        if ((least[j] as number) < delta) {
          delta = least[j] as number;
          to = j;
        }
      }
      for (let j = 0; j <= size; j += 1) {
        if (used[j] === 1) {
          row[rowOf[j] as number] = (row[rowOf[j] as number] as number) + delta;
          column[j] = (column[j] as number) - delta;
        } else least[j] = (least[j] as number) - delta;
      }
      at = to;
    } while ((rowOf[at] as number) !== 0);
    do {
      const back = way[at] as number;
      rowOf[at] = rowOf[back] as number;
      at = back;
    } while (at !== 0);
  }
  let total = 0;
  for (let j = 1; j <= size; j += 1) total += cost[((rowOf[j] as number) - 1) * size + j - 1] as number;
  return total >= impossible ? undefined : { row: row.slice(1), column: column.slice(1), total };
}
