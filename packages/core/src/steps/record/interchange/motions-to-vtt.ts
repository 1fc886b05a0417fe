import { ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import {
  filmOf,
  frameClock,
  type Hand,
  hands,
  isProposed,
  itemAt,
  itemsBetween,
  type Method,
  type Motion,
  rowStart,
  type Study,
} from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { methodNamed } from './motions-to-csv.ts';

/**
 * The motions of a method as captions for any player (W3C WebVTT): the left hand's at the left of the picture, the
 * right hand's at the right. Cues stand at film time, because that is what a player runs; the scene clock plays no
 * part. What is only proposed says so in its cue, and the note counts it. Wherever one of the hands begins something new, a new pair of cues begins, so that both always start together.
 */
export function motionsToVtt(study: Study, methodId: string): Result<string, Finding> {
  const found = methodNamed(study, methodId);
  if (!found.ok) return found;
  const method = found.value;
  const blocks = [
    `WEBVTT Evenhand: ${plainLine(study.title)}`,
    [
      'NOTE',
      `Motions of both hands, method: ${plainLine(method.name)}.`,
      'Times are those of the film, not of the scene clock.',
      ...proposedLine(method),
    ].join('\n'),
    ...pairs(study, method).flatMap((pair, index) => cues(study, pair, index + 1)),
  ];
  return ok(`${blocks.join('\n\n')}\n`);
}

function proposedLine(method: Method): string[] {
  const count = hands.reduce(
    (sum, hand) =>
      sum + method[hand].items.filter((item) => isProposed(item) && item.kind !== 'unmarked').length,
    0,
  );
  if (count === 0) return [];
  return [
    count === 1
      ? '1 motion is only proposed; nobody has confirmed it.'
      : `${count} motions are only proposed; nobody has confirmed them.`,
  ];
}

/** A span in which neither hand changes its motion, in milliseconds of the film. */
interface Pair {
  readonly start: number;
  readonly end: number;
  readonly left: Motion | undefined;
  readonly right: Motion | undefined;
}

function pairs(study: Study, method: Method): Pair[] {
  const timeOf = filmMilliseconds(study, method);
  const boundaries = hands.flatMap((hand) => {
    const row = method[hand];
    return itemsBetween<Motion>(row, rowStart(row), row.end).flatMap(({ start, end }) => [start, end]);
  });
  const sorted = [...new Set(boundaries)].sort((a, b) => a - b);
  return sorted.slice(0, -1).flatMap((from, index) => {
    const start = timeOf(from);
    const end = timeOf(sorted[index + 1] ?? from);
    // A span of less than a millisecond cannot be written as a cue, nor be seen.
    return end > start
      ? [{ start, end, left: markedAt(method, 'left', from), right: markedAt(method, 'right', from) }]
      : [];
  });
}

function markedAt(method: Method, hand: Hand, at: number): Motion | undefined {
  const motion = itemAt<Motion>(method[hand], at)?.item;
  return motion?.kind === 'unmarked' ? undefined : motion;
}

/**
 * Cut to the millisecond, not rounded: a cue must have begun when the player shows its first frame, and frames are more
 * than a millisecond apart.
 */
function filmMilliseconds(study: Study, method: Method): (boundary: number) => number {
  const film = filmOf(study, method);
  const clock = film === undefined ? undefined : frameClock(film.frameTimes);
  return (boundary) => Math.floor((clock?.timeOf(boundary) ?? boundary) / 1000);
}

const settings: Readonly<Record<Hand, string>> = {
  left: 'line:-2 position:2% size:46% align:left',
  right: 'line:-2 position:98% size:46% align:right',
};

function cues(study: Study, pair: Pair, number: number): string[] {
  return hands.flatMap((hand) => {
    const motion = pair[hand];
    if (motion === undefined) return [];
    const timing = `${timestamp(pair.start)} --> ${timestamp(pair.end)} ${settings[hand]}`;
    return [`${number} ${hand}\n${timing}\n${payload(study, hand, motion)}`];
  });
}

/** hh:mm:ss.mmm; hours are always written and may have more than two digits. */
function timestamp(milliseconds: number): string {
  const part = (value: number, digits: number) => String(value).padStart(digits, '0');
  const seconds = Math.floor(milliseconds / 1000);
  const minutes = Math.floor(seconds / 60);
  return `${part(Math.floor(minutes / 60), 2)}:${part(minutes % 60, 2)}:${part(seconds % 60, 2)}.${part(milliseconds % 1000, 3)}`;
}

/** "Left: TE transport empty" and, on a second line, what it does it with. */
function payload(study: Study, hand: Hand, motion: Motion): string {
  const { code, name } = motionFactsOf(motion.kind);
  const place = (id: string | undefined) => study.places.find((item) => item.id === id)?.name;
  const [from, to] = [place(motion.from), place(motion.to)];
  const details = [
    motion.object ?? '',
    from === undefined ? '' : `from ${from}`,
    to === undefined ? '' : `to ${to}`,
  ].filter((part) => part.trim() !== '');
  const first = `${hand === 'left' ? 'Left' : 'Right'}: <b>${code}</b> ${name}${isProposed(motion) ? ' (proposed)' : ''}`;
  return details.length === 0 ? first : `${first}\n${escapeText(details.join(' '))}`;
}

function escapeText(text: string): string {
  return oneLine(text).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** A header and a note may hold no arrow, which would begin a cue. */
function plainLine(text: string): string {
  return oneLine(text).replace(/-->/g, '→');
}

/** Line ends would end the cue, and U+0000 may not occur in a file. */
function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  return text.replace(/[\u0000-\u001f\u007f\u2028\u2029]+/g, ' ').trim();
}
