import { endOf, type Hand, hands, type Method, type Study } from '@evenhand/core/ground/study';

/**
 * The decomposition of a difference once more, from its rule alone: every microsecond of every cycle is looked at by
 * itself, and the three factors are exchanged one after the other in each of the six orders. For small records.
 */

const waits = new Set(['UD', 'AD', 'R', 'Pn', 'F', 'H', 'unmarked']);

export interface SlowMotion {
  count: number;
  handTime: number;
  readonly charged: Record<Hand, number>;
}

/** By "kind object", all for one unit. The method needs cycles. */
export function slowCharges(study: Study, id: string): Map<string, SlowMotion> {
  const method = study.methods.find((item) => item.id === id);
  if (method === undefined) throw new Error(`no method ${id}`);
  const found = new Map<string, SlowMotion>();
  const motionOf = (name: string) => {
    const motion = found.get(name) ?? { count: 0, handTime: 0, charged: { left: 0, right: 0 } };
    found.set(name, motion);
    return motion;
  };
  const units = method.cycles.items.length * method.unitsPerCycle;
  method.cycles.items.forEach((cycle, index) => {
    const before: Partial<Record<Hand, string>> = {};
    for (let moment = cycle.start; moment < endOf(method.cycles, index); moment += 1) {
      const now = { left: momentOf(method, 'left', moment), right: momentOf(method, 'right', moment) };
      for (const hand of hands) {
        const motion = motionOf(now[hand].name);
        if (before[hand] !== now[hand].id) motion.count += 1 / units;
        before[hand] = now[hand].id;
        motion.handTime += 1 / units;
      }
      const works = hands.filter((hand) => !waits.has(now[hand].kind));
      const charged = works.length === 1 ? works : hands;
      for (const hand of charged) motionOf(now[hand].name).charged[hand] += 1 / charged.length / units;
    }
  });
  return found;
}

function momentOf(method: Method, hand: Hand, moment: number): { id: string; kind: string; name: string } {
  const row = method[hand];
  const index = row.items.findLastIndex((item) => item.start <= moment);
  const item = row.items[index];
  if (item === undefined || moment >= endOf(row, index)) {
    return { id: index < 0 ? 'before' : 'after', kind: 'unmarked', name: 'unmarked ' };
  }
  const kind = item.said === 'proposed' ? 'unmarked' : item.kind;
  return { id: item.id, kind, name: `${kind} ${item.object ?? ''}` };
}

const orders = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];

/** What the count, the time each and the charged share save on a unit. */
export function slowEffects(before: SlowMotion, after: SlowMotion): [number, number, number] {
  const [from, to] = [factors(before), factors(after)];
  const effects: [number, number, number] = [0, 0, 0];
  for (const order of orders) {
    const now: [number, number, number] = [...from];
    for (const factor of order) {
      const was = now[0] * now[1] * now[2];
      now[factor] = to[factor] as number;
      effects[factor] = (effects[factor] as number) + (was - now[0] * now[1] * now[2]) / 6;
    }
  }
  return effects;
}

function factors({ count, handTime, charged }: SlowMotion): [number, number, number] {
  return [count, handTime / count, (charged.left + charged.right) / handTime];
}
