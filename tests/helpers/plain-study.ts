import { emptyStudy, type Method, type Motion, type Study } from '@evenhand/core/ground/study';

/** A study with one composed method whose hands have nothing marked for ten seconds. */
export function plainStudy(id = 'study-1'): Study {
  const row = (hand: string) => ({
    items: [{ id: `${hand}0`, start: 0, kind: 'unmarked', said: 'marked' } as Motion],
    end: 10_000_000,
  });
  const method: Method = {
    id: 'm',
    name: 'Present method',
    kind: 'composed',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: row('l'),
    right: row('r'),
    cycles: { items: [], end: 10_000_000 },
  };
  return { ...emptyStudy(id, 'Couplings'), methods: [method] };
}
