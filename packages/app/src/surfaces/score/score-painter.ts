import {
  endOf,
  type Hand,
  hands,
  type MethodClock,
  type Motion,
  type Row,
} from '@evenhand/core/ground/study';
import { type MotionKind, motionFactsOf, motionKinds } from '@evenhand/core/ground/tables';
import { timeUnits } from '@evenhand/core/ground/units';
import {
  type Area,
  axisSteps,
  axisTicks,
  type Piece,
  type RowTimes,
  rowPieces,
  rowTimes,
  type ScoreAreas,
  type TimeScale,
  type TimeView,
  timeScale,
  withBoundary,
} from '@evenhand/core/record';
import { canvasPattern, type Look, patternInk } from '@evenhand/draw';
import type { ScoreState } from './score-events.ts';

/** A boundary that a pointer holds; it is drawn where it would go. */
export interface HeldBoundary {
  readonly row: Hand | 'cycles';
  readonly id: string | undefined;
  readonly to: number;
}

export interface ScorePicture {
  readonly state: ScoreState;
  readonly clock: MethodClock;
  readonly areas: ScoreAreas;
  readonly scale: TimeScale;
  readonly look: Look;
  readonly whole: TimeView;
  readonly held: HeldBoundary | undefined;
  readonly span: { readonly hand: Hand | 'both'; readonly from: number; readonly to: number } | undefined;
}

type Context = CanvasRenderingContext2D;

const widths = new Map<string, number>();

/** Paints one picture of the score: only what the view shows is touched. */
export function paintScore(context: Context, picture: ScorePicture, width: number, height: number): void {
  const { look } = picture;
  context.fillStyle = look.inks.paper;
  context.fillRect(0, 0, width, height);
  paintSetAside(context, picture);
  for (const hand of hands) paintRow(context, picture, hand);
  paintAxis(context, picture);
  paintCycles(context, picture);
  paintHeadings(context, picture);
  paintSelection(context, picture);
  paintOverview(context, picture);
  paintPlayhead(context, picture);
}

function shownRow(picture: ScorePicture, hand: Hand): RowTimes {
  const row = picture.state.method[hand];
  const times = rowTimes(row, picture.clock);
  const { held } = picture;
  if (held?.row !== hand) return times;
  const index = held.id === undefined ? times.count : row.items.findIndex((item) => item.id === held.id);
  return index < 0 ? times : withBoundary(times, index, picture.clock.timeOf(held.to));
}

function paintRow(context: Context, picture: ScorePicture, hand: Hand): void {
  const { scale, areas } = picture;
  const row = picture.state.method[hand];
  const band = bandOf(areas, hand);
  context.save();
  clip(context, areas[hand]);
  const pieces = rowPieces(shownRow(picture, hand), scale.view, scale.usPerPixel);
  for (const piece of pieces) {
    if (piece.piece === 'run') paintRun(context, picture, piece, band);
    else {
      const motion = row.items[piece.index];
      if (motion !== undefined) paintMotion(context, picture, hand, motion, piece, band);
    }
  }
  context.restore();
}

/** The part of a hand's area that holds the colour: next to the axis, so that the hands mirror each other. */
function bandOf(areas: ScoreAreas, hand: Hand): Area {
  const area = areas[hand];
  const height = Math.max(0, area.height - areas.words);
  return { ...area, y: hand === 'left' ? area.y + areas.words : area.y, height };
}

function paintMotion(
  context: Context,
  picture: ScorePicture,
  hand: Hand,
  motion: Motion,
  piece: Piece,
  band: Area,
): void {
  const { scale, look } = picture;
  const left = scale.cutX(piece.fromUs);
  const wide = scale.cutX(piece.toUs) - left;
  if (wide <= 0) return;
  const facts = motionFactsOf(motion.kind);
  if (motion.kind === 'unmarked') {
    context.strokeStyle = look.inks.rule;
    context.setLineDash([3, 3]);
    context.strokeRect(left + 0.5, band.y + 0.5, Math.max(0, wide - 1), band.height - 1);
    context.setLineDash([]);
    if (wide > 90)
      words(
        context,
        picture,
        'not marked yet',
        left + wide / 2,
        band.y + band.height / 2 + 4,
        12,
        400,
        look.inks.soft,
        'center',
      );
    return;
  }
  fillKind(context, motion.kind, left, band.y, wide, band.height, wide >= 5);
  context.fillStyle = look.inks.paper;
  context.fillRect(left, band.y, Math.min(1, wide), band.height);
  if (motion.said === 'proposed') {
    context.globalAlpha = 0.55;
    context.fillRect(left + 1, band.y, wide - 1, band.height);
    context.globalAlpha = 1;
    context.strokeStyle = facts.colour;
    context.setLineDash([4, 2]);
    context.strokeRect(left + 1.5, band.y + 0.5, Math.max(0, wide - 2), band.height - 1);
    context.setLineDash([]);
  }
  paintWords(context, picture, hand, motion, left, wide);
}

