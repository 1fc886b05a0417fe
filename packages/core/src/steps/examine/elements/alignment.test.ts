import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import { costOf, leastAlignment } from '../../../../../../tests/oracles/full-alignment.ts';
import { readMethod } from '../reading/index.ts';
import { tokenTable } from '../sequences/index.ts';
import { type AlignRow, align, alignRow } from './alignment.ts';

function rowsOf(texts: readonly string[]): AlignRow[] {
  const read = readMethod(twoHandStudy(texts.map((left) => ({ left, right: 'UD 1' }))), 'm');
  if (!read.ok) throw new Error(read.error.message);
  const table = tokenTable('kind-object');
  return read.value.cycles.map((cycle) => alignRow(cycle, 'left', table));
}

const motionArb = fc
  .tuple(
    fc.constantFrom('TE', 'G', 'TL', 'RL'),
    fc.constantFrom('ring', 'body'),
    fc.integer({ min: 1, max: 9 }),
  )
  .map(([kind, object, length]) => `${kind} ${object} ${length}`);
const rowArb = (most: number) => fc.array(motionArb, { minLength: 1, maxLength: most });
/** Two rows that have little in common, and two of which one is the other with a few changes. */
const pairArb = fc.oneof(
  fc.tuple(rowArb(40), rowArb(40)),
  fc
    .tuple(rowArb(60), fc.array(fc.tuple(fc.nat(60), motionArb, fc.boolean()), { maxLength: 6 }))
    .map(([row, changes]) => {
      const other = [...row];
      for (const [at, motion, more] of changes) other.splice(at, more ? 0 : 1, motion);
      return [row, other] as [string[], string[]];
    }),
);

const motions = ({ pieces, starts }: AlignRow) =>
  pieces.map(({ kind, object }, index) => ({ kind, object, start: starts[index] ?? 0 }));

describe('the alignment of two cycles', () => {
  it('costs what the best of all alignments costs, and no pairs cross', () => {
    fc.assert(
      fc.property(pairArb, ([a, b]) => {
        const [model, other] = rowsOf([a.join(', '), b.join(', ')]) as [AlignRow, AlignRow];
        const { counterpart, cost, proven } = align(model, other);
        const best = leastAlignment(motions(model), motions(other));
        expect(proven).toBe(true);
        expect(cost).toBe(best[0]);
        expect(costOf(motions(model), motions(other), [...counterpart])).toEqual(best);
        const partners = [...counterpart].filter((at) => at >= 0);
        expect(partners).toEqual([...new Set(partners)].sort((x, y) => x - y));
      }),
      { seed: 31, numRuns: 300 },
    );
  });

  it('of very long cycles says whether it was searched to the end', () => {
    const many = (start: string) => `${start}, ${Array(2500).fill('TE ring 1, G ring 1').join(', ')}`;
    const [model, near, far] = rowsOf([
      many('A 1'),
      many('A 1, I 1'),
      Array(3000).fill('RL ring 1, P ring 1').join(', '),
    ]) as [AlignRow, AlignRow, AlignRow];
    expect(align(model, near)).toMatchObject({ cost: 2, proven: true });
    const [long, short] = rowsOf([
      Array(6000).fill('TE ring 1, G ring 1').join(', '),
      Array(4000).fill('TE ring 1').join(', '),
    ]) as [AlignRow, AlignRow];
    expect(align(long, short)).toMatchObject({ cost: 2 * 16_000, proven: false });
    expect(align(model, far)).toMatchObject({ cost: 2 * (5001 + 6000), proven: false });
  });
});
