import type { Move } from './grid-columns.ts';

/** What a key asks of the table while no cell is open. */
export type GridKey =
  | { readonly kind: 'move'; readonly move: Move }
  | { readonly kind: 'open' }
  | { readonly kind: 'type'; readonly text: string }
  | { readonly kind: 'clear' }
  | { readonly kind: 'missed' }
  | { readonly kind: 'aside' }
  | { readonly kind: 'cycle-aside' }
  | { readonly kind: 'leave' };

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

const moves: Readonly<Record<string, Move>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  Home: 'row-start',
  End: 'row-end',
  PageDown: 'page-right',
  PageUp: 'page-left',
};

export function gridKey(pressed: Pressed): GridKey | undefined {
  const { key, ctrlKey, metaKey, altKey, shiftKey } = pressed;
  if (altKey) return undefined;
  if (ctrlKey || metaKey) {
    if (key === 'Home') return { kind: 'move', move: 'first' };
    if (key === 'End') return { kind: 'move', move: 'last' };
    if (key === 'ArrowLeft') return { kind: 'move', move: 'row-start' };
    if (key === 'ArrowRight') return { kind: 'move', move: 'row-end' };
    return undefined;
  }
  const move = moves[key];
  if (move !== undefined) return { kind: 'move', move };
  if (key === 'Enter') return { kind: 'move', move: shiftKey ? 'before' : 'next' };
  if (key === 'Tab') return { kind: 'move', move: shiftKey ? 'left' : 'right' };
  if (key === 'F2') return { kind: 'open' };
  if (key === 'Delete' || key === 'Backspace') return { kind: 'clear' };
  if (key === 'Escape') return { kind: 'leave' };
  if (key === 'a') return { kind: 'aside' };
  if (key === 'A') return { kind: 'cycle-aside' };
  if (key === 'm' || key === '-') return { kind: 'missed' };
  return /^[0-9.,]$/.test(key) ? { kind: 'type', text: key } : undefined;
}
