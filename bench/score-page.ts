import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import {
  emptyStudy,
  type Method,
  type MethodClock,
  type Motion,
  methodClock,
  type Study,
} from '@evenhand/core/ground/study';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import {
  groundNodes,
  overlayNodes,
  overviewNodes,
  type ScoreInput,
  type SpeedRibbon,
  scoreLimits,
  scorePlan,
  type TimeView,
} from '@evenhand/core/record';
import { canvasPattern, looks, paintNodes, patternInk } from '@evenhand/draw';
import { race, type Timings } from './harness.ts';

const width = 1440;
const height = 340;
const kinds = ['TE', 'G', 'TL', 'P', 'A', 'RL', 'TE', 'Sh', 'St', 'G', 'TL', 'U', 'H', 'UD'] as const;

/** A filmed method with so many motions, half of them for each hand, of 3 to 13 frames at 30 a second; cycles of 14. */
export function filmedStudy(motions: number): Study {
  const each = motions / 2;
  const frames = each * 8 + 20;
  const row = (prefix: string, shift: number): Method['left'] => {
    const items: Motion[] = [];
    let at = 0;
    for (let index = 0; index < each; index += 1) {
      const kind = kinds[(index + shift) % kinds.length] ?? 'TE';
      items.push({ id: `${prefix}${index}`, start: at, kind, object: 'hose body', said: 'marked' });
      at += 3 + ((index * 7 + shift) % 11);
    }
    return { items, end: at };
  };
  const left = row('l', 0);
  const right = row('r', 5);
  const cycles = left.items
    .filter((_, index) => index % 14 === 0)
    .map(({ start }, index) => ({ id: `c${index}`, start }));
  const film: Study['films'][number] = {
    id: 'f',
    sha256: '0'.repeat(64),
    name: 'long',
    bytes: 1,
    container: 'MP4',
    codec: 'H.264',
    width: 1920,
    height: 1080,
    rotation: 0,
    frameTimes: { ticksPerSecond: 30, start: 0, steps: [{ repeat: frames, deltas: [1] }] },
    clock: { kind: 'identity' },
  };
  const method: Method = {
    id: 'm',
    name: 'Long',
    kind: 'recorded',
    base: { kind: 'frames', film: 'f' },
    unitsPerCycle: 1,
    left,
    right,
    cycles: { items: cycles, end: Math.min(left.end, right.end) },
  };
  return { ...emptyStudy('s', 'Long'), films: [film], methods: [method] };
}

function canvasOf(): CanvasRenderingContext2D {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  document.body.append(canvas);
  const context = canvas.getContext('2d', { alpha: false });
  if (context === null) throw new Error('this browser gives no canvas');
  return context;
}

/** Waits until what was asked for stands in the canvas, so that the time of drawing counts too. */
function settle(context: CanvasRenderingContext2D): void {
  context.getImageData(0, 0, 1, 1);
}

function methodOf(study: Study): Method {
  const method = study.methods[0];
  if (method === undefined) throw new Error('the study has no method');
  return method;
}

function inputOf(study: Study, view: TimeView): ScoreInput {
  const method = methodOf(study);
  const clock = methodClock(study, method);
  const { fromUs, toUs } = scoreLimits(method, clock);
  const playhead = clock.boundaryAt((view.fromUs + view.toUs) / 2);
  return {
    method,
    clock,
    view,
    whole: { fromUs, toUs },
    width,
    height,
    pixelRatio: 1,
    unit: 'seconds',
    playhead,
  };
}

function paint(context: CanvasRenderingContext2D, input: ScoreInput): void {
  const { areas, scale } = scorePlan(input);
  context.fillStyle = looks.light.inks.paper;
  context.fillRect(0, 0, width, height);
  paintNodes(context, groundNodes(input), looks.light);
  paintNodes(context, overlayNodes(input, areas, scale), looks.light);
}

