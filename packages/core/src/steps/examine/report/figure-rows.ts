import type { Hand } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import type { Figure, Figures, Traced } from '../figures/index.ts';
import type { Trace } from '../reading/index.ts';

/** One line of the figures as they are printed and written as JSON. */
export interface FigureRow {
  readonly section: string;
  readonly label: string;
  readonly hand: Hand | 'both' | undefined;
  readonly figure: Figure;
  /** Where it can be seen; undefined for a figure of the cycle as a whole. */
  readonly traces: (() => readonly Trace[]) | undefined;
}

/** Every figure as one list of lines, section by section, always in the same order. */
export function figureRows(figures: Figures): readonly FigureRow[] {
  return [
    line('Cycle', 'cycle time', undefined, figures.cycle),
    ...timeLines(figures),
    ...stateLines(figures),
    ...overlapLines(figures),
    ...togetherLines(figures),
  ];
}

function line(
  section: string,
  label: string,
  hand: FigureRow['hand'],
  figure: Figure,
  traced?: Traced | undefined,
): FigureRow {
  return { section, label, hand, figure, traces: traced?.traces };
}

function timeLines({ times, groups, pace }: Figures): FigureRow[] {
  const both = (
    section: string,
    label: string,
    row: (typeof times.motions)[number] | (typeof times.objects)[number],
  ) => [
    line(section, `${label}: number`, row.hand, row.count, row),
    line(section, `${label}: time`, row.hand, row.time, row),
    line(section, `${label}: share`, row.hand, row.share, row),
  ];
  const effective = `Effective and ineffective after ${groups.grouping.name}`;
  return [
    ...times.motions.flatMap((row) => both('Time by motion', motionFactsOf(row.kind).name, row)),
    ...times.objects.flatMap((row) => both('Time by object', row.object ?? 'not said', row)),
    ...times.places.flatMap((row) => [
      line('Time by place', `${row.name ?? 'not said'}: time`, row.hand, row.time, row),
      line('Time by place', `${row.name ?? 'not said'}: share`, row.hand, row.share, row),
    ]),
    ...groups.rows.flatMap((row) => [
      line(effective, `${row.group}: time`, row.hand, row.time, row),
      line(effective, `${row.group}: share`, row.hand, row.share, row),
    ]),
    ...pace.flatMap((row) => [
      line('Motions', 'motions a cycle', row.hand, row.aCycle, row),
      line('Motions', 'motions a minute', row.hand, row.aMinute, row),
    ]),
  ];
}

function stateLines({ states, together, balance }: Figures): FigureRow[] {
  return [
    ...states.flatMap((row) => [
      line('Each hand', `${row.state}: time`, row.hand, row.time, row),
      line('Each hand', `${row.state}: share`, row.hand, row.share, row),
    ]),
    ...together.flatMap((row) => [
      line('Both hands', `${row.name}: time`, 'both', row.time, row),
      line('Both hands', `${row.name}: share`, 'both', row.share, row),
    ]),
    line('Balance', 'working time of the hand that works less ÷ the other', 'both', balance.ratio, balance),
    line('Balance', 'working time, left less right', 'both', balance.difference, balance),
  ];
}

function overlapLines({ overlap }: Figures): FigureRow[] {
  return overlap.cells.flatMap((cell) => {
    const label = `left ${motionFactsOf(cell.left).name}, right ${motionFactsOf(cell.right).name}`;
    return [
      line('Motion with motion', `${label}: time`, 'both', cell.time, cell),
      line('Motion with motion', `${label}: share`, 'both', cell.share, cell),
    ];
  });
}

function togetherLines({ beginEnd, sameMotion }: Figures): FigureRow[] {
  const meeting = (name: 'begin' | 'end', words: string) => [
    line('Begun and ended together', `gap where work ${words}`, 'both', beginEnd[name].gap, beginEnd[name]),
    ...beginEnd[name].motions.map((row) =>
      line('Begun and ended together', `motions that ${name} together`, row.hand, row.share, row),
    ),
  ];
  return [
    ...meeting('begin', 'begins'),
    ...meeting('end', 'ends'),
    line(
      'Same motion in both hands',
      'share of the time marked in both',
      'both',
      sameMotion.share,
      sameMotion,
    ),
    line(
      'Same motion in both hands',
      'share of the time in which both work',
      'both',
      sameMotion.workShare,
      sameMotion,
    ),
  ];
}
