import type { OpenFilm } from '../film.ts';
import { openFilm } from '../open-film.ts';
import { reasonOf } from '../reason.ts';
import type { FilmSource } from '../source.ts';
import { browserHandModels } from './browser-models.ts';
import { CameraWatch } from './camera-watch.ts';
import { FramePixels } from './frame-pixels.ts';
import type { HandModels } from './hand-models.ts';
import { HandTracker, type TrackerSettings } from './hand-tracker.ts';
import type { HandsAnswer, HandsRequest } from './hands-messages.ts';
import { packSightings } from './packed-sightings.ts';
import type { Sighting } from './sighting.ts';
import type { Stretch } from './stretches.ts';

/*
 * Seeks hands in stretches of a film, one after the other. It reads the film itself, so that no picture passes through
 * the page.
 */

/** Frames are read one after another, so few are held. */
const cacheBytes = 100_000_000;

/**
 * A stretch is begun so many frames before its first, so that hands which are being followed there are not lost at the
 * seam; and what is found in it depends on the film alone, however many workers there are.
 */
const leadFrames = 12;

interface Ready {
  readonly film: OpenFilm;
  readonly models: HandModels;
  readonly pixels: FramePixels;
  readonly settings: TrackerSettings;
}

let ready: Promise<Ready | undefined> = Promise.resolve(undefined);

const say = (answer: HandsAnswer, transfer: Transferable[] = []) => postMessage(answer, { transfer });

addEventListener('message', ({ data }: MessageEvent<HandsRequest>) => {
  if (data.kind === 'open') {
    ready = open(data.film, data.settings).catch((error: unknown) => {
      say({ kind: 'failed', reason: reasonOf(error) });
      return undefined;
    });
    return;
  }
  search(data.stretch).catch((error: unknown) => say({ kind: 'failed', reason: reasonOf(error) }));
});

async function open(source: FilmSource, settings: TrackerSettings): Promise<Ready | undefined> {
  const [opened, models] = await Promise.all([openFilm(source, { cacheBytes }), browserHandModels()]);
  if (!opened.ok) {
    say({ kind: 'refused', findings: opened.error });
    return undefined;
  }
  say({ kind: 'opened' });
  return { film: opened.value, models, pixels: new FramePixels(opened.value.index), settings };
}

async function search(stretch: Stretch): Promise<void> {
  const parts = await ready;
  if (parts === undefined) return;
  const { film, models, pixels, settings } = parts;
  const tracker = new HandTracker(models, settings);
  const camera = new CameraWatch();
  const seen: Sighting[] = [];
  for (let frame = Math.max(0, stretch.from - leadFrames); frame < stretch.to; frame += 1) {
    const read = await film.reader.frame(frame);
    if (read.ok) {
      const picture = pixels.read(read.value);
      read.value.close();
      camera.next(picture);
      seen.push(...(await tracker.next(frame, picture)));
    }
    if (frame >= stretch.from) say({ kind: 'frame' });
  }
  const own = seen.filter(({ frame }) => frame >= stretch.from);
  own.sort((a, b) => a.frame - b.frame || a.trail - b.trail);
  const sightings = packSightings(own, pixels.scale);
  say({ kind: 'searched', stretch, sightings, camera: camera.found }, [sightings.buffer]);
}
