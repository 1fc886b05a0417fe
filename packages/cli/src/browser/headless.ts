import { type ChildProcess, spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { findBrowser } from '../../../../scripts/browser/find.mjs';

/** The browser without a window, or why there is none. */
export type FoundBrowser = { readonly browser: string | null; readonly reason: string };

export function headlessBrowser(): FoundBrowser {
  return findBrowser();
}

export interface OpenPage {
  /** Resolves when the browser has ended by itself, with what it said last. */
  readonly ended: Promise<string>;
  readonly close: () => Promise<void>;
}

/** It reaches nothing but our own page: no accounts, no updates, no first questions. */
const flags = [
  '--headless',
  '--disable-gpu',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-extensions',
  '--disable-default-apps',
  '--no-first-run',
  '--no-default-browser-check',
  '--mute-audio',
];

/** Opens an address in a browser without a window, with a profile of its own that is removed in the end. */
export async function openHeadless(browser: string, address: string): Promise<OpenPage> {
  const profile = await mkdtemp(path.join(os.tmpdir(), 'evenhand-browser-'));
  // A browser refuses to sandbox its pages when it runs as root; ours loads nothing but our own page.
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(browser, [...flags, ...asRoot, `--user-data-dir=${profile}`, address], {
    stdio: ['ignore', 'ignore', 'pipe'],
    detached: process.platform !== 'win32',
  });
  let last = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    last = `${last}${text}`.slice(-2000);
  });
  const ended = new Promise<string>((resolve) => {
    child.once('error', (error) => resolve(error.message));
    child.once('exit', () => resolve(last.trim().split('\n').at(-1) ?? ''));
  });
  const leave = () => {
    end(child, 'SIGKILL');
    rmSync(profile, { recursive: true, force: true });
    process.exit(130);
  };
  // A person who stops the command stops the browser with it.
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const signal of signals) process.once(signal, leave);
  const close = async () => {
    for (const signal of signals) process.removeListener(signal, leave);
    end(child, 'SIGTERM');
    await ended;
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }).catch(() => {});
  };
  return { ended, close };
}

/** Ends the browser with all it started: what lies in the PATH may be a script that only starts it. */
function end(child: ChildProcess, signal: NodeJS.Signals): void {
  if (child.pid === undefined) return;
  try {
    if (process.platform === 'win32') child.kill(signal);
    else process.kill(-child.pid, signal);
  } catch {
    // It has ended by itself.
  }
}
