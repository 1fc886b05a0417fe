import { describe, expect, it } from 'vitest';
import { emptyStudy, type Film, type Method, type Study } from '../../../ground/study/index.ts';
import { csvTable } from '../interchange/index.ts';
import {
  chronocyclegraph,
  chronocyclegraphScene,
  emptyHandTrack,
  handMotions,
  pathsToCsv,
  type Track,
} from './index.ts';

const frames = 61;
const film: Film = {
  id: 'f',
  sha256: 'a'.repeat(64),
  name: 'bench.mp4',
  bytes: 1,
  container: 'MP4',
  codec: 'H.264',
  width: 640,
  height: 360,
  rotation: 0,
  frameTimes: { ticksPerSecond: 30, start: 0, steps: [{ repeat: frames, deltas: [1] }] },
  clock: { kind: 'identity' },
};
const method: Method = {
  id: 'm',
  name: 'Present',
  kind: 'recorded',
  base: { kind: 'frames', film: 'f' },
  unitsPerCycle: 1,
  left: { items: [{ id: 'l', start: 0, kind: 'H', object: '=body', said: 'marked' }], end: frames },
  right: {
    items: [
      { id: 'r0', start: 0, kind: 'unmarked', said: 'marked' },
      { id: 'r1', start: 10, kind: 'TE', said: 'marked' },
      { id: 'r2', start: 40, kind: 'G', said: 'marked' },
    ],
    end: 60,
  },
  cycles: { items: [], end: 0 },
};
/** From frame 10 to 40 the right hand goes 300 pixels to the right at a steady 300 a second; the left one is not seen. */
function reach(): Track {
  const right = emptyHandTrack(frames);
  for (let frame = 0; frame < frames; frame += 1) {
    right.x[frame] = 100 + 10 * Math.min(30, Math.max(0, frame - 10));
    right.y[frame] = 200;
    right.presence[frame] = 1;
  }
  return { source: 'table', frames, width: 640, height: 360, unit: 'pixels', right };
}
const study = (change: Partial<Film> = {}): Study => ({
  ...emptyStudy('s', 'S'),
  films: [{ ...film, ...change }],
  methods: [method],
});
const rows = (of: Study) => {
  const made = pathsToCsv(of, method, reach());
  if (!made.ok) throw new Error(made.error.message);
  const [head, ...lines] = csvTable(made.value, ',').lines.map(({ cells }) => cells);
  return lines.map((cells) => Object.fromEntries((head ?? []).map((name, index) => [name, cells[index]])));
};

describe('figures of every path as a table', () => {
  it('has a line for each marked motion, with what is not known left empty (arithmetic)', () => {
    const [held, gone, grasped] = rows(study());
    expect(held).toMatchObject({
      hand: 'left',
      motion: 'H',
      object: "'=body",
      path: '',
      peak_speed: '',
      seen: '0',
    });
    expect(gone).toMatchObject({ hand: 'right', motion: 'TE', frame: '10', unit: 'pixels', seen: '1.000' });
    // A movement that starts and stops at once, as no hand does: smoothing rounds its ends by two in a hundred.
    expect(Math.abs(Number(gone?.path) / 300 - 1)).toBeLessThan(0.03);
    expect(Number(gone?.peak_speed)).toBeGreaterThan(295);
    expect(Number(gone?.smoothness)).toBeLessThan(-1);
    expect(Number(grasped?.path)).toBeLessThan(10);
    expect(grasped?.smoothness).toBe('');
  });

  it('is in millimetres where the bench is measured: 100 pixels are 50 mm', () => {
    const ends = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
    ] as unknown as Extract<NonNullable<Film['calibration']>, { kind: 'length' }>['ends'];
    const [, gone] = rows(study({ calibration: { kind: 'length', ends, millimetres: 50 } }));
    expect(gone?.unit).toBe('millimetres');
    expect(Math.abs(Number(gone?.straight) / 150 - 1)).toBeLessThan(0.03);
  });

  it('of a method without a film is refused in words', () => {
    const made = pathsToCsv(study(), { ...method, base: { kind: 'micros' } }, reach());
    expect(made.ok ? '' : made.error.code).toBe('track/no-film');
  });
});

describe('the chronocyclegraph as a drawing', () => {
  it('says what it shows, to one scale both ways, with a bar for it', () => {
    const motions = handMotions(reach(), (frame) => Math.round((frame * 1e6) / 30));
    const paths = chronocyclegraph(motions, [{ from: 0, to: 60 }], 100_000, (frame) =>
      Math.round((frame * 1e6) / 30),
    );
    const look = {
      title: 'Present',
      unit: 'pixels',
      picture: film,
      every: 100_000,
      cycles: 1,
      colourOf: () => '#123456',
    } as const;
    const scene = chronocyclegraphScene(paths, look);
    expect(scene.description).toBe(
      '1 cycle; a dot each 0.1 s; diamonds: right hand; colours are those of the motions.',
    );
    const figure = scene.nodes.find((node) => node.kind === 'group' && node.role === 'figure');
    const [layer] = figure?.kind === 'group' ? figure.nodes : [];
    const nodes = layer?.kind === 'group' ? layer.nodes : [];
    expect(nodes.filter((node) => node.kind === 'path')).toHaveLength(21);
    // 640 × 360 pixels on 720 points: 1.125 points a pixel, and 100 pixels are the round length below a sixth of it.
    expect(nodes.find((node) => node.kind === 'rect')).toMatchObject({ width: 720, height: 405 });
    expect(nodes.find((node) => node.kind === 'text')).toMatchObject({ text: '100 pixels' });
    expect(nodes.find((node) => node.kind === 'line')).toMatchObject({ x1: 36, x2: 36 + 112.5 });
  });

  it('without a hand says so and is still a drawing', () => {
    const look = {
      title: 'Present',
      unit: 'millimetres',
      every: 40_000,
      cycles: 1,
      colourOf: () => '#123456',
    } as const;
    const scene = chronocyclegraphScene([], look);
    expect(scene.description).toContain('neither hand was seen');
    expect(JSON.stringify(scene)).not.toMatch(/NaN|null|Infinity/);
  });
});
