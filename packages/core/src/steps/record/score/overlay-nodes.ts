import { micros } from '../../../ground/base/index.ts';
import type { SceneNode } from '../../../ground/scene/index.ts';
import { countText, timeNumber, timeText } from '../../../ground/units/index.ts';
import type { Area, ScoreAreas } from './areas.ts';
import { originOf, shownTicks } from './axis-nodes.ts';
import { litNodes } from './lit-nodes.ts';
import { box, frame, wordsAt } from './marks.ts';
import { wordWidth } from './motion-words.ts';
import { overviewScale } from './overview-nodes.ts';
import { shownTimes } from './row-times.ts';
import type { TimeScale } from './scale.ts';
import type { BoundaryRef, ScoreInput, ScoreSelection } from './score-input.ts';
import { boundaryOf } from './snap.ts';

/** What moves over the score: selection, loop, the boundary under the pointer or in its hold, playhead, overview frame. */
export function overlayNodes(input: ScoreInput, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  return [
    ...litNodes(input, areas, scale),
    ...(input.loop === undefined ? [] : loopNodes(input, input.loop, areas, scale)),
    ...spanNodes(input, input.selection, areas, scale, undefined),
    ...spanNodes(input, input.drawn, areas, scale, [4, 3]),
    ...(input.preview === undefined ? hoverNodes(input, input.hover, areas, scale) : []),
    ...overviewFrame(input, areas),
    ...playheadNodes(input, areas, scale),
    ...heldNodes(input, areas, scale),
  ];
}

/** The area of a hand, or of both with the axis between them. */
function areaOf(areas: ScoreAreas, hand: 'left' | 'right' | 'both'): Area {
  if (hand !== 'both') return areas[hand];
  return { ...areas.left, height: areas.right.y + areas.right.height - areas.left.y };
}

function spanNodes(
  input: ScoreInput,
  selection: ScoreSelection | undefined,
  areas: ScoreAreas,
  scale: TimeScale,
  dash: readonly number[] | undefined,
): SceneNode[] {
  const times = selection === undefined ? undefined : selectedTimes(input, selection);
  if (selection === undefined || times === undefined) return [];
  if (times.toUs <= scale.view.fromUs || times.fromUs >= scale.view.toUs) return [];
  const x = scale.cutX(times.fromUs);
  const width = Math.max(3, scale.cutX(times.toUs) - x);
  const area = { ...areaOf(areas, selection.hand), x, width };
  return [
    box(area.x, area.y, area.width, area.height, { ink: 'accent', opacity: 0.13 }),
    frame(area, 'accent', 2, dash),
  ];
}

function selectedTimes(
  input: ScoreInput,
  selection: ScoreSelection,
): { readonly fromUs: number; readonly toUs: number } | undefined {
  const { clock } = input;
  if (selection.kind === 'span')
    return { fromUs: clock.timeOf(selection.from), toUs: clock.timeOf(selection.to) };
  const row = input.method[selection.hand];
  const index = row.items.findIndex((item) => item.id === selection.motionId);
  const times = shownTimes(row, clock, selection.hand, input.preview);
  const [fromUs, toUs] = [times.startUs[index], times.startUs[index + 1]];
  return index < 0 || fromUs === undefined || toUs === undefined ? undefined : { fromUs, toUs };
}

/** The loop as a bracket along both base lines of the axis. */
function loopNodes(
  { clock }: ScoreInput,
  loop: { readonly from: number; readonly to: number },
  { axis }: ScoreAreas,
  scale: TimeScale,
): SceneNode[] {
  const [fromUs, toUs] = [clock.timeOf(loop.from), clock.timeOf(loop.to)];
  if (toUs <= scale.view.fromUs || fromUs >= scale.view.toUs) return [];
  const [left, right] = [scale.cutX(fromUs), scale.cutX(toUs)];
  const ink = { ink: 'accent' } as const;
  const ends = [
    ...(fromUs >= scale.view.fromUs ? [box(left, axis.y, 3, axis.height, ink)] : []),
    ...(toUs <= scale.view.toUs ? [box(right - 3, axis.y, 3, axis.height, ink)] : []),
  ];
  return [
    box(left, axis.y, right - left, axis.height, { ink: 'accent', opacity: 0.14 }),
    box(left, axis.y, right - left, 2, ink),
    box(left, axis.y + axis.height - 2, right - left, 2, ink),
    ...ends,
  ];
}

/** Where a boundary can be taken hold of: a line over its row with a grip at the axis. */
function hoverNodes(
  input: ScoreInput,
  ref: BoundaryRef | undefined,
  areas: ScoreAreas,
  scale: TimeScale,
): SceneNode[] {
  const at = ref === undefined ? undefined : boundaryOf(input.method, ref);
  if (ref === undefined || at === undefined) return [];
  const x = scale.x(input.clock.timeOf(at));
  return holdNodes(x, ref, areas);
}