function fillKind(
  context: Context,
  kind: MotionKind,
  x: number,
  y: number,
  width: number,
  height: number,
  patterned: boolean,
): void {
  const facts = motionFactsOf(kind);
  context.fillStyle = facts.colour;
  context.fillRect(x, y, width, height);
  const marks = patterned ? canvasPattern(context, facts.pattern, patternInk(facts.colour)) : null;
  if (marks === null) return;
  context.globalAlpha = 0.32;
  context.fillStyle = marks;
  context.fillRect(x, y, width, height);
  context.globalAlpha = 1;
}

/** Letter code next to the colour, the object at the outer edge, each only where it fits whole. */
function paintWords(
  context: Context,
  picture: ScorePicture,
  hand: Hand,
  motion: Motion,
  left: number,
  wide: number,
): void {
  const { areas, look } = picture;
  if (areas.words === 0) return;
  const area = areas[hand];
  const inner = hand === 'left' ? area.y + areas.words - 5 : area.y + area.height - areas.words + 14;
  const outer = hand === 'left' ? inner - 16 : inner + 16;
  const { code } = motionFactsOf(motion.kind);
  if (measure(context, picture, code, 12, 600) <= wide - 3)
    words(context, picture, code, left + 2, inner, 12, 600, look.inks.ink, 'left');
  const object = motion.object ?? '';
  if (areas.words < 30 || object === '' || wide < 24) return;
  words(
    context,
    picture,
    fitted(context, picture, object, wide - 4),
    left + 2,
    outer,
    11.5,
    400,
    look.inks.soft,
    'left',
  );
}

function fitted(context: Context, picture: ScorePicture, text: string, room: number): string {
  if (measure(context, picture, text, 11.5, 400) <= room) return text;
  let end = text.length - 1;
  while (end > 1 && measure(context, picture, `${text.slice(0, end)}…`, 11.5, 400) > room) end -= 1;
  return end > 1 ? `${text.slice(0, end)}…` : '';
}

/** Motions too narrow to be told apart: their kinds stacked by their shares of the time. */
function paintRun(
  context: Context,
  picture: ScorePicture,
  piece: Extract<Piece, { piece: 'run' }>,
  band: Area,
): void {
  const { scale } = picture;
  const left = scale.cutX(piece.fromUs);
  const wide = Math.max(scale.hair, scale.cutX(piece.toUs) - left);
  const all = piece.toUs - piece.fromUs;
  let y = band.y;
  piece.kinds.forEach((place, index) => {
    const high = (band.height * (piece.times[index] ?? 0)) / all;
    const kind = motionKinds[place];
    if (kind !== undefined && kind !== 'unmarked') {
      context.fillStyle = motionFactsOf(kind).colour;
      context.fillRect(left, y, wide, high);
    }
    y += high;
  });
}

function paintAxis(context: Context, picture: ScorePicture): void {
  const { areas, scale, look, state, clock } = picture;
  const { axis } = areas;
  context.fillStyle = look.inks.ink;
  context.fillRect(axis.x, axis.y, axis.width, 1);
  context.fillRect(axis.x, axis.y + axis.height - 1, axis.width, 1);
  const steps = axisSteps(scale.usPerPixel, state.unit, 78);
  const origin = clock.timeOf(0);
  for (const tick of axisTicks(scale.view.fromUs, scale.view.toUs, origin, steps, state.unit)) {
    const x = scale.x(tick.us);
    const long = tick.text === undefined ? 4 : 8;
    context.fillStyle = look.inks.ink;
    context.fillRect(x, axis.y, scale.hair, long);
    context.fillRect(x, axis.y + axis.height - long, scale.hair, long);
    if (tick.text !== undefined && x > axis.x + 14 && x < axis.x + axis.width - 14) {
      words(context, picture, tick.text, x, axis.y + axis.height / 2 + 4, 12, 400, look.inks.ink, 'center');
    }
  }
  paintFrames(context, picture);
}

