import { describe, expect, it } from 'vitest';
import { madeStudy } from '../../../../../../tests/helpers/made-study.ts';
import { madeTrack } from '../../../../../../tests/helpers/made-tracks.ts';
import type { Hand, Method, Study } from '../../../ground/study/index.ts';
import type { Track } from '../tracks/index.ts';
import { type Proposal, proposeFromTrack } from './index.ts';

function proposed(study: Study, track: Track, framesPerSecond = 30): Proposal {
  const made = proposeFromTrack({ study, method: 'm', track, framesPerSecond });
  if (!made.ok) throw new Error(made.error.map(({ message }) => message).join(' '));
  return made.value;
}

function codes(study: Study, track: Track): string[] {
  const made = proposeFromTrack({ study, method: 'm', track, framesPerSecond: 30 });
  return made.ok ? made.value.findings.map(({ code }) => code) : made.error.map(({ code }) => code);
}

const made = madeTrack({ seed: 3, cycles: 6 });

describe('from one confirmed cycle', () => {
  const proposal = proposed(madeStudy(made, [1]), made.track);

  it('finds the others and invents none', () => {
    expect(proposal.cycles).toHaveLength(5);
    proposal.cycles.forEach(({ start }, index) => {
      const truth = (made.cycles[index === 0 ? 0 : index + 1] as number) / made.framesPerSecond;
      expect(Math.abs(start / 1e6 - truth)).toBeLessThan(0.75);
    });
  });

  it('fills the stretches without a gap, each motion after the one before it, each with a confidence', () => {
    for (const hand of ['left', 'right'] as const) {
      const row = proposal[hand];
      expect(row.every(({ start }, index) => index === 0 || start > (row[index - 1]?.start ?? -1))).toBe(
        true,
      );
      for (const { start, confidence } of row) {
        expect(proposal.spans.some(({ from, to }) => start >= from && start < to)).toBe(true);
        expect(confidence).toBeGreaterThan(0);
        expect(confidence).toBeLessThan(1);
      }
      for (const { from } of proposal.spans) expect(row.some(({ start }) => start === from)).toBe(true);
    }
  });

  it('leaves the confirmed cycle alone', () => {
    const [start, end] = [made.cycles[1] as number, made.cycles[2] as number].map(
      (frame) => (frame / 30) * 1e6,
    );
    for (const { from, to } of proposal.spans)
      expect(to <= (start as number) + 1 || from >= (end as number) - 1).toBe(true);
  });
});

describe('a long search', () => {
  it('says how much is done: from above 0 to 1 without falling, and with it the proposal is the same', () => {
    const short = madeTrack({ seed: 7, cycles: 6, motions: [2, 3], motionSeconds: [0.3, 0.6] });
    const study = madeStudy(short, [1, 3]);
    const { track, framesPerSecond } = short;
    const input = { study, method: 'm', track, framesPerSecond };
    const told: number[] = [];
    const found = proposeFromTrack(input, (share) => told.push(share));
    expect(found).toEqual(proposeFromTrack(input));
    expect(told.length).toBeGreaterThan(8);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told[0]).toBeGreaterThan(0);
    expect(told.at(-1)).toBeCloseTo(1, 9);
  });
});

