import {
  emptyStudy,
  encodeFrameTimes,
  type Method,
  type Motion,
  type Study,
} from '@evenhand/core/ground/study';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ScoreEvent, ScoreState } from './score-events.ts';
import { ScoreSurface } from './score-surface.ts';

// 100 frames of 10 ms over exactly 1000 px from x = 78: a frame is 10 px, and 1 px is 1 ms.
const frames = 100;

function row(
  prefix: string,
  given: readonly (readonly [start: number, kind: Motion['kind']])[],
): Method['left'] {
  const items = given.map(([start, kind], index) => ({
    id: `${prefix}${index}`,
    start,
    kind,
    said: 'marked' as const,
  }));
  return { items, end: frames };
}

function madeUp(parts: Partial<Method> = {}): { study: Study; method: Method } {
  const method: Method = {
    id: 'm',
    name: 'Made up',
    kind: 'recorded',
    base: { kind: 'frames', film: 'f' },
    unitsPerCycle: 1,
    left: row('l', [
      [0, 'TE'],
      [30, 'G'],
      [50, 'TL'],
    ]),
    right: row('r', [
      [0, 'unmarked'],
      [40, 'A'],
    ]),
    cycles: {
      items: [
        { id: 'c0', start: 10 },
        { id: 'c1', start: 60 },
      ],
      end: 90,
    },
    ...parts,
  };
  const film: Study['films'][number] = {
    id: 'f',
    sha256: '0'.repeat(64),
    name: 'made up',
    bytes: 1,
    container: 'MP4',
    codec: 'H.264',
    width: 4,
    height: 3,
    rotation: 0,
    frameTimes: encodeFrameTimes(
      Array.from({ length: frames }, (_, frame) => frame * 10),
      frames * 10,
      1000,
    ),
    clock: { kind: 'identity' },
  };
  return { study: { ...emptyStudy('s', 'Made up'), films: [film], methods: [method] }, method };
}

const heights = { cycles: 11, left: 100, axis: 155, right: 200, overview: 315 } as const;

let host: HTMLElement;
let surface: ScoreSurface;
let events: ScoreEvent[];
let state: ScoreState;

beforeEach(async () => {
  host = document.createElement('div');
  host.style.cssText = 'position:fixed;left:0;top:0;width:1088px;height:340px';
  document.body.append(host);
  events = [];
  surface = new ScoreSurface(host, { onEvent: (event) => events.push(event) });
  state = { ...madeUp(), unit: 'seconds', playhead: 5, playing: false, look: 'light' };
  await show({});
  events.length = 0;
});

afterEach(() => {
  surface.dispose();
  host.remove();
});

function show(change: Partial<ScoreState>): Promise<void> {
  state = { ...state, ...change };
  surface.update(state);
  return surface.idle();
}

function target(): HTMLElement {
  return host.firstElementChild as HTMLElement;
}

interface Pointer {
  readonly id?: number;
  readonly kind?: 'mouse' | 'touch' | 'pen';
  readonly button?: number;
  readonly shift?: boolean;
}

function point(
  type: string,
  ms: number,
  y: number,
  { id = 1, kind = 'mouse', button = 0, shift = false }: Pointer = {},
) {
  const place = { clientX: 78 + ms, clientY: y, bubbles: true, cancelable: true, shiftKey: shift };
  target().dispatchEvent(
    new PointerEvent(type, { ...place, pointerId: id, pointerType: kind, button, isPrimary: id === 1 }),
  );
}

function drag(from: readonly [number, number], to: readonly [number, number], pointer: Pointer = {}) {
  point('pointerdown', ...from, pointer);
  for (const share of [0.25, 0.5, 0.75, 1])
    point('pointermove', from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share, pointer);
}

function click(ms: number, y: number, pointer: Pointer = {}) {
  point('pointerdown', ms, y, pointer);
  point('pointerup', ms, y, pointer);
}

function of<Type extends ScoreEvent['type']>(type: Type): Extract<ScoreEvent, { type: Type }>[] {
  return events.filter((event): event is Extract<ScoreEvent, { type: Type }> => event.type === type);
}

