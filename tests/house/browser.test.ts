import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { browserCache, findBrowser, type Surroundings } from '../../scripts/browser/find.mjs';
import { readTar } from '../../scripts/browser/unpack.mjs';
import { browserTestFiles } from '../../scripts/tests/files.mjs';
import { temporaryTree } from './temporary-tree.ts';

function machine(
  programs: readonly string[],
  env: NodeJS.ProcessEnv,
  platform: NodeJS.Platform = 'linux',
): Surroundings {
  return { env, platform, home: '/home/ann', isProgram: (file) => programs.includes(file), list: () => [] };
}

describe('the browser for the tests is', () => {
  test('the one that is named, before any other', () => {
    const here = machine(['/opt/mine', '/usr/bin/chromium'], {
      EVENHAND_BROWSER: '/opt/mine',
      PATH: '/usr/bin',
    });
    expect(findBrowser(here).browser).toBe('/opt/mine');
  });
  test('none when the named one is no program: another is not taken in silence', () => {
    const here = machine(['/usr/bin/chromium'], { EVENHAND_BROWSER: '/opt/gone', PATH: '/usr/bin' });
    expect(findBrowser(here)).toEqual({ browser: null, reason: expect.stringContaining('/opt/gone') });
  });
  test('in the PATH', () => {
    const here = machine(['/b/google-chrome-stable'], { PATH: '/a:/b' });
    expect(findBrowser(here).browser).toBe('/b/google-chrome-stable');
  });
  test('in the PATH the one without windows, before the others', () => {
    const here = machine(['/a/chromium', '/b/chromium-headless-shell'], { PATH: '/a:/b' });
    expect(findBrowser(here).browser).toBe('/b/chromium-headless-shell');
  });
  test('among the applications of a Mac', () => {
    const chrome = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
    expect(findBrowser(machine([chrome], { PATH: '/bin' }, 'darwin')).browser).toBe(chrome);
  });
  test('the one that was brought, last', () => {
    const brought = path.join('/cache', 'evenhand', 'browser', 'chromium');
    const here = machine([brought], { PATH: '/bin', XDG_CACHE_HOME: '/cache' });
    expect(findBrowser(here).browser).toBe(brought);
    expect(browserCache(here)).toBe(path.dirname(brought));
  });
  test('none on a bare machine, with the reason in words', () => {
    expect(findBrowser(machine([], { PATH: '/bin' }))).toEqual({
      browser: null,
      reason: expect.stringContaining('Chromium'),
    });
  });
});

test('the test files that need a browser are found by their names', () => {
  const root = temporaryTree({
    'packages/media/src/a.browser.test.ts': '',
    'packages/media/src/a.test.ts': '',
    'packages/app/node_modules/x.browser.test.ts': '',
    'tests/journeys/marking.test.ts': '',
    'tests/films/frames.browser.test.ts': '',
    'tests/house/x.test.ts': '',
  });
  expect(browserTestFiles(root)).toEqual([
    'packages/media/src/a.browser.test.ts',
    'tests/films/frames.browser.test.ts',
    'tests/journeys/marking.test.ts',
  ]);
});

/** One entry as POSIX.1-1988 lays it out: name at 0, mode at 100, size at 124, type at 156, link at 157, "ustar" at 257. */
function entry(name: string, body: string, type = '0', link = ''): Buffer {
  const head = Buffer.alloc(512);
  head.write(name, 0);
  head.write('0000755\0', 100);
  head.write(`${Buffer.byteLength(body).toString(8).padStart(11, '0')}\0`, 124);
  head.write(type, 156);
  head.write(link, 157);
  head.write('ustar\0', 257);
  const padded = Buffer.alloc(Math.ceil(Buffer.byteLength(body) / 512) * 512);
  padded.write(body);
  return Buffer.concat([head, padded]);
}

describe('an archive', () => {
  test('gives its files, links and long names', () => {
    const long = `${'folder/'.repeat(20)}file`;
    const archive = Buffer.concat([
      entry('lib/', '', '5'),
      entry('lib/a', 'x'.repeat(513)),
      entry('lib/b', '', '2', 'a'),
      entry('././@LongLink', long, 'L'),
      entry(long.slice(0, 100), 'long'),
      Buffer.alloc(1024),
    ]);
    const files = readTar(archive).map(({ name, bytes, mode, link }) => [name, bytes.length, mode, link]);
    expect(files).toEqual([
      ['lib/a', 513, 0o755, null],
      ['lib/b', 0, 0o777, 'a'],
      [long, 4, 0o755, null],
    ]);
  });
  test('that ends in the middle of a file is refused', () => {
    expect(() => readTar(entry('a', 'x'.repeat(600)).subarray(0, 1000))).toThrow('middle of a');
  });
});