describe('what stands in the way is said', () => {
  const study = madeStudy(made, [1]);
  const { frames } = made.track;

  it('a track without hands', () => {
    const { left: _, right: __, ...none } = made.track;
    expect(codes(study, none)).toEqual(['propose/no-hands']);
  });

  it('one hand only: proposed, with a warning', () => {
    const { left: _, ...one } = made.track;
    expect(codes(study, one)).toContain('propose/one-hand');
  });

  it('a method without a film needs the rate of the track', () => {
    const asked = proposeFromTrack({ study, method: 'm', track: made.track });
    expect(asked.ok ? [] : asked.error.map(({ code }) => code)).toEqual(['propose/no-rate']);
  });

  it('an unknown method is answered with those that there are', () => {
    const asked = proposeFromTrack({ study, method: 'x', track: made.track });
    expect(asked.ok ? '' : asked.error[0]?.message).toBe('The study has no method “x”. It has: m.');
  });

  it('of a hand that the track does not show nothing is called likely', () => {
    const { right: _, ...one } = made.track;
    const { right, left } = proposed(study, one);
    expect(right.length).toBeGreaterThan(10);
    expect(Math.max(...right.map(({ confidence }) => confidence))).toBeLessThanOrEqual(0.3);
    expect(Math.max(...left.map(({ confidence }) => confidence))).toBeGreaterThan(0.8);
  });

  it('a confirmed cycle in which the track shows no hand teaches nothing; alone it is refused', () => {
    const [from, to] = [made.cycles[1] as number, made.cycles[2] as number];
    const gone = (values: Float32Array) =>
      values.map((value, frame) => (frame >= from && frame < to ? Number.NaN : value));
    const without = (hand: Hand) => {
      const own = made.track[hand];
      if (own === undefined) throw new Error('both hands are made');
      return { ...own, x: gone(own.x), y: gone(own.y) };
    };
    const track = { ...made.track, left: without('left'), right: without('right') };
    expect(codes(study, track)).toEqual(['propose/cycles-unseen']);
    expect(codes(madeStudy(made, [1, 3]), track)).toContain('propose/cycle-unseen');
    expect(proposed(madeStudy(made, [1, 3]), track).cycles.length).toBeGreaterThan(2);
  });

  it('a composed method has no film to look at', () => {
    const [method] = study.methods as [Method];
    const composed: Study = { ...study, methods: [{ ...method, kind: 'composed' }] };
    expect(codes(composed, made.track)).toEqual(['propose/composed']);
  });

  it('a rate at which the track is much shorter or longer than the rows is told', () => {
    const at = (framesPerSecond: number) => {
      const found = proposeFromTrack({ study, method: 'm', track: made.track, framesPerSecond });
      return (found.ok ? found.value.findings : found.error).map(({ code }) => code);
    };
    expect(at(30)).not.toContain('propose/rate');
    expect(at(25)).toContain('propose/rate');
    expect(at(900)).toContain('propose/rate');
  });

  it('a film in which nothing runs like the confirmed cycle gets no cycle', () => {
    const other = madeTrack({ seed: 77, cycles: 6 });
    const start = made.cycles[1] as number;
    const end = made.cycles[2] as number;
    const mixed = (hand: Hand) => {
      const [own, theirs] = [made.track[hand], other.track[hand]];
      if (own === undefined || theirs === undefined) throw new Error('both hands are made');
      const put = (a: Float32Array, b: Float32Array) =>
        Float32Array.from(
          { length: frames },
          (_, frame) => (frame >= start && frame < end ? a[frame] : b[frame % b.length]) ?? Number.NaN,
        );
      return {
        x: put(own.x, theirs.x),
        y: put(own.y, theirs.y),
        presence: put(own.presence, theirs.presence),
      };
    };
    const { cycles, findings } = proposed(study, {
      ...made.track,
      left: mixed('left'),
      right: mixed('right'),
    });
    const sure = cycles.filter(({ confidence }) => confidence > 0.5);
    expect(sure).toEqual([]);
    expect(findings.length).toBeGreaterThan(0);
  });

  it('without a confirmed cycle a rough row, all of it uncertain', () => {
    const bare = madeStudy(made, [1]);
    const [method] = bare.methods as [Method];
    const clear = (hand: Hand) => ({
      items: [{ id: `${hand}0`, start: 0, kind: 'unmarked' as const, said: 'marked' as const }],
      end: method[hand].end,
    });
    const empty: Study = {
      ...bare,
      methods: [
        {
          ...method,
          left: clear('left'),
          right: clear('right'),
          cycles: { items: [], end: method.left.end },
        },
      ],
    };
    const { left, right, cycles, findings } = proposed(empty, made.track);
    expect(cycles).toEqual([]);
    expect(findings.map(({ code }) => code)).toContain('propose/no-cycle');
    for (const row of [left, right]) {
      expect(row.length).toBeGreaterThan(10);
      expect(new Set(row.map(({ kind }) => kind))).toEqual(
        new Set(
          ['TE', 'TL', 'G', 'RL', 'H', 'UD'].filter((kind) => row.some((motion) => motion.kind === kind)),
        ),
      );
      expect(Math.max(...row.map(({ confidence }) => confidence))).toBeLessThan(0.9);
    }
  });
});
