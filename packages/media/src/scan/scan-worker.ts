import { FramePixels } from '../hands/frame-pixels.ts';
import { openFilm } from '../open-film.ts';
import { reasonOf } from '../reason.ts';
import type { ScanAnswer, ScanRequest } from './scan-messages.ts';
import { scanner } from './scanner.ts';

/* Goes through a film once and looks for coloured bands or movement. It reads the film itself, so that the page stays fluent. */

/** Frames are read one after another, so few are held. */
const cacheBytes = 100_000_000;
/** A band a finger wide has some twenty pixels at this size when both hands fill the picture. */
const longestSide = 640;

const say = (answer: ScanAnswer) => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<ScanRequest>) => {
  scan(data).catch((error: unknown) => say({ kind: 'failed', reason: reasonOf(error) }));
});

async function scan({ film: source, wish }: ScanRequest): Promise<void> {
  const opened = await openFilm(source, { cacheBytes });
  if (!opened.ok) return say({ kind: 'refused', findings: opened.error });
  const { index, clock, reader, dispose } = opened.value;
  say({ kind: 'opened', frames: clock.frames });
  const pixels = new FramePixels(index, longestSide);
  const { width, height } = index;
  const made = scanner(
    { frames: clock.frames, width, height, scale: pixels.scale, timeOf: clock.timeOf },
    wish,
  );
  for (let frame = 0; frame < clock.frames; frame += 1) {
    const read = await reader.frame(frame);
    made.next(read.ok ? pixels.read(read.value) : undefined);
    if (read.ok) read.value.close();
    say({ kind: 'frame' });
  }
  dispose();
  say({ kind: 'done', scanned: made.end() });
}
