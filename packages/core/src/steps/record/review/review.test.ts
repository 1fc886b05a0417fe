import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectEditLaws, expectSame } from '../../../../../../tests/helpers/edit-laws.ts';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { applyEdit, type Edit } from '../../../ground/edit/index.ts';
import {
  emptyStudy,
  endOf,
  hands,
  isConfirmedCycle,
  isProposed,
  type Method,
  type Motion,
  methodClock,
  type Study,
} from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { Proposal } from '../propose/index.ts';
import {
  clearProposals,
  confirmAbove,
  confirmCycle,
  confirmProposed,
  nextToReview,
  proposalEdit,
  type ReviewItem,
  refuseCycle,
  refuseMotion,
  reviewOrder,
} from './index.ts';

const seconds = 1_000_000;
let made = 0;
const newId = () => `n${made++}`;

const row = (hand: string, motions: readonly (readonly [number, MotionKind])[], end: number) => ({
  items: motions.map(
    ([at, kind], index): Motion => ({ id: `${hand}${index}`, start: at * seconds, kind, said: 'marked' }),
  ),
  end: end * seconds,
});

/** Twenty seconds of which the cycle from 4 to 8 s is marked; the mark of its begin stands, its end is told by the motions. */
function oneCycle(change: Partial<Method> = {}): Study {
  const method: Method = {
    id: 'm',
    name: 'Present',
    kind: 'recorded',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: row(
      'l',
      [
        [0, 'unmarked'],
        [4, 'TE'],
        [6, 'G'],
        [8, 'unmarked'],
      ],
      20,
    ),
    right: row(
      'r',
      [
        [0, 'unmarked'],
        [4, 'H'],
        [7, 'RL'],
        [8, 'unmarked'],
      ],
      20,
    ),
    cycles: { items: [{ id: 'c', start: 4 * seconds }], end: 20 * seconds },
    ...change,
  };
  return { ...emptyStudy('s', 'Couplings'), methods: [method] };
}

/** Cycles at 0–4, 8–12 and 13–16 s; the last begins a second late, and nothing is said of what comes after. */
const proposal: Proposal = {
  cycles: [
    { start: 0, end: 4 * seconds, confidence: 0.9 },
    { start: 8.1 * seconds, end: 12 * seconds, confidence: 0.8 },
    { start: 13 * seconds, end: 16 * seconds, confidence: 0.6 },
  ],
  left: [0, 8.1, 13].flatMap((at, index) => [
    { start: at * seconds, kind: 'TE', object: 'ring', confidence: (9 - index) / 10 },
    { start: (at + 2) * seconds, kind: 'G', confidence: 0.5 },
  ]),
  right: [0, 8.1, 13].flatMap((at) => [
    { start: at * seconds, kind: 'H', confidence: 0.7 },
    { start: (at + 1) * seconds, kind: 'RL', confidence: 0.4 },
  ]),
  spans: [
    { from: 0, to: 4 * seconds },
    { from: 8.1 * seconds, to: 12 * seconds },
    { from: 13 * seconds, to: 16 * seconds },
  ],
  findings: [],
};

const methodOf = (study: Study) => study.methods[0] as Method;

function after(study: Study, edit: Edit | undefined): Study {
  if (edit === undefined) throw new Error('the command gave no edit');
  const result = expectEditLaws(study, edit);
  if (!result.ok) throw new Error(result.error.message);
  return result.value.study;
}

const put = (study: Study, what = proposal) =>
  after(study, proposalEdit(methodOf(study), what, methodClock(study, methodOf(study)), newId));

const told = (study: Study) => {
  const method = methodOf(study);
  const line = (hand: 'left' | 'right') =>
    method[hand].items.map(
      ({ start, kind, said }) => `${start / seconds} ${kind}${said === 'proposed' ? '?' : ''}`,
    );
  return {
    left: line('left').join(', '),
    right: line('right').join(', '),
    cycles: method.cycles.items
      .map(
        ({ start, said, setAside }) =>
          `${start / seconds}${said === 'proposed' ? '?' : said === 'confirmed' ? '!' : ''}${setAside === undefined ? '' : ` (${setAside})`}`,
      )
      .join(', '),
    end: method.cycles.end / seconds,
  };
};

