import { describe, expect, it } from 'vitest';
import { madeStudy } from '../../../../../../tests/helpers/made-study.ts';
import { madeTrack } from '../../../../../../tests/helpers/made-tracks.ts';
import { applyEdit } from '../../../ground/edit/index.ts';
import {
  type Cycle,
  endOf,
  type Hand,
  hands,
  itemsBetween,
  type Method,
  type Motion,
  methodClock,
  type Study,
} from '../../../ground/study/index.ts';
import { confirmProposed, proposalEdit, refuseCycle, reviewOrder } from '../review/index.ts';
import { type Proposal, proposeFromTrack } from './index.ts';

/**
 * Laws of every proposal: nothing is proposed over what a person has marked or set aside; what is set aside, partly marked
 * or partly confirmed is no model and stays as it is.
 */
const made = madeTrack({ seed: 7, cycles: 6, motions: [2, 3], motionSeconds: [0.3, 0.6] });
const us = (frame: number) => Math.round((frame / made.framesPerSecond) * 1e6);
const edges = [...made.cycles, made.ends.at(-1) ?? 0].map(us);
const edge = (index: number) => edges[index] as number;
const filmEnd = us(made.track.frames);
const strange = 'not in any other cycle';

const methodOf = (study: Study) => study.methods[0] as Method;

function changed(study: Study, change: (method: Method) => Partial<Method>): Study {
  const method = methodOf(study);
  return { ...study, methods: [{ ...method, ...change(method) }] };
}

/** Cycle marks at the chosen edges, the last of them to `end`. */
function marks(study: Study, at: readonly number[], end: number, more: Record<number, Partial<Cycle>> = {}) {
  const items = at.map((index) => ({ id: `c${index}`, start: edge(index), ...more[index] }));
  return changed(study, () => ({ cycles: { items, end } }));
}

/** Every motion of one cycle as `to` makes it. */
function motionsOf(study: Study, index: number, to: (motion: Motion, hand: Hand, at: number) => Motion) {
  const [from, end] = [edge(index), edge(index + 1)];
  const row = (method: Method, hand: Hand) => {
    const items = method[hand].items.map((motion) =>
      motion.start >= from && motion.start < end
        ? to(motion, hand, (motion.start - from) / (end - from))
        : motion,
    );
    return { ...method[hand], items };
  };
  return changed(study, (method) => ({ left: row(method, 'left'), right: row(method, 'right') }));
}

const cleared = ({ id, start }: Motion): Motion => ({ id, start, kind: 'unmarked', said: 'marked' });

function proposed(study: Study): Proposal {
  const { track, framesPerSecond } = made;
  const found = proposeFromTrack({ study, method: 'm', track, framesPerSecond });
  if (!found.ok) throw new Error(found.error.map(({ message }) => message).join(' '));
  return found.value;
}

let ids = 0;
function put(study: Study, proposal: Proposal): Study {
  const method = methodOf(study);
  const edit = proposalEdit(method, proposal, methodClock(study, method), () => `n${ids++}`);
  if (edit === undefined) return study;
  const after = applyEdit(study, edit);
  if (!after.ok) throw new Error('the edit does not fit');
  return after.value.study;
}

function expectNothingOver(proposal: Proposal, from: number, to: number): void {
  const spans = [...proposal.cycles.map(({ start, end }) => ({ from: start, to: end })), ...proposal.spans];
  for (const span of spans)
    expect(span.to <= from || span.from >= to, `${span.from} to ${span.to}, taken ${from} to ${to}`).toBe(
      true,
    );
}

/** What stands in a stretch: motions of both hands and cycle marks. */
function standing(study: Study, from: number, to: number) {
  const method = methodOf(study);
  return {
    motions: hands.map((hand) =>
      itemsBetween(method[hand], from, to)
        .filter(({ item }) => item.kind !== 'unmarked')
        .map(({ item, start, end }) => ({ item, start, end })),
    ),
    cycles: method.cycles.items.flatMap((cycle, index) =>
      cycle.start >= from && cycle.start < to ? [{ cycle, end: endOf(method.cycles, index) }] : [],
    ),
  };
}