/** The colour of the picture, all layers together. */
function colourAt(x: number, y: number): string {
  const sheet = new OffscreenCanvas(1088, 340);
  const context = sheet.getContext('2d');
  if (context === null) throw new Error('there is no canvas');
  for (const canvas of host.querySelectorAll('canvas')) context.drawImage(canvas, 0, 0, 1088, 340);
  return [...context.getImageData(x, y, 1, 1).data.slice(0, 3)]
    .map((part) => part.toString(16).padStart(2, '0'))
    .join('');
}

describe('the picture', () => {
  it('has the left hand’s colour above the axis and the right hand’s below, in either look', async () => {
    // Grasp is lake red without a pattern: #b3123a (the table of motions).
    expect(colourAt(78 + 400, 100)).toBe('b3123a');
    expect(colourAt(78 + 700, 250)).not.toBe('fbfaf7');
    expect(colourAt(40, 330)).toBe('fbfaf7');
    await show({ look: 'dark' });
    expect(colourAt(40, 330)).toBe('17181a');
    expect(colourAt(78 + 400, 100)).toBe('b3123a');
  });

  it('shows the playhead where the film stands, and takes it along', async () => {
    await show({ playhead: 35 });
    expect(colourAt(78 + 350, 100)).toBe('1f4e79');
    await show({ playhead: 45 });
    expect(colourAt(78 + 350, 100)).toBe('b3123a');
    expect(colourAt(78 + 450, 100)).toBe('1f4e79');
  });

  it('follows the size of its place', async () => {
    host.style.width = '588px';
    await new Promise<void>((resolve) => {
      const seen = new ResizeObserver(() => {
        seen.disconnect();
        resolve();
      });
      seen.observe(host);
    });
    await surface.idle();
    expect([...host.querySelectorAll('canvas')].map((canvas) => canvas.clientWidth)).toEqual([588, 588, 588]);
    expect(colourAt(Math.round(((78 + 200) * 1088) / 588), 100)).toBe('b3123a');
  });

  it('a playhead, a loop or a selection beyond the film does not break it', async () => {
    await show({
      playhead: 5000,
      loop: { from: 90, to: 700 },
      selection: { kind: 'span', hand: 'both', from: 200, to: 300 },
    });
    expect(colourAt(78 + 400, 100)).toBe('b3123a');
  });

  it('has a name for those who cannot see it', () => {
    expect(target().getAttribute('role')).toBe('img');
    expect(target().getAttribute('aria-label')).toContain('score');
  });
});