/** Every frame gets a tick of its own once frames stand six pixels apart. */
function paintFrames(context: Context, picture: ScorePicture): void {
  const { areas, scale, clock, look } = picture;
  if (clock.unit !== 'frames' || clock.last === undefined) return;
  const first = clock.boundaryAt(scale.view.fromUs);
  const last = Math.min(clock.last, clock.boundaryAt(scale.view.toUs) + 1);
  if (last <= first || areas.axis.width / (last - first) < 6) return;
  context.fillStyle = look.inks.faint;
  for (let frame = first; frame <= last; frame += 1) {
    const x = scale.x(clock.timeOf(frame));
    if (x >= scale.left && x <= scale.right) {
      context.fillRect(x, areas.axis.y + 1, scale.hair, 3);
      context.fillRect(x, areas.axis.y + areas.axis.height - 4, scale.hair, 3);
    }
  }
}

interface CycleLine {
  readonly index: number;
  readonly start: number;
  readonly end: number;
  readonly setAside: string | undefined;
}

function cycleLines(picture: ScorePicture): CycleLine[] {
  const { cycles } = picture.state.method;
  const { held, clock } = picture;
  const at = (start: number, id: string | undefined) =>
    held?.row === 'cycles' && held.id === id ? held.to : start;
  return cycles.items.map((cycle, index) => {
    const next = cycles.items[index + 1];
    const start = at(cycle.start, cycle.id);
    const end = at(endOf(cycles, index), next?.id);
    return { index, start: clock.timeOf(start), end: clock.timeOf(end), setAside: cycle.setAside };
  });
}

function paintSetAside(context: Context, picture: ScorePicture): void {
  const { areas, scale, look } = picture;
  for (const cycle of cycleLines(picture)) {
    if (cycle.setAside === undefined) continue;
    const left = scale.cutX(cycle.start);
    context.fillStyle = look.inks.shade;
    context.fillRect(left, 0, scale.cutX(cycle.end) - left, areas.right.y + areas.right.height);
  }
}

function paintCycles(context: Context, picture: ScorePicture): void {
  const { areas, scale, look } = picture;
  const bottom = areas.right.y + areas.right.height;
  const lines = cycleLines(picture);
  for (const cycle of lines) {
    const left = scale.cutX(cycle.start);
    const right = scale.cutX(cycle.end);
    if (right <= scale.left || left >= scale.right) continue;
    context.fillStyle = look.inks.ink;
    if (cycle.start >= scale.view.fromUs) context.fillRect(left, 2, 1, bottom - 2);
    if (cycle.index === lines.length - 1 && cycle.end <= scale.view.toUs)
      context.fillRect(right, 2, 1, bottom - 2);
    const number = `${cycle.index + 1}`;
    const text =
      cycle.setAside === undefined ? `cycle ${number}` : `cycle ${number}, set aside: ${cycle.setAside}`;
    const room = right - left - 10;
    const shown =
      measure(context, picture, text, 11.5, 400) <= room
        ? text
        : measure(context, picture, number, 11.5, 400) <= room
          ? number
          : '';
    words(context, picture, shown, left + 5, 15, 11.5, 400, look.inks.soft, 'left');
  }
}

function paintHeadings(context: Context, picture: ScorePicture): void {
  const { areas, look, state } = picture;
  context.fillStyle = look.inks.paper;
  context.fillRect(0, 0, areas.gutter, areas.overview.y - 4);
  const wide = areas.gutter > 40;
  const put = (text: string, y: number, ink: string) =>
    words(context, picture, text, areas.gutter - 8, y, 12, 400, ink, 'right');
  put(wide ? 'left hand' : 'L', areas.left.y + areas.left.height / 2 + 4, look.inks.ink);
  put(wide ? timeUnits[state.unit].symbol : '', areas.axis.y + areas.axis.height / 2 + 4, look.inks.soft);
  put(wide ? 'right hand' : 'R', areas.right.y + areas.right.height / 2 + 4, look.inks.ink);
}

function paintSelection(context: Context, picture: ScorePicture): void {
  const { areas, scale, look, state, clock, span } = picture;
  const box = (hand: Hand | 'both', from: number, to: number, dash: number[]) => {
    const left = scale.cutX(from);
    const top = hand === 'right' ? areas.right.y : areas.left.y;
    const bottom = hand === 'left' ? areas.left.y + areas.left.height : areas.right.y + areas.right.height;
    context.strokeStyle = look.inks.accent;
    context.lineWidth = 2;
    context.setLineDash(dash);
    context.strokeRect(left, top + 1, Math.max(2, scale.cutX(to) - left), bottom - top - 2);
    context.setLineDash([]);
    context.lineWidth = 1;
  };
  const { selection, loop } = state;
  if (selection?.kind === 'motion') {
    const row = state.method[selection.hand];
    const index = row.items.findIndex((item) => item.id === selection.motionId);
    const times = shownRow(picture, selection.hand);
    if (index >= 0) box(selection.hand, times.startUs[index] ?? 0, times.startUs[index + 1] ?? 0, []);
  } else if (selection !== undefined)
    box(selection.hand, clock.timeOf(selection.from), clock.timeOf(selection.to), [6, 3]);
  if (span !== undefined) box(span.hand, clock.timeOf(span.from), clock.timeOf(span.to), [3, 3]);
  if (loop !== undefined) paintLoop(context, picture, clock.timeOf(loop.from), clock.timeOf(loop.to));
}

