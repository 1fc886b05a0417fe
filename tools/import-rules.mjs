import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import { COMPUTED, moduleFiles, readImports } from './read-imports.mjs';

/**
 * @typedef {import('./layers.mjs').Table} Table
 * @typedef {import('./layers.mjs').Zone} Zone
 * @typedef {{ file: string, line: number, imports: string, text: string }} Violation
 * @typedef {{ exports?: Record<string, string>, dependencies?: Record<string, string>, devDependencies?: Record<string, string> }} Manifest
 * @typedef {{ table: Table, manifest: (folder: string) => Manifest, exists: (file: string) => boolean, declared: ReadonlySet<string> }} World
 */

const OWN = '@evenhand/';
const isTest = (/** @type {string} */ file) =>
  /\.test\.tsx?$/.test(file) || /(^|\/)test(s|ing)?\//.test(file);
const isBrowserTest = (/** @type {string} */ file) => /\.browser\.test\.tsx?$/.test(file);

/**
 * Reads every module of the project and judges its imports.
 * @param {string} root
 * @param {Table} table
 * @returns {{ modules: number, imports: number, violations: Violation[] }}
 */
export function judgeTree(root, table) {
  const world = lookAt(root, table);
  const files = moduleFiles(root);
  let imports = 0;
  const found = files.flatMap((file) => {
    const read = readImports({ file, text: readFileSync(path.join(root, file), 'utf8') });
    imports += read.length;
    return read.flatMap(({ specifier, line }) => {
      const text = judgeImport(file, specifier, world);
      return text === null ? [] : [{ file, line, imports: specifier, text }];
    });
  });
  return {
    modules: files.length,
    imports,
    violations: [...settleDebts(found, table), ...tooFew(files.length, table)],
  };
}

/**
 * @param {string} root
 * @param {Table} table
 * @returns {World}
 */
function lookAt(root, table) {
  const packages = path.join(root, 'packages');
  const folders = existsSync(packages) ? readdirSync(packages).map((name) => `packages/${name}`) : [];
  const manifests = new Map(['.', ...folders].map((folder) => [folder, readManifest(root, folder)]));
  const all = [...manifests.values()].flatMap((m) =>
    Object.keys({ ...m.dependencies, ...m.devDependencies }),
  );
  return {
    table,
    manifest: (folder) => manifests.get(folder) ?? {},
    exists: (file) => existsSync(path.join(root, file)),
    declared: new Set(all),
  };
}

/**
 * @param {string} root
 * @param {string} folder
 * @returns {Manifest}
 */
function readManifest(root, folder) {
  const file = path.join(root, folder, 'package.json');
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
}

/**
 * @param {Violation[]} found
 * @param {Table} table
 */
function settleDebts(found, table) {
  const owed = (/** @type {Violation} */ v) =>
    table.debts.some((d) => d.file === v.file && d.imports === v.imports);
  const paid = table.debts.filter((d) => !found.some((v) => d.file === v.file && d.imports === v.imports));
  return [
    ...found.filter((violation) => !owed(violation)),
    ...paid.map(({ file, imports }) => ({
      file,
      line: 1,
      imports,
      text: `no longer imports ${imports}; take this debt from the list in tools/layers.mjs`,
    })),
  ];
}

/**
 * @param {number} modules
 * @param {Table} table
 * @returns {Violation[]}
 */
function tooFew(modules, table) {
  if (modules >= table.fewest) return [];
  const text = `only ${modules} modules were read, at least ${table.fewest} are expected: the check looked in the wrong place`;
  return [{ file: 'tools/layers.mjs', line: 1, imports: '', text }];
}

/**
 * @param {string} file
 * @param {string} specifier
 * @param {World} world
 * @returns {string | null} null when the import is allowed, or why it is not
 */
