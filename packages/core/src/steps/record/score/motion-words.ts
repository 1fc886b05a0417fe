import { textWidth } from '../../../ground/scene/index.ts';
import type { Motion } from '../../../ground/study/index.ts';

const widths = new Map<string, number>();

/** `textWidth`, remembered: the same few words stand on a score many times, and it is drawn sixty times a second. */
export function wordWidth(text: string, size: number, weight: 400 | 600): number {
  const key = `${weight} ${size} ${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  if (widths.size > 4000) widths.clear();
  const width = textWidth(text, size, weight);
  widths.set(key, width);
  return width;
}

/** Where a motion goes, in words: "ring bin → fixture"; undefined when no place is known. */
export function motionWay(motion: Motion, placeName: (id: string) => string | undefined): string | undefined {
  const from = motion.from === undefined ? undefined : placeName(motion.from);
  const to = motion.to === undefined ? undefined : placeName(motion.to);
  if (from !== undefined && to !== undefined) return `${from} → ${to}`;
  if (to !== undefined) return `→ ${to}`;
  return from === undefined ? undefined : `${from} →`;
}
