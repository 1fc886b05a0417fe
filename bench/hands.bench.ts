import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import {
  assignHands,
  joinStretches,
  type KeptSighting,
  reportOf,
  type TwoHands,
} from '@evenhand/media/hands';
import { liteRtLoader } from '../scripts/vite/litert-loader.mjs';
import type { handsInStills, Landmarks, Runs, Searched } from './hands-page.ts';
import { fixed, printTable, quantile } from './harness.ts';
import { openBenchPage, root } from './page.ts';

/**
 * The search for hands in a real browser: speed with one worker and with two, error on landmarks that were published with
 * a clip, hands counted in films and stills, and what the joint assignment of left and right is worth. The clips come from
 * the folder that EVENHAND_FILMS names; the demonstration films are always there.
 */

const films = process.env.EVENHAND_FILMS ? path.resolve(process.env.EVENHAND_FILMS) : null;
const stills = films === null ? null : path.join(films, '..', 'stills');
const { inPage, close } = await openBenchPage('hands', {
  include: ['mediabunny', 'zod'],
  exclude: ['@litertjs/core'],
  allow: films === null ? [] : [path.dirname(films)],
  plugins: [liteRtLoader()],
  worker: { format: 'es', plugins: () => [liteRtLoader()] },
});
try {
  const address = (file: string) => `/@fs${file.startsWith('/') ? '' : '/'}${file.replaceAll('\\', '/')}`;
  const clip = (name: string) => {
    const file = path.join(films ?? '', name);
    return films !== null && existsSync(file) ? file : undefined;
  };
  const search = (file: string, workers: 1 | 2) => inPage<Searched>('searchFilm', address(file), workers);

  const coffee = clip('sam2_04_coffee.mp4');
  const demo = ['present.mp4', 'improved.mp4'].map((name) => path.join(root, 'examples', 'couplings', name));
  const searched: Searched[] = [];
  for (const workers of [1, 2] as const) {
    const one = await search(coffee ?? (demo[0] as string), workers);
    printSpeed(one, workers);
    if (workers === 2) searched.push(one);
  }
  printRuns([await inPage<Runs>('runsOf', address(coffee ?? (demo[0] as string)))]);
  for (const name of ['sam2_03_blocks.mp4', 'sam2_02_cups.mp4', 'dex_human_hand_video.mp4']) {
    const file = clip(name);
    if (file !== undefined) searched.push(await search(file, 2));
  }
  for (const file of demo) searched.push(await search(file, 2));
  printHands(searched);
  const golden = clip('tfjs_asl_hand.25fps.mp4');
  if (golden !== undefined)
    printGolden(
      await inPage<Landmarks[]>('landmarksOf', address(golden)),
      golden.replace('.25fps.mp4', '.landmarks.json'),
    );
  if (stills !== null && existsSync(stills)) {
    const files = readdirSync(stills)
      .filter((name) => name.endsWith('.jpg'))
      .sort();
    const urls = files.map((name) => address(path.join(stills, name)));
    printStills(await inPage<Awaited<ReturnType<typeof handsInStills>>>('handsInStills', urls));
  }
  if (films === null) console.log('\nEVENHAND_FILMS is not set: real clips and stills were left out.');
} finally {
  await close();
}

function printSpeed(
  { film, frames, seconds, startSeconds, gap99, longestGap }: Searched,
  workers: number,
): void {
  printTable(
    `Speed, ${film}, ${workers} worker${workers === 1 ? '' : 's'}`,
    ['', 'frames', 'frames a second', 'start s', 'gap of the page, p99 ms', 'longest ms'],
    [
      [
        '',
        String(frames),
        fixed(frames / (seconds - startSeconds)),
        fixed(startSeconds),
        fixed(gap99),
        fixed(longestGap),
      ],
    ],
  );
}

function printRuns(all: readonly Runs[]): void {
  printTable(
    'What a frame costs, one worker; runs of the models do not depend on the machine, milliseconds do',
    [
      '',
      'palm runs',
      'hand runs',
      'a palm run ms',
      'a hand run ms',
      'reading a frame ms',
      'rest of a frame ms',
    ],
    all.map(({ film, frames, palms, hands, palmMs, handMs, readMs, ms }) => [
      film,
      fixed(palms / frames),
      fixed(hands / frames),
      fixed(palmMs / palms),
      fixed(handMs / hands),
      fixed(readMs / frames),
      fixed((ms - palmMs - handMs - readMs) / frames),
    ]),
  );
}

function sightingsOf({ stretches }: Searched): readonly KeptSighting[] {
  return joinStretches(stretches.map(({ sightings }) => ({ sightings: Float32Array.from(sightings) })));
}

/** Left and right as the model says it of each sighting alone. */
function alone(sightings: readonly KeptSighting[]): { hands: ReadonlyMap<number, TwoHands>; equal: number } {
  const hands = new Map<number, TwoHands>();
  const twice = new Set<number>();
  for (const one of sightings) {
    const side = one.right > 0.5 ? 'right' : 'left';
    const two = hands.get(one.frame) ?? {};
    if (two[side] === undefined) hands.set(one.frame, { ...two, [side]: one });
    else twice.add(one.frame);
  }
  return { hands, equal: twice.size };
}

/** A hand that is more than one and a half palms away in the next frame was another hand. */
function jumps(hands: ReadonlyMap<number, TwoHands>, frames: number): number {
  let count = 0;
  for (let frame = 1; frame < frames; frame += 1) {
    for (const side of ['left', 'right'] as const) {
      const [a, b] = [hands.get(frame - 1)?.[side], hands.get(frame)?.[side]];
      if (a && b && Math.hypot(a.x - b.x, a.y - b.y) > 1.5 * Math.max(a.palm, b.palm)) count += 1;
    }
  }
  return count;
}

function printHands(all: readonly Searched[]): void {
  printTable(
    'Hands in films, in frames; frames with two of one kind by looks alone; jumps by looks alone → assigned together',
    ['', 'frames', 'both', 'left', 'right', 'none', 'more', 'two of one kind', 'jumps'],
    all.map((one) => {
      const sightings = sightingsOf(one);
      const joint = assignHands(sightings);
      const looks = alone(sightings);
      const { both, leftOnly, rightOnly, none, more } = reportOf(one.frames, joint, sightings);
      return [
        one.film,
        ...[one.frames, both, leftOnly, rightOnly, none, more].map(String),
        String(looks.equal),
        `${jumps(looks.hands, one.frames)} → ${jumps(joint, one.frames)}`,
      ];
    }),
  );
}

function printGolden(found: readonly Landmarks[], file: string): void {
  const expected = JSON.parse(readFileSync(file, 'utf8')) as readonly (readonly (readonly number[])[])[];
  const errors = found.flatMap(({ frame, points }) =>
    points.map(([x, y], index) => {
      const [px = Number.NaN, py = Number.NaN] = expected[frame]?.[index] ?? [];
      return Math.hypot(x - px, y - py);
    }),
  );
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  printTable(
    'Landmarks against those published with the clip (tensorflow/tfjs-models), 620 × 1080 pixels',
    ['', 'hands', 'frames', 'points', 'mean px', 'median px', 'p95 px'],
    [
      ['', String(found.length), String(expected.length), String(errors.length)].concat(
        [mean, quantile(errors, 0.5), quantile(errors, 0.95)].map(fixed),
      ),
    ],
  );
}

function printStills(all: Awaited<ReturnType<typeof handsInStills>>): void {
  printTable(
    'Hands in stills',
    ['', 'hands', 'of them look right'],
    all.map(({ url, hands, right }) => [url.split('/').at(-1) ?? url, String(hands), String(right)]),
  );
}
