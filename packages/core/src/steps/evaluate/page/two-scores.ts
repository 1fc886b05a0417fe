import { type Micros, micros, roundMicros } from '../../../ground/base/index.ts';
import {
  fitText,
  groupNode,
  lineNode,
  type Scene,
  type SceneNode,
  textNode,
  textWidth,
} from '../../../ground/scene/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { countText, type TimeUnit, timeText, timeUnits } from '../../../ground/units/index.ts';
import type { MethodReading, Piece } from '../../examine/index.ts';
import { axisSteps, axisTicks, handHeight } from '../../record/index.ts';
import { type CycleRun, type RunPair, representativeRuns } from './cycle-run.ts';

export interface TwoScoresLook {
  /** Paper units, 320 or more. */
  readonly width: number;
  readonly unit: TimeUnit;
  /** Size of the letters; 11 when left out. */
  readonly size?: number | undefined;
  /** Height of one hand's row; four times the letters when left out. */
  readonly row?: number | undefined;
}

interface Plan {
  readonly size: number;
  readonly row: number;
  readonly width: number;
  readonly unit: TimeUnit;
  readonly left: number;
  readonly right: number;
  readonly x: (us: number) => number;
}

/** Between the blocks and the line between the hands. */
const gap = 1;

const handNames: Readonly<Record<Hand, string>> = { left: 'Left hand', right: 'Right hand' };

/**
 * What each method does for equally many units, both hands, one under the other over one time scale: the left hand stands
 * above the line and the right hand hangs below it.
 */
export function twoScoresOnOneScale(before: MethodReading, after: MethodReading, look: TwoScoresLook): Scene {
  const runs = representativeRuns(before, after);
  const { size = 11, width, unit } = look;
  const { row = 4 * size } = look;
  const longest = Math.max(runs.before.joined.duration, runs.after.joined.duration);
  const left = size * 0.8 + Math.max(...hands.map((hand) => textWidth(handNames[hand], size, 400)));
  const right = width - size;
  const x = (us: number) => left + (us / longest) * (right - left);
  const plan: Plan = { size, row, width, unit, left, right, x };
  const side = sideHeight(plan);
  const axis = 2 * side + size * 0.8;
  const lines = { before: lineOf(plan, 0), after: lineOf(plan, side + size * 0.6) };
  return {
    width,
    height: axis + size * 1.9,
    title: `${before.method.name} and ${after.method.name} on one time scale`,
    description: twoScoresWords(runs, unit),
    nodes: [
      ...runNodes(plan, runs.before, lines.before),
      ...runNodes(plan, runs.after, lines.after),
      groupNode('layer', endNodes(plan, runs, lines, axis)),
      groupNode('layer', axisNodes(plan, axis, micros(longest))),
    ],
  };
}

/** Title, letters and blocks of the left hand, the line, blocks and letters of the right hand. */
function sideHeight({ size, row }: Plan): number {
  return size * 4 + 2 * row;
}

/** Where the line between the hands lies when the title begins at `top`. */
function lineOf({ size, row }: Plan, top: number): number {
  return top + size * 2.7 + row;
}

/** Where the shorter one ends, a line through the blocks of the longer one and down to the scale; never through letters. */
function endNodes(
  { x, row, size }: Plan,
  { before, after }: RunPair,
  lines: { readonly before: number; readonly after: number },
  axis: number,
): SceneNode[] {
  const saved = before.joined.duration - after.joined.duration;
  if (saved === 0) return [];
  const at = x(saved > 0 ? after.joined.duration : before.joined.duration);
  const longer = saved > 0 ? lines.before : lines.after;
  const dash = (from: number, to: number) => lineNode(at, from, at, to, 0.9, 'ink', [2.5, 2]);
  const foot = dash(axis - size * 0.8, axis);
  return saved > 0 ? [dash(longer - row, longer + row), foot] : [dash(longer - row, longer + row)];
}