const counting = ({ methods: [method] }: Study) =>
  (method as Method).cycles.items.flatMap((_, index) =>
    isConfirmedCycle(method as Method, index) ? [index + 1] : [],
  );

describe('a proposal in the study', () => {
  it('stands around what is marked, which keeps its bounds; a gap is set aside; the last cycle has its own end', () => {
    const study = put(oneCycle());
    expect(told(study)).toEqual({
      left: '0 TE?, 2 G?, 4 TE, 6 G, 8 TE?, 10.1 G?, 12 unmarked, 13 TE?, 15 G?, 16 unmarked',
      right: '0 H?, 1 RL?, 4 H, 7 RL, 8 H?, 9.1 RL?, 12 unmarked, 13 H?, 14 RL?, 16 unmarked',
      // The person’s cycle ends at 8 s, so the mark there is theirs: only that a cycle begins with it is proposed.
      cycles: '0?, 4, 8!, 12? (between cycles), 13?',
      end: 16,
    });
    expect(counting(study)).toEqual([2]);
  });

  it('comes out again as if it had never been there, and a second one replaces the first', () => {
    const study = put(oneCycle());
    expect(told(after(study, clearProposals(methodOf(study))))).toEqual({ ...told(oneCycle()), end: 8 });
    const only = { ...proposal, cycles: proposal.cycles.slice(0, 1), spans: proposal.spans.slice(0, 1) };
    expect(told(put(study, only))).toMatchObject({
      left: '0 TE?, 2 G?, 4 TE, 6 G, 8 unmarked',
      cycles: '0?, 4',
      end: 8,
    });
  });

  it('a marked stretch without a cycle mark becomes a cycle of its own', () => {
    const study = put(oneCycle({ cycles: { items: [], end: 20 * seconds } }));
    expect(told(study)).toMatchObject({ cycles: '0?, 4, 8!, 12? (between cycles), 13?' });
    expect(counting(study)).toEqual([2]);
  });

  it('never covers a motion that is marked or confirmed within a proposed stretch', () => {
    const study = oneCycle({
      left: row(
        'l',
        [
          [0, 'unmarked'],
          [1, 'A'],
          [3, 'unmarked'],
          [4, 'TE'],
          [8, 'unmarked'],
        ],
        20,
      ),
    });
    expect(told(put(study)).left).toMatch(/^0 TE\?, 1 A, 3 G\?, 4 TE, 8 TE\?/);
  });

  it('fills rows that end before the film does', () => {
    const short = (hand: string) =>
      row(
        hand,
        [
          [4, 'TE'],
          [6, 'G'],
        ],
        8,
      );
    const study = put(oneCycle({ left: short('l'), right: short('r') }));
    expect(told(study).left).toBe('0 TE?, 2 G?, 4 TE, 6 G, 8 TE?, 10.1 G?, 12 unmarked, 13 TE?, 15 G?');
  });

  it('nothing proposed gives no edit', () => {
    const study = oneCycle();
    const none = { ...proposal, cycles: [], left: [], right: [], spans: [] };
    expect(proposalEdit(methodOf(study), none, methodClock(study, methodOf(study)), newId)).toBeUndefined();
    expect(clearProposals(methodOf(study))).toBeUndefined();
    expect(confirmAbove(methodOf(study), 0)).toBeUndefined();
  });
});

