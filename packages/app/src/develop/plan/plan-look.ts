import { type PlanLook, type PlanPaper, reachOfBench, type Trips } from '@evenhand/core/develop';
import type { Study, Work } from '@evenhand/core/ground/study';
import { dayOfWork } from './plan-words.tsx';

export function planLookOf(
  study: Study,
  work: Work,
  asked: {
    readonly scale: 5 | 10;
    readonly paper: PlanPaper;
    readonly trips: Trips | undefined;
    readonly period: number | undefined;
  },
): PlanLook {
  const { scale, paper, trips, period } = asked;
  const { operation } = study;
  return {
    scale,
    paper,
    reach: reachOfBench(work.bench),
    ...(trips === undefined ? {} : { trips }),
    ...(period === undefined || period <= 0 ? {} : { day: { period, worked: dayOfWork } }),
    titleBlock: {
      operation: operation.name || study.title,
      ...(operation.analyst === undefined ? {} : { drawnBy: operation.analyst }),
      date: new Date().toISOString().slice(0, 10),
    },
  };
}
