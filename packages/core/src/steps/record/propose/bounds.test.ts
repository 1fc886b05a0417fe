import { describe, expect, it } from 'vitest';
import { madeStudy } from '../../../../../../tests/helpers/made-study.ts';
import { type MadeKind, madeTrack } from '../../../../../../tests/helpers/made-tracks.ts';
import { proposeFromTrack } from './index.ts';

/**
 * A law of every proposal: its cycles lie within the film, overlap neither a confirmed cycle nor each other, and its
 * motions and spans keep to the same bounds.
 */
const kinds: Readonly<Record<string, Partial<MadeKind>>> = {
  'bench work': { cycles: 6 },
  'cycles of about a second': { cycles: 8, motions: [2, 3], motionSeconds: [0.2, 0.5] },
  'cycles that rest between': { cycles: 6, motions: [2, 4], between: 2 },
  'hard to tell apart': {
    cycles: 7,
    motions: [2, 5],
    timeSpread: 0.5,
    placeSpread: 60,
    noise: 8,
    pause: 0.4,
    extra: 0.4,
    missing: 0.4,
    opening: false,
  },
};
const seeds = Array.from({ length: 2 }, (_, index) => 201 + index);

describe.each(Object.entries(kinds))('%s', (_, kind) => {
  it.each(seeds)('seed %i: proposed cycles keep off what is confirmed and off each other', (seed) => {
    const made = madeTrack({ ...kind, seed });
    const frames = (made.track.frames / made.framesPerSecond) * 1e6;
    for (const chosen of [[0], [2], [1, 3]]) {
      const study = madeStudy(made, chosen);
      const proposal = proposeFromTrack({
        study,
        method: 'm',
        track: made.track,
        framesPerSecond: made.framesPerSecond,
      });
      if (!proposal.ok) continue;
      const { cycles, spans, left, right } = proposal.value;
      const us = (frame: number) => Math.round((frame / made.framesPerSecond) * 1e6);
      const edges = [...made.cycles, made.ends.at(-1) ?? 0];
      const confirmed = chosen.map((index) => [us(edges[index] ?? 0), us(edges[index + 1] ?? 0)] as const);
      const within = (start: number, end: number) =>
        start >= 0 &&
        end <= frames + 1 &&
        start < end &&
        confirmed.every(([from, to]) => end <= from || start >= to);
      for (const [index, { start, end }] of cycles.entries()) {
        expect(within(start, end), `cycle ${start} to ${end}, confirmed ${confirmed.join(' and ')}`).toBe(
          true,
        );
        expect(start, 'after the one before it').toBeGreaterThanOrEqual(cycles[index - 1]?.end ?? 0);
      }
      for (const [index, { from, to }] of spans.entries()) {
        expect(within(from, to), `span ${from} to ${to}, confirmed ${confirmed.join(' and ')}`).toBe(true);
        expect(from).toBeGreaterThanOrEqual(spans[index - 1]?.to ?? 0);
      }
      for (const row of [left, right])
        for (const { start } of row)
          expect(
            spans.some(({ from, to }) => start >= from && start < to),
            `motion at ${start}`,
          ).toBe(true);
    }
  });
});
