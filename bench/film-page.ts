import { createPlayer, indexFilm, type OpenFilm, openFilm } from '@evenhand/media';
import { type EncodedPacket, EncodedPacketSink, BufferSource as FilmBytes, Input, MP4 } from 'mediabunny';
import { makeDrawnFilm } from '../tests/films/drawn-films.ts';
import { mux } from '../tests/films/mux.ts';
import { readNumber } from '../tests/films/number-picture.ts';

/** The page half of the film benchmark; everything here runs in one page, on one film. */

const [width, height, frames, framesPerGroup] = [1920, 1080, 240, 60];
const [steps, blocks] = [40, 3];

export interface StepTimes {
  readonly way: 'forward' | 'backward' | 'jump';
  readonly reader: string;
  readonly ms: readonly number[];
  /** How many of the steps showed the frame that was asked for. */
  readonly right: number;
}

/** Shows frame k on the canvas. */
type Show = (k: number, context: OffscreenCanvasRenderingContext2D) => Promise<void>;

function makeFilm(): Promise<Uint8Array<ArrayBuffer>> {
  return makeDrawnFilm({
    container: 'mp4-index-first',
    frames,
    width,
    height,
    keyFrameInterval: framesPerGroup / 30,
    backdrop: (context, frame) => {
      for (let at = 0; at < 160; at += 1) {
        context.fillStyle = `hsl(${at * 37} 60% ${30 + ((at * 17) % 50)}%)`;
        context.fillRect(
          (at * 211 + frame * (at % 9)) % width,
          (at * 97 + frame * (at % 5)) % height,
          240,
          130,
        );
      }
    },
  });
}

function ours({ reader }: OpenFilm): Show {
  return async (k, context) => {
    const result = await reader.frame(k);
    if (!result.ok) throw new Error(result.error.message);
    result.value.draw(context, 0, 0, context.canvas.width, context.canvas.height);
    result.value.close();
  };
}

function plainVideo(video: HTMLVideoElement, timeOf: (k: number) => number): Show {
  return async (k, context) => {
    const seeked = new Promise((resolve) => video.addEventListener('seeked', resolve, { once: true }));
    video.currentTime = timeOf(k);
    await seeked;
    context.drawImage(video, 0, 0, context.canvas.width, context.canvas.height);
  };
}

async function loadVideo(film: Blob): Promise<HTMLVideoElement> {
  const video = document.createElement('video');
  video.muted = true;
  video.preload = 'auto';
  const ready = new Promise((resolve, reject) => {
    video.addEventListener('canplaythrough', resolve, { once: true });
    video.addEventListener('error', reject, { once: true });
  });
  video.src = URL.createObjectURL(film);
  await ready;
  return video;
}

/** Frames asked for, one after another: a jump in, not measured, and then the steps. */
function journey(way: StepTimes['way'], block: number): readonly number[] {
  const start = 50 + block * 37;
  const at = { forward: (step: number) => start + step, backward: (step: number) => start + steps - step };
  return Array.from({ length: steps + 1 }, (_, step) =>
    way === 'jump' ? (start + step * 97) % frames : at[way](step),
  );
}

/** Steps through the film by every reader in turn; each picture is drawn small and its number read back. */
export async function stepThrough(): Promise<StepTimes[]> {
  const file = new File([await makeFilm()], 'bench.mp4');
  const opened = await openFilm(file);
  if (!opened.ok) throw new Error(opened.error[0]?.message);
  const video = await loadVideo(file);
  const readers: readonly (readonly [string, Show])[] = [
    ['exact frames', ours(opened.value)],
    ['<video>, middle of the frame', plainVideo(video, (k) => (k + 0.5) / 30)],
    ['<video>, start of the frame', plainVideo(video, (k) => k / 30)],
  ];
  const results: StepTimes[] = [];
  for (const way of ['forward', 'backward', 'jump'] as const) {
    const times = readers.map(([reader]) => ({ way, reader, ms: [] as number[], right: 0 }));
    for (let block = 0; block < blocks; block += 1) {
      for (const [at, [, show]] of readers.entries()) {
        const into = times[at];
        if (into !== undefined) await walk(journey(way, block), show, into);
      }
    }
    results.push(...times);
  }
  opened.value.dispose();
  return results;
}

