import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { chromium } from 'playwright-core';
import { createServer } from 'vite';

const usage = `Draws the two films of the demonstration.
  npm run demo-film                                        both films, into examples/couplings
  npm run demo-film -- --film present                      one of them
  npm run demo-film -- --film present --stills 40,90 --out FOLDER   single frames as PNG, to look at
  --width N, --height N, --bitrate N (bits a second)`;

const { values } = parseArgs({
  options: {
    film: { type: 'string' },
    stills: { type: 'string' },
    out: { type: 'string' },
    width: { type: 'string', default: '1280' },
    height: { type: 'string', default: '720' },
    bitrate: { type: 'string', default: '340000' },
    help: { type: 'boolean', default: false },
  },
});

const here = dirname(fileURLToPath(import.meta.url));
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

async function main(): Promise<void> {
  if (values.help) return console.log(usage);
  const server = await createServer({
    root: join(here, '..', '..', '..'),
    configFile: false,
    logLevel: 'error',
    cacheDir: join(here, '..', '..', '..', 'node_modules', '.vite-demo-film'),
    optimizeDeps: { entries: ['examples/couplings/film/page.html'] },
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
  });
  await server.listen();
  const address = server.resolvedUrls?.local[0] ?? '';
  const browser = await chromium.launch({
    executablePath: process.env.EVENHAND_BROWSER ?? '/usr/bin/chromium',
    args: flags,
  });
  try {
    const ids = values.film === undefined ? ['present', 'improved'] : [values.film];
    for (const id of ids) {
      const page = await browser.newPage();
      page.on('console', (message) => console.log(message.text()));
      page.on('pageerror', (error) => console.error(error));
      await page.goto(`${address}examples/couplings/film/page.html`);
      await page.waitForFunction(() => 'filmDesk' in globalThis);
      await page.evaluate(([film, width, height]) => globalThis.filmDesk.open(film, width, height), [
        id,
        Number(values.width),
        Number(values.height),
      ] as const);
      const out = values.out ?? join(here, '..');
      mkdirSync(out, { recursive: true });
      if (values.stills !== undefined) {
        for (const frame of values.stills.split(',').map(Number)) {
          await page.evaluate((at) => globalThis.filmDesk.draw(at), frame);
          const still = await page.evaluate(() => globalThis.filmDesk.still());
          writeFileSync(join(out, `${id}-${frame}.png`), Buffer.from(still.split(',')[1] ?? '', 'base64'));
        }
      } else {
        page.setDefaultTimeout(0);
        const film = await page.evaluate((rate) => globalThis.filmDesk.record(rate), Number(values.bitrate));
        writeFileSync(join(out, `${id}.mp4`), Buffer.from(film, 'base64'));
      }
      await page.close();
    }
  } finally {
    await browser.close();
    await server.close();
  }
}

await main();
