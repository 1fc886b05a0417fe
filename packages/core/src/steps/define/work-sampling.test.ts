import { describe, expect, it } from 'vitest';
import type { Assurance } from './cycles-needed.ts';
import {
  observationsNeeded,
  shareChart,
  shareLimits,
  shareSeen,
  standardFromSampling,
} from './work-sampling.ts';

const sure: Assurance = { kind: 'confidence', confidence: 0.95 };

describe('work sampling', () => {
  it('as many observations as are needed reach the precision that was asked for', () => {
    const result = observationsNeeded(0.3, { kind: 'of-the-whole', amount: 0.04 }, sure);
    const needed = result.ok ? result.value.needed : 0;
    const seen = shareSeen(Math.round(0.3 * needed), needed, sure);
    expect(seen.ok && seen.value.halfWidth).toBeCloseTo(0.04, 3);
  });

  it('the interval after Wilson is that of the score test: its bounds lie z standard errors (of the bound) away', () => {
    const result = shareSeen(2, 80, sure);
    if (!result.ok) throw new Error(result.error.message);
    for (const bound of [result.value.wilson.low, result.value.wilson.high]) {
      expect(Math.abs(0.025 - bound) / Math.sqrt((bound * (1 - bound)) / 80)).toBeCloseTo(1.959964, 5);
    }
    expect(result.value.notes.map(({ code }) => code)).toEqual(['define/few-seen']);
  });

  it('never seen and always seen keep an interval with a width', () => {
    for (const seen of [0, 50]) {
      const result = shareSeen(seen, 50, { kind: 'multiplier', multiplier: 2 });
      expect(result.ok && result.value.wilson.high - result.value.wilson.low).toBeGreaterThan(0.05);
      expect(result.ok && result.value.interval.confidence).toBeCloseTo(0.9545, 4);
    }
  });

  it('a chart of days marks the one outside its limits', () => {
    const days = [20, 22, 18, 45, 21].map((seen, index) => ({ name: `day ${index + 1}`, seen, count: 100 }));
    const result = shareChart(days);
    expect(result.ok && result.value.share).toBeCloseTo(0.252, 12);
    expect(result.ok && result.value.days.map(({ outside }) => outside)).toEqual([
      false,
      false,
      false,
      true,
      false,
    ]);
  });

  const work = {
    time: 480,
    share: 0.8,
    pace: 1,
    pieces: 100,
    allowance: 0.1,
    convention: 'share-of-shift',
  } as const;

  it.each([
    [observationsNeeded(0, { kind: 'of-the-whole', amount: 0.05 }, sure), 'define/number'],
    [observationsNeeded(0.3, { kind: 'of-the-share', amount: 5 }, sure), 'define/number'],
    [observationsNeeded(0.3, { kind: 'of-the-whole', amount: 1e-12 }, sure), 'define/too-many-cycles'],
    [
      observationsNeeded(0.3, { kind: 'of-the-whole', amount: 0.05 }, { kind: 'multiplier', multiplier: 0 }),
      'define/number',
    ],
    [shareSeen(11, 10, sure), 'define/seen-of'],
    [shareSeen(Number.NaN, 10, sure), 'define/seen-of'],
    [shareSeen(1, 0, sure), 'define/number'],
    [shareLimits(1.2, 10), 'define/number'],
    [shareChart([]), 'define/too-few-readings'],
    [shareChart([{ name: 'day', seen: 3, count: 2 }]), 'define/seen-of'],
    [standardFromSampling({ ...work, pieces: 0 }), 'define/number'],
    [standardFromSampling({ ...work, pace: 80 }), 'define/number'],
    [standardFromSampling({ ...work, allowance: 1 }), 'define/allowance-shift'],
  ])('bad input is refused (%#)', (result, code) => {
    expect(result).toMatchObject({ ok: false, error: { code } });
  });
});