export function judgeImport(file, specifier, world) {
  const zone = zoneOf(file, world.table);
  if (!zone) return 'lies in no row of the import table';
  if (specifier === COMPUTED) {
    return zone.node && !file.includes('/src/') ? null : 'imports something that is only known when it runs';
  }
  const bare = specifier.replace(/\?.*$/, '');
  if (bare.startsWith('.')) return judgeRelative(file, bare, zone, world);
  if (bare.startsWith(OWN)) return judgeDoor(file, bare, zone, world);
  if (bare.startsWith('node:') || builtinModules.includes(bare)) {
    return zone.node || (isTest(file) && !isBrowserTest(file))
      ? null
      : `may not use Node's ${bare}: ${zone.folder} runs without Node`;
  }
  if (/^[/#]|^[a-z]+:/.test(bare)) return `imports ${bare}, which is neither a path, a door nor a package`;
  return judgeLibrary(file, bare, zone, world);
}

/**
 * @param {string} file
 * @param {Table} table
 * @returns {Zone | undefined}
 */
function zoneOf(file, table) {
  return table.zones
    .filter(({ folder }) => file.startsWith(`${folder}/`))
    .reduce(
      (/** @type {Zone | undefined} */ best, zone) =>
        best && best.folder.length > zone.folder.length ? best : zone,
      undefined,
    );
}

/** @param {string} file */
function packageOf(file) {
  const [first = '', second = ''] = file.split('/');
  return first === 'packages' ? `${first}/${second}` : first;
}

/**
 * @param {string} file
 * @param {string} bare
 * @param {Zone} zone
 * @param {World} world
 */
function judgeRelative(file, bare, zone, world) {
  const target = path.posix.normalize(path.posix.join(path.posix.dirname(file), bare));
  if (target.startsWith('..')) return `reaches outside the project: ${bare}`;
  if (!world.exists(target)) return `imports ${bare}, and there is no ${target}`;
  if (packageOf(target) !== packageOf(file)) {
    const allowed = (zone.beside ?? []).some((folder) => target.startsWith(`${folder}/`));
    if (allowed || (isTest(file) && target.startsWith('tests/'))) return null;
    return `reaches into ${packageOf(target)} by a path; use its door`;
  }
  return judgeInsideCore(file, target, world.table);
}

/**
 * @param {string} file
 * @param {string} bare
 * @param {Zone} zone
 * @param {World} world
 */
function judgeDoor(file, bare, zone, world) {
  const [name = '', ...rest] = bare.slice(OWN.length).split('/');
  const folder = `packages/${name}`;
  const target = doorTarget(world.manifest(folder), rest.length ? `./${rest.join('/')}` : '.');
  if (target === null || !world.exists(path.posix.join(folder, target)))
    return `${bare} is no door of ${folder}`;
  if (packageOf(file) === folder) return judgeInsideCore(file, path.posix.join(folder, target), world.table);
  const allowed = zone.doors.some((door) =>
    door.endsWith('*') ? bare.startsWith(door.slice(0, -1)) : door === bare,
  );
  return allowed ? null : `${zone.folder} may not import ${bare}`;
}

/**
 * @param {Manifest} manifest
 * @param {string} key
 * @returns {string | null} the file behind a door, relative to its package
 */
function doorTarget(manifest, key) {
  for (const [door, target] of Object.entries(manifest.exports ?? {})) {
    if (door === key) return target;
    const [before = '', after] = door.split('*');
    if (after !== undefined && key.startsWith(before) && key.endsWith(after)) {
      const middle = key.slice(before.length, key.length - after.length);
      if (middle !== '' && !middle.includes('/')) return target.replace('*', middle);
    }
  }
  return null;
}

/**
 * The order inside the core: ground first, then the steps as the work goes; one folder sees another through its door only.
 * @param {string} file
 * @param {string} target
 * @param {Table} table
 */
function judgeInsideCore(file, target, table) {
  const from = corePlace(file, table);
  const to = corePlace(target, table);
  if (!from) return null;
  if (!to) return `${from.name} may not import ${target}, which lies outside ground and steps`;
  if (from.name === to.name) return null;
  const lost = [from, to].find(({ rank }) => rank === -1);
  if (lost) return `${lost.name} is missing from the order in tools/layers.mjs`;
  if (to.rank > from.rank) return `${from.name} may not import ${to.name}, which comes after it`;
  return path.posix.basename(target) === 'index.ts' && target.split('/').length === 6
    ? null
    : `reaches into ${to.name}; use its index.ts`;
}

/**
 * @param {string} file
 * @param {Table} table
 * @returns {{ name: string, rank: number } | null} null outside ground and steps; rank -1 when the table lacks the folder
 */
function corePlace(file, table) {
  const match = /^packages\/core\/src\/(ground|steps)\/([^/]+)\//.exec(file);
  if (!match) return null;
  const [, part = '', noun = ''] = match;
  const order = part === 'ground' ? table.ground : table.steps;
  const place = order.indexOf(noun);
  const before = part === 'ground' ? 0 : table.ground.length;
  return { name: `${part}/${noun}`, rank: place === -1 ? -1 : before + place };
}

/**
 * @param {string} file
 * @param {string} bare
 * @param {Zone} zone
 * @param {World} world
 */
function judgeLibrary(file, bare, zone, world) {
  const [first = '', second = ''] = bare.split('/');
  const name = bare.startsWith('@') ? `${first}/${second}` : first;
  const test = isTest(file);
  const forTests = test && world.table.testLibraries.includes(name);
  if (!forTests && !zone.libraries.includes('*') && !zone.libraries.includes(name)) {
    return `${zone.folder} may not use the package ${name}`;
  }
  const home = world.manifest(packageOf(file));
  const own = Object.hasOwn(home.dependencies ?? {}, name);
  const common =
    (test || !file.startsWith('packages/')) && Object.hasOwn(world.manifest('.').devDependencies ?? {}, name);
  const anyone = zone.libraries.includes('*') && world.declared.has(name);
  return own || common || anyone
    ? null
    : `the package ${name} is not declared in ${packageOf(file)}/package.json`;
}
