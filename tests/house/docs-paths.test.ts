import path from 'node:path';
import { expect, test } from 'vitest';
import { judgeDocuments, looksLikePath, quotesIn } from '../../tools/docs-paths.mjs';
import { temporaryTree } from './temporary-tree.ts';

const tree = {
  'package.json': '{"scripts":{"check":"x"}}',
  'README.md': 'See `packages/core/src/a.ts`, [the guide](docs/guide/one.md#top) and `npm run check`.',
  'docs/guide/one.md': 'Back to [start](../../README.md); `packages/*/package.json`; `packages/<name>/src/`.',
  'packages/core/src/a.ts': '',
  'packages/core/package.json': '{}',
};

const complaintsOf = (files: Readonly<Record<string, string>>): string[] =>
  judgeDocuments(temporaryTree({ ...tree, ...files })).complaints.map(
    ({ file, line, text }) => `${file}:${line} ${text}`,
  );

test('documents that quote what is there give no complaint', () => {
  expect(complaintsOf({})).toEqual([]);
});

test.each([
  [
    'a path that is gone',
    'one\n`packages/core/src/gone.ts`',
    'docs/guide/one.md:2 there is no packages/core/src/gone.ts',
  ],
  ['a folder that is gone', '`tools/wonders/`', 'docs/guide/one.md:1 there is no tools/wonders/'],
  ['a link to nowhere', '[x](two.md)', 'docs/guide/one.md:1 there is no two.md'],
  [
    'a link that is right only from the root',
    '[x](packages/core/src/a.ts)',
    'docs/guide/one.md:1 there is no packages/core/src/a.ts',
  ],
  ['a bare file name that is nowhere', '`never.ts`', 'docs/guide/one.md:1 there is no never.ts'],
  ['a script that is gone', '```\nnpm run wonder\n```', 'docs/guide/one.md:2 there is no script "wonder"'],
])('%s is complained of', (_title, text, complaint) => {
  expect(complaintsOf({ 'docs/guide/one.md': text })).toEqual([complaint]);
});

test('a project without its README is complained of', () => {
  const { 'README.md': _, ...rest } = tree;
  const { complaints } = judgeDocuments(temporaryTree({ ...rest, 'docs/guide/one.md': '' }));
  expect(complaints).toEqual([{ file: 'README.md', line: 1, text: 'is missing' }]);
});

test.each([
  ['packages/core', true],
  ['tools/layers.mjs', true],
  ['a.ts', true],
  ['docs/decisions/', true],
  ['video/mp4', false],
  ['@evenhand/core/record', false],
  ['/api/studies', false],
  ['STUDY.json', false],
  ['chart.svg', false],
  ['.evenhand.json', false],
  ['npm test', false],
  ['--data', false],
  ['EVENHAND_FILMS', false],
])('between backticks, %s is a path of the project: %s', (word, expected) => {
  expect(looksLikePath(word)).toBe(expected);
});

test('fenced blocks are read for scripts only', () => {
  expect(quotesIn('```\n`gone/x.ts` [a](b.md)\n```\n`tools/x.mjs`')).toEqual([
    { quote: 'tools/x.mjs', line: 4, kind: 'path' },
  ]);
});

test('every path quoted in the documents of this project exists', () => {
  const { documents, complaints } = judgeDocuments(path.resolve(import.meta.dirname, '../..'));
  expect(complaints).toEqual([]);
  expect(documents).toContain('README.md');
});