/** The plain way: every motion of the film each time, as block, pattern and code, with nothing left out and nothing merged. */
function paintAll(context: CanvasRenderingContext2D, input: ScoreInput): void {
  const { areas, scale } = scorePlan(input);
  const { method, clock } = input;
  context.fillStyle = looks.light.inks.paper;
  context.fillRect(0, 0, width, height);
  context.font = `600 13px ${looks.light.fontFamily}`;
  for (const hand of ['left', 'right'] as const) {
    const area = areas[hand];
    const { items, end } = method[hand];
    for (const [index, motion] of items.entries()) {
      const x = scale.exactX(clock.timeOf(motion.start));
      const wide = scale.exactX(clock.timeOf(items[index + 1]?.start ?? end)) - x;
      block(context, motion, x, area.y, wide, area.height);
    }
  }
  const { overlay } = { overlay: overlayNodes(input, areas, scale) };
  paintNodes(context, overlay, looks.light);
}

function block(
  context: CanvasRenderingContext2D,
  motion: Motion,
  x: number,
  y: number,
  wide: number,
  high: number,
): void {
  const { colour, pattern, code } = motionFactsOf(motion.kind);
  context.fillStyle = colour;
  context.fillRect(x, y, wide, high);
  const marks = wide >= 5 ? canvasPattern(context, pattern, patternInk(colour)) : null;
  if (marks !== null) {
    context.fillStyle = marks;
    context.fillRect(x, y, wide, high);
  }
  if (wide < 18) return;
  context.fillStyle = looks.light.inks.ink;
  context.fillText(code, x + 3, y + 14);
}

export interface RedrawTimes {
  readonly motions: number;
  readonly shown: number;
  readonly timings: readonly Timings[];
}

function shownMotions(method: Method, clock: MethodClock, view: TimeView): number {
  return (['left', 'right'] as const).reduce((sum, hand) => {
    const inside = method[hand].items.filter(({ start }) => {
      const us = clock.timeOf(start);
      return us >= view.fromUs && us < view.toUs;
    });
    return sum + inside.length;
  }, 0);
}

/** Repaints of 600 and of 60,000 motions at several zooms; the view moves a little each time, so that nothing is kept. */
export async function redraws(): Promise<readonly RedrawTimes[]> {
  const all: RedrawTimes[] = [];
  for (const motions of [600, 60_000]) {
    const study = filmedStudy(motions);
    const method = methodOf(study);
    const clock = methodClock(study, method);
    const whole = scoreLimits(method, clock);
    for (const share of motions === 600 ? [1, 0.1] : [1, 0.1, 0.01, 0.001]) {
      const span = (whole.toUs - whole.fromUs) * share;
      let round = 0;
      const nextView = () => {
        round += 1;
        const fromUs = whole.fromUs + (whole.toUs - whole.fromUs - span) * ((round % 17) / 17);
        return share === 1
          ? { fromUs: fromUs + round, toUs: fromUs + span }
          : { fromUs, toUs: fromUs + span };
      };
      const [ours, plain] = [canvasOf(), canvasOf()];
      const contenders = {
        'only what can be seen': () => {
          paint(ours, inputOf(study, nextView()));
          settle(ours);
        },
        'all motions each time': () => {
          paintAll(plain, inputOf(study, nextView()));
          settle(plain);
        },
      };
      const timings = await race(contenders, { rounds: 25, warmUp: 4 });
      all.push({ motions, shown: shownMotions(method, clock, nextView()), timings });
      ours.canvas.remove();
      plain.canvas.remove();
    }
  }
  return all;
}

/** Every second cycle only proposed. */
function halfProposed(study: Study): Study {
  const row = ({ items, end }: Method['left']): Method['left'] => ({
    items: items.map((motion, index) =>
      Math.floor(index / 14) % 2 === 1 ? { ...motion, said: 'proposed', confidence: 0.8 } : motion,
    ),
    end,
  });
  const method = methodOf(study);
  return { ...study, methods: [{ ...method, left: row(method.left), right: row(method.right) }] };
}