describe('dragging a boundary', () => {
  it('is one gesture: previews that the film follows, then one commit, snapped to frames', async () => {
    drag([301, heights.left], [352, heights.left]);
    await surface.idle();
    // The surface shows it already: frame 33 was grasp, now it is transport empty.
    expect(colourAt(78 + 335, 100)).not.toBe('b3123a');
    expect(state.method.left.items[1]?.start).toBe(30);
    point('pointerup', 352, heights.left);
    const moves = of('move-boundary');
    expect(moves.map(({ phase }) => phase)).toEqual([...moves.slice(1).map(() => 'preview'), 'commit']);
    // Taken hold of 1 px beside it and moved by 51 px: 5 frames.
    expect(moves.at(-1)).toEqual({
      type: 'move-boundary',
      hand: 'left',
      motionId: 'l1',
      to: 35,
      phase: 'commit',
    });
    expect(of('seek').map(({ boundary }) => boundary)).toContain(35);
  });

  it('stops one frame before its neighbours', () => {
    drag([300, heights.left], [900, heights.left]);
    point('pointerup', 900, heights.left);
    expect(of('move-boundary').at(-1)).toMatchObject({ to: 49, phase: 'commit' });
    events.length = 0;
    drag([300, heights.left], [-60, heights.left]);
    point('pointerup', -60, heights.left);
    expect(of('move-boundary').at(-1)).toMatchObject({ to: 1, phase: 'commit' });
  });

  it('Escape throws it away whole and takes the film back', async () => {
    drag([300, heights.left], [380, heights.left]);
    await show({ playhead: 38 });
    const key = new KeyboardEvent('keydown', { code: 'Escape', bubbles: true, cancelable: true });
    document.body.dispatchEvent(key);
    expect(key.defaultPrevented).toBe(true);
    point('pointerup', 380, heights.left);
    expect(of('move-boundary').at(-1)?.phase).toBe('cancel');
    expect(of('move-boundary').filter(({ phase }) => phase === 'commit')).toHaveLength(0);
    expect(of('seek').at(-1)).toEqual({ type: 'seek', boundary: 5, phase: 'settle' });
    await surface.idle();
    expect(colourAt(78 + 335, 100)).toBe('b3123a');
  });

  it('Escape without a gesture belongs to somebody else', () => {
    const key = new KeyboardEvent('keydown', { code: 'Escape', bubbles: true, cancelable: true });
    document.body.dispatchEvent(key);
    expect(key.defaultPrevented).toBe(false);
    expect(events).toEqual([]);
  });

  it('brought back to where it was, it asks for nothing', () => {
    drag([300, heights.left], [350, heights.left]);
    point('pointermove', 300, heights.left);
    point('pointerup', 300, heights.left);
    expect(of('move-boundary').at(-1)).toMatchObject({ phase: 'cancel' });
    expect(of('move-boundary').filter(({ phase }) => phase === 'commit')).toHaveLength(0);
  });

  it('is given up when the boundary is taken away meanwhile', async () => {
    drag([300, heights.left], [350, heights.left]);
    await show(madeUp({ left: row('l', [[0, 'TE']]) }));
    point('pointerup', 350, heights.left);
    expect(of('move-boundary').filter(({ phase }) => phase === 'commit')).toHaveLength(0);
  });

  it('the pointer lost to the system gives it up', () => {
    drag([300, heights.left], [350, heights.left]);
    point('pointercancel', 350, heights.left);
    expect(of('move-boundary').at(-1)?.phase).toBe('cancel');
    events.length = 0;
    point('pointermove', 400, heights.left);
    expect(of('move-boundary')).toEqual([]);
  });

  it('ends of rows and marks of cycles move likewise', () => {
    drag([998, heights.right], [950, heights.right]);
    point('pointerup', 950, heights.right);
    expect(of('move-row-end').at(-1)).toEqual({
      type: 'move-row-end',
      hand: 'right',
      to: 95,
      phase: 'commit',
    });
    drag([600, heights.cycles], [650, heights.cycles]);
    point('pointerup', 650, heights.cycles);
    expect(of('move-cycle').at(-1)).toEqual({ type: 'move-cycle', cycleId: 'c1', to: 65, phase: 'commit' });
    drag([900, heights.cycles], [920, heights.cycles]);
    point('pointerup', 920, heights.cycles);
    expect(of('move-cycles-end').at(-1)).toEqual({ type: 'move-cycles-end', to: 92, phase: 'commit' });
  });
});

