import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Hand, methodClock, parseStudy } from '@evenhand/core/ground/study';
import { decodeTrack } from '@evenhand/core/record';
import type { KnownRecord } from './propose-score.ts';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

/**
 * The demonstration film as a record: its track as the hand models saw it (tests/films/tracks/present.track.bin, made by
 * `evenhand record track`), its truth as the drawn film was made.
 */
export function demoRecord(): KnownRecord {
  const study = parseStudy(
    readFileSync(path.join(root, 'examples/couplings/couplings.evenhand.json'), 'utf8'),
  );
  const track = decodeTrack(readFileSync(path.join(root, 'tests/films/tracks/present.track.bin')));
  if (!study.ok || !track.ok) throw new Error('the demonstration and its track cannot be read');
  const method = study.value.methods.find(({ id }) => id === 'present');
  if (method === undefined) throw new Error('the demonstration has no present method');
  const clock = methodClock(study.value, method);
  const time = (boundary: number) => clock.timeOf(boundary) / 1e6;
  const known: string[] = [];
  const row = (hand: Hand) =>
    method[hand].items.map(({ start, kind, object, from, to }) => {
      const key = JSON.stringify([kind, object, from, to]);
      if (!known.includes(key)) known.push(key);
      return { at: time(start), label: known.indexOf(key) + 1 };
    });
  const { items, end } = method.cycles;
  return {
    track: track.value,
    seconds: Array.from({ length: track.value.frames }, (_, frame) => time(frame)),
    cycles: items.map(({ start }, index) => ({
      start: time(start),
      end: time(items[index + 1]?.start ?? end),
    })),
    left: row('left'),
    right: row('right'),
  };
}
