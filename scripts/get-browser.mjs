// `npm run browser`: brings a browser for the tests where none is installed.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { browserCache, findBrowser } from './browser/find.mjs';
import { readTar } from './browser/unpack.mjs';
import { npmCommand } from './setup/install.mjs';

/** The one package of the npm registry that carries a whole Chromium (MIT; Chromium itself is under the BSD licence). */
const PACKAGE = '@sparticuz/chromium@147.0.0';
const SHA256 = '18fe5404ce845594cd7d592fc07f37a19514079ba4d9c27192ad8b908743f16b';
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
];

const FONTS = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir prefix="relative">fonts</dir><cachedir prefix="xdg">fontconfig</cachedir></fontconfig>
`;

/** @param {string} line */
const say = (line) => process.stderr.write(`${line}\n`);

/** Why no browser could be brought, in words for the person who asked for one. */
class NoBrowser extends Error {}

/** @param {string} message @returns {never} */
function giveUp(message) {
  throw new NoBrowser(message);
}

/** @param {string} folder @returns {Buffer} */
function fetchPackage(folder) {
  say(`Fetching ${PACKAGE} from the npm registry (66 MB) …`);
  const npm = npmCommand();
  const args = [...npm.first, 'pack', PACKAGE, '--pack-destination', folder, '--loglevel=error', '--json'];
  const done = spawnSync(npm.command, args, {
    cwd: folder,
    encoding: 'utf8',
    shell: npm.shell,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  if (done.status !== 0) {
    giveUp(
      'The browser could not be fetched. Is the npm registry within reach? The lines above say what npm found.',
    );
  }
  const bytes = readFileSync(path.join(folder, 'sparticuz-chromium-147.0.0.tgz'));
  const found = createHash('sha256').update(bytes).digest('hex');
  if (found !== SHA256)
    giveUp(`The fetched package is not the expected one (sha256 ${found}); nothing was installed.`);
  return bytes;
}

/**
 * @param {Buffer} tarball
 * @param {string} folder
 */
function unpack(tarball, folder) {
  say('Unpacking …');
  const inside = new Map(
    readTar(gunzipSync(tarball)).map((file) => [path.posix.basename(file.name), file.bytes]),
  );
  /** @param {string} name */
  const part = (name) => {
    const bytes = inside.get(name);
    return bytes ? brotliDecompressSync(bytes) : giveUp(`The package lacks ${name}; nothing was installed.`);
  };
  writeFileSync(path.join(folder, 'chromium-program'), part('chromium.br'), { mode: 0o755 });
  // The system libraries, a software renderer and one font, for machines that have none of them.
  for (const archive of ['al2023.tar.br', 'swiftshader.tar.br', 'fonts.tar.br']) {
    for (const file of readTar(part(archive))) place(folder, file);
  }
  writeFileSync(path.join(folder, 'fonts.conf'), FONTS);
  const wrapper = path.join(folder, 'chromium');
  writeFileSync(wrapper, WRAPPER);
  chmodSync(wrapper, 0o755);
}

/**
 * @param {string} folder
 * @param {import('./browser/unpack.mjs').TarFile} file
 */
function place(folder, file) {
  const target = path.resolve(folder, file.name);
  if (!target.startsWith(`${folder}${path.sep}`))
    giveUp(`The package names a file outside its folder: ${file.name}`);
  mkdirSync(path.dirname(target), { recursive: true });
  if (file.link === null) writeFileSync(target, file.bytes, { mode: file.mode || 0o644 });
  else symlinkSync(file.link, target);
}

const WRAPPER = `#!/bin/sh
# Starts the unpacked Chromium with the libraries that came with it.
here=$(cd "$(dirname "$0")" && pwd)
LD_LIBRARY_PATH="$here/lib\${LD_LIBRARY_PATH:+:$LD_LIBRARY_PATH}"
export LD_LIBRARY_PATH
if [ ! -e /etc/fonts/fonts.conf ]; then FONTCONFIG_FILE="$here/fonts.conf"; export FONTCONFIG_FILE; fi
exec "$here/chromium-program" "$@"
`;

/**
 * Starts the program and waits until it offers its control port: by then all its libraries were found.
 * @param {string} program
 * @returns {Promise<{ ok: boolean, said: string }>}
 */
function starts(program) {
  const profile = mkdtempSync(path.join(tmpdir(), 'evenhand-browser-'));
  const browser = spawn(program, [
    ...FLAGS,
    '--remote-debugging-port=0',
    `--user-data-dir=${profile}`,
    'about:blank',
  ]);
  let said = '';
  return new Promise((resolve) => {
    const limit = setTimeout(() => browser.kill('SIGKILL'), 60_000);
    let ok = false;
    browser.stderr.on('data', (chunk) => {
      said += chunk;
      ok ||= said.includes('DevTools listening on');
      if (ok) browser.kill('SIGKILL');
    });
    browser.on('error', (error) => {
      said += error.message;
    });
    browser.on('close', () => {
      clearTimeout(limit);
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
      resolve({ ok, said: said.trim() });
    });
  });
}

async function bring() {
  const target = browserCache();
  mkdirSync(path.dirname(target), { recursive: true });
  const folder = mkdtempSync(`${target}-`);
  try {
    const tarball = fetchPackage(folder);
    rmSync(path.join(folder, 'sparticuz-chromium-147.0.0.tgz'));
    unpack(tarball, folder);
    const { ok, said } = await starts(path.join(folder, 'chromium'));
    if (!ok) giveUp(`The browser was fetched but does not start here:\n${said}`);
    rmSync(target, { recursive: true, force: true });
    renameSync(folder, target);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  say(`Done: ${path.join(target, 'chromium')}\n"npm test" finds it there.`);
}

async function main() {
  const present = findBrowser();
  if (present.browser !== null && !process.argv.includes('--fetch')) {
    say(`There is a browser already: ${present.browser}\n"npm test" uses it; nothing to do.`);
  } else if (process.platform === 'linux' && process.arch === 'x64') {
    await bring();
  } else {
    giveUp(
      'On this machine install Chromium, Google Chrome or Microsoft Edge in the usual way.\n' +
        '"npm test" finds it in the PATH, in the Applications or Program Files folder, or where EVENHAND_BROWSER points.',
    );
  }
}

try {
  await main();
} catch (error) {
  if (!(error instanceof NoBrowser)) throw error;
  say(error.message);
  process.exitCode = 1;
}
