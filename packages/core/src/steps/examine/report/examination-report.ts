import { type Sample, sampleOf } from '../../../ground/numerics/index.ts';
import { principleOf, sources } from '../../../ground/tables/index.ts';
import { notedExaminations } from '../critical/index.ts';
import type { Figures } from '../figures/index.ts';
import type { Lead, LeadList } from '../leads/index.ts';
import type { MethodReading, Trace } from '../reading/index.ts';
import type { RepeatedRun, RepeatedSequences } from '../sequences/index.ts';
import type { PracticeBound, Variation } from '../variation/index.ts';
import { figureRows } from './figure-rows.ts';
import type { ExaminationReport } from './report-schema.ts';

type Of<Key extends keyof ExaminationReport> = Exclude<ExaminationReport[Key], undefined>;
type TraceText = Of<'leads'>['list'][number]['traces'][number];

export interface FigureSet {
  readonly figures: Figures;
  readonly repeated: RepeatedSequences;
  readonly variation: Variation;
}

export interface Examined {
  readonly reading: MethodReading;
  /** Left out, the report is without them. */
  readonly leads?: LeadList | undefined;
  readonly figures?: FigureSet | undefined;
}

/** What an examination found, as plain data for `--json`; the shape is `examinationReportSchema`. */
export function examinationReport({ reading, leads, figures }: Examined): ExaminationReport {
  const { study, method, cycles, clock, notes } = reading;
  const tracesOf = (traces: readonly Trace[]) => traces.map((trace) => traceText(reading, trace));
  return {
    reportVersion: 1,
    study: { id: study.id, title: study.title, demo: study.demo === true },
    method: { id: method.id, name: method.name, unitsPerCycle: method.unitsPerCycle },
    base: clock.unit,
    cycles: cycles.map(({ number, from, to, duration }) => ({ number, from, to, duration })),
    cycleTime: plainSample(sampleOf(cycles.map(({ duration }) => duration))),
    notes: notes.map(({ message }) => message),
    ...(leads === undefined ? {} : { leads: plainLeads(leads, tracesOf) }),
    ...(figures === undefined ? {} : { figures: plainFigures(figures, tracesOf) }),
    examinations: plainNotes(reading),
  };
}

function traceText(reading: MethodReading, { cycle, hand, from, to }: Trace): TraceText {
  return { cycle: reading.cycles[cycle]?.number ?? 0, hand, from, to };
}

function plainSample({ n, mean, deviation, variation, interval }: Sample): Of<'cycleTime'> {
  return {
    n,
    mean,
    ...(deviation === undefined ? {} : { deviation }),
    ...(variation === undefined ? {} : { variation }),
    ...(interval === undefined ? {} : { interval: { ...interval } }),
  };
}

function plainLeads({ leads, joint }: LeadList, tracesOf: TracesOf): Of<'leads'> {
  return {
    list: leads.map((lead) => plainLead(lead, tracesOf)),
    joint: {
      atStake: joint.atStake,
      ...(joint.hoursAYear === undefined ? {} : { hoursAYear: joint.hoursAYear }),
      rule: joint.rule,
    },
  };
}

function plainLead(lead: Lead, tracesOf: TracesOf): Of<'leads'>['list'][number] {
  const { about, hoursAYear, limit, caution } = lead;
  return {
    ...{ id: lead.id, code: lead.code, name: lead.name, hand: lead.hand },
    ...(about === undefined ? {} : { about }),
    ...{
      cycles: [...lead.cycles],
      evidence: lead.evidence,
      figures: lead.figures.map((one) => ({ ...one })),
    },
    ...{ atStake: lead.atStake, rule: lead.rule },
    ...(hoursAYear === undefined ? {} : { hoursAYear }),
    principles: lead.principles.map((number) => {
      const { fact, numbering, source } = principleOf(number);
      return { number, fact, numbering: numbering ?? 'memory', source: sources[source].reference };
    }),
    ...(limit === undefined ? {} : { limit }),
    ...{ remedies: lead.remedies.map((one) => ({ ...one })), questions: [...lead.questions] },
    ...(caution === undefined ? {} : { caution }),
    traces: tracesOf(lead.traces),
  };
}

type TracesOf = (traces: readonly Trace[]) => TraceText[];

function plainFigures({ figures, repeated, variation }: FigureSet, tracesOf: TracesOf): Of<'figures'> {
  const { lag } = figures.sameMotion;
  const runs = (of: 'byCost' | 'byCount') =>
    (['left', 'right', 'both'] as const).flatMap((row) =>
      repeated[row][of].map((run) => plainRun(run, tracesOf)),
    );
  return {
    grouping: figures.groups.grouping.name,
    rows: figureRows(figures).map(({ section, label, hand, figure, traces }) => ({
      section,
      label,
      ...(hand === undefined ? {} : { hand }),
      unit: figure.unit,
      ...(figure.value === undefined ? {} : { value: figure.value }),
      ...(figure.sample === undefined ? {} : { sample: plainSample(figure.sample) }),
      ...(traces === undefined ? {} : { traces: tracesOf(traces()) }),
    })),
    ...(lag === undefined
      ? {}
      : {
          sameMotionLag: {
            lag: lag.best.lag,
            leads: lag.best.leads,
            agreement: lag.best.agreement,
            atZero: lag.atZero,
          },
        }),
    repeated: { rule: repeated.rule, byCost: runs('byCost'), byCount: runs('byCount') },
    variation: plainVariation(variation, tracesOf),
  };
}

function plainRun(run: RepeatedRun, tracesOf: TracesOf): Of<'figures'>['repeated']['byCost'][number] {
  const { row, words, length, count, inexact, timeACycle } = run;
  return {
    ...{ row, words, length, count, inexact, timeACycle },
    sample: plainSample(run.sample),
    traces: tracesOf(run.occurrences),
  };
}

function plainVariation(variation: Variation, tracesOf: TracesOf): Of<'figures'>['variation'] {
  const { best, quartiles } = variation;
  const reasons = [best.reason, quartiles.reason].filter((reason) => reason !== undefined);
  return {
    basis: variation.basis,
    rule: variation.rule,
    elements: variation.elements.map(({ name, hand, spread, traces }) => {
      const { sample, ...order } = spread ?? {};
      return {
        ...{ name, hand, ...order },
        ...(sample === undefined ? {} : { sample: plainSample(sample) }),
        traces: tracesOf(traces),
      };
    }),
    deviations: variation.deviations.flatMap(({ pattern, words, time, trace }) =>
      tracesOf([trace]).map((where) => ({ pattern, words, time, trace: where })),
    ),
    ...(best.bound === undefined ? {} : { best: plainBound(best.bound, tracesOf) }),
    ...(quartiles.bound === undefined ? {} : { quartiles: plainBound(quartiles.bound, tracesOf) }),
    reasons,
  };
}

function plainBound({ time, words, traces }: PracticeBound, tracesOf: TracesOf) {
  return { time, words, traces: tracesOf(traces) };
}

function plainNotes({ study, method }: MethodReading): Of<'examinations'> {
  return notedExaminations(study)
    .filter(({ examination }) => examination.subject.method === method.id)
    .map(({ subject, there, answers, open, decision }) => ({
      ...{ subject, there, open: [...open] },
      answers: answers.map(({ question, text, by }) => ({ question: question.id, text, by })),
      ...(decision === undefined ? {} : { decision: { ...decision } }),
    }));
}
