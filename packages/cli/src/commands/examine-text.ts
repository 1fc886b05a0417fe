import {
  cycleWords,
  type Examined,
  type Lead,
  type LeadList,
  type MethodReading,
  notedExaminations,
  type Stake,
} from '@evenhand/core/examine';
import { micros } from '@evenhand/core/ground/base';
import { principleOf, sources } from '@evenhand/core/ground/tables';
import {
  countText,
  inUnit,
  numberText,
  type TimeUnit,
  timeText,
  timeUnits,
} from '@evenhand/core/ground/units';
import { figureLines } from './examine-figures.ts';
import { wrapped } from './wrapped.ts';

/** Figures and leads of a method for reading at a terminal. */
export function examineText({ reading, leads, figures }: Examined, unit: TimeUnit): string {
  const lines = [
    ...heading(reading),
    ...(leads === undefined ? [] : ['', ...leadLines(reading, leads, unit)]),
    ...(figures === undefined ? [] : ['', ...figureLines(figures, unit, reading)]),
    ...notedLines(reading),
  ];
  return `${lines.join('\n')}\n`;
}

function heading({ study, method, cycles }: MethodReading): string[] {
  const numbers = cycles.map(({ number }) => number);
  const all = method.cycles.items.length;
  const counted =
    numbers[0] === 0
      ? 'the whole record as one cycle'
      : `${cycleWords(numbers)} (${numbers.length} of ${all})`;
  const units = `${countText(method.unitsPerCycle, 'unit')} a cycle`;
  const demo = study.demo === true ? ' (invented data)' : '';
  return [`${study.title}${demo}: ${method.name}, ${counted}, ${units}`];
}

// ---- leads

function leadLines(reading: MethodReading, { leads, joint, cycle }: LeadList, unit: TimeUnit): string[] {
  if (leads.length === 0) return ['No lead found. That is no proof that the method is the best there is.'];
  return [
    `${countText(leads.length, 'lead')}, in the order of what they are worth; a mean cycle takes ${timeText(cycle, unit)}`,
    ...leads.flatMap((lead, index) => ['', ...leadText(reading, lead, index + 1, unit)]),
    '',
    `All together ${stakeText(joint.atStake, unit)} a cycle${hoursText(joint.hoursAYear)}.`,
    ...wrapped(joint.rule, '  '),
  ];
}

function leadText(reading: MethodReading, lead: Lead, number: number, unit: TimeUnit): string[] {
  const who = lead.hand === 'both' ? 'both hands' : `${lead.hand} hand`;
  const title = [lead.name, who, lead.about].filter((part) => part !== undefined).join(', ');
  return [
    `${String(number).padStart(2)}. ${title}`,
    `    At stake ${stakeText(lead.atStake, unit)} a cycle${hoursText(lead.hoursAYear)}`,
    ...wrapped(lead.evidence, '    '),
    ...wrapped(`See ${whereText(reading, lead)}.`, '    '),
    ...lead.principles.flatMap((principle) => wrapped(principleText(principle), '    ')),
    ...lead.remedies.flatMap(({ how, text }) => wrapped(`${how}: ${text}`, '      ', '    – ')),
    ...lead.questions.flatMap((question) => wrapped(question, '      ', '    ? ')),
    ...wrapped(`How it is computed: ${lead.rule}`, '    '),
    ...(lead.limit === undefined ? [] : wrapped(`Limit: ${lead.limit}`, '    ')),
    ...(lead.caution === undefined ? [] : wrapped(`Caution: ${lead.caution}`, '    ')),
  ];
}

function stakeText({ low, high }: Stake, unit: TimeUnit): string {
  const { symbol, decimals } = timeUnits[unit];
  return `${rangeText(inUnit(micros(low), unit), inUnit(micros(high), unit), decimals)} ${symbol}`;
}

function hoursText(hours: Lead['hoursAYear']): string {
  if (hours === undefined) return '';
  return `, ${rangeText(hours.low, hours.high, hours.high < 10 ? 1 : 0)} hours a year`;
}

/** One number where both ends read the same. */
function rangeText(low: number, high: number, decimals: number): string {
  const [from, to] = [numberText(low, decimals), numberText(high, decimals)];
  return from === to ? to : `${from} to ${to}`;
}

function principleText(number: Lead['principles'][number]): string {
  const { fact, numbering, source } = principleOf(number);
  const memory = numbering === 'memory' ? ', number from memory' : '';
  return `Principle ${number}: ${fact} (${sources[source].reference}${memory})`;
}

const mostPlaces = 4;

function whereText(reading: MethodReading, { traces, cycles }: Lead): string {
  const shown = traces.slice(0, mostPlaces).map(({ cycle, from, to }) => {
    const number = reading.cycles[cycle]?.number ?? 0;
    const stretch =
      reading.clock.unit === 'frames'
        ? `frames ${from}–${to}`
        : `${timeText(micros(from), 'seconds')} to ${timeText(micros(to), 'seconds')}`;
    return number === 0 ? stretch : `${stretch} in cycle ${number}`;
  });
  const more = traces.length - shown.length;
  const rest = more > 0 ? `; and ${more} more, ${cycleWords(cycles)}` : '';
  return `${shown.join('; ')}${rest}`;
}

// ---- what people noted

function notedLines({ study, method }: MethodReading): string[] {
  const rows = notedExaminations(study).filter(({ examination }) => examination.subject.method === method.id);
  if (rows.length === 0) return [];
  return [
    '',
    'Critical examination',
    ...rows.flatMap(({ subject, there, answers, open, decision }) => [
      ...wrapped(`${subject}${there ? '' : ' (not in the record any more)'}`, '    ', '  '),
      ...(decision === undefined ? [] : wrapped(`${decision.choice}: ${decision.reason}`, '      ', '    ')),
      ...answers
        .filter(({ by }) => by === 'analyst')
        .flatMap(({ question, text }) => wrapped(`${question.text} ${text}`, '      ', '    ')),
      ...(open.length === 0 ? [] : [`    ${countText(open.length, 'question')} without an answer`]),
    ]),
  ];
}