async function walk(
  asked: readonly number[],
  show: Show,
  into: { ms: number[]; right: number },
): Promise<void> {
  // The number fills the first quarter of the picture each way: 64 pixels of 256.
  const context = new OffscreenCanvas(256, 256).getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('there is no canvas to draw on');
  for (const [step, k] of asked.entries()) {
    const begun = performance.now();
    await show(k, context);
    const ms = performance.now() - begun;
    const number = readNumber(context.getImageData(0, 0, 64, 64));
    if (step === 0) continue;
    into.ms.push(ms);
    if (number === k) into.right += 1;
  }
}

export interface PlayTimes {
  readonly speed: number;
  /** Frames that came on screen in a second, and how many the film has in that time. */
  readonly shown: number;
  readonly due: number;
}

/** Plays the film and counts what is shown. */
export async function playThrough(): Promise<PlayTimes[]> {
  const opened = await openFilm(new File([await makeFilm()], 'bench.mp4'));
  if (!opened.ok) throw new Error(opened.error[0]?.message);
  const canvas = document.createElement('canvas');
  document.body.append(canvas);
  [canvas.width, canvas.height] = [960, 540];
  const context = canvas.getContext('2d');
  const results: PlayTimes[] = [];
  for (const speed of [1, -1, 2, 0.25, -0.25]) {
    const player = createPlayer(opened.value.reader, opened.value.clock, {
      start: speed > 0 ? 10 : frames - 10,
    });
    const shownAt: number[] = [];
    player.onShown(({ handle }) => {
      if (context !== null) handle.draw(context, 0, 0, canvas.width, canvas.height);
      shownAt.push(performance.now());
    });
    player.play(speed);
    await new Promise((resolve) => setTimeout(resolve, 3500));
    const [first, last] = [shownAt[1] ?? 0, shownAt.at(-1) ?? 0];
    results.push({ speed, shown: ((shownAt.length - 2) * 1000) / (last - first), due: 30 * Math.abs(speed) });
    player.dispose();
  }
  opened.value.dispose();
  return results;
}

export interface IndexTimes {
  readonly container: string;
  readonly frames: number;
  readonly indexMs: readonly number[];
  /** Time of decoding as many frames of the same film, scaled from the first tenth. */
  readonly decodeMs: number;
  readonly megabytes: number;
}

/** Indexes films of 30 minutes, made of one short film's coded pictures over and over again. */
export async function indexLongFilm(): Promise<IndexTimes[]> {
  const results: IndexTimes[] = [];
  for (const [container, codec] of [
    ['mp4', 'avc'],
    ['webm', 'vp9'],
  ] as const) {
    const long = new File([await repeated(container, codec, 54_000)], `long.${container}`);
    const indexMs: number[] = [];
    let count = 0;
    for (let round = 0; round < 5; round += 1) {
      const begun = performance.now();
      const indexed = await indexFilm(long);
      indexMs.push(performance.now() - begun);
      if (!indexed.ok) throw new Error(indexed.error[0]?.message);
      count = indexed.value.clock.frames;
    }
    const decodeMs = (await decodeFirst(long, count / 10)) * 10;
    results.push({ container, frames: count, indexMs, decodeMs, megabytes: long.size / 1e6 });
  }
  return results;
}

async function repeated(
  container: 'mp4' | 'webm',
  codec: 'avc' | 'vp9',
  count: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await makeDrawnFilm({ codec, frames: 60, width: 320, height: 180, keyFrameInterval: 2 });
  const input = new Input({ source: new FilmBytes(bytes), formats: [MP4] });
  const track = await input.getPrimaryVideoTrack();
  const config = await track?.getDecoderConfig();
  if (!track || !config) throw new Error('the short film cannot be read');
  const short: EncodedPacket[] = [];
  for await (const packet of new EncodedPacketSink(track).packets()) short.push(packet);
  const packets = Array.from({ length: count }, (_, k) => {
    const { data, type } = short[k % short.length] ?? { data: new Uint8Array(0), type: 'key' };
    return { data, key: type === 'key', start: k / 30, duration: 1 / 30 };
  });
  input.dispose();
  return mux(container, [{ codec, config, packets }]);
}

async function decodeFirst(film: File, count: number): Promise<number> {
  const opened = await openFilm(film);
  if (!opened.ok) throw new Error(opened.error[0]?.message);
  const begun = performance.now();
  for (let k = 0; k < count; k += 1) {
    const result = await opened.value.reader.frame(k);
    if (result.ok) result.value.close();
  }
  const ms = performance.now() - begun;
  opened.value.dispose();
  return ms;
}
