import { micros } from '../../../ground/base/index.ts';
import {
  fitText,
  groupNode,
  lineNode,
  type Scene,
  type SceneNode,
  textNode,
  textWidth,
} from '../../../ground/scene/index.ts';
import { type MotionKind, motionFactsOf } from '../../../ground/tables/index.ts';
import { countText, type TimeUnit, timeText } from '../../../ground/units/index.ts';
import {
  type Cause,
  causes,
  type Decomposition,
  type DecompositionRow,
} from '../decomposition/decomposition.ts';

export interface DecompositionLook {
  /** Paper units, 320 or more. */
  readonly width: number;
  readonly unit: TimeUnit;
  readonly names: { readonly before: string; readonly after: string };
  /** So many of the largest steps stand alone before the rest of each cause is summed; 16 when left out. */
  readonly most?: number | undefined;
  /** Size of the letters; 11 when left out. */
  readonly size?: number | undefined;
}

/** A step from the time before to the time after. */
export interface PictureStep {
  readonly cause: Cause;
  /** Undefined for the sum of the rest. */
  readonly kind: MotionKind | undefined;
  readonly name: string;
  /** Above 0 where time is saved; microseconds for one unit. */
  readonly saved: number;
  /** Position in `Decomposition.rows`; undefined for the rest. */
  readonly row: number | undefined;
}

/**
 * The steps in the order in which they are drawn: cause by cause, the largest first, and of each cause the rest summed.
 * They add up to the difference.
 * @param most so many of the largest steps of all causes stand alone
 */
export function pictureSteps(decomposition: Decomposition, most = 16): readonly PictureStep[] {
  const all = decomposition.rows.flatMap((row, index) =>
    row.parts.map(({ cause, saved }): PictureStep & { readonly row: number } => ({
      cause,
      kind: row.kind,
      name: `${row.name}${handWords(row)}`,
      saved,
      row: index,
    })),
  );
  all.sort((a, b) => Math.abs(b.saved) - Math.abs(a.saved) || a.row - b.row);
  const alone = new Set(all.slice(0, most));
  return causes.flatMap((cause) => {
    const own = all.filter((step) => step.cause === cause);
    const shown = own.filter((step) => alone.has(step));
    const rest = own.filter((step) => !alone.has(step));
    if (rest.length === 0) return shown;
    if (rest.length === 1) return own;
    const saved = rest.reduce((sum, step) => sum + step.saved, 0);
    const name = countText(rest.length, shown.length === 0 ? 'motion' : 'other motion');
    return [...shown, { cause, kind: undefined, name, saved, row: undefined }];
  });
}

function handWords({ byHand }: DecompositionRow): string {
  const [left, right] = [Math.abs(byHand.left), Math.abs(byHand.right)];
  if (left > 9 * right) return ', left hand';
  return right > 9 * left ? ', right hand' : '';
}

/** From the time before down to the time after, one bar for each step, each beginning where the one above it ended. */
export function decompositionPicture(decomposition: Decomposition, look: DecompositionLook): Scene {
  const { unit, names } = look;
  const steps = pictureSteps(decomposition, look.most);
  const levels = [decomposition.before as number];
  for (const { saved } of steps) levels.push((levels.at(-1) ?? 0) - saved);
  const plan = planFor(decomposition, steps, levels, look);
  const { width, line } = plan;
  const nodes: SceneNode[] = [wholeRow(plan, 0, names.before, decomposition.before)];
  let y = line;
  steps.forEach((step, index) => {
    const span = [levels[index] ?? 0, levels[index + 1] ?? 0] as const;
    const single = isAlone(steps, index);
    if (!single && step.cause !== steps[index - 1]?.cause) {
      nodes.push(causeRow(plan, y, step.cause, decomposition.totals[step.cause]));
      y += line;
    }
    nodes.push(stepRow(plan, y, step, span, single));
    y += line;
  });
  nodes.push(wholeRow(plan, y, names.after, decomposition.after));
  const difference = timeText(micros(Math.abs(decomposition.saved)), unit);
  return {
    width,
    height: y + line,
    title: 'Where the difference comes from',
    description: `From ${timeText(decomposition.before, unit)} a unit with “${names.before}” to ${timeText(decomposition.after, unit)} with “${names.after}”: ${difference} ${decomposition.saved >= 0 ? 'saved' : 'more'}, step by step.`,
    nodes: [groupNode('table', nodes, 'Where the difference comes from')],
  };
}

interface Plan {
  readonly size: number;
  readonly line: number;
  readonly name: number;
  readonly width: number;
  readonly unit: TimeUnit;
  readonly x: (us: number) => number;
}

