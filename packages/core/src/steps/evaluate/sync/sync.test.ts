import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { emptyStudy, type Method, type Study } from '../../../ground/study/index.ts';
import { readMethod } from '../../examine/index.ts';
import { longestChain } from './chain.ts';
import { type SyncPart, syncOf } from './sync.ts';
import { type SyncMode, syncTimeline } from './timeline.ts';

const seconds = (value: number) => value * 1_000_000;

/** A method of one cycle with one motion for each element, given by name and length in seconds. */
function method(id: string, parts: readonly (readonly [string, number])[]): Method {
  let at = 0;
  const items: Method['left']['items'][number][] = [];
  const elements: NonNullable<Method['elements']>[number][] = [];
  parts.forEach(([name, length], index) => {
    items.push({
      id: `m${index}`,
      start: at,
      kind: index % 2 === 0 ? 'G' : 'A',
      object: name,
      said: 'marked',
    });
    elements.push({ id: `e${index}`, name, hand: 'right', at });
    at += seconds(length);
  });
  return {
    id,
    name: id,
    kind: 'composed',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: { items: [], end: 0 },
    right: { items, end: at },
    cycles: { items: [{ id: 'c', start: 0 }], end: at },
    elements,
  };
}

function readings(...methods: readonly Method[]) {
  const study: Study = { ...emptyStudy('s', 'S'), methods };
  return methods.map(({ id }) => {
    const read = readMethod(study, id);
    if (!read.ok) throw new Error(read.error.message);
    return read.value;
  });
}

function pair(one: Parameters<typeof method>[1], two: Parameters<typeof method>[1]) {
  const [before, after] = readings(method('before', one), method('after', two));
  if (before === undefined || after === undefined) throw new Error('two methods are needed');
  const sync = syncOf(before, after, { before: 0, after: 0 });
  const durations = { before: before.cycles[0]?.duration ?? 0, after: after.cycles[0]?.duration ?? 0 };
  return { sync, durations, timeline: (mode: SyncMode) => syncTimeline(sync, mode, durations) };
}

