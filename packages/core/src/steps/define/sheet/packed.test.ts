import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { filledSheet, packTimeStudy, slimSheet, unpackTimeStudy } from './packed.ts';
import { timeStudySheet } from './sheet.ts';

const run = { seed: 11, numRuns: 200 };

describe('a time study that goes to another thread', () => {
  it('comes out of its columns as it went in', () => {
    fc.assert(
      fc.property(studyArb, ({ timeStudies = [] }) => {
        for (const item of timeStudies) expect(unpackTimeStudy(packTimeStudy(item))).toEqual(item);
      }),
      run,
    );
  });

  it('has the same sheet after it was slimmed and filled, but for what is there once a reading in the standard', () => {
    fc.assert(
      fc.property(studyArb, (study) => {
        for (const item of study.timeStudies ?? []) {
          const sheet = timeStudySheet(study, item);
          const filled = filledSheet(slimSheet(sheet), item);
          expect(filled.rows.map(({ cells }) => cells)).toEqual(sheet.rows.map(({ cells }) => cells));
          expect(filled.rows.map(({ summary }) => summary)).toEqual(sheet.rows.map(({ summary }) => summary));
          expect(filled.standard?.standard).toEqual(sheet.standard?.standard);
          expect(filled.standard?.interval).toEqual(sheet.standard?.interval);
          expect(filled.timeStudy).toBe(item.source.kind === 'record' ? sheet.timeStudy : item);
        }
      }),
      run,
    );
  });
});