describe('choosing', () => {
  it('a click selects the motion and takes the film there; with Shift it extends', () => {
    click(402, heights.left);
    expect(events).toEqual([
      { type: 'select', hand: 'left', motionId: 'l1', extend: false },
      { type: 'seek', boundary: 40, phase: 'settle' },
    ]);
    events.length = 0;
    click(700, heights.right, { shift: true });
    expect(of('select')).toEqual([{ type: 'select', hand: 'right', motionId: 'r1', extend: true }]);
  });

  it('a trembling hand still clicks', () => {
    point('pointerdown', 400, heights.left);
    point('pointermove', 402, heights.left + 2);
    point('pointerup', 402, heights.left + 2);
    expect(of('select')).toHaveLength(1);
    expect(of('select-span')).toHaveLength(0);
  });

  it('a drag over a hand chooses a span of it, over the axis of both', () => {
    drag([420, heights.left], [660, heights.left]);
    point('pointerup', 660, heights.left);
    expect(of('select-span').at(-1)).toEqual({
      type: 'select-span',
      hand: 'left',
      from: 42,
      to: 66,
      phase: 'commit',
    });
    expect(of('select')).toHaveLength(0);
    drag([660, heights.left], [420, heights.right]);
    point('pointerup', 420, heights.right);
    expect(of('select-span').at(-1)).toEqual({
      type: 'select-span',
      hand: 'both',
      from: 42,
      to: 66,
      phase: 'commit',
    });
  });

  it('a click on a cycle chooses it', () => {
    click(300, heights.cycles);
    expect(events).toEqual([{ type: 'select-cycle', cycleId: 'c0', extend: false }]);
  });

  it('the axis takes the film along: scrub while the pointer is down, settle at the end', () => {
    drag([200, heights.axis], [600, heights.axis]);
    point('pointerup', 600, heights.axis);
    const seeks = of('seek');
    expect(seeks.map(({ phase }) => phase)).toEqual([...seeks.slice(1).map(() => 'scrub'), 'settle']);
    expect([seeks[0]?.boundary, seeks.at(-1)?.boundary]).toEqual([20, 60]);
  });
});

