// The import table: who may import what. `npm run check` judges every import against it, those of types included.
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { judgeTree } from './import-rules.mjs';

/**
 * @typedef {object} Zone
 * @property {string} folder the most specific folder that holds a file gives its row
 * @property {readonly string[]} doors doors of other packages that may be used; a trailing * stands for all doors below
 * @property {readonly string[]} libraries packages of the npm registry; ['*'] stands for every one that is declared
 * @property {boolean} node may Node's own modules be used?
 * @property {readonly string[]} [beside] folders outside the file's own one that may be reached by a relative path
 *
 * @typedef {object} Debt an import that breaks the table and is suffered for a time
 * @property {string} file
 * @property {string} imports
 * @property {string} since the day it was written down, YYYY-MM-DD
 * @property {string} reason
 *
 * @typedef {object} Table
 * @property {readonly string[]} ground the folders of packages/core/src/ground; each may import those before it
 * @property {readonly string[]} steps the folders of packages/core/src/steps; each may import ground and those before it
 * @property {readonly Zone[]} zones
 * @property {readonly string[]} testLibraries what the tests of every package may use besides
 * @property {readonly Debt[]} debts
 * @property {number} fewest fewer modules than this mean that the check looked in the wrong place
 */

const CORE = '@evenhand/core/*';
const HOUSE = ['scripts', 'tools', 'tests', 'bench', 'examples'];

/** @type {Table} */
export const TABLE = {
  ground: ['base', 'units', 'numerics', 'findings', 'tables', 'scene', 'study', 'edit'],
  steps: ['select', 'record', 'examine', 'develop', 'evaluate', 'define', 'install', 'maintain'],
  zones: [
    {
      folder: 'packages/core',
      doors: [],
      libraries: [
        'zod',
        '@stdlib/stats-base-dists-f-cdf',
        '@stdlib/stats-base-dists-normal-cdf',
        '@stdlib/stats-base-dists-normal-quantile',
        '@stdlib/stats-base-dists-t-cdf',
        '@stdlib/stats-base-dists-t-quantile',
      ],
      node: false,
    },
    { folder: 'packages/draw', doors: [CORE], libraries: ['@fontsource/ibm-plex-sans'], node: false },
    {
      folder: 'packages/draw/src/pdf',
      doors: [CORE],
      libraries: ['@myriaddreamin/typst-ts-node-compiler', '@expo-google-fonts/ibm-plex-sans'],
      node: true,
    },
    {
      folder: 'packages/media',
      doors: [CORE],
      libraries: ['mediabunny', '@litertjs/core', '@mediapipe/hands'],
      node: false,
    },
    { folder: 'packages/store', doors: [CORE], libraries: ['kysely', '@photostructure/sqlite'], node: true },
    {
      folder: 'packages/server',
      doors: [CORE, '@evenhand/store', '@evenhand/draw', '@evenhand/draw/pdf'],
      libraries: ['hono', '@hono/node-server', 'zod'],
      node: true,
    },
    {
      folder: 'packages/app',
      doors: [CORE, '@evenhand/draw', '@evenhand/media'],
      libraries: [
        'react',
        'react-dom',
        'react-aria-components',
        'idb',
        'tus-js-client',
        '@observablehq/plot',
        '@fontsource/ibm-plex-sans',
      ],
      node: false,
    },
    {
      folder: 'packages/cli',
      doors: [CORE, '@evenhand/draw', '@evenhand/draw/pdf', '@evenhand/store', '@evenhand/server'],
      libraries: [],
      node: true,
    },
    {
      folder: 'packages/cli/src/browser',
      doors: [CORE, '@evenhand/server'],
      libraries: [],
      node: true,
      beside: ['packages/cli', 'scripts'],
    },
    { folder: 'packages/cli/bin', doors: [], libraries: [], node: true, beside: ['scripts'] },
    ...HOUSE.map((folder) => ({
      folder,
      doors: ['@evenhand/*'],
      libraries: ['*'],
      node: true,
      beside: HOUSE,
    })),
  ],
  testLibraries: ['vitest', 'fast-check', 'axe-core', 'playwright-core', '@vitest/browser'],
  debts: [],
  fewest: 40,
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
  const { violations, modules, imports } = judgeTree(root, TABLE);
  for (const { file, line, text } of violations) console.error(`${file}:${line} ${text}`);
  console.log(
    `${modules} modules with ${imports} imports read, ${violations.length} against the table in tools/layers.mjs`,
  );
  process.exitCode = violations.length === 0 ? 0 : 1;
}
