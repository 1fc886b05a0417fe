import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Scene, SheetName } from '@evenhand/core/ground/scene';
import type { Track } from '@evenhand/core/record';
import type { EmbeddedFont } from '@evenhand/draw';

/** Why the outside world said no, as the end of a sentence. */
export class IoFault extends Error {}

/** All that a command may touch. The real one is `node-io.ts`; tests bring their own. */
export interface Io {
  /** @throws IoFault */
  readonly readFile: (file: string) => Promise<Uint8Array>;
  readonly exists: (file: string) => Promise<boolean>;
  /** Why a file cannot be read, or cannot be written, as the end of a sentence; told before long work, without doing it. */
  readonly readFault: (file: string) => Promise<string | undefined>;
  readonly writeFault: (file: string) => Promise<string | undefined>;
  /** Writes the whole file or leaves what was there. @throws IoFault */
  readonly writeFile: (file: string, content: string | Uint8Array) => Promise<void>;
  readonly readStdin: () => Promise<Uint8Array>;
  /** A result, to stdout. */
  readonly out: (content: string | Uint8Array) => Promise<void>;
  /** A message, to stderr; a line end is added. */
  readonly say: (message: string) => void;
  readonly newId: () => string;
  /** Today as YYYY-MM-DD where the user is. */
  readonly today: () => string;
  /** Milliseconds that never go back, to end what takes too long. */
  readonly now: () => number;
  readonly version: string;
  /** The typeface that is put into every SVG, so that it looks the same everywhere. */
  readonly svgFonts: () => Promise<readonly EmbeddedFont[]>;
  /** Sheets as one PDF; the part that makes it is heavy and loaded only then. */
  readonly pdf: (pages: readonly Scene[], look: PdfLook) => Promise<Uint8Array>;
  readonly serve: (options: ServeOptions) => Promise<Result<RunningServer, Finding>>;
  /** Finds the hands in a film, in a browser without a window. */
  readonly trackFilm: (file: string, wishes: TrackWishes) => Promise<Result<FoundTrack, readonly Finding[]>>;
  /** Shows an address in the desktop's browser; false where there is no desktop. */
  readonly openBrowser: (address: string) => boolean;
  /** Resolves when the user or the system asks the program to stop. */
  readonly stopped: () => Promise<void>;
}

export interface PdfLook {
  readonly paper: SheetName;
  readonly title: string;
}

export interface TrackWishes {
  /** The film as the person knows it. */
  readonly name: string;
  readonly mirrored: boolean;
  readonly workers: 1 | 2;
  readonly onProgress: (progress: TrackProgress) => void;
}

export interface TrackProgress {
  readonly done: number;
  readonly frames: number;
  readonly secondsLeft?: number | undefined;
}

export interface FoundTrack {
  readonly track: Track;
  /** Counted in frames. */
  readonly report: {
    readonly frames: number;
    readonly both: number;
    readonly leftOnly: number;
    readonly rightOnly: number;
    readonly none: number;
  };
  readonly findings: readonly Finding[];
}

export interface ServeOptions {
  /** Left out, the folder that the system keeps for the data of the user's programs. */
  readonly dataFolder: string | undefined;
  /** Left out, the server chooses. */
  readonly port: number | undefined;
  readonly demo: boolean;
}

export interface RunningServer {
  readonly address: string;
  readonly dataFolder: string;
  readonly close: () => Promise<void>;
}

/** What the program tells whoever called it. */
export const exitCode = { done: 0, findings: 1, bad: 2 } as const;
export type ExitCode = (typeof exitCode)[keyof typeof exitCode];
