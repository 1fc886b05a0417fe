import {
  type ChangeWorth,
  type Combinations,
  type CostRange,
  changeOf,
  type DevelopedMethod,
  type PeriodInterval,
  type Work,
} from '@evenhand/core/develop';
import { roundMicros } from '@evenhand/core/ground/base';
import type { Interval } from '@evenhand/core/ground/numerics';
import { countText, percentText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import type { Told } from './develop.ts';
import { layoutJson, layoutLines } from './develop-layout.ts';
import { bestOf } from './develop-write.ts';
import { tableLines } from './table-lines.ts';
import { wrapped } from './wrapped.ts';

/** A composed method and what changes are worth, for reading at a terminal. */
export function developText(told: Told, unit: TimeUnit): string {
  const { base, interval, single, combinations, chosen, layout } = told;
  const lines = [
    `${base.work.title}${base.work.demo === true ? ' (invented data)' : ''}: ${countText(base.work.steps.length, 'step')}, ${countText(base.work.unitsPerCycle, 'unit')} a cycle`,
    '',
    ...methodLines(base, interval, unit),
    ...(single === undefined
      ? []
      : ['', 'What each change is worth, a unit', ...single.map((item) => worthLine(item, unit))]),
    ...(combinations === undefined ? [] : ['', ...frontLines(combinations, unit)]),
    ...(chosen === undefined
      ? []
      : [
          '',
          worthLine(chosen, unit),
          ...supposed(chosen, base.work),
          '',
          ...methodLines(chosen.method, undefined, unit),
        ]),
    ...(layout === undefined
      ? []
      : ['', ...layoutLines(layout, (bestOf(told) ?? { method: base }).method.unitTime, unit)]),
  ];
  return `${lines.join('\n')}\n`;
}

/** What a change supposes about times that nobody has measured. */
function supposed({ changes }: ChangeWorth, work: Work): string[] {
  return changes.flatMap((id) => {
    const change = changeOf(id, work);
    return change?.supposes === undefined ? [] : wrapped(`${change.name}: ${change.supposes}`, '  ');
  });
}

/** The front of the combinations: each line costs more than the one above it and is shorter. */
function frontLines({ front, axis, words, withoutCost }: Combinations, unit: TimeUnit): string[] {
  const head = [axis === 'cost' ? 'cost' : 'changes', 'a unit', 'saved, 90 %', 'beyond the line above'];
  const rows = front.map(({ worth, cost, more }) => [
    cost === undefined ? String(worth.changes.length) : costText(cost),
    `${time(worth.method.unitTime, unit)}${worth.method.composed.proven ? '' : ' *'}`,
    `${time(worth.interval.low, unit)} to ${time(worth.interval.high, unit)}`,
    more === undefined
      ? ''
      : `${time(more.saved, unit)} (${time(more.interval.low, unit)} to ${time(more.interval.high, unit)})`,
  ]);
  // Names are too long for a column whose width is that of its longest.
  const names = ['', ...front.map(({ worth }) => worth.name || 'as it is')];
  const lines = tableLines(head, rows);
  const width = Math.max(...lines.map(({ length }) => length));
  return [
    axis === 'cost'
      ? 'Which changes together: time for a unit against cost'
      : 'Which changes together: time for a unit against the number of changes',
    ...lines.map((line, at) => `  ${line.padEnd(width)}  ${names[at] ?? ''}`.trimEnd()),
    ...(front.some(({ worth }) => !worth.method.composed.proven)
      ? ['  * not proven to be the shortest']
      : []),
    ...wrapped(words, '  '),
    ...(withoutCost.length === 0
      ? []
      : wrapped(
          `Left out, because nobody has said what they cost: ${withoutCost.map(({ name }) => name).join('; ')}.`,
          '  ',
        )),
  ];
}

function costText({ low, likely, high }: CostRange): string {
  return low === high ? String(likely) : `${likely} (${low} to ${high})`;
}

function time(us: number, unit: TimeUnit): string {
  return timeText(roundMicros(us), unit);
}

function methodLines(
  { composed, instance, unitTime, times }: DevelopedMethod,
  interval: PeriodInterval | undefined,
  unit: TimeUnit,
): string[] {
  const { schedule, bound, proven, words } = composed;
  const gap = schedule.period === 0 ? 0 : 1 - bound / schedule.period;
  const order = (hand: 'left' | 'right') =>
    schedule[hand]
      .map(
        (task) => `${instance.tasks[task]?.name ?? task} (${time(schedule.placed[task]?.start ?? 0, unit)})`,
      )
      .join('; ');
  return [
    `  cycle ${time(schedule.period, unit)}, a unit ${time(unitTime, unit)}${proven ? ', proven to be the shortest' : `, bound ${time(bound, unit)}, gap ${percentText(gap)}`} (${schedule.kind} cycle)`,
    ...wrapped(words, '  '),
    ...(interval === undefined
      ? []
      : wrapped(
          `Expected at work: ${time(interval.likely, unit)} a cycle, ${rangeText(interval.interval, unit)}. ${interval.words}`,
          '  ',
        )),
    ...(times.pace === undefined
      ? []
      : wrapped(
          `Pace of the record: ${times.pace.factor.toFixed(2)} times the published laws, from ${times.pace.n} motions.`,
          '  ',
        )),
    ...wrapped(`Left hand: ${order('left') || 'not used'}.`, '  '),
    ...wrapped(`Right hand: ${order('right') || 'not used'}.`, '  '),
  ];
}

function rangeText({ low, high, confidence }: Interval, unit: TimeUnit): string {
  return `${percentText(confidence, 0)} interval ${time(low, unit)} to ${time(high, unit)}`;
}

function worthLine({ name, saved, interval, method }: ChangeWorth, unit: TimeUnit): string {
  const sure = method.composed.proven ? '' : ' (not proven)';
  return `  ${time(saved, unit).padStart(9)} saved, ${rangeText(interval, unit)}: ${time(method.unitTime, unit)} a unit${sure}  ${name}`;
}

function methodJson({ work, composed, unitTime, times }: DevelopedMethod) {
  const { schedule, bound, proven, words } = composed;
  return {
    unitsPerCycle: work.unitsPerCycle,
    steps: work.steps.map(({ id, name }, task) => ({
      id,
      name,
      start: schedule.placed[task]?.start,
      mode: schedule.placed[task]?.mode,
      time: times.steps.get(id)?.us,
      motions: times.steps
        .get(id)
        ?.motions.map(({ us, low, high, words: source }) => ({ us, low, high, source })),
    })),
    left: schedule.left.map((task) => work.steps[task]?.id),
    right: schedule.right.map((task) => work.steps[task]?.id),
    kind: schedule.kind,
    period: schedule.period,
    bound,
    proven,
    words,
    unitTime,
    travel: schedule.travel,
  };
}

function worthJson({ changes, name, saved, interval, method }: ChangeWorth) {
  return { changes, name, saved, interval, method: methodJson(method) };
}

function frontJson({ front, axis, exact, words, tried, ruledOut, withoutCost }: Combinations) {
  return {
    axis,
    exact,
    words,
    tried,
    ruledOut,
    withoutCost: withoutCost.map(({ id }) => id),
    front: front.map(({ worth, cost, more }) => ({
      ...worthJson(worth),
      ...(cost === undefined ? {} : { cost }),
      ...(more === undefined ? {} : { more }),
    })),
  };
}

/** The same as plain data; times are microseconds. */
export function developJson({ base, interval, single, combinations, chosen, layout }: Told): unknown {
  return {
    ok: true,
    reportVersion: 1,
    work: base.work,
    method: methodJson(base),
    ...(interval === undefined ? {} : { expected: interval }),
    ...(base.times.pace === undefined ? {} : { pace: base.times.pace }),
    ...(single === undefined ? {} : { single: single.map(worthJson) }),
    ...(combinations === undefined ? {} : { combinations: frontJson(combinations) }),
    ...(chosen === undefined ? {} : { chosen: worthJson(chosen) }),
    ...(layout === undefined ? {} : { layout: layoutJson(layout) }),
    notes: base.times.notes.map(({ code, message }) => ({ code, message })),
  };
}