describe('confirming', () => {
  const start = put(oneCycle());

  it('a motion: it is confirmed, its confidence is gone, its cycle does not count yet', () => {
    const [motion] = methodOf(start).left.items as [Motion];
    const study = after(start, confirmProposed(methodOf(start), { row: 'left', id: motion.id }));
    expect(methodOf(study).left.items[0]).toEqual({
      id: motion.id,
      start: 0,
      kind: 'TE',
      object: 'ring',
      said: 'confirmed',
    });
    expect(counting(study)).toEqual([2]);
  });

  it('a cycle with all that is in it and with the mark that ends it', () => {
    const [first] = methodOf(start).cycles.items;
    const study = after(start, confirmCycle(methodOf(start), first?.id ?? ''));
    expect(told(study)).toMatchObject({ cycles: '0!, 4, 8!, 12? (between cycles), 13?' });
    expect(counting(study)).toEqual([1, 2]);
    const third = methodOf(study).cycles.items[2];
    const more = after(study, confirmCycle(methodOf(study), third?.id ?? ''));
    expect(counting(more)).toEqual([1, 2, 3]);
    expect(told(more).cycles).toBe('0!, 4, 8!, 12! (between cycles), 13?');
  });

  it('all above a confidence, and at 0 everything', () => {
    const sure = after(start, confirmAbove(methodOf(start), 0.8));
    expect(told(sure)).toMatchObject({ cycles: '0!, 4, 8!, 12? (between cycles), 13?' });
    expect(told(sure).left).toMatch(/^0 TE, 2 G\?, 4 TE, 6 G, 8 TE, 10.1 G\?/);
    const all = after(start, confirmAbove(methodOf(start), 0));
    expect(told(all).cycles).toBe('0!, 4, 8!, 12! (between cycles), 13!');
    expect(reviewOrder(methodOf(all))).toEqual([]);
    expect(counting(all)).toEqual([1, 2, 3, 4, 5]);
  });
});

describe('refusing', () => {
  const start = put(oneCycle());
  const cycleAt = (study: Study, at: number) =>
    methodOf(study).cycles.items.find((cycle) => cycle.start === at * seconds)?.id ?? '';

  it('a motion: its time is unmarked again, and one that is marked stays', () => {
    const [motion] = methodOf(start).left.items as [Motion];
    const study = after(start, refuseMotion(methodOf(start), 'left', motion.id));
    expect(told(study).left).toMatch(/^0 unmarked, 2 G\?/);
    expect(refuseMotion(methodOf(start), 'left', 'l1')).toBeUndefined();
  });

  it('a cycle: its time is unmarked and set aside, so that the cycle before keeps its end', () => {
    const study = after(start, refuseCycle(methodOf(start), cycleAt(start, 8)));
    expect(told(study)).toMatchObject({
      cycles: '0?, 4, 8! (not a cycle), 12? (between cycles), 13?',
      end: 16,
    });
    expect(told(study).left).toMatch(/6 G, 8 unmarked, 13 TE/);
    expect(counting(study)).toEqual([2]);
    const last = after(start, refuseCycle(methodOf(start), cycleAt(start, 13)));
    expect(told(last)).toMatchObject({
      cycles: '0?, 4, 8!, 12? (between cycles), 13! (not a cycle)',
      end: 16,
    });
  });

  it('what was refused is not proposed again', () => {
    for (const at of [0, 8, 13]) {
      const study = after(start, refuseCycle(methodOf(start), cycleAt(start, at)));
      expect(told(put(study))).toEqual(told(study));
    }
  });

  it('a mark that a person set stays', () => {
    const given = put(
      oneCycle({
        cycles: {
          items: [
            { id: 'c', start: 4 * seconds },
            { id: 'd', start: 8 * seconds },
          ],
          end: 12 * seconds,
        },
      }),
    );
    expect(told(given).cycles).toBe('0?, 4, 8, 12? (between cycles), 13?');
    const study = after(given, refuseCycle(methodOf(given), 'd'));
    expect(told(study)).toMatchObject({ cycles: '0?, 4, 8, 12? (between cycles), 13?' });
    expect(told(study).left).toMatch(/6 G, 8 unmarked, 13 TE/);
  });
});

describe('the order of review', () => {
  const study = put(oneCycle());

  it('is the least certain first, of equals the earlier, cycles before hands', () => {
    const order = reviewOrder(methodOf(study));
    expect(order.map(({ row: where, at, confidence }) => `${where} ${at / seconds} ${confidence}`)).toEqual([
      'right 1 0.4',
      'right 9.1 0.4',
      'right 14 0.4',
      'left 2 0.5',
      'left 10.1 0.5',
      'left 15 0.5',
      'cycles 13 0.6',
      'right 0 0.7',
      'right 8 0.7',
      'left 13 0.7',
      'right 13 0.7',
      'left 8 0.8',
      'cycles 0 0.9',
      'left 0 0.9',
    ]);
  });

  it('goes through everything once, forwards and backwards, also while it is being confirmed', () => {
    let current = study;
    let at: ReviewItem | undefined;
    const seen: string[] = [];
    for (;;) {
      at = nextToReview(methodOf(current), at);
      if (at === undefined) break;
      seen.push(at.id);
      current = after(current, confirmProposed(methodOf(current), at));
    }
    expect(seen).toEqual(reviewOrder(methodOf(study)).map(({ id }) => id));
    const order = reviewOrder(methodOf(study));
    expect(nextToReview(methodOf(study), order[3], -1)).toEqual(order[2]);
    expect(nextToReview(methodOf(study), order[0], -1)).toEqual(order.at(-1));
    expect(nextToReview(methodOf(study), order.at(-1))).toEqual(order[0]);
  });
});