const rowsOf = ({ left, right }: Proposal) => [...left, ...right];
const codes = ({ findings }: Proposal) => findings.map(({ code }) => code);

describe('a cycle that is set aside', () => {
  const aside = { 3: { setAside: 'a visitor' } };
  const study = motionsOf(madeStudy(made, [1, 3]), 3, (motion) => ({ ...motion, object: strange }));
  const bounds: Readonly<Record<string, readonly [at: readonly number[], end: number]>> = {
    'with the marks of all cycles': [[0, 1, 2, 3, 4, 5], edge(6)],
    'between two marks': [[1, 2, 3, 4], edge(5)],
    'the last, with its end': [[1, 3], edge(4)],
    'the last, without an end': [[1, 3], filmEnd],
  };
  it.each(Object.entries(bounds))(
    '%s: nothing is proposed over it, nothing after it, and it stays',
    (_, [at, end]) => {
      const before = marks(study, at, end, aside);
      const proposal = proposed(before);
      expectNothingOver(proposal, edge(3), edge(4));
      expect(proposal.cycles.length).toBeGreaterThan(2);
      expect(rowsOf(proposal).filter(({ object }) => object === strange)).toEqual([]);
      const after = put(before, proposal);
      expect(standing(after, edge(3), edge(4)).motions).toEqual(standing(before, edge(3), edge(4)).motions);
      expect(methodOf(after).cycles.items.find(({ id }) => id === 'c3')?.setAside).toBe('a visitor');
    },
  );

  it('with nothing marked in it: nothing is proposed over it', () => {
    const proposal = proposed(marks(madeStudy(made, [1]), [1, 2, 3, 4], edge(5), aside));
    expectNothingOver(proposal, edge(3), edge(4));
    expect(codes(proposal)).not.toContain('propose/part-marked');
  });

  it('alone is no cycle to go by', () => {
    const proposal = proposed(marks(study, [1, 2, 3, 4], edge(5), { ...aside, 1: { setAside: 'a fumble' } }));
    expect(proposal.cycles).toEqual([]);
    expect(codes(proposal)).toContain('propose/no-cycle');
    expectNothingOver(proposal, edge(1), edge(2));
    expectNothingOver(proposal, edge(3), edge(4));
    expect(proposal.spans.length).toBeGreaterThan(0);
  });

  it('that a person has refused is not proposed again', () => {
    const before = marks(madeStudy(made, [1]), [1], edge(2));
    const first = put(before, proposed(before));
    const [refused] = methodOf(first).cycles.items.filter(
      ({ said, setAside }) => said === 'proposed' && setAside === undefined,
    );
    const edit = refuseCycle(methodOf(first), refused?.id ?? '');
    const after = edit === undefined ? undefined : applyEdit(first, edit);
    if (after === undefined || !after.ok) throw new Error('nothing was refused');
    const again = after.value.study;
    const index = methodOf(again).cycles.items.findIndex(({ id }) => id === refused?.id);
    expectNothingOver(proposed(again), refused?.start ?? 0, endOf(methodOf(again).cycles, index));
  });
});

