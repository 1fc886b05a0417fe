import {
  fitText,
  groupNode,
  lineNode,
  type Scene,
  type SceneNode,
  textNode,
  textWidth,
  wrapText,
} from '../../../ground/scene/index.ts';
import { numberText, timeUnits } from '../../../ground/units/index.ts';
import type { RunFacts } from './run-facts.ts';
import { runMarks } from './run-marks.ts';
import { planOf, type RunPlan } from './run-plan.ts';
import { axisMarks } from './run-scales.ts';
import { runCaption, runDescription } from './run-words.ts';

export interface RunChartLook {
  /** Paper units, 120 or more. */
  readonly width: number;
  /** 80 or more. */
  readonly height: number;
  /** Size of the letters; 11 when left out. */
  readonly size?: number | undefined;
}

/**
 * The readings in their order, a line through those that count, broken where one was missed; their mean, the bounds of
 * the rule that proposes readings to look at, readings that are set aside hollow with a cross, sittings as bands with the
 * codes of the operators. More readings than fit are drawn as the least and the most in each column, and the caption says so.
 */
export function runChart(run: RunFacts, { width, height, size = 11 }: RunChartLook): Scene {
  const small = size * 0.9;
  const empty = run.points.every(({ time }) => time === undefined);
  const draft = planOf(run, width, height, size, 0);
  // What the caption says depends on how much had to be thinned, which does not depend on its height.
  const marks = runMarks(run, draft);
  const caption = wrapText(runCaption(run, draft, marks.thinned), width, small, 400, 4);
  const line = small * 1.3;
  const plan = planOf(run, width, height, size, caption.length * line);
  const drawn = runMarks(run, plan);
  const captionTop = empty ? 0 : height - caption.length * line;
  return {
    width,
    height,
    title: `Run chart of ${run.name === 'whole cycle' ? 'the whole cycle' : `“${run.name}”`}`,
    description: runDescription(run, drawn.thinned),
    nodes: [
      ...(empty
        ? []
        : [
            groupNode('layer', [
              ...bandNodes(run, plan),
              ...frameNodes(run, plan),
              ...levelNodes(run, plan),
              ...drawn.nodes,
            ]),
          ]),
      groupNode(
        'note',
        caption.map((text, index) =>
          textNode(0, captionTop + small + index * line, text, { size: small, ink: 'soft' }),
        ),
      ),
    ],
  };
}

function bandNodes({ bands }: RunFacts, plan: RunPlan): SceneNode[] {
  const { left, right, top, bottom, step, size, x } = plan;
  const shaded = bands.length > (right - left) / 3 ? [] : bands;
  return shaded.flatMap(({ from, to, code }, index): SceneNode[] => {
    const [start, end] = [x(from) - step / 2, x(to) + step / 2];
    const label = code === '' ? '' : fitText(code, end - start - size * 0.5, size * 0.85, 400);
    const band: SceneNode = {
      kind: 'rect',
      x: start,
      y: top,
      width: end - start,
      height: bottom - top,
      fill: { ink: 'shade' },
    };
    const edge = lineNode(start, top - size, start, bottom, 0.5, 'rule', [2, 2]);
    return [
      ...(index % 2 === 1 ? [band] : []),
      ...(start > left + 0.1 ? [edge] : []),
      ...(label === '' || (label === '…' && code !== '…')
        ? []
        : [textNode(start + size * 0.25, top - size * 0.35, label, { size: size * 0.85, ink: 'soft' })]),
    ];
  });
}

function frameNodes({ points, unit }: RunFacts, plan: RunPlan): SceneNode[] {
  const { size, left, right, top, bottom, marks, x, y } = plan;
  const small = size * 0.9;
  // The unit stands above the numbers, and no number where it would touch it.
  const times = marks.flatMap(({ value, decimals }): SceneNode[] => {
    const at = y(value);
    const rule = lineNode(left - 2, at, left, at, 0.6, 'ink');
    return at - small * 0.5 < top + small * 0.3
      ? [rule]
      : [
          rule,
          textNode(left - size * 0.5, at + small * 0.34, numberText(value, decimals), {
            size: small,
            align: 'end',
            ink: 'soft',
          }),
        ];
  });
  const unitName = textNode(left - size * 0.5, top - small * 0.2, timeUnits[unit].symbol, {
    size: small,
    align: 'end',
    ink: 'soft',
  });
  const first = points[0]?.cycle ?? 1;
  const last = points.at(-1)?.cycle ?? 1;
  const word = textWidth('cycle', small, 400);
  const most = Math.max(1, Math.floor((right - left) / (textWidth(String(last), small, 400) + size * 1.5)));
  const cycles = axisMarks(first, last, Math.min(16, most), 1).flatMap(({ value }): SceneNode[] => {
    const at = x(value);
    const text = numberText(value, 0);
    const end = at + textWidth(text, small, 400) / 2;
    const mark = lineNode(at, bottom, at, bottom + 2.5, 0.6, 'ink');
    if (end > right - word - size * 0.4) return [mark];
    return [mark, textNode(at, bottom + size * 1.25, text, { size: small, align: 'middle', ink: 'soft' })];
  });
  return [
    lineNode(left, top, left, bottom, 0.6, 'ink'),
    lineNode(left, bottom, right, bottom, 0.6, 'ink'),
    unitName,
    ...times,
    ...cycles,
    textNode(right, bottom + size * 1.25, 'cycle', { size: small, align: 'end', ink: 'soft' }),
  ];
}

/** The mean, and the bounds as broken lines where they lie within the picture. */
function levelNodes({ mean, bounds }: RunFacts, { left, right, low, high, y }: RunPlan): SceneNode[] {
  const level = (time: number, width: number, dash?: readonly number[]) =>
    time < low || time > high ? [] : [lineNode(left, y(time), right, y(time), width, 'ink', dash)];
  return [
    ...(mean === undefined ? [] : level(mean, 0.9)),
    ...(bounds === undefined
      ? []
      : [...level(bounds.low, 0.6, [4, 2.5]), ...level(bounds.high, 0.6, [4, 2.5])]),
  ];
}
