import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';

/**
 * @typedef {{ specifier: string, line: number }} Import
 * @typedef {{ file: string, text: string }} Module
 */

const FOLDERS = ['packages', 'tests', 'bench', 'tools', 'scripts', 'examples'];
const MODULE = /\.(ts|tsx|mts|js|jsx|mjs)$/;
const LEFT_OUT = new Set(['node_modules', 'dist', 'coverage', 'public']);

/** What stands for an import whose target is only known when it runs. */
export const COMPUTED = 'import(…)';

/**
 * Every module of the project, by path relative to the root with forward slashes.
 * @param {string} root
 * @returns {string[]}
 */
export function moduleFiles(root) {
  /** @param {string} folder @returns {string[]} */
  const walk = (folder) => {
    if (!existsSync(path.join(root, folder))) return [];
    return readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
      if (entry.isDirectory()) return LEFT_OUT.has(entry.name) ? [] : walk(`${folder}/${entry.name}`);
      return MODULE.test(entry.name) ? [`${folder}/${entry.name}`] : [];
    });
  };
  return FOLDERS.flatMap(walk).sort();
}

/**
 * All that a module imports: statically, as types only, by `export from`, dynamically, in type positions, by
 * reference comments, and as the address of a worker beside it.
 * @param {Module} module
 * @returns {Import[]}
 */
export function readImports({ file, text }) {
  const found = ts.preProcessFile(text, true, true);
  const line = lineFinder(text);
  const plain = found.importedFiles.map(({ fileName, pos }) => ({ specifier: fileName, line: line(pos) }));
  const types = found.typeReferenceDirectives.map(({ fileName, pos }) => ({
    specifier: fileName === 'node' ? 'node:process' : fileName,
    line: line(pos),
  }));
  const files = found.referencedFiles.map(({ fileName, pos }) => ({
    specifier: fileName.startsWith('.') ? fileName : `./${fileName}`,
    line: line(pos),
  }));
  return [...plain, ...types, ...files, ...importsInSyntax(file, text)];
}

/**
 * Imports that are seen only in the syntax: those whose target is computed, and addresses of modules.
 * @param {string} file
 * @param {string} text
 * @returns {Import[]}
 */
function importsInSyntax(file, text) {
  if (!/\bimport\s*\(\s*[^'"\s]|new URL\(/.test(text)) return [];
  const kind = file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, false, kind);
  /** @type {Import[]} */
  const found = [];
  /** @param {ts.Node} node */
  const visit = (node) => {
    const specifier = computedTarget(node) ?? addressOfModule(node, source);
    if (specifier !== null) {
      found.push({ specifier, line: source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1 });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** @param {ts.Node} node */
function computedTarget(node) {
  if (!ts.isCallExpression(node) || node.expression.kind !== ts.SyntaxKind.ImportKeyword) return null;
  const target = node.arguments[0];
  return target && ts.isStringLiteralLike(target) ? null : COMPUTED;
}

/**
 * `new URL('./x.ts', import.meta.url)`, by which a worker is named.
 * @param {ts.Node} node
 * @param {ts.SourceFile} source
 */
function addressOfModule(node, source) {
  if (!ts.isNewExpression(node) || node.expression.getText(source) !== 'URL') return null;
  const [target, base] = node.arguments ?? [];
  if (!target || !ts.isStringLiteralLike(target) || base?.getText(source) !== 'import.meta.url') return null;
  return target.text.startsWith('.') && MODULE.test(target.text) ? target.text : null;
}

/** @param {string} text */
function lineFinder(text) {
  return (/** @type {number} */ position) => text.slice(0, position).split('\n').length;
}
