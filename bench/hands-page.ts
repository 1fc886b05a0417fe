import { openFilm, trackFilm } from '@evenhand/media';
import { type HandStretch, HandTracker, type TrackerSettings, usualSettings } from '@evenhand/media/hands';
import { browserHandModels, FramePixels } from '@evenhand/media/hands-in-browser';

/** The page half of the benchmark of the search for hands. */

export interface Searched {
  readonly film: string;
  readonly frames: number;
  readonly seconds: number;
  /** Until the first frame was searched: the models start. */
  readonly startSeconds: number;
  /** The longest time between two pictures of the page while the workers ran, in milliseconds, and the 99th percentile. */
  readonly longestGap: number;
  readonly gap99: number;
  readonly stretches: readonly {
    readonly from: number;
    readonly to: number;
    readonly sightings: readonly number[];
  }[];
  readonly findings: readonly string[];
}

export async function searchFilm(
  url: string,
  workers: 1 | 2,
  settings: Partial<TrackerSettings> = {},
): Promise<Searched> {
  const film = url.split('/').at(-1) ?? url;
  const stretches: HandStretch[] = [];
  const gaps = watchGaps();
  const begun = performance.now();
  let first: number | undefined;
  const found = await trackFilm(
    { url, name: film },
    {
      workers,
      settings,
      onProgress: ({ done }) => {
        if (done > 0) first ??= performance.now();
      },
      onStretch: (stretch) => stretches.push(stretch),
    },
  );
  const seconds = (performance.now() - begun) / 1000;
  if (!found.ok) throw new Error(found.error[0]?.message);
  const times = gaps().sort((a, b) => a - b);
  return {
    film,
    frames: found.value.report.frames,
    seconds,
    startSeconds: ((first ?? begun) - begun) / 1000,
    longestGap: times.at(-1) ?? 0,
    gap99: times[Math.floor(times.length * 0.99)] ?? 0,
    stretches: stretches
      .sort((a, b) => a.from - b.from)
      .map(({ from, to, sightings }) => ({ from, to, sightings: [...sightings] })),
    findings: found.value.findings.map(({ message }) => message),
  };
}

function watchGaps(): () => number[] {
  const gaps: number[] = [];
  let last = performance.now();
  let going = true;
  const tick = () => {
    const now = performance.now();
    gaps.push(now - last);
    last = now;
    if (going) requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
  return () => {
    going = false;
    return gaps;
  };
}

let models: ReturnType<typeof browserHandModels> | undefined;

/** The library starts once in a page. */
function pageModels(): ReturnType<typeof browserHandModels> {
  models ??= browserHandModels();
  return models;
}

export interface Landmarks {
  readonly frame: number;
  readonly points: readonly (readonly [number, number])[];
  readonly right: number;
}

/** All landmarks of every hand in every so many frames, by the same way as the workers. */
export async function landmarksOf(url: string, every = 1): Promise<Landmarks[]> {
  const opened = await openFilm({ url, name: url });
  if (!opened.ok) throw new Error(opened.error[0]?.message);
  const film = opened.value;
  const models = await pageModels();
  const pixels = new FramePixels(film.index);
  const tracker = new HandTracker(models);
  const found: Landmarks[] = [];
  for (let frame = 0; frame < film.reader.frames; frame += every) {
    const read = await film.reader.frame(frame);
    if (!read.ok) continue;
    const seen = await tracker.next(frame, pixels.read(read.value));
    read.value.close();
    for (const { frame, landmarks, right } of seen)
      found.push({
        frame,
        points: landmarks.map(({ x, y }) => [x * pixels.scale, y * pixels.scale] as const),
        right,
      });
  }
  film.dispose();
  return found;
}

export interface Runs {
  readonly film: string;
  readonly frames: number;
  /** Hands seen in all frames together. */
  readonly sightings: number;
  readonly palms: number;
  readonly hands: number;
  /** Milliseconds in all: the runs of each model, and reading the frames. */
  readonly palmMs: number;
  readonly handMs: number;
  readonly readMs: number;
  readonly ms: number;
}

/** How often each model runs for a frame of a film, and how long that takes: runs do not depend on the machine. */
export async function runsOf(url: string, settings: Partial<TrackerSettings> = {}): Promise<Runs> {
  const film = url.split('/').at(-1) ?? url;
  const opened = await openFilm({ url, name: film });
  if (!opened.ok) throw new Error(opened.error[0]?.message);
  const { reader, index } = opened.value;
  const models = await pageModels();
  const counts = { palms: 0, hands: 0, palmMs: 0, handMs: 0, readMs: 0, sightings: 0 };
  const begun = performance.now();
  const timed = async <T>(what: 'palmMs' | 'handMs' | 'readMs', work: () => Promise<T>): Promise<T> => {
    const from = performance.now();
    const value = await work();
    counts[what] += performance.now() - from;
    return value;
  };
  const tracker = new HandTracker(
    {
      palms: (input) => {
        counts.palms += 1;
        return timed('palmMs', () => models.palms(input));
      },
      hand: (input) => {
        counts.hands += 1;
        return timed('handMs', () => models.hand(input));
      },
      dispose: () => {},
    },
    { ...usualSettings, ...settings },
  );
  const pixels = new FramePixels(index);
  for (let frame = 0; frame < reader.frames; frame += 1) {
    const picture = await timed('readMs', async () => {
      const read = await reader.frame(frame);
      if (!read.ok) return undefined;
      const numbers = pixels.read(read.value);
      read.value.close();
      return numbers;
    });
    if (picture !== undefined) counts.sightings += (await tracker.next(frame, picture)).length;
  }
  const frames = reader.frames;
  opened.value.dispose();
  return { film, frames, ...counts, ms: performance.now() - begun };
}

/** How many hands are seen in a still picture, and how many of them look like right hands. */
export async function handsInStills(
  urls: readonly string[],
): Promise<{ readonly url: string; readonly hands: number; readonly right: number }[]> {
  const models = await pageModels();
  const found = [];
  for (const url of urls) {
    const bitmap = await createImageBitmap(await (await fetch(url)).blob());
    const { width, height } = bitmap;
    const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
    if (context === null) throw new Error('there is no canvas to draw on');
    context.drawImage(bitmap, 0, 0);
    const picture = { width, height, data: context.getImageData(0, 0, width, height).data };
    const seen = await new HandTracker(models).next(0, picture);
    found.push({ url, hands: seen.length, right: seen.filter(({ right }) => right > 0.5).length });
  }
  return found;
}
