import { micros, ok } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { encodeFrameTimes, frameClock } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import type { Direction, FrameHandle, FrameReader, FrameSpan } from './film.ts';
import { createPlayer } from './player.ts';

/** A reader whose frames are decoded when the test says so, and a clock that the test moves. */
function world(ticks: readonly number[], { perSecond = 30, end = (ticks.at(-1) ?? 0) + 1 } = {}) {
  const clock = frameClock(encodeFrameTimes(ticks, end, perSecond));
  const decoded = new Set<number>();
  const faults = new Map<number, Finding>();
  const waiters: { k: number; answer: () => void }[] = [];
  const log = { open: 0, followed: [] as [number, Direction][], kept: undefined as FrameSpan | undefined };
  const handle = (frame: number): FrameHandle => {
    log.open += 1;
    let open = true;
    const close = () => {
      if (!open) throw new Error(`frame ${frame} closed twice`);
      open = false;
      log.open -= 1;
    };
    return { frame, time: clock.timeOf(frame), width: 4, height: 3, draw: () => {}, close };
  };
  const settled = (k: number) => decoded.has(k) || faults.has(k);
  const answer = (k: number) => {
    const fault = faults.get(k);
    return fault === undefined ? ok(handle(k)) : ({ ok: false, error: fault } as const);
  };
  const reader: FrameReader = {
    frames: clock.frames,
    frame: (k, { signal } = {}) =>
      new Promise((resolve, reject) => {
        signal?.addEventListener('abort', () => reject(new DOMException('', 'AbortError')));
        if (settled(k)) resolve(answer(k));
        else waiters.push({ k, answer: () => !signal?.aborted && resolve(answer(k)) });
      }),
    peek: (k) => (decoded.has(k) ? handle(k) : undefined),
    fault: (k) => faults.get(k),
    follow: (k, direction) => log.followed.push([k, direction]),
    buffered: (k, direction) => {
      let count = 0;
      for (let at = k; at >= 0 && at < clock.frames && settled(at); at += direction) count += 1;
      return count;
    },
    keep: (span) => {
      log.kept = span;
    },
    onDecoded: () => () => {},
    dispose: () => {},
  };
  const time = { now: 0, due: undefined as (() => void) | undefined };
  const ports = {
    now: () => time.now,
    schedule: (callback: () => void) => {
      time.due = callback;
      return () => {
        if (time.due === callback) time.due = undefined;
      };
    },
  };
  const settle = async () => {
    for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
  };
  const decode = async (...frames: readonly number[]) => {
    for (const k of frames) decoded.add(k);
    for (const waiter of waiters.splice(0)) {
      if (settled(waiter.k)) waiter.answer();
      else waiters.push(waiter);
    }
    await settle();
  };
  const player = createPlayer(reader, clock, { ports });
  const shown: number[] = [];
  player.onShown(({ frame }) => shown.push(frame));
  /** Repaints every `each` milliseconds for `ms`. */
  const run = (ms: number, each = 10) => {
    for (const until = time.now + ms; time.now < until; ) {
      time.now += each;
      const due = time.due;
      time.due = undefined;
      due?.();
    }
  };
  return { player, clock, decode, faults, shown, run, time, log, settle };
}

const range = (count: number, from = 0) => Array.from({ length: count }, (_, at) => from + at);

describe('stepping and jumping', () => {
  it('shows frame 0 first, with its own time', async () => {
    const { player, decode, shown } = world([3, 4, 5]);
    expect(player.state()).toMatchObject({ frame: 0, ready: false, playing: false });
    await decode(0);
    expect(shown).toEqual([0]);
    expect(player.state()).toMatchObject({ frame: 0, ready: true, time: 100_000 });
  });

  it('steps from the asked frame, so that quick steps add up, and keeps the shown frame until the picture is there', async () => {
    const { player, decode, shown } = world(range(30));
    await decode(0);
    player.step(1);
    player.step(1);
    player.step(10);
    expect(player.state()).toMatchObject({ frame: 0, asked: 12 });
    await decode(1, 2);
    expect(player.state().frame).toBe(0);
    await decode(12);
    expect(player.state()).toMatchObject({ frame: 12, asked: 12 });
    expect(shown).toEqual([0, 12]);
  });

  it('is held at the ends of the film', async () => {
    const { player, decode } = world(range(5));
    await decode(...range(5));
    player.step(-1);
    expect(player.state().asked).toBe(0);
    player.jump(99);
    await decode();
    expect(player.state()).toMatchObject({ frame: 4, asked: 4 });
    expect(() => player.jump(Number.NaN)).toThrow(RangeError);
  });

  it('says why a frame cannot be shown, and forgets it at the next', async () => {
    const { player, decode, faults, settle } = world(range(5));
    await decode(0, 2);
    faults.set(1, finding('film/decode', { frame: 1 }, { frame: 1, reason: 'broken' }));
    player.step(1);
    await settle();
    expect(player.state()).toMatchObject({ frame: 0, asked: 1, finding: { code: 'film/decode' } });
    player.step(1);
    expect(player.state()).toMatchObject({ frame: 2, finding: undefined });
  });

  it('closes every picture but the one on screen, and that one in the end', async () => {
    const { player, decode, log, run, settle } = world(range(20));
    await decode(...range(20));
    for (let step = 0; step < 5; step += 1) player.step(1);
    player.play(2);
    run(300);
    player.jump(3);
    await settle();
    expect(log.open).toBe(1);
    player.dispose();
    expect(log.open).toBe(0);
  });
});