/** Names and figures take the room that they need, the bars have the rest. */
function planFor(
  { before, after, totals }: Decomposition,
  steps: readonly PictureStep[],
  levels: readonly number[],
  { size = 11, width, unit, names }: DecompositionLook,
): Plan {
  const widest = (words: readonly string[], weight: 400 | 600) =>
    Math.max(0, ...words.map((word) => textWidth(word, size, weight)));
  const strong = steps.flatMap((step, index) => (isAlone(steps, index) ? [stepName(step)] : []));
  const indented = steps.flatMap((step, index) => (isAlone(steps, index) ? [] : [step.name]));
  const needed = Math.max(widest([...strong, names.before, names.after], 600), size + widest(indented, 400));
  const name = Math.min(width * 0.52, needed + size);
  const figures = [
    ...[before, after].map((us) => timeText(us, unit)),
    ...[...steps.map(({ saved }) => saved), ...Object.values(totals)].map((saved) => signed(saved, unit)),
  ];
  const time = size + widest(figures, 600);
  // More may be saved than there was where something else is added, so the bars may go below nothing.
  const [low, high] = [Math.min(0, ...levels), Math.max(1, ...levels)];
  const x = (us: number) => name + ((us - low) / (high - low)) * (width - name - time);
  return { size, line: size * 1.75, name, width, unit, x };
}

/** A cause with one step needs no line of its own above it. */
function isAlone(steps: readonly PictureStep[], index: number): boolean {
  const cause = steps[index]?.cause;
  return cause !== steps[index - 1]?.cause && cause !== steps[index + 1]?.cause;
}

function cells(
  plan: Plan,
  y: number,
  name: string,
  value: string,
  weight: 400 | 600,
  indent = 0,
): SceneNode[] {
  const { size, line, width } = plan;
  const base = y + line / 2 + size * 0.36;
  const shown = fitText(name, plan.name - indent - 6, size, weight);
  return [
    groupNode('cell', [textNode(indent, base, shown, { size, weight })]),
    groupNode('cell', [textNode(width, base, value, { size, weight, align: 'end' })]),
  ];
}

function wholeRow(plan: Plan, y: number, name: string, us: number): SceneNode {
  const { line, x, unit } = plan;
  const bar: SceneNode = {
    kind: 'rect',
    x: x(0),
    y: y + line * 0.16,
    width: Math.max(0.5, x(us) - x(0)),
    height: line * 0.68,
    fill: { ink: 'shade' },
    stroke: { ink: 'ink', width: 0.8 },
  };
  return groupNode('row', [
    groupNode('layer', [bar]),
    ...cells(plan, y, name, timeText(micros(us), unit), 600),
  ]);
}

/** What a cause means, for those who do not know the word. */
const causeMeanings: Readonly<Record<Cause, string>> = {
  removed: 'no longer done, or less often',
  shortened: 'takes less time each',
  'made simultaneous': 'done while the other hand works too',
  added: 'not done before, or less often',
  lengthened: 'takes more time each',
  'no longer simultaneous': 'done while the other hand rests',
};

function causeName(cause: Cause): string {
  return `${cause[0]?.toUpperCase()}${cause.slice(1)}`;
}

function causeRow(plan: Plan, y: number, cause: Cause, total: number): SceneNode {
  const { line, width, unit, size } = plan;
  const base = y + line / 2 + size * 0.36;
  const words = causeName(cause);
  const value = signed(total, unit);
  const after = textWidth(words, size, 600) + size * 0.6;
  const room = width - textWidth(value, size, 600) - size - after;
  return groupNode('row', [
    groupNode('layer', [lineNode(0, y + line * 0.08, width, y + line * 0.08, 0.4)]),
    groupNode('cell', [
      textNode(0, base, words, { size, weight: 600 }),
      textNode(after, base, fitText(causeMeanings[cause], room, size, 400), { size, ink: 'soft' }),
    ]),
    groupNode('cell', [textNode(width, base, value, { size, weight: 600, align: 'end' })]),
  ]);
}

function stepRow(
  plan: Plan,
  y: number,
  step: PictureStep,
  [from, to]: readonly [number, number],
  single: boolean,
): SceneNode {
  const { line, size, unit, x, width } = plan;
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const facts = step.kind === undefined ? undefined : motionFactsOf(step.kind);
  const area = {
    x: x(low),
    y: y + line * 0.2,
    width: Math.max(0.6, x(high) - x(low)),
    height: line * 0.6,
  };
  const bar: SceneNode = {
    kind: 'rect',
    ...area,
    fill: facts === undefined ? { ink: 'soft' } : { ink: { colour: facts.colour }, pattern: facts.pattern },
    stroke: { ink: 'ink', width: 0.5 },
  };
  // A line leads down to where the next bar begins.
  const lead = lineNode(x(to), y + line * 0.2, x(to), y + line * 1.2, 0.5, 'soft', [2, 2]);
  const name = single ? stepName(step) : step.name;
  const rule = single ? [lineNode(0, y + line * 0.08, width, y + line * 0.08, 0.4)] : [];
  return groupNode('row', [
    groupNode('layer', [...rule, lead, bar]),
    ...cells(plan, y, name, signed(step.saved, unit), single ? 600 : 400, single ? 0 : size),
  ]);
}

/** With its cause, as it stands where the cause has no line of its own. */
function stepName({ cause, name }: PictureStep): string {
  return `${causeName(cause)}: ${name}`;
}

/** "−1.20 s" where time is saved, "+0.30 s" where it is added. */
function signed(saved: number, unit: TimeUnit): string {
  const amount = timeText(micros(Math.abs(saved)), unit);
  if (!/[1-9]/.test(amount)) return amount;
  return `${saved > 0 ? '−' : '+'}${amount}`;
}
