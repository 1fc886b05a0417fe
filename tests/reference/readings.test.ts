import {
  type Allowance,
  type AllowanceChoice,
  type AllowanceConvention,
  basicTimes,
  convertRating,
  inConvention,
  readingsOf,
  relaxationFrom,
  standardTime,
  summarise,
  timesFromRunningWatch,
} from '@evenhand/core/define';
import type { AllowanceColumn, AllowanceEditionId } from '@evenhand/core/ground/tables';
import { describe, expect, it } from 'vitest';
import { expectCheck, tally, titled, told } from './check.ts';
import * as published from './published-readings.ts';
import { studies } from './published-studies.ts';

describe('means of readings', () => {
  it.each(titled(published.means, published.sources))('$title', ({ check }) => {
    const { mean, deviation = 0 } = told(summarise('the element', readingsOf(check.inputs.readings)));
    expectCheck(check, { mean, s: deviation });
  });

  it.each(titled(published.weightedMeans, published.sources))('$title', ({ check }) => {
    const { values, weights } = check.inputs;
    const readings = values.flatMap((value, index) =>
      Array.from({ length: weights[index] ?? 0 }, () => value),
    );
    expectCheck(check, { mean: told(summarise('the element', readingsOf(readings))).mean });
  });

  it.each(titled(published.runningWatches, published.sources))('$title', ({ check }) => {
    const { table, scale } = check.inputs;
    const names = Object.keys(table);
    const cycles = Object.values(table)[0]?.length ?? 0;
    const clock = Array.from({ length: cycles }, (_, cycle) =>
      names.map((name) => table[name]?.[cycle]),
    ).flat();
    const times = told(timesFromRunningWatch(clock));
    const found = names.map((name, at) => {
      const own = times.filter((_, index) => index % names.length === at);
      return [`mean_${name}`, told(summarise(name, readingsOf(own))).mean * scale];
    });
    expectCheck(check, Object.fromEntries(found));
  });
});

describe('ratings', () => {
  it.each(titled(published.ratedReadings, published.sources))(
    '$title: readings outside the band are set aside with that reason',
    ({ check }) => {
      const { pairs, band, ra } = check.inputs;
      const readings = pairs.map(([time = 0, pace = 0], index) => ({
        cycle: index + 1,
        time,
        rating: pace * 100,
      }));
      const all = told(basicTimes('the element', readings, { scale: '0-100' }));
      const [lower, upper] = [all.observed.mean * (1 - band), all.observed.mean * (1 + band)];
      const judged = readings.map((reading, index) => {
        const basic = all.readings[index]?.basic ?? 0;
        return basic < lower || basic > upper
          ? { ...reading, setAside: 'outside the band of the study' }
          : reading;
      });
      const kept = told(basicTimes('the element', judged, { scale: '0-100' }));
      const result = told(
        standardTime([{ name: 'the element', work: 'worker', basic: kept.basic.mean }], {
          convention: 'share-of-basic-time',
          worker: ra,
          process: 0,
          contingency: 0,
        }),
      );
      expectCheck(check, {
        avgOT: all.observed.mean,
        avgBTall: all.basic.mean,
        lower,
        upper,
        kept: kept.basic.n,
        dropped: told(summarise('the element', judged)).setAside.length,
        avgBT: kept.basic.mean,
        standard: result.standard,
      });
    },
  );

  it.each(titled(published.scaleConversions, published.sources))('$title', ({ check }) => {
    const { rating, from100, to100 } = check.inputs;
    expectCheck(check, { r: convertRating(rating, { standard: from100 }, { standard: to100 }) });
  });

  it.each(titled(published.walkingLevels, published.sources))('$title', ({ check }) => {
    const { base, speeds } = check.inputs;
    const rated = speeds.map((speed, index) => [
      `r${index}`,
      convertRating(speed, { standard: base }, { standard: 100 }),
    ]);
    expectCheck(check, Object.fromEntries(rated));
  });
});

describe('allowances', () => {
  it.each(titled(published.conventionConversions, published.sources))('$title', ({ check }) => {
    const { job, shift } = check.inputs;
    const from: Allowance =
      job === undefined
        ? { share: shift ?? 0, convention: 'share-of-shift' }
        : { share: job, convention: 'share-of-basic-time' };
    const to: AllowanceConvention = job === undefined ? 'share-of-basic-time' : 'share-of-shift';
    const { share } = told(inConvention(from, to));
    expectCheck(check, job === undefined ? { job: share } : { shift: share });
  });

  const always: readonly AllowanceChoice[] = [
    { row: 'personal', level: 0 },
    { row: 'basic-fatigue', level: 0 },
  ];
  const rows: Readonly<Record<string, [AllowanceEditionId, AllowanceColumn, readonly AllowanceChoice[]]>> = {
    '3-01': [
      'pounds',
      'one',
      [
        ...always,
        { row: 'standing', level: 0 },
        { row: 'posture', level: 0 },
        { row: 'load', level: 8 },
        { row: 'light', level: 2 },
        { row: 'noise', level: 2 },
        { row: 'monotony', level: 0 },
      ],
    ],
    '3-02': ['kilograms', 'men', always],
    '3-03': ['constant', 'women', always],
  };

  it.each(titled(published.allowanceSums, published.sources))('$title', ({ check }) => {
    const choice = rows[check.id];
    if (choice === undefined) throw new Error(`no rows are chosen for ${check.id}`);
    const { percent, parts } = told(relaxationFrom(...choice));
    expect(parts.map((part) => part.percent)).toEqual(check.inputs.parts);
    expectCheck(check, { total: percent });
  });
});

describe('the rule for outliers proposes what the sources starred or dropped', () => {
  const elements = (id: string) => studies.find((check) => check.id === id)?.inputs.elements ?? [];
  it.each([
    [
      '2-01, element 1 (Heizer and Render, ch. 10, example 2, from memory)',
      elements('2-01')[0]?.readings,
      21,
    ],
    ['2-01, element 2 (Heizer and Render, ch. 10, example 2, from memory)', elements('2-01')[1]?.readings, 5],
    ['2-31, element 2 (answer site, the footnote of the question)', elements('2-31')[1]?.readings, 3.7],
    ['1-19 (lecture slides on the number of observations)', [0.3, 0.45, 0.4, 0.36], 3],
  ])('%s', (_title, kept, dropped) => {
    const all = readingsOf([...(kept ?? []), dropped]);
    const { proposals, n } = told(summarise('the element', all));
    expect(kept?.length).toBeGreaterThan(3);
    expect(proposals.map(({ time }) => time)).toEqual([dropped]);
    expect(n).toBe(all.length);
  });
});

it('25 published checks on readings, ratings and allowances ran, one of them a wrong print', () => {
  expect(tally()).toMatchObject({ checks: 25, traps: 1 });
});