describe('playing', () => {
  it('shows every frame for its own time: frame k from its presentation time on', async () => {
    // Starts at 0, 1/30, 4/30, 5/30, 15/30 s; nothing nominal about it.
    const { player, decode, run, time, clock } = world([0, 1, 4, 5, 15], { end: 16 });
    await decode(...range(5));
    const seen: [number, number][] = [];
    player.onShown(({ frame }) => seen.push([frame, time.now]));
    const begun = time.now;
    player.play(1);
    run(600, 1);
    for (const [frame, at] of seen.slice(1)) {
      const due = clock.timeOf(frame) / 1000 + begun;
      expect(at - due).toBeGreaterThanOrEqual(0);
      expect(at - due).toBeLessThanOrEqual(1);
    }
    expect(seen.map(([frame]) => frame)).toEqual([0, 1, 2, 3, 4]);
    expect(player.state()).toMatchObject({ playing: false, frame: 4 });
  });

  it.each([1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4])(
    'runs at %f of the film’s speed, forward and backward',
    async (speed) => {
      const { player, decode, run, shown } = world(range(300));
      await decode(...range(300));
      player.play(speed);
      run(1000);
      // 30 frames a second of film, one second on the wall; one frame more or less by where the repaint falls.
      expect(Math.abs((shown.at(-1) ?? 0) - 30 * speed)).toBeLessThanOrEqual(1);
      player.jump(299);
      player.play(-speed);
      run(1000);
      expect(Math.abs(299 - (shown.at(-1) ?? 0) - 30 * speed)).toBeLessThanOrEqual(1);
    },
  );

  it('goes backward frame by frame without leaving one out at normal speed', async () => {
    const { player, decode, run, shown } = world(range(20));
    await decode(...range(20));
    player.jump(19);
    player.play(-1);
    run(1000);
    expect(shown).toEqual([0, ...range(20).reverse()]);
    expect(player.state()).toMatchObject({ playing: false, frame: 0 });
  });

  it('starts over when it is played at its end', async () => {
    const { player, decode, run, shown } = world(range(6));
    await decode(...range(6));
    player.jump(5);
    player.play(1);
    run(60);
    expect(shown.slice(0, 3)).toEqual([0, 5, 0]);
  });

  it('drops output when it is a little late, and never goes back', async () => {
    const { player, decode, run, shown } = world(range(90));
    await decode(...range(10));
    player.play(1);
    run(400);
    await decode(...range(10, 10));
    run(100);
    await decode(...range(70, 20));
    run(200);
    expect(shown).toEqual([...shown].sort((a, b) => a - b));
    expect(new Set(shown).size).toBe(shown.length);
    expect(shown.at(-1)).toBeGreaterThan(18);
  });

  it('lets the film’s clock wait when decoding is far behind, and then goes on with the next frame', async () => {
    const { player, decode, run, shown } = world(range(300));
    await decode(...range(10));
    player.play(1);
    run(5000);
    expect(player.state()).toMatchObject({ frame: 9, playing: true, waiting: true });
    await decode(...range(290, 10));
    run(20);
    expect(player.state()).toMatchObject({ frame: 10, waiting: false });
    run(1000);
    expect(Math.abs((shown.at(-1) ?? 0) - 40)).toBeLessThanOrEqual(2);
  });

  it('waits for a head start, but not for ever', async () => {
    const { player, decode, run } = world(range(100));
    await decode(0, 1, 2);
    player.play(1);
    run(200);
    expect(player.state()).toMatchObject({ frame: 0, waiting: true });
    run(400);
    expect(player.state().frame).toBe(2);
  });

  it('does not move the film while the window is hidden', async () => {
    const { player, decode, run, time } = world(range(300));
    await decode(...range(300));
    player.play(1);
    run(1000);
    const { frame } = player.state();
    time.now += 60_000;
    run(20);
    expect(player.state().frame - frame).toBeLessThanOrEqual(2);
  });

  it('passes over a frame that cannot be decoded and says so meanwhile', async () => {
    const { player, decode, run, shown, faults } = world(range(12));
    await decode(...range(5), ...range(6, 6));
    faults.set(5, finding('film/decode', { frame: 5 }, { frame: 5, reason: 'broken' }));
    player.play(1);
    run(185);
    expect(player.state()).toMatchObject({ frame: 4, finding: { code: 'film/decode' } });
    run(400);
    expect(shown).toEqual([...range(5), ...range(6, 6)]);
    expect(player.state().finding).toBeUndefined();
  });

  it('refuses speeds outside 1/16 to 4', () => {
    const { player } = world(range(3));
    for (const speed of [0, 5, -5, 0.01, Number.NaN]) expect(() => player.play(speed)).toThrow(RangeError);
  });

  it('stands where it was paused, and steps from there', async () => {
    const { player, decode, run } = world(range(100));
    await decode(...range(100));
    player.play(1);
    run(500);
    player.pause();
    const { frame } = player.state();
    run(500);
    expect(player.state()).toMatchObject({ frame, asked: frame, playing: false });
    player.step(-1);
    expect(player.state().frame).toBe(frame - 1);
  });
});

