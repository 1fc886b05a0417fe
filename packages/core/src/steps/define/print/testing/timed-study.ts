import {
  emptyStudy,
  type Study,
  type TimeStudy,
  type TimeStudyElement,
} from '../../../../ground/study/index.ts';

/** Seconds of consecutive cycles from 1; an empty place is a missed reading. */
export function secondsOf(...times: readonly (number | undefined)[]): TimeStudyElement['readings'] {
  return times.map((time, index) => ({
    cycle: index + 1,
    ...(time === undefined ? {} : { us: Math.round(time * 1_000_000) }),
  }));
}

export function timedElement(
  id: string,
  readings: TimeStudyElement['readings'],
  more: Partial<TimeStudyElement> = {},
): TimeStudyElement {
  return { id, name: id, work: 'worker', readings, ...more };
}

/** A time study at standard pace with an agreed allowance of 10 % of basic time. */
export function timeStudyOf(elements: readonly TimeStudyElement[], more: Partial<TimeStudy> = {}): TimeStudy {
  return {
    id: 't',
    name: 'Time study',
    source: { kind: 'readings', timing: 'continuous' },
    unit: 'seconds',
    scale: '0-100',
    rating: 100,
    ratingError: 0,
    confidence: 0.95,
    precision: { kind: 'relative', share: 0.05 },
    allowances: {
      convention: 'share-of-basic-time',
      relaxation: { kind: 'share', share: 0.1 },
      process: 0,
      contingency: 0,
    },
    piecesPerCycle: 1,
    elements: [...elements],
    ...more,
  };
}

export const timedStudy: Study = {
  ...emptyStudy('s', 'Couplings'),
  operation: {
    name: 'Fit hose couplings',
    part: 'Coupling 12 mm',
    number: '40',
    department: 'Bench 3',
    analyst: 'Analyst 2',
  },
  demo: true,
};
