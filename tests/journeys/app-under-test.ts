import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { type Browser, chromium, type Page } from 'playwright-core';
import { TEST_FLAGS } from '../../scripts/browser/flags.mjs';

/** The built program as a person starts it, in a data folder of its own, with a browser. */
export interface AppUnderTest {
  readonly address: string;
  readonly data: string;
  readonly browser: Browser;
  /** A new page that notes every request to another host and every fault of the page. */
  readonly page: (size?: { width: number; height: number }) => Promise<WatchedPage>;
  /** Closes every page, so that no window is left on a study. */
  readonly closePages: () => Promise<void>;
  readonly stopServer: () => Promise<void>;
  readonly startServer: () => Promise<void>;
  readonly close: () => Promise<void>;
}

export interface WatchedPage {
  readonly page: Page;
  readonly strangers: string[];
  readonly faults: string[];
}

export async function startApp(args: readonly string[] = []): Promise<AppUnderTest> {
  const data = await mkdtemp(path.join(os.tmpdir(), 'evenhand-journey-'));
  let server = await startProgram(data, args, undefined);
  const { address } = server;
  const executablePath = process.env.EVENHAND_BROWSER;
  const browser = await chromium.launch({
    args: TEST_FLAGS,
    ...(executablePath === undefined ? {} : { executablePath }),
  });
  return {
    address,
    data,
    browser,
    page: async (size = { width: 1440, height: 900 }) => await watched(browser, address, size),
    closePages: async () => {
      for (const context of browser.contexts()) await context.close();
    },
    stopServer: async () => await stop(server.child),
    startServer: async () => {
      server = await startProgram(data, args, new URL(address).port);
    },
    close: async () => {
      await browser.close();
      await stop(server.child);
      await rm(data, { recursive: true, force: true });
    },
  };
}

async function startProgram(
  data: string,
  args: readonly string[],
  port: string | undefined,
): Promise<{ child: ChildProcess; address: string }> {
  const call = [
    'dist/cli/evenhand.js',
    'serve',
    '--data',
    data,
    '--json',
    ...args,
    ...(port === undefined ? [] : ['--port', port]),
  ];
  const child = spawn(process.execPath, call, { stdio: ['ignore', 'pipe', 'inherit'] });
  const text = await new Promise<string>((resolve, reject) => {
    let seen = '';
    child.stdout?.on('data', (part: Buffer) => {
      seen += part.toString('utf8');
      if (/\}\s*$/.test(seen)) resolve(seen);
    });
    child.once('exit', (code) => reject(new Error(`the program ended with ${code} before it was ready`)));
  });
  return { child, address: (JSON.parse(text) as { address: string }).address };
}

async function stop(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await gone;
}

async function watched(
  browser: Browser,
  address: string,
  viewport: { width: number; height: number },
): Promise<WatchedPage> {
  const page = await (await browser.newContext({ viewport, acceptDownloads: true })).newPage();
  const strangers: string[] = [];
  const faults: string[] = [];
  page.on('request', (request) => {
    const { host, protocol } = new URL(request.url());
    if (protocol.startsWith('http') && host !== new URL(address).host) strangers.push(request.url());
  });
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.text().includes('Content Security Policy')) faults.push(message.text());
  });
  await page.goto(address);
  return { page, strangers, faults };
}

/** Waits until the asked frame is the shown one, and tells which it is. */
export async function shownFrame(page: Page): Promise<number> {
  const output = page.locator('output.frame[data-ready=true]');
  await output.waitFor();
  return Number(await output.getAttribute('data-frame'));
}

export async function allSaved(page: Page): Promise<void> {
  await page.locator('.save-state[data-saved=true]').waitFor();
}
