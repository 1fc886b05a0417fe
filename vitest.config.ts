import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';

const executablePath = process.env.EVENHAND_BROWSER;
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const node = {
  test: {
    name: 'node',
    environment: 'node' as const,
    include: ['packages/**/*.test.ts', 'tests/reference/**/*.test.ts', 'tests/house/**/*.test.ts'],
    exclude: ['**/*.browser.test.ts', '**/node_modules/**'],
    testTimeout: 60_000,
  },
};

/** Tests that run inside a page: film reading, canvas painting. */
const browser = {
  optimizeDeps: { include: ['mediabunny'] },
  test: {
    name: 'browser',
    include: ['packages/**/*.browser.test.ts', 'tests/films/**/*.browser.test.ts'],
    testTimeout: 120_000,
    browser: {
      enabled: true,
      headless: true,
      screenshotFailures: false,
      provider: playwright({
        launchOptions: { args: flags, ...(executablePath ? { executablePath } : {}) },
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
    fileParallelism: false,
  },
};

export default defineConfig({ test: { projects: executablePath ? [node, browser, journeys] : [node] } });
