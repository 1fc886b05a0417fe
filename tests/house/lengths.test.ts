import { expect, test } from 'vitest';
import { judgeLengths, MOST_LINES } from '../../tools/lengths.mjs';
import { temporaryTree } from './temporary-tree.ts';

const lines = (count: number): string => 'x\n'.repeat(count);
const file = 'packages/core/src/a.ts';

test('a file at the bound passes, one line more does not', () => {
  expect(judgeLengths(temporaryTree({ [file]: lines(MOST_LINES) }), {}).complaints).toEqual([]);
  expect(judgeLengths(temporaryTree({ [file]: lines(MOST_LINES + 1) }), {}).complaints.join()).toContain(
    '601 lines',
  );
});

test('an exception needs a reason, and goes when it is not needed', () => {
  const long = temporaryTree({ [file]: lines(700) });
  expect(judgeLengths(long, { [file]: 'one table' }).complaints).toEqual([]);
  expect(judgeLengths(long, { [file]: ' ' }).complaints).toHaveLength(1);
  expect(
    judgeLengths(temporaryTree({ [file]: lines(5) }), { [file]: 'one table' }).complaints.join(),
  ).toContain('no longer');
});
