import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkStudy } from '../../../ground/study/index.ts';
import { csvToStudy, readLabelMapping } from './index.ts';

const words = [
  'left',
  'right',
  'both',
  '?',
  'G',
  'put',
  'take',
  'unmarked',
  'label',
  'motion',
  '1',
  '2',
  '0',
  '1.5',
  '0,5',
];
const bits = fc.constantFrom(
  ...words,
  ',',
  ',',
  ',',
  ',',
  ';',
  '"',
  '\n',
  '\n',
  '\n',
  '\t',
  ' ',
  '-',
  'ß',
  '\uFEFF',
  '=',
  '99999999999',
);
const anyText = fc.oneof(
  fc.array(bits, { maxLength: 60 }).map((list) => list.join('')),
  fc.string({ unit: 'binary' }),
);
const likely: Readonly<Record<string, readonly string[]>> = {
  subject: ['1', '1', 'left'],
  clip: ['1', '1', 'left'],
  hand: ['left', 'right', 'both', '?'],
  label: ['put', 'take', 'G', 'PUT '],
  motion: ['G', 'put', 'hold', 'unmarked'],
  start_s: ['0', '1', '2', '3', '4'],
  end_s: ['3', '4', '5', '6', '6.5'],
  cycle: ['1', '1', '2', '3', ''],
  object: ['hose', ''],
};
const seconds = ['', '1', '2', '0', '3'];
const columnsOf = [
  ['subject', 'hand', 'label', 'start_s', 'end_s'],
  ['hand', 'motion', 'start_s', 'end_s', 'cycle'],
  ['label', 'start_s', 'end_s', 'object', 'cycle'],
  ['cycle', 'clip', 'start_s', 'put', 'take'],
  ['cycle', 'start_s', 'grasp', 'hold', 'use'],
  ['label', 'motion', 'object'],
];
/** Mostly what belongs in the column, now and then anything. */
const cellOf = (column: string) =>
  fc.oneof(
    { arbitrary: fc.constantFrom(...(likely[column] ?? seconds)), weight: 60 },
    { arbitrary: fc.constantFrom(...words), weight: 1 },
  );
const fitting = fc
  .constantFrom(...columnsOf)
  .chain((columns) =>
    fc
      .array(fc.tuple(...columns.map(cellOf)), { minLength: 1, maxLength: 6 })
      .map((lines) =>
        [columns, ...lines].map((line) => line.map((cell) => `"${cell}"`).join(',')).join('\n'),
      ),
  );
const heads = fc.constantFrom('', ...columnsOf.map((columns) => `${columns.join(',')}\n`));
const text = fc.oneof(
  fitting,
  fc.tuple(heads, anyText).map(([head, rest]) => head + rest),
);
const known = readLabelMapping('label,motion\nput,RL\ntake,G\n1,unmarked');
if (!known.ok) throw new Error('the mapping of the test does not hold');
/** Mostly chosen, so that many tables hold; now and then left out. */
const mostly = <Word>(...chosen: Word[]) =>
  fc.oneof(
    { arbitrary: fc.constantFrom(...chosen), weight: 4 },
    { arbitrary: fc.constant(undefined), weight: 1 },
  );
const choice = fc.record({
  shape: fc.constantFrom(undefined, 'motions' as const, 'elements' as const),
  mapping: fc.constantFrom(undefined, known.value),
  unmapped: mostly('unmarked' as const),
  subject: fc.constantFrom(undefined, undefined, 'left', '1'),
  hand: mostly('left' as const, 'right' as const),
  both: mostly('copy' as const),
  overlaps: mostly('cut' as const),
});

describe('any text at all', () => {
  it('gives a study that holds or faults with a line, whatever was chosen', () => {
    let held = 0;
    fc.assert(
      fc.property(text, choice, (given, chosen) => {
        const made = csvToStudy(given, { title: 'Any', newId: () => 'any', ...chosen });
        if (made.ok) {
          held += 1;
          expect(checkStudy(made.value.study)).toEqual([]);
          return;
        }
        expect(made.error.length).toBeGreaterThan(0);
        for (const fault of made.error) {
          expect([fault.severity, (fault.where.line ?? 0) > 0]).toEqual(['error', true]);
          expect(fault.message).not.toMatch(/NaN|undefined|\{\w+\}/);
        }
      }),
      { seed: 51, numRuns: 3000 },
    );
    expect(held).toBeGreaterThan(100);
  });

  it('gives a mapping or faults with a line', () => {
    fc.assert(
      fc.property(text, (given) => {
        const made = readLabelMapping(given);
        if (made.ok) expect(made.value.labels.size).toBeGreaterThan(0);
        else for (const fault of made.error) expect(fault.where.line).toBeGreaterThan(0);
      }),
      { seed: 52, numRuns: 1000 },
    );
  });
});