/** "For 2 units: Present method, cycles 3, 4, 15.10 s; Improved method, cycle 5, 9.77 s. 5.33 s less." */
export function twoScoresWords({ before, after, even }: RunPair, unit: TimeUnit): string {
  const [one, two] = [runWords(before, unit), runWords(after, unit)];
  if (!even) return `${one}. ${two}. ${unevenWords}`;
  const saved = before.joined.duration - after.joined.duration;
  const gain = timeText(roundMicros(Math.abs(saved)), unit);
  return `${one}. ${two}. ${saved === 0 ? 'Equally long.' : `${gain} ${saved > 0 ? 'less' : 'more'}.`}`;
}

export const unevenWords =
  'The two turn out different numbers of units, so compare the times for a unit and not the lengths.';

/** "Present method: 2 units in 15.10 s (cycles 3, 4)". */
function runWords({ reading, name, joined, units }: CycleRun, unit: TimeUnit): string {
  const { method } = reading;
  const cycles = name.slice(method.name.length).replace(/^, /, '');
  const which = cycles === '' ? '' : ` (${cycles})`;
  return `${method.name}: ${countText(units, 'unit')} in ${timeText(joined.duration, unit)}${which}`;
}

function runNodes(plan: Plan, run: CycleRun, line: number): SceneNode[] {
  const { size, row, left, right, x, unit } = plan;
  const top = line - lineOf(plan, 0);
  const words = fitText(runWords(run, unit), right - left, size * 1.1, 600);
  const [upper, lower] = [line - row, line + row];
  return [
    groupNode('heading', [textNode(left, top + size * 1.1, words, { size: size * 1.1, weight: 600 })]),
    ...hands.map((hand) =>
      groupNode(
        'figure',
        [
          textNode(
            left - size * 0.8,
            line + (hand === 'left' ? -row / 2 : row / 2) + size * 0.36,
            handNames[hand],
            {
              size,
              align: 'end',
            },
          ),
          ...run.joined[hand].flatMap((piece) => blockNodes(plan, piece, hand, line)),
        ],
        handNames[hand],
      ),
    ),
    groupNode('layer', [
      lineNode(left, line, x(run.joined.duration), line, 0.8, 'ink'),
      ...run.breaks.map((at) => lineNode(x(at), upper - size, x(at), lower + size, 1, 'ink')),
      lineNode(x(run.joined.duration), upper, x(run.joined.duration), lower, 1, 'ink'),
    ]),
  ];
}

function blockNodes({ x, size, row }: Plan, piece: Piece, hand: Hand, line: number): SceneNode[] {
  const [left, right] = [x(piece.start), x(piece.end)];
  const width = right - left;
  if (piece.kind === 'unmarked' || width <= 0) return [];
  const { colour, pattern, code } = motionFactsOf(piece.kind);
  const height = Math.max(1, row * handHeight(piece.kind) - gap);
  const area = { x: left, y: hand === 'left' ? line - gap - height : line + gap, width, height };
  const wide = width >= size * 0.5;
  const fill = { ink: { colour }, ...(wide ? { pattern } : {}) };
  const block: SceneNode = { kind: 'rect', ...area, fill, stroke: { ink: 'paper', width: 0.5 } };
  if (textWidth(code, size * 0.9, 400) > width - size * 0.1) return [block];
  const base = hand === 'left' ? line - row - size * 0.3 : line + row + size;
  return [block, textNode(left + width / 2, base, code, { size: size * 0.9, align: 'middle' })];
}

function axisNodes({ size, left, right, unit, x }: Plan, top: number, longest: Micros): SceneNode[] {
  const steps = axisSteps(longest / (right - left), unit, size * 4);
  const ticks = axisTicks(0, longest, 0, steps, unit).flatMap(({ us, text }): SceneNode[] => {
    const mark = lineNode(x(us), top, x(us), top + size * (text === undefined ? 0.25 : 0.45), 0.6, 'soft');
    if (text === undefined || x(us) + textWidth(text, size, 400) / 2 > right + size) return [mark];
    return [mark, textNode(x(us), top + size * 1.5, text, { size, align: 'middle', ink: 'soft' })];
  });
  return [
    lineNode(left, top, right, top, 0.7, 'ink'),
    textNode(left - size * 1.4, top + size * 1.5, timeUnits[unit].symbol, {
      size,
      align: 'end',
      ink: 'soft',
    }),
    ...ticks,
  ];
}
