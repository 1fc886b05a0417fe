import { z } from 'zod';
import type { Finding } from '../../../ground/findings/index.ts';
import { type Method, methodClock, type Study } from '../../../ground/study/index.ts';
import { motionKinds } from '../../../ground/tables/index.ts';
import type { Proposal, ProposedMotion } from './proposal.ts';

const seconds = z.number().min(0).describe('Real time, in seconds.');
const boundary = z.int().min(0).describe('A frame of the film, or microseconds in a method without one.');
const confidence = z.number().min(0).max(1);

const motion = z
  .strictObject({
    start: boundary,
    start_s: seconds,
    kind: z.enum(motionKinds as [string, ...string[]]),
    object: z.string().optional(),
    from: z.string().optional().describe('Id of a place.'),
    to: z.string().optional().describe('Id of a place.'),
    confidence: confidence.describe(
      'Chance that the motion is right and its start within a fifth of a second of where a person would put it.',
    ),
  })
  .meta({ id: 'ProposedMotion' });

const proposeReportSchema = z
  .strictObject({
    ok: z.literal(true),
    study: z.string(),
    method: z.string(),
    cycles: z.array(
      z.strictObject({ start: boundary, start_s: seconds, end: boundary, end_s: seconds, confidence }),
    ),
    left: z.array(motion),
    right: z.array(motion),
    findings: z.array(
      z.strictObject({
        code: z.string(),
        severity: z.string(),
        message: z.string(),
        where: z.record(z.string(), z.union([z.string(), z.number()])),
      }),
    ),
  })
  .meta({ id: 'ProposeReport', title: 'What “evenhand record propose --json” prints' });

export type ProposeReport = z.infer<typeof proposeReportSchema>;

/** The published JSON Schema (draft 2020-12) of the report. */
export function proposeReportJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(proposeReportSchema) as Record<string, unknown>;
}

/** A proposal as plain data for other programs, with real times beside the boundaries. */
export function proposeReport(
  study: Study,
  method: Method,
  proposal: Proposal,
  findings: readonly Finding[],
): ProposeReport {
  const clock = methodClock(study, method);
  const time = (at: number) => clock.timeOf(at) / 1e6;
  const row = (motions: readonly ProposedMotion[]) =>
    motions.map(({ start, kind, confidence: sure, ...rest }) => ({
      start,
      start_s: time(start),
      kind,
      ...rest,
      confidence: rounded(sure),
    })) as ProposeReport['left'];
  return {
    ok: true,
    study: study.id,
    method: method.id,
    cycles: proposal.cycles.map(({ start, end, confidence: sure }) => ({
      start,
      start_s: time(start),
      end,
      end_s: time(end),
      confidence: rounded(sure),
    })),
    left: row(proposal.left),
    right: row(proposal.right),
    findings: findings.map(({ code, severity, message, where }) => ({
      code,
      severity,
      message,
      where: { ...where },
    })),
  };
}

function rounded(chance: number): number {
  return Math.round(chance * 1000) / 1000;
}
