import { proofOf, type SyncMode, syncOf, syncTimeline } from '@evenhand/core/evaluate';
import type { Method, Study } from '@evenhand/core/ground/study';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { plainStudy } from '../../../../tests/helpers/plain-study.ts';
import { FilmPair } from './film-pair.ts';

/** Composed methods without films: one cycle of 4 s beside one of 2 s. */
function study(): Study {
  const base = plainStudy();
  const [first] = base.methods;
  if (first === undefined) throw new Error('no method');
  const method = (id: string, end: number): Method => ({
    ...first,
    id,
    name: id,
    left: { items: [{ id: 'a', start: 0, kind: 'TE', said: 'marked' }], end },
    right: { items: [{ id: 'b', start: 0, kind: 'TE', object: id, said: 'marked' }], end },
    cycles: { items: [{ id: 'c', start: 0 }], end },
  });
  return { ...base, methods: [method('old', 4e6), method('new', 2e6)] };
}

function made(mode: SyncMode): FilmPair {
  const proof = proofOf(study(), { before: 'old', after: 'new' });
  if (!proof.ok) throw new Error(proof.error.message);
  const { before, after } = proof.value;
  const sync = syncOf(before, after, { before: 0, after: 0 });
  const cycles = { before: { reading: before, position: 0 }, after: { reading: after, position: 0 } };
  return new FilmPair(cycles, syncTimeline(sync, mode, { before: 4e6, after: 2e6 }));
}

const times = (pair: FilmPair) => {
  const { time, before, after } = pair.state();
  return [time, before.time, after.time].map((us) => Math.round(us) / 1e6);
};

/** Repaints of the page, one after the other, at moments that the test gives. */
let repaints: ((now: number) => void)[] = [];
const repaint = (now: number) => {
  const due = repaints;
  repaints = [];
  for (const callback of due) callback(now);
};

beforeEach(() => {
  repaints = [];
  vi.stubGlobal('requestAnimationFrame', (callback: (now: number) => void) => repaints.push(callback));
  vi.stubGlobal('cancelAnimationFrame', () => {
    repaints = [];
  });
  vi.spyOn(performance, 'now').mockReturnValue(0);
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('two cycles shown in step', () => {
  it('by phase both show the same share; in real time the shorter one ends and waits', () => {
    const phase = made('phase');
    phase.seek(3e6);
    expect(times(phase)).toEqual([3, 3, 1.5]);
    const real = made('real');
    real.seek(3e6);
    expect(times(real)).toEqual([3, 3, 2]);
  });

  it('plays as fast as is asked, and begins again where it loops', () => {
    const pair = made('real');
    pair.setSpeed(2);
    pair.play();
    for (const now of [100, 200, 300]) repaint(now);
    expect(times(pair)).toEqual([0.6, 0.6, 0.6]);
    pair.seek(3.9e6);
    pair.play();
    repaint(100);
    expect(times(pair)[0]).toBeCloseTo(0.1, 6);
    expect(pair.state().playing).toBe(true);
  });

  it('without a loop it stands at the end, and from there plays from the start', () => {
    const pair = made('real');
    pair.setLoop(false);
    pair.seek(3.95e6);
    pair.play();
    repaint(100);
    expect(pair.state().playing).toBe(false);
    expect(pair.state().time).toBe(4e6 - 1);
    pair.play();
    expect(pair.state().time).toBe(0);
  });

  it('plays a stretch of one method alone and nothing beside it', () => {
    const pair = made('phase');
    pair.playStretch('after', { from: 0.5e6, to: 0.75e6, name: 'grasp' });
    expect(pair.state().stretch).toEqual({ name: 'grasp', start: 1e6, end: 1.5e6 });
    const seen: number[] = [];
    for (let now = 100; now <= 2000; now += 100) {
      repaint(now);
      seen.push(pair.state().after.boundary);
    }
    expect(Math.min(...seen)).toBeGreaterThanOrEqual(0.5e6);
    expect(Math.max(...seen)).toBeLessThan(0.75e6);
    pair.seek(3e6);
    expect(pair.state().stretch).toBeUndefined();
  });

  it('steps on and back to the same moments', () => {
    const pair = made('phase');
    const moments = [pair.state().time];
    for (let step = 0; step < 3; step += 1) {
      pair.step(1);
      moments.push(pair.state().time);
    }
    expect(moments).toEqual([...new Set(moments)].sort((a, b) => a - b));
    for (let step = 0; step < 3; step += 1) pair.step(-1);
    expect(pair.state().time).toBe(0);
  });

  it('says that a composed method has no film', () => {
    expect(made('phase').state().before).toMatchObject({
      kind: 'none',
      reason: 'A composed method has no film; its chart stands below.',
    });
  });
});
