import { describe, expect, it } from 'vitest';
import { workHeights } from '../../../ground/tables/index.ts';
import { heightAdvice } from './work-height.ts';

describe('height of the work', () => {
  it.each(['precision', 'light', 'heavy'] as const)(
    'standing, %s work: the elbows of the survey bring the offsets to the range printed for 90 %% of workers (card after Pheasant and Haslegrave), to 5 cm',
    (kind) => {
      const printed = workHeights.find(
        (facts) => facts.kind === kind && facts.fromFloor !== undefined,
      )?.fromFloor;
      const { smallest, largest, source } = heightAdvice(kind, 'standing', 'mixed');
      expect(source.reference).toContain('Pheasant');
      expect(Math.abs(smallest.low - (printed?.[0] ?? 0))).toBeLessThan(50);
      expect(Math.abs(largest.high - (printed?.[1] ?? 0))).toBeLessThan(50);
    },
  );

  it('precision above, light below, heavy farther below the elbow, in every publication that gives figures', () => {
    const middle = (kind: string, which: 'fromElbow' | 'fromFloor', source: string) => {
      const range = workHeights.find((facts) => facts.kind === kind && facts.source === source)?.[which];
      return range === undefined ? undefined : (range[0] + range[1]) / 2;
    };
    for (const source of ['work-height-card', 'niosh-programs', 'auva-height', 'state-fund-height']) {
      for (const which of ['fromElbow', 'fromFloor'] as const) {
        const known = ['precision', 'light', 'heavy']
          .map((kind) => middle(kind, which, source))
          .filter((value) => value !== undefined);
        expect(known).toEqual([...known].sort((a, b) => b - a));
      }
    }
  });

  it('NIOSH 97-117 prints light work at 34 to 37 in: it overlaps the range for women', () => {
    const { smallest, largest } = heightAdvice('light', 'standing', 'women');
    expect(smallest.low).toBeLessThan(37 * 25.4);
    expect(largest.high).toBeGreaterThan(34 * 25.4);
  });

  it('sitting: at the elbow, and no height suits women of the 5th and men of the 95th percentile alike', () => {
    const advice = heightAdvice('light', 'sitting', 'mixed');
    // Seat to elbow and hollow of the knee with 25 mm for shoes: 570 + 25 and 733 + 25.
    expect([advice.smallest.low, advice.largest.high, advice.common]).toEqual([595, 758, undefined]);
    expect(advice.sentence).toBe(
      'No one height suits all: the hands should work at the height of the elbow, 595 to 758 mm above the floor (women of the 5th to men of the 95th percentile, 25 mm for shoes). The bench, the seat or a platform must be set for each person.',
    );
    // Elbow 570 less thighs 511.
    expect(advice.cautions.join(' ')).toContain('59 mm thick');
  });

  it('names the other publications beside', () => {
    const { others } = heightAdvice('heavy', 'standing', 'men');
    expect(others.map(({ words }) => words)).toEqual([
      '711 to 889 mm above the floor',
      '150 to 400 mm below the elbow',
      '102 to 152 mm below the elbow',
    ]);
  });
});