/** A speed for each frame of the film: swings of a second or so, with gaps in which the hand is not seen. */
function madeRibbon(study: Study): SpeedRibbon {
  const method = methodOf(study);
  const clock = methodClock(study, method);
  const frames = method.left.end;
  const times = Float64Array.from({ length: frames }, (_, frame) => clock.timeOf(frame));
  const speed = (shift: number) =>
    Float32Array.from({ length: frames }, (_, frame) =>
      (frame + shift) % 331 < 12 ? Number.NaN : 300 * (1 + Math.sin((frame + shift) / 7)),
    );
  return { times, speeds: { left: speed(0), right: speed(40) }, full: 600 };
}

/** The same repaint as a film with a track and proposals shows it: hatched motions and the speed of both hands. */
export async function ribbonRedraws(): Promise<readonly RedrawTimes[]> {
  const all: RedrawTimes[] = [];
  for (const motions of [600, 60_000]) {
    const plain = filmedStudy(motions);
    const half = halfProposed(plain);
    const ribbon = madeRibbon(plain);
    const whole = scoreLimits(methodOf(plain), methodClock(plain, methodOf(plain)));
    for (const share of motions === 600 ? [1, 0.1] : [1, 0.01, 0.001]) {
      const span = (whole.toUs - whole.fromUs) * share;
      let round = 0;
      const nextView = () => {
        round += 1;
        const fromUs = whole.fromUs + (whole.toUs - whole.fromUs - span) * ((round % 17) / 17);
        return { fromUs: share === 1 ? fromUs + round : fromUs, toUs: fromUs + span };
      };
      const contexts = [canvasOf(), canvasOf(), canvasOf()] as const;
      const [bare, proposed, both] = contexts;
      const shown = (context: CanvasRenderingContext2D, study: Study, more: Partial<ScoreInput>) => () => {
        const input = { ...inputOf(study, nextView()), ...more };
        paint(context, input);
        paintNodes(context, overviewNodes(input, scorePlan(input).areas), looks.light);
        settle(context);
      };
      const contenders = {
        'all confirmed, no ribbon': shown(bare, plain, {}),
        'half only proposed': shown(proposed, half, {}),
        'half only proposed, speed ribbon': shown(both, half, { ribbon, ribbonHeight: 40 }),
      };
      const timings = await race(contenders, { rounds: 25, warmUp: 4 });
      const method = methodOf(plain);
      all.push({ motions, shown: shownMotions(method, methodClock(plain, method), nextView()), timings });
      for (const { canvas } of contexts) canvas.remove();
    }
  }
  return all;
}

/** A boundary is moved: the edit applied, the row's times made anew, score and overview painted. */
export async function editToRepaint(): Promise<readonly Timings[]> {
  const editor = (motions: number) => {
    let study = filmedStudy(motions);
    const { items } = methodOf(study).right;
    const motion = items[Math.floor(items.length / 2)];
    if (motion === undefined) throw new Error('the study has no motion');
    let [was, to] = [motion.start, motion.start + 1];
    const context = canvasOf();
    return () => {
      const edit: Edit = { type: 'motion.move', method: 'm', hand: 'right', motion: motion.id, to, was };
      const applied = applyEdit(study, edit);
      if (!applied.ok) throw new Error(applied.error.message);
      study = applied.value.study;
      [was, to] = [to, was];
      const middle = to * 33_333;
      const input = inputOf(study, { fromUs: middle - 5e6, toUs: middle + 5e6 });
      paint(context, input);
      paintNodes(context, overviewNodes(input, scorePlan(input).areas), looks.light);
      settle(context);
    };
  };
  return race({ '600 motions': editor(600), '60,000 motions': editor(60_000) }, { rounds: 30, warmUp: 4 });
}
