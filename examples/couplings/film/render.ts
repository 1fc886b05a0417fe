import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { chromium, type Page } from 'playwright-core';
import { createServer, type ViteDevServer } from 'vite';
import { findBrowser } from '../../../scripts/browser/find.mjs';
import { canPack, packFilm } from './pack.ts';

const usage = `Draws the two films of the demonstration.
  npm run demo-film                                                 both films, into examples/couplings
  npm run demo-film -- --film present                               one of them (present or improved)
  npm run demo-film -- --film present --stills 40,90 --out FOLDER   single frames as PNG, to look at
  --width N --height N --bitrate N (bits a second) --frames N (only the first N)`;

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '..', '..', '..');
const filmIds = ['present', 'improved'] as const;
const flags = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

interface Wishes {
  readonly films: readonly string[];
  readonly stills: readonly number[];
  readonly out: string;
  readonly width: number;
  readonly height: number;
  readonly bitrate: number;
  /** Only so many frames from the start, for a trial. */
  readonly frames: number;
}

function readWishes(): Wishes | undefined {
  const text = { type: 'string' } as const;
  const options = {
    film: text,
    stills: text,
    out: text,
    width: text,
    height: text,
    bitrate: text,
    frames: text,
  };
  const { values } = parseArgs({ options: { ...options, help: { type: 'boolean' } } });
  if (values.help || (values.film !== undefined && !filmIds.some((id) => id === values.film)))
    return undefined;
  const wishes = {
    films: values.film === undefined ? filmIds : [values.film],
    stills: (values.stills ?? '').split(',').filter(Boolean).map(Number),
    out: values.out ?? join(here, '..'),
    width: Number(values.width ?? 960),
    height: Number(values.height ?? 540),
    bitrate: Number(values.bitrate ?? 380_000),
    frames: Number(values.frames ?? 1_000_000),
  };
  const numbers = [...wishes.stills, wishes.width, wishes.height, wishes.bitrate, wishes.frames];
  return numbers.every((number) => Number.isInteger(number) && number >= 0) ? wishes : undefined;
}

function startServer(): Promise<ViteDevServer> {
  return createServer({
    root,
    configFile: false,
    logLevel: 'error',
    cacheDir: join(root, 'node_modules', '.vite-demo-film'),
    optimizeDeps: { entries: ['examples/couplings/film/page.html'] },
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
  });
}

async function drawStills(page: Page, id: string, { stills, out }: Wishes): Promise<void> {
  for (const frame of stills) {
    await page.evaluate((at) => globalThis.filmDesk.draw(at), frame);
    const still = await page.evaluate(() => globalThis.filmDesk.still());
    writeFileSync(join(out, `${id}-${frame}.png`), Buffer.from(still.split(',')[1] ?? '', 'base64'));
  }
}

/** Where the film is to be packed afterwards it is first written large, at twenty times the rate. */
async function drawFilm(page: Page, id: string, { bitrate, frames, out }: Wishes): Promise<void> {
  page.setDefaultTimeout(0);
  const packed = canPack();
  const rate = packed ? bitrate * 20 : bitrate;
  const film = await page.evaluate(([bits, most]) => globalThis.filmDesk.record(bits, most), [
    rate,
    frames,
  ] as const);
  const path = join(out, `${id}.mp4`);
  const drawn = packed ? join(out, `${id}.large.mp4`) : path;
  writeFileSync(drawn, Buffer.from(film, 'base64'));
  if (!packed) return console.log('No ffmpeg was found: the film stays as the browser packed it.');
  packFilm(drawn, path, bitrate);
  rmSync(drawn);
}

async function main(wishes: Wishes, executablePath: string): Promise<void> {
  const server = await startServer();
  await server.listen();
  const browser = await chromium.launch({ executablePath, args: flags });
  mkdirSync(wishes.out, { recursive: true });
  try {
    for (const id of wishes.films) {
      const page = await browser.newPage();
      page.on('console', (message) => console.log(message.text()));
      page.on('pageerror', (error) => console.error(error));
      await page.goto(`${server.resolvedUrls?.local[0] ?? ''}examples/couplings/film/page.html`);
      await page.waitForFunction(() => 'filmDesk' in globalThis);
      const size = [id, wishes.width, wishes.height] as const;
      await page.evaluate(([film, width, height]) => globalThis.filmDesk.open(film, width, height), size);
      await (wishes.stills.length > 0 ? drawStills : drawFilm)(page, id, wishes);
      await page.close();
    }
  } finally {
    await browser.close();
    await server.close();
  }
}

const wishes = readWishes();
const found = findBrowser();
if (wishes === undefined) {
  console.error(usage);
  process.exitCode = 2;
} else if (found.browser === null) {
  console.error(`${found.reason}. To bring one: npm run browser`);
  process.exitCode = 2;
} else {
  await main(wishes, found.browser);
}