describe('loop', () => {
  it('repeats the span and nothing outside it', async () => {
    const { player, decode, run, shown, log } = world(range(100));
    await decode(...range(100));
    player.jump(10);
    player.setLoop({ from: 10, to: 16 });
    expect(log.kept).toEqual({ from: 10, to: 16 });
    player.play(1);
    run(1000);
    expect(shown.slice(1, 15)).toEqual([10, 11, 12, 13, 14, 15, 10, 11, 12, 13, 14, 15, 10, 11]);
    player.play(-1);
    run(1000);
    expect(shown.slice(1).every((frame) => frame >= 10 && frame < 16)).toBe(true);
    player.setLoop(undefined);
    expect(log.kept).toBeUndefined();
  });

  it('enters the span from outside at its near end', async () => {
    const { player, decode, run, shown } = world(range(100));
    await decode(...range(100));
    player.setLoop({ from: 50, to: 60 });
    player.play(1);
    run(20);
    expect(shown).toEqual([0, 50]);
    player.jump(0);
    player.play(-1);
    run(20);
    expect(shown).toEqual([0, 50, 0, 59]);
  });

  it('does not lose time at the turn', async () => {
    const { player, decode, run, shown } = world(range(100));
    await decode(...range(100));
    player.setLoop({ from: 0, to: 30 });
    player.play(1);
    run(10_000, 7);
    const turns = shown.filter((frame, at) => frame < (shown[at - 1] ?? 0)).length;
    expect(turns).toBe(10 - 1 + (player.state().frame < 5 ? 1 : 0));
  });

  it('refuses a span that is not in the film', () => {
    const { player } = world(range(10));
    for (const span of [
      { from: 5, to: 5 },
      { from: -1, to: 3 },
      { from: 3, to: 11 },
    ]) {
      expect(() => player.setLoop(span)).toThrow(RangeError);
    }
  });
});

describe('subscribing', () => {
  it('gives the same state until something changes', async () => {
    const { player, decode } = world(range(3));
    const before = player.state();
    expect(player.state()).toBe(before);
    let calls = 0;
    const stop = player.subscribe(() => {
      calls += 1;
    });
    await decode(0);
    expect(calls).toBeGreaterThan(0);
    expect(player.state()).not.toBe(before);
    stop();
    const after = calls;
    player.step(1);
    expect(calls).toBe(after);
  });

  it('tells a late listener what is on screen', async () => {
    const { player, decode } = world(range(3));
    await decode(0);
    const times: number[] = [];
    player.onShown(({ time }) => times.push(time));
    expect(times).toEqual([micros(0)]);
  });
});
