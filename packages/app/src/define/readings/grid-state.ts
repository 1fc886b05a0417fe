import type { Cursor, Move } from './grid-columns.ts';
import type { GridModel } from './grid-model.ts';

/** An open cell: begun by typing, where arrows leave it, or opened to change what is in it, where they do not. */
export interface OpenCell {
  readonly text: string;
  readonly begun: 'typed' | 'opened';
  readonly fault: string | undefined;
}

export interface WrongCell {
  readonly text: string;
  readonly message: string;
}

export type Asking = 'reading' | 'cycle' | undefined;

export interface Grid {
  readonly model: GridModel;
  readonly cursor: Cursor;
  readonly open: OpenCell | undefined;
  /** What was typed or pasted and could not be taken, by the key of its cell. */
  readonly wrong: ReadonlyMap<string, WrongCell>;
  readonly asking: Asking;
  /** @param wrote a reading was just written: in the last cycle it makes room for one more */
  readonly move: (move: Move, page: number, wrote?: boolean) => void;
  readonly goTo: (cursor: Cursor) => void;
  readonly begin: (text?: string) => void;
  readonly type: (text: string) => void;
  /** Takes the open cell; false, and it stays open with the reason, when it cannot be taken. */
  readonly commit: () => boolean;
  /** Leaves the open cell: what cannot be taken stays in it as it was typed. */
  readonly leave: () => void;
  readonly drop: () => void;
  readonly clear: () => void;
  readonly missed: () => void;
  readonly ask: (asking: Asking) => void;
  readonly setAside: (reason: string) => void;
  readonly countAgain: () => void;
  readonly setWrong: (cells: ReadonlyMap<string, WrongCell>) => void;
}

export function cellKey(element: string, kind: 'time' | 'rating', cycle: number): string {
  return `${kind} ${cycle} ${element}`;
}
