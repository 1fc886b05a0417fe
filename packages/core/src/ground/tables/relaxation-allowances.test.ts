import { describe, expect, it } from 'vitest';
import { type AllowanceEdition, allowanceEditions, sources } from './index.ts';

describe('editions of the relaxation allowances', () => {
  const editions: readonly AllowanceEdition[] = Object.values(allowanceEditions);

  it.each(editions)('$name: every level has a figure for every column, and a source', (edition) => {
    expect(sources[edition.source].reference).not.toBe('');
    expect(edition.caution).toContain('qualified people');
    for (const { levels } of edition.rows) {
      expect(levels.length).toBeGreaterThan(0);
      for (const { percents, words } of levels) {
        expect(words).not.toBe('');
        expect(percents).toHaveLength(edition.columns.length);
        for (const percent of percents) if (percent !== null) expect(percent).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it.each(editions)('$name: figures never fall from one level to the next worse one', ({ rows, columns }) => {
    for (const { levels } of rows) {
      for (const at of columns.keys()) {
        const column = levels
          .map(({ percents }) => percents[at])
          .filter((value) => typeof value === 'number');
        expect(column).toEqual([...column].sort((a, b) => a - b));
      }
    }
  });

  it('differ where the notes say so: basic fatigue of women is 7 in one sheet, 4 in another', () => {
    const fatigue = (edition: AllowanceEdition) =>
      edition.rows.find(({ id }) => id === 'basic-fatigue')?.levels[0]?.percents[
        edition.columns.indexOf('women')
      ];
    expect(fatigue(allowanceEditions.kilograms)).toBe(7);
    expect(fatigue(allowanceEditions.constant)).toBe(4);
  });
});
