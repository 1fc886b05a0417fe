import { roundMicros } from '../../../ground/base/index.ts';
import type { Interval } from '../../../ground/numerics/index.ts';
import { fitText, groupNode, lineNode, textNode } from '../../../ground/scene/index.ts';
import { filmOf, type Study } from '../../../ground/study/index.ts';
import { numberText, percentText, timeText } from '../../../ground/units/index.ts';
import { cycleWords, type MethodReading } from '../../examine/index.ts';
import type { EqualPace } from '../pace/pace.ts';
import { type Block, margin, type Page, text } from './page-parts.ts';
import { wrapWhole } from './wrap-whole.ts';

/** Title, what was compared, and the claim as the largest thing that is read. */
export function headBlock(page: Page): Block {
  const { left, right, study, facts, date } = page;
  const { operation } = study;
  const { before, after } = facts.proof;
  const top = margin.top;
  const words = [operation.name || study.title, operation.part, operation.number, operation.department]
    .filter((word) => word !== undefined && word !== '')
    .join(' · ');
  const foot = [
    ...(operation.analyst === undefined ? [] : [`Studied by ${operation.analyst}`]),
    ...(date === undefined ? [] : [date]),
  ].join(', ');
  const demo =
    study.demo === true
      ? [text(right, top + 12, 'Invented data, no proof', 9, { weight: 600, align: 'end', ink: 'warn' })]
      : [];
  const record = (side: string, reading: MethodReading, y: number) =>
    text(left, y, fitText(recordWords(side, reading, study), right - left, 7.5, 400), 7.5, { ink: 'soft' });
  const claim = claimBlock(page, top + 64);
  return {
    nodes: [
      groupNode('heading', [textNode(left, top + 12, 'Two methods compared', { size: 16, weight: 600 })]),
      groupNode('note', [
        ...demo,
        text(left, top + 27, fitText(words, right - left - 150, 9, 400), 9),
        text(right, top + 27, fitText(foot, 145, 8, 400), 8, { align: 'end', ink: 'soft' }),
        record('Before', before, top + 39),
        record('After', after, top + 49),
      ]),
      groupNode('layer', [lineNode(left, top + 55, right, top + 55, 1.1, 'ink')]),
      ...claim.nodes,
    ],
    bottom: claim.bottom,
  };
}

/** "Before: Present method, cycles 1–5 of 7, film bench-1.mp4, operator K3, 1 unit a cycle". */
function recordWords(side: string, { method, cycles }: MethodReading, study: Study): string {
  const film = filmOf(study, method);
  const units = method.unitsPerCycle === 1 ? '1 unit a cycle' : `${method.unitsPerCycle} units a cycle`;
  const all = method.cycles.items.length;
  const counted = cycleWords(cycles.map(({ number }) => number));
  return [
    `${side}: ${method.name}`,
    all === 0 ? counted : `${counted} of ${all}`,
    ...(film === undefined
      ? [method.kind === 'composed' ? 'composed, not filmed' : 'without a film']
      : [`film ${film.name}`]),
    ...(film?.operatorCode === undefined ? [] : [`operator ${film.operatorCode}`]),
    units,
  ].join(', ');
}

function claimBlock({ left, right, facts }: Page, top: number): Block {
  const wrapped = (size: number) => wrapWhole(facts.proof.claim.sentence, right - left, size, 600);
  // Long names make it smaller before they cost a word of it.
  const size = [12.5, 11.5, 10.5, 9.5, 8.5].find((points) => wrapped(points).length * points <= 64) ?? 7.5;
  const lines = wrapped(size);
  const nodes = lines.map((line, index) =>
    text(left, top + size + index * size * 1.25, line, size, { weight: 600 }),
  );
  return { nodes: [groupNode('note', nodes, 'The claim')], bottom: top + lines.length * size * 1.25 + 4 };
}

/** The figures in a row, each above its interval, and how they are to be read. */
export function figuresBlock(page: Page, top: number): Block {
  const { left, right, facts } = page;
  const { difference, pace } = facts.proof;
  const columns = figureColumns(page);
  const room = (right - left) / columns.length;
  const cells = columns.map(([caption, value, small], index) => {
    const x = left + index * room;
    const inner = room - 8;
    return groupNode('row', [
      groupNode('cell', [text(x, top + 9, fitText(caption, inner, 7, 400), 7, { ink: 'soft' })]),
      groupNode('cell', [text(x, top + 24, fitText(value, inner, 13, 600), 13, { weight: 600 })]),
      groupNode('cell', [text(x, top + 34, fitText(small, inner, 7, 400), 7)]),
    ]);
  });
  const confidence = numberText(100 * facts.comparison.confidence, 1).replace(/\.0$/, '');
  const notes = [
    `Below each figure its ${confidence} % interval. Time saved and output gained are two figures: half the time is twice the output.`,
    `${difference.odds} ${paceReading(pace)}`.trim(),
  ].flatMap((words) => wrapWhole(words, right - left, 7, 400, 3));
  const bottom = top + 37 + notes.length * 9.2 + 4;
  return {
    nodes: [
      groupNode('layer', [lineNode(left, top, right, top, 0.5)]),
      groupNode('table', cells, 'Figures'),
      groupNode(
        'note',
        notes.map((line, index) => text(left, top + 45 + index * 9.2, line, 7)),
      ),
      groupNode('layer', [lineNode(left, bottom, right, bottom, 0.5)]),
    ],
    bottom,
  };
}

type Column = readonly [caption: string, value: string, small: string];

function figureColumns({ facts, unit }: Page): readonly Column[] {
  const { difference, pace } = facts.proof;
  const { before, after, saving } = difference;
  const time = (us: number) => timeText(roundMicros(us), unit);
  const range = (interval: Interval | undefined, of: (value: number) => string) =>
    interval === undefined ? 'no interval' : `${of(interval.low)} to ${of(interval.high)}`;
  const { equal } = pace;
  return [
    ['Time for a unit, before', time(before.sample.mean), range(before.sample.interval, time)],
    ['Time for a unit, after', time(after.sample.mean), range(after.sample.interval, time)],
    ['Time saved, as measured', percentText(saving.timeSaved), range(difference.timeSaved, percentText)],
    [
      'Output gained, as measured',
      percentText(saving.outputGained),
      range(difference.outputGained, percentText),
    ],
    equal === undefined
      ? ['Time saved at equal pace', 'not known', 'no shared motion']
      : [
          'Time saved at equal pace',
          percentText(equal.saving.timeSaved),
          range(equal.timeSaved, percentText),
        ],
  ];
}

/** Which of the two savings may be used, in a sentence. */
function paceReading({ ratio, interval, notes }: EqualPace): string {
  if (ratio === undefined) return 'Whether pace plays a part cannot be told: the methods share no motion.';
  const times = numberText(ratio, 2);
  const codes = notes.map(({ code }) => code);
  if (codes.includes('evaluate/pace-explains'))
    return `The motions that both share took ${times} times as long after as before: part of what was measured is pace, so use the saving at equal pace.`;
  if (codes.includes('evaluate/pace-hides'))
    return `The motions that both share took ${times} times as long after as before: the work was not done faster, and the saving as measured is the safe figure.`;
  if (
    codes.includes('evaluate/pace-unsure') ||
    codes.includes('evaluate/pace-unknown') ||
    interval === undefined
  )
    return 'Whether pace plays a part cannot be told from so few cycles.';
  return `The motions that both share took ${times} times as long after as before: pace changes little.`;
}
