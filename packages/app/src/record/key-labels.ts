import { type KeyCode, plainKeyLabel } from '@evenhand/core/record';
import { useEffect, useState } from 'react';

interface KeyboardApi {
  readonly getLayoutMap?: () => Promise<ReadonlyMap<string, string>>;
}

/** What is printed on the person's own keys, where the browser can tell; else on a plain keyboard. */
export function useKeyLabels(): (code: KeyCode) => string {
  const [layout, setLayout] = useState<ReadonlyMap<string, string>>();
  useEffect(() => {
    const { keyboard } = navigator as unknown as { readonly keyboard?: KeyboardApi };
    keyboard
      ?.getLayoutMap?.()
      .then(setLayout)
      .catch(() => undefined);
  }, []);
  return (code) => layout?.get(code)?.toUpperCase() ?? plainKeyLabel(code);
}

const words: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  BracketLeft: '[',
  BracketRight: ']',
  Equal: '=',
  Minus: '-',
  Backslash: '\\',
  PageUp: 'Page up',
  PageDown: 'Page down',
  Escape: 'Esc',
};

/** A chord as a person reads it: "Ctrl + Shift + Z". */
export function chordText(chord: string, label: (code: KeyCode) => string): string {
  return chord
    .split('+')
    .map((part) => words[part] ?? (/^(Key|Digit|Quote|Backquote)/.test(part) ? label(part) : part))
    .join(' + ');
}