function paintLoop(context: Context, picture: ScorePicture, from: number, to: number): void {
  const { areas, scale, look } = picture;
  const left = scale.cutX(from);
  const right = scale.cutX(to);
  const { y, height } = areas.axis;
  context.fillStyle = look.inks.accent;
  context.globalAlpha = 0.16;
  context.fillRect(left, y, right - left, height);
  context.globalAlpha = 1;
  for (const [x, turn] of [
    [left, 1],
    [right - 2, -1],
  ] as const) {
    context.fillRect(x, y, 2, height);
    context.fillRect(turn > 0 ? x : x - 4, y, 6, 2);
    context.fillRect(turn > 0 ? x : x - 4, y + height - 2, 6, 2);
  }
}

/** The whole film in small, with the part that is shown above in a frame. */
function paintOverview(context: Context, picture: ScorePicture): void {
  const { areas, look, whole, scale, state, clock } = picture;
  const { overview } = areas;
  const small = timeScale(whole, overview, 1 / scale.hair);
  const half = Math.floor((overview.height - 6) / 2);
  context.save();
  clip(context, overview);
  for (const hand of hands) {
    const y = hand === 'left' ? overview.y + 2 : overview.y + 3 + half;
    const row: Row<Motion> = state.method[hand];
    for (const piece of rowPieces(rowTimes(row, clock), whole, small.usPerPixel)) {
      if (piece.piece === 'run')
        paintRun(context, { ...picture, scale: small }, piece, { ...overview, y, height: half });
      else {
        const kind = row.items[piece.index]?.kind ?? 'unmarked';
        if (kind === 'unmarked') continue;
        const left = small.cutX(piece.fromUs);
        context.fillStyle = motionFactsOf(kind).colour;
        context.fillRect(left, y, small.cutX(piece.toUs) - left, half);
      }
    }
  }
  const left = small.cutX(scale.view.fromUs);
  const right = small.cutX(scale.view.toUs);
  context.fillStyle = look.inks.paper;
  context.globalAlpha = 0.62;
  context.fillRect(overview.x, overview.y, left - overview.x, overview.height);
  context.fillRect(right, overview.y, overview.x + overview.width - right, overview.height);
  context.globalAlpha = 1;
  context.strokeStyle = look.inks.ink;
  context.strokeRect(left + 0.5, overview.y + 0.5, Math.max(3, right - left - 1), overview.height - 1);
  context.fillStyle = look.inks.accent;
  context.fillRect(small.cutX(clock.timeOf(state.playhead)), overview.y, 1.5, overview.height);
  context.restore();
}

function paintPlayhead(context: Context, picture: ScorePicture): void {
  const { areas, scale, look, state, clock } = picture;
  const us = clock.timeOf(state.playhead);
  if (us < scale.view.fromUs || us > scale.view.toUs) return;
  const x = scale.x(us);
  context.fillStyle = look.inks.accent;
  context.fillRect(x - 0.75, areas.left.y - 6, 1.5, areas.right.y + areas.right.height - areas.left.y + 8);
  context.beginPath();
  context.moveTo(x - 5, areas.left.y - 8);
  context.lineTo(x + 5, areas.left.y - 8);
  context.lineTo(x, areas.left.y - 1);
  context.fill();
}

function clip(context: Context, area: Area): void {
  context.beginPath();
  context.rect(area.x, area.y, area.width, area.height);
  context.clip();
}

function words(
  context: Context,
  picture: ScorePicture,
  text: string,
  x: number,
  y: number,
  size: number,
  weight: 400 | 600,
  ink: string,
  align: CanvasTextAlign,
): void {
  if (text === '') return;
  context.font = `${weight} ${size}px ${picture.look.fontFamily}`;
  context.textAlign = align;
  context.fillStyle = ink;
  context.fillText(text, x, y);
}

function measure(
  context: Context,
  picture: ScorePicture,
  text: string,
  size: number,
  weight: 400 | 600,
): number {
  const key = `${weight} ${size} ${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  context.font = `${weight} ${size}px ${picture.look.fontFamily}`;
  const width = context.measureText(text).width;
  if (widths.size > 5000) widths.clear();
  widths.set(key, width);
  return width;
}
