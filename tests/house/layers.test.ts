import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { judgeTree } from '../../tools/import-rules.mjs';
import { TABLE } from '../../tools/layers.mjs';
import { readImports } from '../../tools/read-imports.mjs';
import { temporaryTree } from './temporary-tree.ts';

const manifest = (value: object): string => JSON.stringify(value);

/** A small project that keeps every rule; each test plants one fault in it. */
const clean: Readonly<Record<string, string>> = {
  'package.json': manifest({ devDependencies: { vitest: '1' } }),
  'packages/core/package.json': manifest({
    exports: { './ground/*': './src/ground/*/index.ts', './record': './src/steps/record/index.ts' },
    dependencies: { zod: '1' },
  }),
  'packages/core/src/ground/base/index.ts': "export * from './brands.ts';",
  'packages/core/src/ground/base/brands.ts': "import { z } from 'zod'; export const b = z;",
  'packages/core/src/ground/edit/index.ts':
    "import type { b } from '../base/index.ts'; export type E = typeof b;",
  'packages/core/src/steps/record/index.ts': "export type { E } from '../../ground/edit/index.ts';",
  'packages/core/src/steps/record/x.test.ts':
    "import { test } from 'vitest'; import 'node:fs'; test('x', () => {});",
  'packages/core/src/steps/examine/index.ts': "import '../record/index.ts';",
  'packages/draw/package.json': manifest({
    exports: { '.': './src/index.ts', './pdf': './src/pdf/index.ts' },
  }),
  'packages/draw/src/index.ts': "import { b } from '@evenhand/core/ground/base'; export { b };",
  'packages/draw/src/pdf/index.ts': "import 'node:fs';",
  'packages/app/package.json': manifest({ exports: { '.': './src/index.ts' }, dependencies: { react: '1' } }),
  'packages/app/src/index.ts': "import 'react'; import '@evenhand/draw'; import './look.css';",
  'packages/app/src/look.css': '',
  'tests/journeys/a.test.ts': "import '@evenhand/core/record'; import '../../tools/t.mjs';",
  'tools/t.mjs': "import 'node:fs';",
};

const table = { ...TABLE, fewest: 5, debts: [] };

function faultsOf(files: Readonly<Record<string, string>>, changed: Partial<typeof TABLE> = {}): string[] {
  const root = temporaryTree({ ...clean, ...files });
  return judgeTree(root, { ...table, ...changed }).violations.map(({ file, text }) => `${file}: ${text}`);
}

test('a project that keeps the rules has no violation', () => {
  expect(faultsOf({})).toEqual([]);
});

