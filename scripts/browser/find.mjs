import { accessSync, constants, readdirSync, statSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

/** Names under which a Chromium-based browser lies in the PATH; first those without windows, which need half the time. */
export const PATH_NAMES = [
  'chromium-headless-shell',
  'chrome-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
  'microsoft-edge-stable',
  'brave-browser',
  'brave',
  'vivaldi',
];

/**
 * @typedef {object} Surroundings
 * @property {NodeJS.ProcessEnv} env
 * @property {NodeJS.Platform} platform
 * @property {string} home
 * @property {(file: string) => boolean} isProgram
 * @property {(folder: string) => readonly string[]} list
 */

/** @param {string} file */
function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/** @param {string} folder */
function list(folder) {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** @returns {Surroundings} */
export function here() {
  return { env: process.env, platform: process.platform, home: os.homedir(), isProgram, list };
}

/**
 * The folder where `npm run browser` puts its browser.
 * @param {Surroundings} [s]
 */
export function browserCache(s = here()) {
  if (s.env.XDG_CACHE_HOME) return path.join(s.env.XDG_CACHE_HOME, 'evenhand', 'browser');
  if (s.platform === 'darwin') return path.join(s.home, 'Library', 'Caches', 'evenhand', 'browser');
  if (s.platform === 'win32') {
    return path.join(s.env.LOCALAPPDATA ?? path.join(s.home, 'AppData', 'Local'), 'evenhand', 'browser');
  }
  return path.join(s.home, '.cache', 'evenhand', 'browser');
}

/**
 * The usual places of installed browsers that are not in the PATH.
 * @param {Surroundings} s
 * @returns {string[]}
 */
export function usualPlaces(s) {
  if (s.platform === 'darwin') {
    return ['/Applications', path.join(s.home, 'Applications')].flatMap((folder) =>
      ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser'].map(
        (name) => `${folder}/${name}.app/Contents/MacOS/${name}`,
      ),
    );
  }
  if (s.platform === 'win32') {
    const folders = [s.env.PROGRAMFILES, s.env['PROGRAMFILES(X86)'], s.env.LOCALAPPDATA].filter(
      (f) => f !== undefined,
    );
    return folders.flatMap((folder) =>
      [
        ['Google', 'Chrome', 'Application', 'chrome.exe'],
        ['Chromium', 'Application', 'chrome.exe'],
        ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
        ['BraveSoftware', 'Brave-Browser', 'Application', 'brave.exe'],
      ].map((parts) => path.join(folder, ...parts)),
    );
  }
  return [
    '/opt/google/chrome/chrome',
    '/snap/bin/chromium',
    '/usr/lib/chromium/chromium',
    '/usr/lib64/chromium-browser/chromium-browser',
  ];
}

/**
 * The browser to test with: the one named by EVENHAND_BROWSER, else in the PATH, else in its usual place, else the one
 * `npm run browser` brought.
 * @param {Surroundings} [s]
 * @returns {{ browser: string | null, reason: string }} the reason says in words why there is none
 */
export function findBrowser(s = here()) {
  const named = s.env.EVENHAND_BROWSER;
  if (named) {
    if (s.isProgram(named)) return { browser: named, reason: '' };
    return {
      browser: null,
      reason: `EVENHAND_BROWSER names ${named}, which is not a program that can be run`,
    };
  }
  const separator = s.platform === 'win32' ? ';' : ':';
  const ending = s.platform === 'win32' ? '.exe' : '';
  const folders = (s.env.PATH ?? s.env.Path ?? '').split(separator).filter((folder) => folder !== '');
  const inPath = PATH_NAMES.flatMap((name) => folders.map((folder) => path.join(folder, name + ending)));
  const brought = path.join(browserCache(s), 'chromium');
  const browser = [...inPath, ...usualPlaces(s), brought].find(s.isProgram);
  return browser
    ? { browser, reason: '' }
    : { browser: null, reason: 'no Chromium, Chrome or Edge was found on this machine' };
}
