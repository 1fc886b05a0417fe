import { type ChildProcess, spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const here = path.dirname(fileURLToPath(import.meta.url));
const root = path.resolve(here, '..', '..');

/** The server of this tree, packed into one file so that it starts quickly; a stale one cannot be met. */
export async function packServer(): Promise<{ readonly file: string; readonly remove: () => void }> {
  // Inside the tree, because native packages are looked for from where the file lies.
  const outDir = path.join(root, '.cache', `server-process-${process.pid}`);
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: {
      target: 'node',
      noExternal: true,
      external: ['@photostructure/sqlite', '@myriaddreamin/typst-ts-node-compiler'],
    },
    build: {
      ssr: path.join(here, 'server-process.ts'),
      outDir,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { format: 'es', entryFileNames: 'server.mjs' } },
    },
  });
  return {
    file: path.join(outDir, 'server.mjs'),
    remove: () => rmSync(outDir, { recursive: true, force: true }),
  };
}

export interface KillableServer {
  readonly address: string;
  /** SIGKILL, and the end of the process. */
  readonly kill: () => Promise<void>;
}

export async function startProcess(file: string, data: string): Promise<KillableServer> {
  const child: ChildProcess = spawn(process.execPath, [file, data], { stdio: ['ignore', 'pipe', 'inherit'] });
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout?.once('data', (part: Buffer) => resolve(part.toString('utf8').trim().replace(/\/$/, '')));
    child.once('exit', (code) => reject(new Error(`the server ended with ${code} before it was ready`)));
  });
  const kill = async () => {
    child.kill('SIGKILL');
    await gone;
  };
  return { address, kill };
}
