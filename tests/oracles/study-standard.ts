import type { TimeStudy, TimeStudyElement } from '@evenhand/core/ground/study';

/** What each scale calls standard performance: its name says it. */
const standards = { '0-100': 100, '60-80': 80, '75-100': 100, '100-133': 133 } as const;

/**
 * The standard time of a time study in microseconds a cycle, from the definition alone: the plain mean of what each
 * counted reading becomes by its rating, times how often it comes, times its allowance; outside work, and the longer of
 * the machine and the work inside its run. An agreed share of relaxation only.
 */
export function standardByDefinition(timeStudy: TimeStudy): number {
  const of = (work: TimeStudyElement['work']) =>
    timeStudy.elements
      .filter((element) => element.work === work)
      .reduce((sum, element) => sum + elementTime(element, timeStudy), 0);
  const { contingency } = timeStudy.allowances;
  return (of('worker') + Math.max(of('process'), of('inside'))) * (1 + contingency);
}

function elementTime(element: TimeStudyElement, { scale, rating: whole, allowances }: TimeStudy): number {
  const standard = standards[scale];
  let [sum, n] = [0, 0];
  for (const { us, rating, setAside } of element.readings) {
    if (us === undefined || setAside !== undefined) continue;
    const pace = (rating ?? element.rating ?? whole ?? Number.NaN) / standard;
    sum += us * (element.work === 'process' ? 1 : pace);
    n += 1;
  }
  const { convention, relaxation, process } = allowances;
  const agreed = relaxation.kind === 'share' ? relaxation.share : Number.NaN;
  const share = element.relaxation ?? (element.work === 'process' ? process : agreed);
  const often = element.occurs === undefined ? 1 : element.occurs.times / element.occurs.cycles;
  const time = (sum / n) * often;
  return convention === 'share-of-shift' ? time / (1 - share) : time + time * share;
}
