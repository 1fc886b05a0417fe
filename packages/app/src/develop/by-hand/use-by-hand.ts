import {
  type Instance,
  instanceOf,
  type JudgedOrders,
  judgeOrders,
  type Library,
  methodFromSchedule,
  type Orders,
  periodInterval,
  predictWork,
  type WorkTimes,
} from '@evenhand/core/develop';
import { readMethod } from '@evenhand/core/examine';
import type { Study } from '@evenhand/core/ground/study';
import { useEffect, useMemo, useState } from 'react';
import type { PlainMethod } from '../developed-plain.ts';

/** A composed method that a person changes: its rows, what the checker says of them, and the method as it then is. */
export interface ByHand {
  readonly instance: Instance;
  readonly judged: JudgedOrders;
  /** As it stands, whether or not it can be done. */
  readonly method: PlainMethod;
  /** A person has changed something. */
  readonly changed: boolean;
  readonly set: (orders: Orders | undefined) => void;
  /** Undefined when there is nothing to take back. */
  readonly back: (() => void) | undefined;
  /** Back to the composed one. */
  readonly reset: () => void;
}

interface Bench {
  readonly times: WorkTimes;
  readonly instance: Instance;
}

/** Undefined while there is no composed method. What was changed by hand belongs to one composed method and goes with it. */
export function useByHand(
  study: Study,
  methodId: string | undefined,
  composed: PlainMethod | undefined,
  library?: Library,
): ByHand | undefined {
  const [history, setHistory] = useState<{ readonly of: unknown; readonly list: readonly Orders[] }>({
    of: undefined,
    list: [],
  });
  const list = history.of === composed ? history.list : [];
  const work = composed?.work;
  const bench = useMemo((): Bench | undefined => {
    if (work === undefined || methodId === undefined) return undefined;
    const reading = readMethod(study, methodId);
    const times = predictWork(work, reading.ok ? [reading.value] : [], { library });
    return { times, instance: instanceOf(work, times) };
  }, [study, methodId, work, library]);
  const orders = list.at(-1) ?? composed?.orders;
  const judged = useMemo(
    () => (bench === undefined || orders === undefined ? undefined : judgeOrders(bench.instance, orders)),
    [bench, orders],
  );
  const plain = useMemo(
    () =>
      bench === undefined || judged === undefined || composed === undefined
        ? undefined
        : plainByHand(composed, bench, judged),
    [composed, bench, judged],
  );
  const expected = useInterval(list.length > 0 ? bench : undefined, judged, work);
  if (bench === undefined || judged === undefined || plain === undefined || composed === undefined)
    return undefined;
  const changed = list.length > 0;
  const keep = (next: readonly Orders[]) => setHistory({ of: composed, list: next });
  return {
    instance: bench.instance,
    judged,
    method: changed ? { ...plain, expected } : composed,
    changed,
    set: (next) => {
      if (next !== undefined) keep([...list, next]);
    },
    back: changed ? () => keep(list.slice(0, -1)) : undefined,
    reset: () => keep([]),
  };
}

/** The interval of a valid method, worked out when the hand rests. */
function useInterval(
  bench: Bench | undefined,
  judged: JudgedOrders | undefined,
  work: PlainMethod['work'] | undefined,
): PlainMethod['expected'] {
  const [found, setFound] = useState<{ of: unknown; expected: PlainMethod['expected'] }>();
  useEffect(() => {
    if (bench === undefined || work === undefined || judged === undefined || judged.faults.length > 0) return;
    const timer = setTimeout(() => {
      const expected = periodInterval(work, bench.times, judged.orders, { draws: 120 });
      setFound({ of: judged, expected });
    }, 200);
    return () => clearTimeout(timer);
  }, [bench, work, judged]);
  return found?.of === judged ? found?.expected : undefined;
}

function plainByHand(composed: PlainMethod, { times, instance }: Bench, judged: JudgedOrders): PlainMethod {
  const { work } = composed;
  const { schedule, orders, faults } = judged;
  const words = 'Composed, then changed by hand.';
  return {
    ...composed,
    method: methodFromSchedule(work, times, instance, schedule, {
      id: 'by-hand',
      name: `${composed.method.name}, by hand`.slice(0, 200),
      note: words,
    }),
    orders,
    period: schedule.period,
    unitTime: schedule.period / work.unitsPerCycle,
    proven: faults.length === 0 && schedule.period <= composed.bound,
    words,
    expected: undefined,
  };
}
