import { fail, ok } from '@evenhand/core/ground/base';
import { finding } from '@evenhand/core/ground/findings';
import { type ExitCode, type Io, IoFault, type ServeOptions } from '../io.ts';
import { run } from '../run.ts';

export interface World {
  readonly files: Record<string, string | Uint8Array>;
  readonly stdin: string | Uint8Array;
  readonly desktop: boolean;
  /** Milliseconds; left out, no time passes. */
  readonly now: () => number;
  /** What becomes of a start of the server; left out, it runs. */
  readonly serve: () => ReturnType<Io['serve']>;
  /** What the search for hands in a film comes to; left out, there is no browser. */
  readonly trackFilm: Io['trackFilm'];
}

export interface Outcome {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly opened: readonly string[];
  readonly asked: readonly ServeOptions[];
  readonly closed: number;
}

/** Calls the program in this process with a world of its own: a few files, a date, an id, no network. */
export async function call(argv: readonly string[], world: Partial<World> = {}): Promise<Outcome> {
  const files: Record<string, string | Uint8Array> = { ...world.files };
  const outcome = { out: '', err: '', opened: [] as string[], asked: [] as ServeOptions[], closed: 0 };
  let ids = 0;
  const io: Io = {
    readFile: async (file) => {
      const content = files[file];
      if (content === undefined) throw new IoFault('there is no such file or folder');
      return bytesOf(content);
    },
    exists: async (file) => file in files,
    readFault: async (file) => (file in files ? undefined : 'there is no such file or folder'),
    writeFault: async (file) => (file.startsWith('nowhere/') ? 'there is no such file or folder' : undefined),
    writeFile: async (file, content) => {
      if (file.startsWith('full/')) throw new IoFault('the disk is full');
      files[file] = content;
    },
    readStdin: async () => bytesOf(world.stdin ?? ''),
    out: async (content) => {
      outcome.out += typeof content === 'string' ? content : new TextDecoder().decode(content);
    },
    say: (message) => {
      outcome.err += `${message}\n`;
    },
    now: world.now ?? (() => 0),
    newId: () => {
      ids += 1;
      return ids === 1 ? 'new-id' : `new-id-${ids}`;
    },
    today: () => '2026-03-14',
    version: '1.2.3',
    svgFonts: async () => [{ weight: 400, woff2: 'Zm9udA==' }],
    pdf: async (pages, { paper, title }) => bytesOf(`%PDF of ${pages.length} on ${paper}: ${title}`),
    serve: async (options) => {
      outcome.asked.push(options);
      if (world.serve !== undefined) return world.serve();
      const close = async () => {
        outcome.closed += 1;
      };
      return ok({ address: 'http://127.0.0.1:4321/', dataFolder: '/data', close });
    },
    trackFilm: async (file, wishes) =>
      world.trackFilm?.(file, wishes) ??
      fail([finding('hands/no-browser', {}, { reason: 'there is none in this test' })]),
    openBrowser: (address) => {
      if (world.desktop) outcome.opened.push(address);
      return world.desktop === true;
    },
    stopped: async () => {},
  };
  const code = await run(argv, io);
  return { code, files, ...outcome };
}

function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? new TextEncoder().encode(content) : content;
}
