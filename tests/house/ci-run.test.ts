import { spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { temporaryTree, writeInto } from './temporary-tree.ts';

const script = path.resolve(import.meta.dirname, '../../.ci/run');

/** Runs the script of the build machine with stand-ins for the programs it calls. */
function runWith(
  programs: Readonly<Record<string, string>>,
  films = false,
): { last: string; code: number | null; text: string } {
  const root = temporaryTree();
  const bin = path.join(root, 'bin');
  for (const [name, body] of Object.entries(programs)) {
    writeInto(bin, name, `#!/bin/sh\n${body}\n`);
    chmodSync(path.join(bin, name), 0o755);
  }
  mkdirSync(path.join(root, 'project', '.ci'), { recursive: true });
  if (films) mkdirSync(path.join(root, 'shared', 'films'), { recursive: true });
  const copy = path.join(root, 'project', '.ci', 'run');
  copyFileSync(script, copy);
  const tools = temporaryTools(root);
  const env = { PATH: `${bin}:${tools}`, HOME: root };
  const done = spawnSync('/bin/bash', [copy], { encoding: 'utf8', env });
  return {
    last: done.stdout.trimEnd().split('\n').at(-1) ?? '',
    code: done.status,
    text: done.stdout + done.stderr,
  };
}

/** A PATH with the few ordinary tools the script needs and no browser. */
function temporaryTools(root: string): string {
  const names = ['dirname', 'mktemp', 'tee', 'grep', 'tail', 'rm', 'id', 'cat', 'sh', 'touch'];
  for (const name of names) {
    const found = spawnSync('/bin/sh', ['-c', `command -v ${name}`], { encoding: 'utf8' }).stdout.trim();
    writeInto(root, `tools/${name}`, `#!/bin/sh\nexec ${found} "$@"\n`);
    chmodSync(path.join(root, 'tools', name), 0o755);
  }
  return path.join(root, 'tools');
}

const onLinux = process.platform === 'linux';

test.runIf(onLinux)(
  'the count stays the last line and the exit code goes through when npm adds lines of its own',
  () => {
    const { last, code } = runWith({
      chromium: '',
      npm: 'echo "3 passed, 1 failed, 0 skipped"; echo "npm error code 1" >&2; exit 1',
    });
    expect(last).toBe('3 passed, 1 failed, 0 skipped');
    expect(code).toBe(1);
  },
);

test.runIf(onLinux)('a good run says its count once and exits with 0', () => {
  const { text, code } = runWith({ chromium: '', npm: 'echo "3 passed, 0 failed, 0 skipped"' });
  expect(text.trim()).toBe('3 passed, 0 failed, 0 skipped');
  expect(code).toBe(0);
});

test.runIf(onLinux)('a run that breaks off without a count counts as failed', () => {
  const { last, code } = runWith({ chromium: '', npm: 'echo broken' });
  expect(last).toBe('0 passed, 1 failed, 0 skipped');
  expect(code).toBe(1);
});

test.runIf(onLinux)('a missing browser is brought from the packages of the system, after their list', () => {
  const { text } = runWith({
    'apt-get': 'echo "apt-get $1"',
    sudo: 'exec "$@"',
    npm: 'echo "require=$EVENHAND_REQUIRE_BROWSER films=$EVENHAND_FILMS"; echo "1 passed, 0 failed, 0 skipped"',
  });
  expect(text).toBe('apt-get update\napt-get install\nrequire=1 films=\n1 passed, 0 failed, 0 skipped\n');
});

test.runIf(onLinux)(
  'where there is one with windows only, the one without is asked for; with none to be had the other is used',
  () => {
    const { text, code } = runWith({
      chromium: '',
      'apt-get': 'echo "apt-get $*"; [ "$1" = update ]',
      sudo: 'exec "$@"',
      npm: 'echo "1 passed, 0 failed, 0 skipped"',
    });
    expect(text.match(/apt-get.*/g)).toEqual([
      'apt-get update -q',
      'apt-get install -y -q --no-install-recommends chromium-headless-shell',
    ]);
    expect(text).toMatch(/\n1 passed, 0 failed, 0 skipped\n$/);
    expect(code).toBe(0);
  },
);

test.runIf(onLinux)('real films beside the project are handed to the tests', () => {
  const { text } = runWith(
    { chromium: '', npm: 'echo "films=$EVENHAND_FILMS"; echo "1 passed, 0 failed, 0 skipped"' },
    true,
  );
  expect(text).toMatch(/films=\/.*\/shared\/films\n/);
});

test('the script can be executed where files know that', () => {
  expect(readFileSync(script, 'utf8').startsWith('#!/usr/bin/env bash\n')).toBe(true);
});