function holdNodes(x: number, ref: BoundaryRef, areas: ScoreAreas): SceneNode[] {
  const ink = { ink: 'accent' } as const;
  const area = ref.row === 'cycles' ? { ...areaOf(areas, 'both'), y: 3 } : areas[ref.row];
  const middle = ref.row === 'cycles' ? areas.cycles.y + areas.cycles.height / 2 : area.y + area.height / 2;
  return [
    box(x - 1, area.y, 3, area.height, ink),
    box(x - 4, middle - 8, 2, 16, ink),
    box(x + 3, middle - 8, 2, 16, ink),
  ];
}

/** A held boundary: a line through both hands, and how far it has come. */
function heldNodes(input: ScoreInput, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  const { preview, clock, unit } = input;
  const was = preview === undefined ? undefined : boundaryOf(input.method, preview);
  if (preview === undefined || was === undefined) return [];
  const us = clock.timeOf(preview.to);
  const x = scale.x(us);
  const by = preview.to - was;
  const moved =
    by === 0
      ? 'where it was'
      : `${by > 0 ? '+' : '−'}${clock.unit === 'frames' ? countText(Math.abs(by), 'frame') : timeText(micros(Math.abs(by)), unit)}`;
  const text = `${timeText(micros(us - originOf(input)), unit)}  ·  ${moved}`;
  const through = areaOf(areas, 'both');
  return [
    box(x, through.y, scale.hair, through.height, { ink: 'accent' }),
    ...holdNodes(x, preview, areas),
    ...flag(input, x, text, areas, scale),
  ];
}

function playheadNodes(input: ScoreInput, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  const us = input.clock.timeOf(input.playhead);
  if (us < scale.view.fromUs || us > scale.view.toUs) return [];
  const x = scale.x(us);
  const bottom = areas.ribbon.y + areas.ribbon.height;
  const line = box(x - 1, 0, 2, bottom, { ink: 'accent' });
  if (input.preview !== undefined) return [line];
  const time = timeNumber(micros(us - originOf(input)), input.unit);
  return [line, ...flag(input, x, time, areas, scale)];
}

/** A small plate on the axis at a line, kept inside the picture; numbers of the axis that it would cut are covered. */
function flag(input: ScoreInput, x: number, text: string, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  const { axis } = areas;
  const width = wordWidth(text, 12, 600) + 12;
  const left = Math.min(Math.max(x - width / 2, axis.x), Math.max(axis.x, scale.right - width));
  const top = axis.y + 8;
  const height = axis.height - 16;
  const covers = shownTicks(input, scale).flatMap((tick): SceneNode[] => {
    const half = wordWidth(tick.text ?? '', 12, 400) / 2;
    const at = scale.x(tick.us);
    if (tick.text === undefined || at + half < left - 2 || at - half > left + width + 2) return [];
    return [box(at - half - 1, top, 2 * half + 2, height, { ink: 'paper' })];
  });
  const plate = { ...box(left, axis.y + 5, width, axis.height - 10, { ink: 'accent' }), radius: 2 };
  const look = { size: 12, weight: 600, ink: 'paper', align: 'middle' } as const;
  return [...covers, plate, wordsAt(left + width / 2, axis.y + axis.height / 2, text, look)];
}

/** The part of the film that is shown, framed; the rest paled. */
function overviewFrame(input: ScoreInput, areas: ScoreAreas): SceneNode[] {
  const { overview } = areas;
  const scale = overviewScale(input, areas);
  const window = overviewWindow(input, areas);
  const pale = { ink: 'paper', opacity: 0.6 } as const;
  const right = overview.x + overview.width;
  const end = window.x + window.width;
  return [
    box(overview.x, overview.y, Math.max(0, window.x - overview.x), overview.height, pale),
    box(end, overview.y, Math.max(0, right - end), overview.height, pale),
    frame(window, 'soft', 1.5),
    box(scale.cutX(input.clock.timeOf(input.playhead)) - 1, overview.y, 2, overview.height, {
      ink: 'accent',
    }),
  ];
}

/** Where the frame of the overview stands; never narrower than can be taken hold of. */
export function overviewWindow(input: Pick<ScoreInput, 'whole' | 'view'>, { overview }: ScoreAreas): Area {
  const perPixel = (input.whole.toUs - input.whole.fromUs) / overview.width;
  const x = overview.x + (input.view.fromUs - input.whole.fromUs) / perPixel;
  const width = (input.view.toUs - input.view.fromUs) / perPixel;
  const least = Math.max(0, 8 - width);
  const left = Math.min(
    Math.max(overview.x, x - least / 2),
    overview.x + overview.width - Math.max(8, width),
  );
  return { x: left, y: overview.y, width: Math.max(8, width), height: overview.height };
}
