import type { Hand } from '../../ground/study/index.ts';
import type { MotionKind } from '../../ground/tables/index.ts';

/** A physical key by its place on the keyboard, as KeyboardEvent.code names it; what is printed on it plays no part. */
export type KeyCode = string;

/** The two halves of the keyboard, finger against finger: the same finger means the same motion on both hands. */
export const mirroredKeys: readonly (readonly [left: KeyCode, right: KeyCode])[] = [
  ['Digit1', 'Digit0'],
  ['Digit2', 'Digit9'],
  ['Digit3', 'Digit8'],
  ['Digit4', 'Digit7'],
  ['Digit5', 'Digit6'],
  ['KeyQ', 'KeyP'],
  ['KeyW', 'KeyO'],
  ['KeyE', 'KeyI'],
  ['KeyR', 'KeyU'],
  ['KeyT', 'KeyY'],
  ['KeyA', 'Semicolon'],
  ['KeyS', 'KeyL'],
  ['KeyD', 'KeyK'],
  ['KeyF', 'KeyJ'],
  ['KeyG', 'KeyH'],
  ['KeyZ', 'Slash'],
  ['KeyX', 'Period'],
  ['KeyC', 'Comma'],
  ['KeyV', 'KeyM'],
  ['KeyB', 'KeyN'],
];

/** Which motion each left-half key marks; the right half follows by mirroring. A motion may be without a key. */
export type KeyMap = Readonly<Record<KeyCode, MotionKind>>;

/** The commonest motions lie under the resting fingers: reach, grasp, carry, let go. */
export const defaultKeyMap: KeyMap = {
  KeyF: 'TE',
  KeyD: 'G',
  KeyS: 'TL',
  KeyA: 'RL',
  KeyG: 'P',
  KeyR: 'A',
  KeyE: 'U',
  KeyW: 'H',
  KeyQ: 'DA',
  KeyT: 'PP',
  KeyV: 'UD',
  KeyC: 'AD',
  KeyX: 'I',
  KeyZ: 'R',
  KeyB: 'Sh',
  Digit4: 'St',
  Digit3: 'F',
  Digit2: 'Pn',
  Digit1: 'unmarked',
};

const rightOfLeft = new Map(mirroredKeys);
const leftOfRight = new Map(mirroredKeys.map(([left, right]) => [right, left] as const));

/** What a key means: which hand, and which motion under the key map. */
export function keyMeaning(
  map: KeyMap,
  code: KeyCode,
): { readonly hand: Hand; readonly kind: MotionKind } | undefined {
  const hand: Hand = leftOfRight.has(code) ? 'right' : 'left';
  const kind = map[leftOfRight.get(code) ?? code];
  return kind === undefined || !(rightOfLeft.has(code) || hand === 'right') ? undefined : { hand, kind };
}

/** The key of a hand for a motion; undefined when it has none. */
export function keyFor(map: KeyMap, hand: Hand, kind: MotionKind): KeyCode | undefined {
  const left = Object.keys(map).find((code) => map[code] === kind);
  return left === undefined || hand === 'left' ? left : rightOfLeft.get(left);
}

/** The key that mirrors another; undefined for a key outside the two halves. */
export function mirrorKey(code: KeyCode): KeyCode | undefined {
  return rightOfLeft.get(code) ?? leftOfRight.get(code);
}

/** Gives a motion a key (either half may be pressed); whatever lay on that key loses it, so no key means two things. */
export function withKey(map: KeyMap, kind: MotionKind, code: KeyCode): KeyMap | undefined {
  const left = leftOfRight.get(code) ?? code;
  if (!rightOfLeft.has(left)) return undefined;
  const kept = Object.entries(map).filter(([key, known]) => key !== left && known !== kind);
  return Object.fromEntries([...kept, [left, kind]]);
}

/** Reads a stored key map; anything that is not one gives undefined. */
export function readKeyMap(value: unknown, kinds: readonly MotionKind[]): KeyMap | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const entries = Object.entries(value);
  const good = entries.every(([key, kind]) => rightOfLeft.has(key) && kinds.includes(kind as MotionKind));
  return good && entries.length > 0 ? (Object.fromEntries(entries) as KeyMap) : undefined;
}

/** What is printed on a key of a plain keyboard, for when the browser cannot tell the person's own layout. */
export function plainKeyLabel(code: KeyCode): string {
  const signs: Readonly<Record<string, string>> = {
    Semicolon: ';',
    Slash: '/',
    Period: '.',
    Comma: ',',
    Quote: "'",
    Backquote: '`',
  };
  return signs[code] ?? code.replace(/^(Key|Digit)/, '');
}