describe('laws, on random studies and random proposals', () => {
  const proposalArb = fc
    .tuple(
      fc.uniqueArray(fc.nat(60), { minLength: 2, maxLength: 8 }),
      fc.array(fc.tuple(fc.nat(60), fc.constantFrom<MotionKind>('TE', 'G', 'H', 'unmarked')), {
        maxLength: 12,
      }),
      fc.boolean(),
    )
    .map(([bounds, motions, cycles]): Proposal => {
      const at = bounds.sort((a, b) => a - b);
      const spans = at.flatMap((from, index) =>
        index % 2 === 0 && at[index + 1] !== undefined ? [{ from, to: at[index + 1] as number }] : [],
      );
      const line = spans.flatMap(({ from, to }) => {
        const inside = motions.filter(([start]) => start > from && start < to);
        const starts = new Map<number, MotionKind>([[from, 'TL'], ...inside]);
        return [...starts]
          .sort(([a], [b]) => a - b)
          .map(([start, kind]) => ({ start, kind, confidence: 0.5 }));
      });
      return {
        cycles: cycles ? spans.map(({ from, to }) => ({ start: from, end: to, confidence: 0.5 })) : [],
        left: line,
        right: line,
        spans,
        findings: [],
      };
    });

  /** What a person has said of a hand, with the ends that their motions have. */
  const spoken = (method: Method) =>
    hands.map((hand) =>
      method[hand].items.flatMap((item, index) =>
        isProposed(item) || item.kind === 'unmarked' ? [] : [{ item, end: endOf(method[hand], index) }],
      ),
    );

  it('a person’s motions and marks stay as they are, whatever is proposed, confirmed or cleared', () => {
    fc.assert(
      fc.property(studyArb, fc.constantFrom('filmed', 'plain'), proposalArb, (start, id, wanted) => {
        const of = (study: Study) => study.methods.find((method) => method.id === id) as Method;
        const last = methodClock(start, of(start)).last ?? 60;
        const fits = { ...wanted, spans: wanted.spans.filter(({ to }) => to <= last) };
        const inside = { ...fits, cycles: fits.cycles.filter(({ end }) => end <= last) };
        const edit = proposalEdit(of(start), inside, methodClock(start, of(start)), newId);
        const study = edit === undefined ? start : after(start, edit);
        expect(spoken(of(study))).toEqual(spoken(of(start)));
        const cleared = clearProposals(of(study));
        const clean = cleared === undefined ? study : after(study, cleared);
        expect(reviewOrder(of(clean))).toEqual([]);
        expect(spoken(of(clean))).toEqual(spoken(of(start)));
        const all = confirmAbove(of(study), 0);
        const done = all === undefined ? study : after(study, all);
        expect(reviewOrder(of(done))).toEqual([]);
        const own = of(start).cycles.items.filter(({ said }) => said === undefined || said === 'marked');
        for (const mark of own)
          expect(of(done).cycles.items.find((item) => item.id === mark.id)).toEqual(mark);
      }),
      { seed: 20_261_126, numRuns: 70 },
    );
  });

  it('one undo takes a proposal out to the last byte', () => {
    const start = oneCycle();
    const edit = proposalEdit(methodOf(start), proposal, methodClock(start, methodOf(start)), newId) as Edit;
    const applied = applyEdit(start, edit);
    if (!applied.ok) throw new Error(applied.error.message);
    const undone = applyEdit(applied.value.study, applied.value.inverse);
    if (!undone.ok) throw new Error(undone.error.message);
    expectSame(undone.value.study, start, 'undo');
  });
});