describe('a planted fault is found:', () => {
  const base = 'packages/core/src/ground/base/brands.ts';
  const cases: readonly (readonly [string, string, string, string])[] = [
    ['ground imports a step', base, "import '../../steps/record/index.ts';", 'steps/record'],
    [
      'ground imports the type of a step',
      base,
      "import type { E } from '../../steps/record/index.ts';",
      'steps/record',
    ],
    [
      'ground names the type of a step in place',
      base,
      "export type T = import('../../steps/record/index.ts').E;",
      'steps/record',
    ],
    ['ground exports from a step', base, "export * from '../../steps/record/index.ts';", 'steps/record'],
    ['ground imports a step by its own door', base, "import '@evenhand/core/record';", 'steps/record'],
    ['an early part of ground imports a late one', base, "import '../edit/index.ts';", 'comes after it'],
    [
      'a step imports a later one',
      'packages/core/src/steps/record/index.ts',
      "import '../examine/index.ts';",
      'comes after it',
    ],
    [
      'a folder past its door',
      'packages/core/src/steps/record/index.ts',
      "import '../../ground/base/brands.ts';",
      'use its index.ts',
    ],
    [
      'a folder the order lacks',
      'packages/core/src/ground/novelty/index.ts',
      "import '../base/index.ts';",
      'missing from the order',
    ],
    ['core imports Node', base, "import 'node:fs';", "Node's node:fs"],
    ['core imports Node without its prefix', base, "import fs from 'fs';", "Node's fs"],
    ['core refers to the types of Node', base, '/// <reference types="node" />', "Node's node:process"],
    ['core imports what lies above it', base, "import '@evenhand/draw';", 'may not import @evenhand/draw'],
    [
      'core loads what lies above it later',
      base,
      "export const f = () => import('@evenhand/draw');",
      'may not import @evenhand/draw',
    ],
    [
      'core loads something computed',
      base,
      'export const f = (name: string) => import(name);',
      'only known when it runs',
    ],
    ['core uses a foreign package', base, "import 'react';", 'may not use the package react'],
    [
      'a path into another package',
      'packages/draw/src/index.ts',
      "import '../../core/src/ground/base/index.ts';",
      'use its door',
    ],
    [
      'a worker in another package',
      'packages/draw/src/index.ts',
      "new URL('../../core/src/ground/base/index.ts', import.meta.url);",
      'use its door',
    ],
    [
      'a file that is no door',
      'packages/draw/src/index.ts',
      "import '@evenhand/core/src/ground/base/index.ts';",
      'is no door',
    ],
    [
      'a door to nowhere',
      'packages/draw/src/index.ts',
      "import '@evenhand/core/ground/nowhere';",
      'is no door',
    ],
    [
      'the page imports what needs Node',
      'packages/app/src/index.ts',
      "import '@evenhand/draw/pdf';",
      'may not import @evenhand/draw/pdf',
    ],
    [
      'a package that is not declared',
      'packages/app/src/index.ts',
      "import 'idb';",
      'not declared in packages/app/package.json',
    ],
    [
      'a test of a package past a door',
      'packages/app/src/a.test.ts',
      "import '../../core/src/ground/base/index.ts';",
      'use its door',
    ],
    [
      'a browser test imports Node',
      'packages/app/src/a.browser.test.ts',
      "import 'node:fs';",
      "Node's node:fs",
    ],
    ['a missing file', base, "import './gone.ts';", 'there is no'],
    ['a required file', base, "const x = require('../edit/index.ts'); export { x };", 'comes after it'],
    ['a folder without a row', 'packages/novelty/src/a.ts', "import 'zod';", 'no row of the import table'],
  ];
  test.each(cases)('%s', (_title, file, text, why) => {
    const faults = faultsOf({ [file]: text });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain(`${file}: `);
    expect(faults[0]).toContain(why);
  });
});

test('a debt is suffered while it is owed and complained of once it is paid', () => {
  const file = 'packages/core/src/ground/base/brands.ts';
  const debt = { file, imports: '@evenhand/draw', since: '2026-11-25', reason: 'planted' };
  expect(faultsOf({ [file]: "import '@evenhand/draw';" }, { debts: [debt] })).toEqual([]);
  expect(faultsOf({}, { debts: [debt] }).join()).toContain('take this debt from the list');
});

test('a check that read too few modules fails', () => {
  expect(faultsOf({}, { fewest: 1000 }).join()).toContain('looked in the wrong place');
});

test('the line of an import is told', () => {
  const imports = readImports({ file: 'a.ts', text: "// one\n\nimport type { A } from './a.ts';\n" });
  expect(imports).toEqual([{ specifier: './a.ts', line: 3 }]);
});

test('words in comments and strings are no imports', () => {
  const text =
    "// import 'a'\n/* import('b') import(c) */\nexport const s = \"import 'd'\"; const t = `import(e)`;\n";
  expect(readImports({ file: 'a.ts', text })).toEqual([]);
});

test('this project keeps its own table', () => {
  const { violations, modules } = judgeTree(path.resolve(import.meta.dirname, '../..'), TABLE);
  expect(violations).toEqual([]);
  expect(modules).toBeGreaterThan(TABLE.fewest);
});
