import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder with the given files, gone when the test ends. */
export function temporaryTree(files: Readonly<Record<string, string>> = {}): string {
  const root = mkdtempSync(path.join(tmpdir(), 'evenhand-house-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true, maxRetries: 5 }));
  for (const [name, text] of Object.entries(files)) writeInto(root, name, text);
  return root;
}

export function writeInto(root: string, name: string, text: string): void {
  const file = path.join(root, name);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, text);
}
