import {
  type Allowance,
  type AllowanceConvention,
  basicTime,
  outputIn,
  standardTime,
  type TimedElement,
} from '@evenhand/core/define';
import { sampleOf } from '@evenhand/core/ground/numerics';
import { fromUnit, inUnit } from '@evenhand/core/ground/units';
import { describe, expect, it } from 'vitest';
import { expectCheck, tally, titled, told } from './check.ts';
import * as single from './published-standard-times.ts';
import * as whole from './published-studies.ts';

const conventions = {
  job: 'share-of-basic-time',
  shift: 'share-of-shift',
} as const satisfies Readonly<Record<string, AllowanceConvention>>;

/** A printed rating as a share of standard, through the 0–100 scale. */
function basic(observed: number, pace: number): number {
  return told(basicTime(observed, pace * 100, '0-100'));
}

function worker(name: string, time: number, more: Partial<TimedElement> = {}): TimedElement {
  return { name, work: 'worker', basic: time, ...more };
}

function plan({ share, convention }: Allowance, process = 0, contingency = 0) {
  return { convention, worker: share, process, contingency };
}

describe('whole studies', () => {
  it.each(titled(whole.studies, whole.sources))('$title', ({ check }) => {
    const { elements, allowance, convention } = check.inputs;
    const observed = elements.map(({ readings, ot }) => ot ?? sampleOf(readings ?? []).mean);
    const timed = elements.map(({ rating, freq }, index) =>
      worker(`element ${index + 1}`, basic(observed[index] ?? 0, rating), { frequency: freq }),
    );
    const result = told(standardTime(timed, plan({ share: allowance, convention: conventions[convention] })));
    const all: Record<string, number> = { ntTotal: result.basic, stTotal: result.standard };
    for (const [index, { perCycle, standard }] of result.elements.entries()) {
      all[`ot${index + 1}`] = observed[index] ?? 0;
      all[`nt${index + 1}`] = perCycle;
      all[`st${index + 1}`] = standard;
    }
    expectCheck(check, Object.fromEntries(Object.entries(all).filter(([name]) => name in check.computed)));
  });

  it.each(titled(whole.studiesWithOwnRelaxation, whole.sources))('$title', ({ check }) => {
    const { elements, contingency } = check.inputs;
    const timed = elements.map(({ ot, rating, freq, ra }, index) =>
      worker(`element ${index + 1}`, basic(ot, rating), { frequency: freq, relaxation: ra }),
    );
    const result = told(
      standardTime(timed, plan({ share: 0, convention: 'share-of-basic-time' }, 0, contingency)),
    );
    const all: Record<string, number> = {
      sbtTotal: result.basic,
      actualTotal: result.relaxed,
      contingency: result.contingency,
      standard: result.standard,
    };
    for (const [index, row] of result.elements.entries()) {
      all[`bt${index + 1}`] = row.basic;
      all[`sbt${index + 1}`] = row.perCycle;
      all[`actual${index + 1}`] = row.standard;
    }
    expectCheck(check, Object.fromEntries(Object.entries(all).filter(([name]) => name in check.computed)));
  });
});

describe('single standard times and output', () => {
  it.each(titled(single.singleStandards, single.sources))('$title', ({ check }) => {
    const { ot, rating, allowance, convention } = check.inputs;
    const result = told(
      standardTime(
        [worker('the work', basic(ot, rating))],
        plan({ share: allowance, convention: conventions[convention] }),
      ),
    );
    expectCheck(check, { nt: result.basic, st: result.standard, af: result.standard / result.basic });
  });

  it.each(titled(single.outputs, single.sources))('$title', ({ check }) => {
    const { rate, whole: floor } = told(outputIn(check.inputs.minutes, check.inputs.st));
    expectCheck(check, { q: rate, floor });
  });

  it.each(titled(single.tmuAtStandard, single.sources))('$title', ({ check }) => {
    const minutes = inUnit(fromUnit(check.inputs.tmu, 'tmu'), 'minutes');
    const stdMin = basic(minutes, 250 / 300);
    expectCheck(check, { stdMin, min: minutes, factor: stdMin / minutes });
  });
});

describe('worker and machine', () => {
  it.each(titled(single.machineWork, single.sources))('$title', ({ check }) => {
    const { manual, machine, rating, allowance, convention, allowOn } = check.inputs;
    const result = told(
      standardTime(
        [worker('by hand', basic(manual, rating)), { name: 'machine', work: 'process', basic: machine }],
        plan({ share: allowance, convention: conventions[convention] }, allowOn === 'all' ? allowance : 0),
      ),
    );
    expectCheck(check, { nt: result.basic, st: result.standard });
  });

  it.each(titled(single.machineWorkTwoAllowances, single.sources))(
    '$title: without the figures on how a person performed',
    ({ check }) => {
      const { manualNT, machine, aW, aM, units } = check.inputs;
      const { standard } = told(
        standardTime(
          [worker('by hand', manualNT), { name: 'machine', work: 'process', basic: machine }],
          plan({ share: aW, convention: 'share-of-basic-time' }, aM),
        ),
      );
      expectCheck(check, { st: standard, stdHours: (units * standard) / 60 }, ['eff', 'perf']);
    },
  );
});

it('the same study, the same 15 %, two conventions: 4.43 and 4.33 minutes (pair 2-05 and 2-06)', () => {
  const pair = whole.studies.filter(({ id }) => id === '2-05' || id === '2-06');
  expect(pair.map(({ printed }) => printed.at(-1)?.value)).toEqual([4.43, 4.33]);
  expect(pair[0]?.inputs.elements).toEqual(pair[1]?.inputs.elements);
});

it('36 published checks on standard times ran, three of them wrong prints', () => {
  expect(tally()).toMatchObject({ checks: 36, traps: 3 });
});
