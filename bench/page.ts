import path from 'node:path';
import process from 'node:process';
import { chromium, type Page } from 'playwright-core';
import { createServer, type InlineConfig } from 'vite';
import { TEST_FLAGS } from '../scripts/browser/flags.mjs';

export const root = path.resolve(import.meta.dirname, '..');

export interface BenchPage {
  readonly page: Page;
  /** Calls what the page half of the benchmark exports, with arguments that JSON can carry. */
  readonly inPage: <T>(name: string, ...args: readonly unknown[]) => Promise<T>;
  readonly close: () => Promise<void>;
}

export interface BenchPageOptions {
  /** Packages that are made ready beforehand, so that none makes the page load anew. */
  readonly include: readonly string[];
  readonly exclude?: readonly string[];
  /** Folders outside the project that the page may read. */
  readonly allow?: readonly string[];
  readonly plugins?: InlineConfig['plugins'];
  readonly worker?: InlineConfig['worker'];
}

/**
 * Opens `bench/NAME.html` from the sources in a real browser; `bench/NAME-page.ts` is its page half. Where no browser was
 * found that is said, and the benchmark ends.
 */
export async function openBenchPage(
  name: string,
  { include, exclude = [], allow = [], plugins = [], worker }: BenchPageOptions,
): Promise<BenchPage> {
  const executablePath = process.env.EVENHAND_BROWSER;
  if (executablePath === undefined) {
    console.log('No browser was found, so nothing was measured. Bring one with: npm run browser');
    process.exit(0);
  }
  const server = await createServer({
    root,
    configFile: false,
    logLevel: 'error',
    appType: 'mpa',
    plugins,
    ...(worker === undefined ? {} : { worker }),
    server: { host: '127.0.0.1', port: 0, hmr: false, watch: null, fs: { allow: [root, ...allow] } },
    optimizeDeps: { include: [...include], exclude: [...exclude], entries: [`bench/${name}-page.ts`] },
  });
  await server.listen();
  const browser = await chromium.launch({ executablePath, args: TEST_FLAGS });
  const close = async () => {
    await browser.close();
    await server.close();
  };
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(new URL(`/bench/${name}.html`, server.resolvedUrls?.local[0]).href);
  return {
    page,
    inPage: (call, ...args) => {
      const words = args.map((arg) => JSON.stringify(arg)).join(', ');
      return page.evaluate(
        `import('/bench/${name}-page.ts').then((page) => page[${JSON.stringify(call)}](${words}))`,
      );
    },
    close,
  };
}
