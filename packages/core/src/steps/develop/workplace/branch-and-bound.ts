import { linearAssignment } from './linear-assignment.ts';
import { assignmentCost, isWhole, type QuadraticAssignment } from './quadratic-assignment.ts';

export interface ExactWish {
  /** An assignment that is known, and only cheaper ones are looked for. */
  readonly known?: ArrayLike<number> | undefined;
  /** Nodes that may be opened. */
  readonly nodes: number;
  readonly stop?: (() => boolean) | undefined;
}

export interface ExactAssignment {
  /** Undefined when no assignment keeps the rules, or none was found. */
  readonly spotOf: Int32Array | undefined;
  readonly cost: number;
  /** No assignment is cheaper; infinite when none keeps the rules. */
  readonly bound: number;
  readonly proven: boolean;
  readonly nodes: number;
}

/**
 * The cheapest assignment by branch and bound: at each node the bound of Gilmore (1962) and Lawler (1963), a linear assignment
 * over the least cost that each pair can still have; it branches on the item, or the spot where none stays free, whose choices
 * differ most. What it leaves open when the nodes are used up counts in the bound.
 */
export function exactAssignment(problem: QuadraticAssignment, wish: ExactWish): ExactAssignment {
  const search = new Search(problem, wish);
  const open = search.run();
  const { best, cost, nodes } = search;
  return {
    spotOf: best,
    cost,
    bound: Math.min(cost, open),
    proven: open >= cost,
    nodes,
  };
}

interface Child {
  readonly item: number;
  readonly spot: number;
  readonly bound: number;
}

/** Has a life: the incumbent and the count of nodes change while it goes down. */
class Search {
  best: Int32Array | undefined;
  cost = Number.POSITIVE_INFINITY;
  nodes = 0;
  private readonly whole: boolean;
  private readonly flow: Float64Array;
  /** For each item the others by falling flow, for each spot the others by growing distance. */
  private readonly byFlow: readonly Int32Array[];
  private readonly byDistance: readonly Int32Array[];
  private readonly spotOf: Int32Array;
  private readonly itemAt: Int32Array;

  private readonly problem: QuadraticAssignment;
  private readonly wish: ExactWish;

  constructor(problem: QuadraticAssignment, wish: ExactWish) {
    this.problem = problem;
    this.wish = wish;
    const { items, spots, distance } = problem;
    this.whole = isWhole(problem);
    this.flow = evenFlow(problem);
    this.byFlow = ordersOf(this.flow, items, -1);
    this.byDistance = ordersOf(distance, spots, 1);
    this.spotOf = new Int32Array(items).fill(-1);
    this.itemAt = new Int32Array(spots).fill(-1);
    if (wish.known !== undefined) this.take(Int32Array.from(wish.known));
  }

  /** The least bound of what was left open; infinite when nothing was. */
  run(): number {
    const { items, spots, distance, linear } = this.problem;
    const costs = linear.slice();
    for (let item = 0; item < items; item += 1) {
      for (let spot = 0; spot < spots; spot += 1) {
        const own = (this.flow[item * items + item] as number) * (distance[spot * spots + spot] as number);
        costs[item * spots + spot] = (costs[item * spots + spot] as number) + own;
      }
    }
    return this.node(costs, 0, items, 0);
  }

  private take(spotOf: Int32Array): void {
    const cost = assignmentCost(this.problem, spotOf);
    if (cost < this.cost) {
      this.cost = cost;
      this.best = spotOf.slice();
    }
  }

  private hopeless(bound: number): boolean {
    if (this.cost === Number.POSITIVE_INFINITY) return bound === Number.POSITIVE_INFINITY;
    const slack = 1e-9 * Math.max(1, Math.abs(this.cost));
    return (this.whole ? Math.ceil(bound - 1e-6) : bound + slack) >= this.cost;
  }

  private spent(): boolean {
    return this.nodes >= this.wish.nodes || ((this.nodes & 63) === 0 && this.wish.stop?.() === true);
  }

  private node(costs: Float64Array, fixed: number, left: number, inherited: number): number {
    if (left === 0) {
      this.take(this.spotOf);
      return Number.POSITIVE_INFINITY;
    }
    if (this.spent()) return this.hopeless(inherited) ? Number.POSITIVE_INFINITY : inherited;
    this.nodes += 1;
    const children = this.children(costs, fixed, left, inherited);
    let open = Number.POSITIVE_INFINITY;
    for (const { item, spot, bound } of children) {
      if (this.hopeless(bound)) continue;
      const own = costs[item * this.problem.spots + spot] as number;
      this.spotOf[item] = spot;
      this.itemAt[spot] = item;
      open = Math.min(open, this.node(this.costsBelow(costs, item, spot), fixed + own, left - 1, bound));
      this.spotOf[item] = -1;
      this.itemAt[spot] = -1;
    }
    return open;
  }

