import { existsSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { proposeRows } from '@evenhand/core/record';
import { demoRecord } from '../tests/helpers/demo-record.ts';
import { madeRegimes } from '../tests/helpers/made-regimes.ts';
import { madeTrack } from '../tests/helpers/made-tracks.ts';
import {
  addScore,
  addSure,
  confirmedOf,
  emptyScore,
  freeOf,
  type KnownRecord,
  knownRecord,
  proposedOf,
  type Score,
  type Starts,
  startsOf,
  stretchedEvenly,
  warpedPlainly,
} from '../tests/helpers/propose-score.ts';
import { reachRecord } from '../tests/helpers/reach-trials.ts';
import { printTable } from './harness.ts';
import { proposeKeystrokes } from './propose-keystrokes.ts';
import { timedFilms } from './timed-films.ts';

/**
 * How good proposals are: the share of boundaries within 0.2 s of the truth with the same motion beginning, the share of
 * the time in which the same motion runs, cycles lost and invented. Beside them, in the same run, two naive ways that are
 * given the true bounds of every cycle: even stretching of the confirmed cycle, and plain time warping of positions.
 */
const root = path.resolve(import.meta.dirname, '..');
const seeds = [101, 102, 103, 104, 105, 106];

interface Ways {
  readonly even: Score;
  readonly warped: Score;
  readonly one: Score;
  readonly three: Score;
}

function ways(): Ways {
  return { even: emptyScore(), warped: emptyScore(), one: emptyScore(), three: emptyScore() };
}

function addAll(
  all: Ways,
  record: KnownRecord,
  first: number,
  three: readonly number[],
  nearby?: number,
): void {
  const one = confirmedOf(record, [first]);
  const [confirmed] = one;
  if (confirmed === undefined) return;
  const others = record.cycles.filter((_, index) => index !== first);
  const rival = (score: Score, starts: Starts) => addScore(score, record, one, starts, others, nearby);
  rival(all.even, stretchedEvenly(record, confirmed));
  rival(all.warped, warpedPlainly(record, confirmed));
  for (const [score, chosen] of [
    [all.one, one],
    [all.three, confirmedOf(record, three)],
  ] as const) {
    const rows = proposedOf(proposeRows(record.track, record.seconds, chosen, freeOf(record, chosen)));
    addScore(score, record, chosen, startsOf(rows), rows.cycles, nearby);
    addSure(score, record, rows, nearby);
  }
}

function cells({ near, boundaries, agree, frames }: Score): string {
  return `${((100 * near) / boundaries).toFixed(1)} %  ${(agree / frames).toFixed(3)}`;
}

function rowOf(name: string, { even, warped, one, three }: Ways): string[] {
  const odd = ({ lost, invented }: Score) => `${lost} / ${invented}`;
  return [
    name,
    cells(even),
    cells(warped),
    cells(one),
    cells(three),
    odd(one),
    odd(three),
    String(one.boundaries),
  ];
}

const head = [
  'records',
  'even stretching',
  'plain warping',
  'one confirmed',
  'three confirmed',
  'lost / invented (1)',
  '(3)',
  'boundaries',
];

const made = Object.entries(madeRegimes).map(([name, kind]) => {
  const all = ways();
  for (const seed of seeds) addAll(all, knownRecord(madeTrack({ ...kind, seed })), 1, [1, 2, 4]);
  return { name, all };
});
printTable(
  'Generated records: boundaries within 0.2 s, agreement of the time',
  head,
  made.map(({ name, all }) => rowOf(name, all)),
);

const demo = demoRecord();
const demoRows = [0, 1, 3].map((first) => {
  const all = ways();
  addAll(all, demo, first, [first, ...[0, 1, 2, 3].filter((index) => index !== first)].slice(0, 3));
  return rowOf(`cycle ${first + 1}`, all);
});
printTable(
  'The demonstration film, its track by the hand models; first the cycle that is confirmed',
  head,
  demoRows,
);

printTable(
  'The demonstration film finished from one marked cycle, as the program works its keys',
  ['way', 'keys', 'boundaries within 0.1 s', 'motions too many'],
  proposeKeystrokes().map(({ way, keys, right, of, extra }) => [
    way,
    String(keys),
    `${right} of ${of}`,
    String(extra),
  ]),
);

const records = process.env.EVENHAND_RECORDS ?? path.join(process.env.EVENHAND_FILMS ?? '', '../records');
const trials = path.join(records, 'kinesis_reach_to_grasp.txt');
if (existsSync(trials)) {
  const all = ways();
  addAll(all, reachRecord(trials, 24), 2, [2, 5, 8]);
  printTable('Reach-to-grasp trials (kinesis, MIT), truth by 5 % of the peak speed', head, [
    rowOf('24 trials', all),
  ]);
}

const clips = process.env.EVENHAND_FILMS;
const timed =
  clips === undefined ? 'EVENHAND_FILMS names no folder' : await timedFilms(path.resolve(clips), root);
if (typeof timed === 'string') console.log(`Films timed by eye are left out: ${timed}.`);
else {
  const rows = timed.map(({ name, byEye, record, first, three }) => {
    const all = ways();
    addAll(all, record, first, three, byEye + 0.2);
    const sure = all.one.sure.filter((item) => item.sure >= 0.9);
    const wrong = sure.filter(({ held }) => !held).length;
    return [...rowOf(`${name}, ± ${(byEye + 0.2).toFixed(2)} s`, all), `${wrong} of ${sure.length}`];
  });
  printTable(
    'Films whose events were timed by eye, tracked by the hand models; near is the tolerance of the eye and 0.2 s more',
    [...head, 'called 90 % and wrong (1)'],
    rows,
  );
}

const chances = made.flatMap(({ all }) => [...all.one.sure, ...all.three.sure]);
const edges = [0, 0.3, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.001];
printTable(
  'Of the boundaries called so sure, how many hold (generated records, one and three confirmed)',
  ['called', 'held', 'boundaries', ''],
  edges.slice(0, -1).flatMap((low, index) => {
    const inside = chances.filter(({ sure }) => sure >= low && sure < (edges[index + 1] as number));
    if (inside.length === 0) return [];
    const mean = inside.reduce((sum, { sure }) => sum + sure, 0) / inside.length;
    const held = inside.filter((item) => item.held).length / inside.length;
    const bar = `${'·'.repeat(Math.round(mean * 40)).padEnd(40)}|`.split('');
    bar[Math.round(held * 40)] = 'o';
    return [
      [`${(100 * mean).toFixed(0)} %`, `${(100 * held).toFixed(0)} %`, String(inside.length), bar.join('')],
    ];
  }),
);
