#!/usr/bin/env node
// The command in a checkout: brings the built program up to date first, then runs it. Set-up speaks on stderr only.
import path from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { ensureReady, ROOT } from '../../../scripts/setup/ready.mjs';

const trouble = await ensureReady();
if (trouble === null) {
  await import(pathToFileURL(path.join(ROOT, 'dist', 'cli', 'evenhand.js')).href);
} else {
  process.stderr.write(`\n${trouble}\n`);
  process.exitCode = 2;
}
