import path from 'node:path';
import process from 'node:process';
import { chromium } from 'playwright-core';
import { createServer } from 'vite';
import { printRace, type Timings } from './harness.ts';
import type { RedrawTimes } from './score-page.ts';

/** The two-hand score repainted, and one edit from apply to repaint, in a real browser. */

const executablePath = process.env.EVENHAND_BROWSER;
if (executablePath === undefined) {
  console.log('No browser was found, so nothing was measured. Bring one with: npm run browser');
  process.exit(0);
}

const root = path.resolve(import.meta.dirname, '..');
const server = await createServer({
  root,
  configFile: false,
  logLevel: 'error',
  appType: 'mpa',
  server: { host: '127.0.0.1', port: 0, hmr: false, watch: null },
  optimizeDeps: { include: ['zod'], entries: ['bench/score-page.ts'] },
});
await server.listen();
const browser = await chromium.launch({
  executablePath,
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
  ],
});
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(new URL('/bench/score.html', server.resolvedUrls?.local[0]).href);
  for (const { motions, shown, timings } of await inPage<RedrawTimes[]>('redraws')) {
    printRace(
      `Repaint of the score, ${motions.toLocaleString('en')} motions, ${shown.toLocaleString('en')} in sight`,
      timings,
    );
  }
  for (const { motions, shown, timings } of await inPage<RedrawTimes[]>('ribbonRedraws')) {
    const sight = `${motions.toLocaleString('en')} motions, ${shown.toLocaleString('en')} in sight`;
    printRace(`Score and overview with proposals and the speed ribbon, ${sight}`, timings);
  }
  printRace('One edit, from apply to repaint', await inPage<Timings[]>('editToRepaint'));

  function inPage<T>(name: string): Promise<T> {
    return page.evaluate(`import('/bench/score-page.ts').then((page) => page[${JSON.stringify(name)}]())`);
  }
} finally {
  await browser.close();
  await server.close();
}
