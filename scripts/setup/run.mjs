import { spawn } from 'node:child_process';
import process from 'node:process';

/**
 * @typedef {{ code: number, output: string, ms: number }} Outcome
 * @typedef {object} RunOptions
 * @property {string} cwd
 * @property {NodeJS.ProcessEnv} [env]
 * @property {boolean} [shell]
 * @property {(text: string) => void} [echo] gets what the command prints, as it prints it
 * @property {(pid: number | null) => void} [onChild]
 * @property {number} [limitMs] the command is ended after this long
 */

/**
 * Commands now running, ended together with us.
 * @type {Set<import('node:child_process').ChildProcess>}
 */
const running = new Set();
/** A command that was asked to end is made to end after this long. */
const GRACE_MS = 2_000;
let watching = false;

function endWithUs() {
  if (watching) return;
  watching = true;
  for (const [signal, number] of /** @type {const} */ ([
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ])) {
    process.on(signal, () => {
      const leave = () => process.exit(128 + number);
      if (running.size === 0) leave();
      // Gone only when they are: a lock given back while an installer still writes would let the next one in too early.
      for (const child of running) {
        child.once('close', () => running.size === 0 && leave());
        child.kill(signal);
      }
      // npm answers a signal by undoing its work, which takes longer than a person waits; the next run repairs it anyway.
      setTimeout(() => {
        for (const child of running) child.kill('SIGKILL');
      }, GRACE_MS);
      setTimeout(leave, GRACE_MS + 10_000);
    });
  }
}

/**
 * What a command whose output we pass on is told about colours: as our own output goes.
 * @returns {NodeJS.ProcessEnv}
 */
export function withColours() {
  const { FORCE_COLOR, NO_COLOR, ...env } = process.env;
  if (FORCE_COLOR || NO_COLOR) return process.env;
  return { ...env, ...(process.stdout.isTTY ? { FORCE_COLOR: '1' } : { NO_COLOR: '1' }) };
}

/**
 * Runs a command to its end and keeps what it prints. Never rejects: a command that cannot be started has code 127.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {RunOptions} options
 * @returns {Promise<Outcome>}
 */
export function run(command, args, { cwd, env = process.env, shell = false, echo, onChild, limitMs }) {
  endWithUs();
  const begun = performance.now();
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd, env, shell, stdio: ['ignore', 'pipe', 'pipe'] });
    running.add(child);
    onChild?.(child.pid ?? null);
    let output = '';
    /** @param {Buffer} chunk */
    const take = (chunk) => {
      output += chunk.toString('utf8');
      echo?.(chunk.toString('utf8'));
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    const limit = limitMs
      ? setTimeout(() => {
          output += `\nended after ${Math.round(limitMs / 60_000)} minutes\n`;
          child.kill('SIGKILL');
        }, limitMs)
      : undefined;
    /** @param {number} code */
    const end = (code) => {
      clearTimeout(limit);
      running.delete(child);
      onChild?.(null);
      resolve({ code, output, ms: performance.now() - begun });
    };
    child.on('error', (error) => {
      output += `${error.message}\n`;
      end(127);
    });
    child.on('close', (code) => end(code ?? 1));
  });
}
