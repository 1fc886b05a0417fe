import { ordersOfWays } from './compose.ts';
import type { CycleKind, Instance, Schedule } from './instance.ts';
import { LayerSearch } from './layer-search.ts';
import { MeetSearch } from './meet-search.ts';
import { scheduleOf } from './schedule.ts';
import { tablesOf } from './tables.ts';

export interface ShorterWish {
  /** `open` when left out. */
  readonly kind?: CycleKind | undefined;
  /** Only methods of a shorter period are wanted, microseconds. */
  readonly below: number;
  /** States that the proof may keep; 100,000 when left out, 0 tries a narrow search alone. */
  readonly states?: number | undefined;
  /** Width of the search that goes before the proof; 30 when left out, 0 leaves it out. */
  readonly width?: number | undefined;
  readonly stop?: (() => boolean) | undefined;
}

export interface ShorterMethod {
  /** Undefined when none was found. */
  readonly schedule: Schedule | undefined;
  /** There is no shorter one: than the one found, or than `below`. */
  readonly proven: boolean;
  /** No method is shorter than this, whether one below the limit was found or not. */
  readonly bound: number;
  readonly states: number;
}

/** A method of a period below a given one, or the proof that there is none. Most answers of no come fast. */
export function shorterThan(instance: Instance, wish: ShorterWish): ShorterMethod {
  const { kind = 'open', below, states: most = 100_000, width = 30, stop } = wish;
  const tables = tablesOf(instance, kind);
  const engine = new LayerSearch(tables);
  const whole = kind === 'open' ? new MeetSearch(tables) : engine;
  const root = engine.rootBound();
  if (root >= below) return { schedule: undefined, proven: true, bound: root, states: 0 };
  const narrow = width === 0 ? undefined : engine.search({ below, width, most: 20_000, stop });
  const wide =
    narrow?.complete === true || most === 0
      ? undefined
      : whole.search({ below: narrow?.period ?? below, width: Number.POSITIVE_INFINITY, most, stop });
  const proven = narrow?.complete === true || wide?.complete === true;
  const ways = wide?.ways ?? narrow?.ways;
  const schedule = ways === undefined ? undefined : scheduleOf(instance, ordersOfWays(tables, ways));
  const bound = Math.max(root, narrow?.bound ?? 0, wide?.bound ?? 0);
  return {
    schedule,
    proven,
    bound: Math.min(proven ? (schedule?.period ?? below) : bound, schedule?.period ?? below),
    states: (narrow?.states ?? 0) + (wide?.states ?? 0),
  };
}