describe('two cycles in step', () => {
  const { sync, timeline } = pair(
    [
      ['fetch', 2],
      ['turn', 1],
      ['fit', 3],
    ],
    [
      ['fetch', 1],
      ['fit', 4],
    ],
  );

  it('finds the elements that both have', () => {
    expect(sync.basis).toBe('elements');
    expect(sync.parts.map(({ name }) => name)).toEqual(['fetch', 'fit']);
    expect(sync.alone).toEqual({ before: ['turn'], after: [] });
  });

  it('by element each begins together and the shorter waits', () => {
    const { at, momentOf, length, parts } = timeline('elements');
    // fetch 2 (the longer), turn alone 1, fit 4: 7 s.
    expect(length).toBe(seconds(7));
    expect(parts).toEqual([
      { name: 'fetch', start: 0, length: seconds(2) },
      { name: 'fit', start: seconds(3), length: seconds(4) },
    ]);
    expect(at(seconds(1.5))).toEqual({ before: seconds(1.5), after: seconds(1) });
    expect(at(seconds(2.5))).toEqual({ before: seconds(2.5), after: seconds(1) });
    expect(at(seconds(3))).toEqual({ before: seconds(3), after: seconds(1) });
    expect(at(seconds(6.5))).toEqual({ before: seconds(6), after: seconds(4.5) });
    expect(momentOf('after', seconds(2))).toBe(seconds(4));
    expect(momentOf('before', seconds(2.5))).toBe(seconds(2.5));
  });

  it('by phase both have gone by the same share, in real time the shorter ends first', () => {
    expect(timeline('phase').at(seconds(3))).toEqual({ before: seconds(3), after: seconds(2.5) });
    expect(timeline('real').at(seconds(5.5))).toEqual({ before: seconds(5.5), after: seconds(5) });
    expect(timeline('phase').momentOf('after', seconds(2.5))).toBe(seconds(3));
  });

  it('of elements in another order so much is kept as fills the most time', () => {
    // By hand: z before everything would leave 1 s in step, a and b leave 3 s.
    const turned = pair(
      [
        ['z', 1],
        ['a', 1],
        ['b', 2],
      ],
      [
        ['a', 1],
        ['b', 2],
        ['z', 1],
      ],
    );
    expect(turned.sync.parts.map(({ name }) => name)).toEqual(['a', 'b']);
    expect(turned.sync.alone).toEqual({ before: ['z'], after: ['z'] });
  });

  it('without a name in common they go by the motions that both share, and without those by phase', () => {
    const motionsOnly = (id: string, list: Parameters<typeof method>[1]): Method => {
      const { elements: _, ...rest } = method(id, list);
      return rest;
    };
    // G ring, A ring, G clip before; G ring, G clip after: the kind alternates with the position.
    const [before, after, other] = readings(
      motionsOnly('before', [
        ['ring', 2],
        ['ring', 1],
        ['clip', 3],
      ]),
      motionsOnly('after', [
        ['ring', 1],
        ['washer', 5],
        ['clip', 2],
      ]),
      motionsOnly('other', [['lid', 4]]),
    );
    if (before === undefined || after === undefined || other === undefined) throw new Error('three methods');
    const sync = syncOf(before, after, { before: 0, after: 0 });
    expect(sync.basis).toBe('motions');
    expect(sync.parts).toEqual([
      { name: 'grasp, ring', before: { start: 0, end: seconds(2) }, after: { start: 0, end: seconds(1) } },
      {
        name: 'grasp, clip',
        before: { start: seconds(3), end: seconds(6) },
        after: { start: seconds(6), end: seconds(8) },
      },
    ]);
    const { at, length } = syncTimeline(sync, 'elements', { before: seconds(6), after: seconds(8) });
    // 2 s of the ring, 5 s until the clip begins in both, 3 s of the clip.
    expect(length).toBe(seconds(10));
    expect(at(seconds(7))).toEqual({ before: seconds(3), after: seconds(6) });
    expect(syncOf(before, other, { before: 0, after: 0 }).basis).toBe('phase');
  });

  it('elements in another order cannot be kept in step', () => {
    const turned = pair(
      [
        ['a', 1],
        ['b', 1],
      ],
      [
        ['b', 1],
        ['a', 1],
      ],
    );
    expect(turned.sync.parts.map(({ name }) => name)).toEqual(['a']);
    expect(turned.sync.alone).toEqual({ before: ['b'], after: ['b'] });
  });

  it('the chain is the longest that trying all of them finds', () => {
    const span = fc.record({
      start: fc.integer({ min: 0, max: 12 }),
      length: fc.integer({ min: 0, max: 5 }),
    });
    const made = ({ start, length }: { start: number; length: number }) => ({ start, end: start + length });
    const parts = fc.array(
      fc.record({ name: fc.constant('x'), before: span.map(made), after: span.map(made) }),
      { maxLength: 9 },
    );
    const time = (list: readonly SyncPart[]) =>
      list.reduce((sum, { before, after }) => sum + before.end - before.start + after.end - after.start, 0);
    fc.assert(
      fc.property(parts, (all) => {
        const usable = all.filter(
          (part) => part.before.end > part.before.start && part.after.end > part.after.start,
        );
        const follows = (a: SyncPart, b: SyncPart) =>
          a.before.end <= b.before.start && a.after.end <= b.after.start;
        let most = 0;
        for (let set = 0; set < 2 ** usable.length; set += 1) {
          const chosen = usable
            .filter((_, index) => (set >> index) % 2 === 1)
            .sort((a, b) => a.before.start - b.before.start);
          if (chosen.slice(1).every((part, index) => follows(chosen[index] as SyncPart, part)))
            most = Math.max(most, time(chosen));
        }
        const chain = longestChain(all);
        expect(time(chain)).toBe(most);
        expect(chain.slice(1).every((part, index) => follows(chain[index] as SyncPart, part))).toBe(true);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('any two methods: neither cycle ever runs backwards, and both are shown from start to end', () => {
    fc.assert(
      fc.property(studyArb, fc.constantFrom<SyncMode>('phase', 'elements', 'real'), (study, mode) => {
        const [before, after] = [readMethod(study, 'filmed'), readMethod(study, 'plain')];
        if (!before.ok || !after.ok) return;
        const durations = {
          before: before.value.cycles[0]?.duration ?? 0,
          after: after.value.cycles[0]?.duration ?? 0,
        };
        if (!(durations.before > 0 && durations.after > 0)) return;
        const made = syncTimeline(
          syncOf(before.value, after.value, { before: 0, after: 0 }),
          mode,
          durations,
        );
        let last = made.at(0);
        expect(last).toEqual({ before: 0, after: 0 });
        for (let step = 1; step <= 40; step += 1) {
          const now = made.at((made.length * step) / 40);
          expect(now.before).toBeGreaterThanOrEqual(last.before - 1e-6);
          expect(now.after).toBeGreaterThanOrEqual(last.after - 1e-6);
          last = now;
        }
        expect(last.before).toBeCloseTo(durations.before, 3);
        expect(last.after).toBeCloseTo(durations.after, 3);
        for (const side of ['before', 'after'] as const) {
          const wanted = durations[side] * 0.37;
          expect(Math.abs(made.at(made.momentOf(side, wanted))[side] - wanted)).toBeLessThan(
            1e-3 * durations[side] + 1,
          );
        }
      }),
      { seed: 3, numRuns: 150 },
    );
  });
});
