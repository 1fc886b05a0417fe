import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';

/**
 * The test files that need a browser: those that run in a page, and the journeys that drive one.
 * @param {string} root
 * @returns {string[]} relative, sorted, with forward slashes
 */
export function browserTestFiles(root) {
  return [...walk(root, 'packages'), ...walk(root, 'tests')]
    .filter((file) => /\.browser\.test\.tsx?$/.test(file) || /^tests\/journeys\/.*\.test\.ts$/.test(file))
    .sort();
}

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]}
 */
function walk(root, folder) {
  if (!existsSync(path.join(root, folder))) return [];
  return readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    if (entry.name === 'node_modules' || entry.name === 'dist') return [];
    const inside = `${folder}/${entry.name}`;
    return entry.isDirectory() ? walk(root, inside) : [inside];
  });
}
