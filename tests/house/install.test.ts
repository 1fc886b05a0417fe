import { describe, expect, test } from 'vitest';
import {
  explainFailure,
  firstMissing,
  installEnvironment,
  isForMachine,
} from '../../scripts/setup/install.mjs';
import { buildKey, installKey } from '../../scripts/setup/stamps.mjs';
import { temporaryTree, writeInto } from './temporary-tree.ts';

const linux = { os: 'linux', cpu: 'x64', libc: 'glibc' };
const there = (): boolean => true;

describe('an installation is complete when', () => {
  const wanted = {
    '': { version: '1' },
    'node_modules/a': { version: '1.0.0', integrity: 'sha512-a' },
    'node_modules/only-mac': { version: '1.0.0', optional: true, os: ['darwin'] },
    'node_modules/only-linux': { version: '1.0.0', optional: true, os: ['linux'], cpu: ['x64'] },
    'packages/cli': { version: '0.1.0', bin: { tool: 'bin/tool.mjs' } },
  };
  const { 'node_modules/only-mac': _, ...installed } = wanted;

  test('all that this machine needs is there', () => {
    expect(firstMissing(wanted, installed, linux, there)).toBeNull();
  });
  test('and not when a package is absent, even an optional one that fits the machine', () => {
    const { 'node_modules/a': _a, ...withoutA } = installed;
    const { 'node_modules/only-linux': _l, ...withoutLinux } = installed;
    expect(firstMissing(wanted, withoutA, linux, there)).toBe('node_modules/a');
    expect(firstMissing(wanted, withoutLinux, linux, there)).toBe('node_modules/only-linux');
  });
  test('and not when a package is another version or has other bytes', () => {
    const older = { ...installed, 'node_modules/a': { version: '0.9.0', integrity: 'sha512-a' } };
    const other = { ...installed, 'node_modules/a': { version: '1.0.0', integrity: 'sha512-b' } };
    expect(firstMissing(wanted, older, linux, there)).toBe('node_modules/a');
    expect(firstMissing(wanted, other, linux, there)).toBe('node_modules/a');
  });
  test('and not when a folder or a command is gone from the disk', () => {
    expect(firstMissing(wanted, installed, linux, (file) => file !== 'node_modules/a/package.json')).toBe(
      'node_modules/a',
    );
    expect(firstMissing(wanted, installed, linux, (file) => file !== 'node_modules/.bin/tool')).toBe(
      'packages/cli',
    );
  });
});

test.each([
  [{}, true],
  [{ os: ['linux', 'darwin'] }, true],
  [{ os: ['win32'] }, false],
  [{ os: ['!win32'] }, true],
  [{ os: ['!linux'] }, false],
  [{ os: ['linux'], cpu: ['arm64'] }, false],
  [{ os: ['linux'], libc: ['musl'] }, false],
])('%j fits Linux on x64 with glibc: %s', (entry, fits) => {
  expect(isForMachine(entry, linux)).toBe(fits);
});

test('settings that leave packages out are not handed down to npm', () => {
  const env = installEnvironment({
    PATH: '/bin',
    NODE_ENV: 'production',
    npm_config_omit: 'dev',
    NPM_CONFIG_PRODUCTION: 'true',
    npm_config_registry: 'https://registry.example',
    HTTPS_PROXY: 'http://proxy.example',
  });
  expect(env).toEqual({
    PATH: '/bin',
    NODE_ENV: '',
    PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: '1',
    npm_config_registry: 'https://registry.example',
    HTTPS_PROXY: 'http://proxy.example',
  });
});

test.each([
  ['npm error code ENOTFOUND', 'cannot be reached'],
  ['npm error code EAI_AGAIN', 'cannot be reached'],
  ['npm error code ENOSPC', 'disk is full'],
  ['npm error code EACCES', 'may not write here'],
  ['npm error code EUSAGE\nnpm error `npm ci` can only install packages when … are in sync', 'npm install'],
  ['npm error something else', 'what npm said'],
])('%s is explained in words', (output, words) => {
  expect(explainFailure(output)).toContain(words);
});

describe('the build is stale after', () => {
  const tree = {
    'package-lock.json': '{}',
    'vite.cli.config.ts': '1',
    'packages/core/package.json': '{}',
    'packages/core/src/a.ts': 'a',
    'packages/core/src/a.test.ts': 'test',
  };
  const changes: readonly (readonly [string, string, boolean])[] = [
    ['packages/core/src/a.ts', 'b', true],
    ['packages/core/src/new.ts', '', true],
    ['packages/core/package.json', '{ }', true],
    ['vite.cli.config.ts', '2', true],
    ['package-lock.json', '{ }', true],
    ['packages/core/src/a.test.ts', 'other', false],
    ['packages/core/node_modules/x/a.js', 'x', false],
    ['README.md', 'x', false],
  ];
  test.each(changes)('a change of %s: %s → %s', (file, text, stale) => {
    const root = temporaryTree(tree);
    const before = buildKey(root);
    expect(buildKey(root)).toBe(before);
    writeInto(root, file, text);
    expect(buildKey(root) !== before).toBe(stale);
  });
});

test('an installation is stale after the lock file changed', () => {
  const root = temporaryTree({ 'package-lock.json': '{}' });
  const before = installKey(root);
  writeInto(root, 'package-lock.json', '{ }');
  expect(installKey(root)).not.toBe(before);
});
