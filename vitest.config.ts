import { existsSync, readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { playwright } from '@vitest/browser-playwright';
import type { ProvidedContext } from 'vitest';
import { defineConfig } from 'vitest/config';
import { TEST_FLAGS } from './scripts/browser/flags.mjs';
import { liteRtLoader } from './scripts/vite/litert-loader.mjs';

const root = import.meta.dirname;
const executablePath = process.env.EVENHAND_BROWSER;

/** Real films for the tests, from a folder outside the project. Without it the tests on them are skipped by name. */
const folder = process.env.EVENHAND_FILMS ? path.resolve(process.env.EVENHAND_FILMS) : null;
const provide: ProvidedContext = {
  realFilms: folder !== null && existsSync(folder) ? { folder, names: readdirSync(folder).sort() } : null,
};

const node = {
  test: {
    name: 'node',
    environment: 'node' as const,
    include: [
      'packages/**/*.test.{ts,tsx}',
      'tests/**/*.test.ts',
      'examples/**/*.test.ts',
      'bench/**/*.test.ts',
    ],
    exclude: ['**/*.browser.test.{ts,tsx}', 'tests/journeys/**', '**/node_modules/**'],
    testTimeout: 60_000,
    // Reading the modules anew for every file took longer than the tests; no test may leave anything behind in one.
    isolate: false,
    // Left to itself the runner keeps one of two processors idle.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    sequence: { groupOrder: 0 },
    provide,
  },
};

/** Tests that run inside a page: film reading, canvas painting. */
const browser = {
  plugins: [liteRtLoader()],
  // Named beforehand: a package first met in the middle of a run makes the page load anew under the test.
  optimizeDeps: {
    exclude: ['@litertjs/core'],
    include: [
      'axe-core',
      'fast-check',
      'idb',
      'mediabunny',
      'react',
      'react-aria-components',
      'react-dom',
      'react-dom/client',
      'react/jsx-dev-runtime',
      'react/jsx-runtime',
      'tus-js-client',
      'zod',
    ],
  },
  // A page may read the real films under /@fs/, with ranges.
  server: { fs: { allow: [root, ...(folder ? [folder] : [])] } },
  test: {
    name: 'browser',
    include: ['packages/**/*.browser.test.{ts,tsx}', 'tests/**/*.browser.test.ts'],
    testTimeout: 120_000,
    sequence: { groupOrder: 1 },
    provide,
    browser: {
      enabled: true,
      headless: true,
      screenshotFailures: false,
      provider: playwright({
        launchOptions: { args: TEST_FLAGS, ...(executablePath ? { executablePath } : {}) },
      }),
      instances: [{ browser: 'chromium' as const }],
    },
  },
};

/** Tests that start the real server and drive the real app from outside. */
const journeys = {
  test: {
    name: 'journeys',
    environment: 'node' as const,
    include: ['tests/journeys/**/*.test.ts'],
    testTimeout: 240_000,
    hookTimeout: 120_000,
    // A machine that is busy with other things can make a page late; what passed only the second time is named.
    retry: 1,
    // A browser without windows leaves half of two processors idle.
    maxWorkers: 2,
    sequence: { groupOrder: 2 },
    provide,
  },
};

export default defineConfig({ test: { projects: executablePath ? [node, browser, journeys] : [node] } });