describe('looking closer', () => {
  const wheel = (ms: number, deltaY: number, more: WheelEventInit = {}) =>
    target().dispatchEvent(
      new WheelEvent('wheel', {
        clientX: 78 + ms,
        clientY: heights.left,
        deltaY,
        bubbles: true,
        cancelable: true,
        ...more,
      }),
    );

  it('the wheel zooms at the pointer: the time there stays; with Shift it pans', () => {
    wheel(400, -260);
    // Half of 1 s, and 0.4 s still at 40 % of the width.
    expect(surface.view.fromUs).toBeCloseTo(200_000, 3);
    expect(surface.view.toUs).toBeCloseTo(700_000, 3);
    wheel(400, 100, { shiftKey: true });
    expect(surface.view.fromUs).toBeCloseTo(250_000, 3);
    expect(of('view-changed').at(-1)?.fromUs).toBe(surface.view.fromUs);
    wheel(400, 2600);
    expect(surface.view).toEqual({ fromUs: 0, toUs: 1_000_000 });
  });

  it('two fingers keep the times under them', () => {
    point('pointerdown', 400, heights.left, { id: 7, kind: 'touch' });
    point('pointerdown', 600, heights.left, { id: 8, kind: 'touch' });
    point('pointermove', 300, heights.left, { id: 7, kind: 'touch' });
    point('pointermove', 700, heights.left, { id: 8, kind: 'touch' });
    // 0.4 s at 300 px and 0.6 s at 700 px: half a millisecond a pixel, 0.25 s at the left side.
    expect(surface.view.fromUs).toBeCloseTo(250_000, 3);
    expect(surface.view.toUs).toBeCloseTo(750_000, 3);
    point('pointerup', 300, heights.left, { id: 7, kind: 'touch' });
    point('pointerup', 700, heights.left, { id: 8, kind: 'touch' });
    expect(of('select')).toHaveLength(0);
  });

  it('one finger pans, and taps like a click', () => {
    surface.zoomTo(40, 60);
    const { fromUs } = surface.view;
    drag([300, heights.left], [200, heights.left], { kind: 'touch' });
    point('pointerup', 200, heights.left, { kind: 'touch' });
    expect(surface.view.fromUs).toBeGreaterThan(fromUs);
    expect(of('select-span')).toHaveLength(0);
    click(300, heights.left, { kind: 'touch' });
    expect(of('select')).toHaveLength(1);
  });

  it('a double click shows the motion with 4 % of room at both sides, on the axis everything', () => {
    const double = (ms: number, y: number) =>
      target().dispatchEvent(new MouseEvent('dblclick', { clientX: 78 + ms, clientY: y, bubbles: true }));
    double(400, heights.left);
    expect(surface.view.fromUs).toBeCloseTo(292_000, 3);
    expect(surface.view.toUs).toBeCloseTo(508_000, 3);
    double(400, heights.axis);
    expect(surface.view).toEqual({ fromUs: 0, toUs: 1_000_000 });
  });

  it('the frame of the overview is dragged, and drawn wider by its sides', () => {
    surface.zoomTo(40, 60);
    const span = surface.view.toUs - surface.view.fromUs;
    drag([500, heights.overview], [700, heights.overview]);
    point('pointerup', 700, heights.overview);
    expect(surface.view.toUs - surface.view.fromUs).toBeCloseTo(span, 3);
    expect((surface.view.fromUs + surface.view.toUs) / 2).toBeCloseTo(700_000, 3);
    const side = surface.view.toUs / 1000;
    drag([side, heights.overview], [side + 100, heights.overview]);
    point('pointerup', side + 100, heights.overview);
    expect(surface.view.toUs).toBeCloseTo((side + 100) * 1000, 3);
  });

  it('Escape takes a pan back', () => {
    surface.zoomTo(40, 60);
    const before = surface.view;
    drag([500, heights.left], [300, heights.left], { button: 1 });
    expect(surface.view.fromUs).not.toBe(before.fromUs);
    expect(surface.cancelGesture()).toBe(true);
    expect(surface.view).toEqual(before);
    expect(surface.cancelGesture()).toBe(false);
  });

  it('zooming by command keeps the playhead in its place when it is in sight', async () => {
    await show({ playhead: 20 });
    surface.zoomBy(2);
    expect(surface.view.fromUs).toBeCloseTo(100_000, 3);
    surface.fit();
    expect(surface.view).toEqual({ fromUs: 0, toUs: 1_000_000 });
  });

  it('turns the page as the film plays, but not for someone who looks elsewhere', async () => {
    surface.zoomTo(0, 20);
    await show({ playing: true, playhead: 19 });
    const page = surface.view;
    await show({ playhead: 40 });
    expect(surface.view.fromUs).toBeGreaterThan(page.fromUs);
    expect(surface.view.fromUs).toBeLessThan(400_000);
    expect(surface.view.toUs).toBeGreaterThan(400_000);
    // A person turns back to the beginning.
    wheel(500, -5000, { shiftKey: true });
    const elsewhere = surface.view;
    expect(elsewhere.fromUs).toBe(0);
    await show({ playhead: 41 });
    expect(surface.view).toEqual(elsewhere);
    // The film comes by again: from here on it is followed.
    await show({ playhead: 10 });
    await show({ playhead: 60 });
    expect(surface.view.toUs).toBeGreaterThan(600_000);
  });

  it('another method is shown whole', async () => {
    surface.zoomTo(40, 60);
    await show(madeUp({ id: 'other' }));
    expect(surface.view).toEqual({ fromUs: 0, toUs: 1_000_000 });
  });

  it('an edit keeps the view', async () => {
    surface.zoomTo(40, 60);
    const before = surface.view;
    await show(madeUp({ left: row('l', [[0, 'TE']]) }));
    expect(surface.view).toEqual(before);
  });
});

describe('words and cursors', () => {
  it('a boundary shows that it can be taken, a motion says what it is', async () => {
    point('pointermove', 300, heights.left);
    expect(target().style.cursor).toBe('ew-resize');
    await surface.idle();
    expect(colourAt(78 + 300, 60)).toBe('1f4e79');
    point('pointermove', 400, heights.left);
    expect(target().title).toBe('G, grasp, 0.20 s');
    await surface.idle();
    expect(colourAt(78 + 300, 60)).not.toBe('1f4e79');
  });
});

describe('the end', () => {
  it('leaves nothing behind and reports nothing any more', async () => {
    const box = target();
    point('pointerdown', 300, heights.left);
    surface.dispose();
    events.length = 0;
    box.dispatchEvent(new PointerEvent('pointerdown', { clientX: 400, clientY: heights.left }));
    window.dispatchEvent(new KeyboardEvent('keydown', { code: 'Escape' }));
    await surface.idle();
    expect(host.childElementCount).toBe(0);
    expect(events).toEqual([]);
  });
});