  /** Costs of the items that are left, with what one more fixed item adds to them. */
  private costsBelow(costs: Float64Array, item: number, spot: number): Float64Array {
    const { items, spots, distance, conflict } = this.problem;
    const made = costs.slice();
    for (let other = 0; other < items; other += 1) {
      if ((this.spotOf[other] as number) >= 0) continue;
      const there = this.flow[item * items + other] as number;
      const back = this.flow[other * items + item] as number;
      for (let to = 0; to < spots; to += 1) {
        if ((this.itemAt[to] as number) >= 0) continue;
        const at = other * spots + to;
        made[at] =
          conflict?.(item, spot, other, to) === true
            ? Number.POSITIVE_INFINITY
            : (made[at] as number) +
              there * (distance[spot * spots + to] as number) +
              back * (distance[to * spots + spot] as number);
      }
    }
    return made;
  }

  private children(costs: Float64Array, fixed: number, left: number, inherited: number): Child[] {
    const rows = indexesOf(this.spotOf);
    const columns = indexesOf(this.itemAt);
    const table = this.leastCosts(costs, rows, columns);
    const solved = linearAssignment(table, rows.length, columns.length);
    if (solved === undefined) return [];
    const bound = Math.max(inherited, fixed + solved.cost);
    if (this.hopeless(bound)) return [];
    if (left > 2 && this.nodes < 2000) this.tryWhole(rows, columns, solved.columnOf);
    const reduced = (row: number, column: number) =>
      (table[row * columns.length + column] as number) -
      (solved.rows[row] as number) -
      (solved.columns[column] as number);
    const room = this.cost === Number.POSITIVE_INFINITY ? 1e9 : Math.max(1e-9, this.cost - bound);
    const line = (length: number, at: (index: number) => number) => {
      let sum = 0;
      for (let index = 0; index < length; index += 1) sum += Math.min(room, at(index));
      return sum;
    };
    let [most, chosen] = [-1, 0];
    const lines = rows.length === columns.length ? rows.length * 2 : rows.length;
    for (let index = 0; index < lines; index += 1) {
      const sum =
        index < rows.length
          ? line(columns.length, (column) => reduced(index, column))
          : line(rows.length, (row) => reduced(row, index - rows.length));
      if (sum > most) [most, chosen] = [sum, index];
    }
    const pairs =
      chosen < rows.length
        ? columns.map((_, column) => [chosen, column] as const)
        : rows.map((_, row) => [row, chosen - rows.length] as const);
    return pairs
      .map(([row, column]) => ({
        item: rows[row] as number,
        spot: columns[column] as number,
        bound: bound + Math.max(0, reduced(row, column)),
      }))
      .filter(({ bound: least }) => !this.hopeless(least))
      .sort((a, b) => a.bound - b.bound || a.item - b.item || a.spot - b.spot);
  }

  private tryWhole(rows: readonly number[], columns: readonly number[], columnOf: Int32Array): void {
    const whole = this.spotOf.slice();
    rows.forEach((item, row) => {
      whole[item] = columns[columnOf[row] as number] as number;
    });
    this.take(whole);
  }

  /** What each item costs at least on each spot: what is fixed, and its flows to the other items over the nearest spots. */
  private leastCosts(costs: Float64Array, rows: readonly number[], columns: readonly number[]): Float64Array {
    const { items, spots, distance } = this.problem;
    const most = rows.length - 1;
    const near = columns.map((spot) => {
      const list: number[] = [];
      for (const other of this.byDistance[spot] as Int32Array) {
        if (list.length === most) break;
        if ((this.itemAt[other] as number) < 0) list.push(distance[spot * spots + other] as number);
      }
      return list;
    });
    const table = new Float64Array(rows.length * columns.length);
    rows.forEach((item, row) => {
      const flows: number[] = [];
      for (const other of this.byFlow[item] as Int32Array) {
        const value = this.flow[item * items + other] as number;
        if (value === 0) break;
        if ((this.spotOf[other] as number) < 0) flows.push(value);
      }
      columns.forEach((spot, column) => {
        const list = near[column] as readonly number[];
        let sum = costs[item * spots + spot] as number;
        for (let index = 0; index < flows.length; index += 1)
          sum += (flows[index] as number) * (list[index] as number);
        table[row * columns.length + column] = sum;
      });
    });
    return table;
  }
}

/** Where distances are the same both ways, only the sum of both flows counts; shared out evenly the bound is stronger. */
function evenFlow({ items, spots, flow, distance }: QuadraticAssignment): Float64Array {
  for (let one = 0; one < spots; one += 1) {
    for (let other = 0; other < one; other += 1)
      if (distance[one * spots + other] !== distance[other * spots + one]) return flow;
  }
  return flow.map((value, index) => {
    const [item, other] = [Math.floor(index / items), index % items];
    return (value + (flow[other * items + item] as number)) / 2;
  });
}

function ordersOf(table: Float64Array, count: number, sign: 1 | -1): readonly Int32Array[] {
  return Array.from({ length: count }, (_, row) => {
    const value = (index: number) => table[row * count + index] as number;
    const others = Array.from({ length: count }, (__, index) => index).filter((index) => index !== row);
    return Int32Array.from(others.sort((a, b) => sign * (value(a) - value(b)) || a - b));
  });
}

function indexesOf(list: Int32Array): number[] {
  const found: number[] = [];
  for (let index = 0; index < list.length; index += 1) if ((list[index] as number) < 0) found.push(index);
  return found;
}