describe('a cycle that is only partly marked', () => {
  const parts: Readonly<Record<string, (motion: Motion, hand: Hand, at: number) => Motion>> = {
    'the first motions of both hands': (motion, _, at) => (at > 0.45 ? cleared(motion) : motion),
    'the first motion of one hand': (motion, hand, at) =>
      hand === 'right' || at > 0.2 ? cleared(motion) : motion,
  };
  const bounds: Readonly<Record<string, readonly [at: readonly number[], end: number]>> = {
    'with the marks of all cycles': [[0, 1, 2, 3, 4, 5], edge(6)],
    'between two marks': [[1, 2, 3, 4], edge(5)],
    'the last, with its end': [[1, 2, 3], edge(4)],
  };
  describe.each(Object.entries(parts))('%s', (_, part) => {
    const study = motionsOf(madeStudy(made, [1, 3]), 3, part);
    it.each(Object.entries(bounds))(
      '%s: it is named, stays as it is, and nothing comes over it',
      (__, [at, end]) => {
        const before = marks(study, at, end);
        const proposal = proposed(before);
        const said = proposal.findings.filter(({ code }) => code === 'propose/part-marked');
        expect(said.map(({ message }) => message)).toEqual([
          expect.stringContaining(
            `Cycle ${at.indexOf(3) + 1}, from ${(edge(3) / 1e6).toFixed(1)} to ${(edge(4) / 1e6).toFixed(1)} s, is only partly marked`,
          ),
        ]);
        expectNothingOver(proposal, edge(3), edge(4));
        expect(proposal.cycles.length).toBeGreaterThan(1);
        const after = put(before, proposal);
        expect(standing(after, edge(3), edge(4)).motions).toEqual(standing(before, edge(3), edge(4)).motions);
      },
    );
  });

  it('alone gives a rough row elsewhere, and is named', () => {
    const study = motionsOf(madeStudy(made, [3]), 3, parts['the first motion of one hand'] as never);
    const proposal = proposed(marks(study, [3, 4], edge(5)));
    expect(codes(proposal)).toEqual(expect.arrayContaining(['propose/part-marked', 'propose/no-cycle']));
    expectNothingOver(proposal, edge(3), edge(4));
    expect(proposal.spans.length).toBeGreaterThan(0);
  });
});

describe('marks that say little', () => {
  it('one after the only marked cycle, up to the end of the film: the cycles there are found one by one', () => {
    const proposal = proposed(marks(madeStudy(made, [1]), [1, 2], filmEnd));
    const later = proposal.cycles.filter(({ start }) => start >= edge(2) - 300_000);
    expect(later).toHaveLength(4);
  });

  it('a motion of one hand before the first cycle: no cycle is proposed over it', () => {
    const start = Math.round((edge(0) + edge(1)) / 2);
    const study = changed(marks(madeStudy(made, [2]), [2], edge(3)), ({ left }) => ({
      left: {
        ...left,
        items: [
          ...left.items.slice(0, 1),
          { id: 'rest', start, kind: 'UD' as const, said: 'marked' as const },
          { id: 'after', start: edge(1), kind: 'unmarked' as const, said: 'marked' as const },
          ...left.items.slice(1),
        ],
      },
    }));
    expectNothingOver(proposed(study), start, edge(1));
  });
});

describe('a cycle of which a part is confirmed', () => {
  const before = marks(madeStudy(made, [1]), [1], edge(2));
  const first = put(before, proposed(before));

  it('keeps what is confirmed and what is proposed, is named, and is no model', () => {
    const [, , , , motion] = reviewOrder(methodOf(first)).filter(({ row }) => row === 'left');
    if (motion === undefined) throw new Error('nothing to confirm');
    const confirmed = applyEdit(
      first,
      confirmProposed(methodOf(first), motion) ?? { type: 'group', name: '', edits: [] },
    );
    if (!confirmed.ok) throw new Error('not confirmed');
    const study = confirmed.value.study;
    const { items } = methodOf(study).cycles;
    const index = items.findLastIndex(({ start }) => start <= motion.at);
    const [from, to] = [items[index]?.start ?? 0, endOf(methodOf(study).cycles, index)];
    const again = proposed(study);
    expect(again.findings.find(({ code }) => code === 'propose/part-confirmed')?.message).toContain(
      `In cycle ${index + 1} some motions`,
    );
    expectNothingOver(again, from, to);
    expect(again.cycles.length).toBeGreaterThan(1);
    const after = put(study, again);
    expect(standing(after, from, to)).toEqual(standing(study, from, to));
  });
});
