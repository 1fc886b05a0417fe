import { readFileSync } from 'node:fs';
import type { Track } from '@evenhand/core/record';
import type { KnownRecord } from './propose-score.ts';

/** What a hand does in a trial of reaching: it lies, reaches out, is at the object, comes back. */
const rest = 1;
const reach = 2;
const atObject = 3;
const back = 4;

interface Trial {
  readonly seconds: number[];
  readonly index: [number, number, number][];
  readonly thumb: [number, number, number][];
}

/**
 * The reach-to-grasp trials as one record of one hand: positions of the middle between index finger and thumb seen from
 * above, height, and the distance of the two as opening. The truth is put by the usual criterion of movement science, a
 * share of the peak speed (5 %), on the speed in space; what is proposed rests on the track alone.
 */
export function reachRecord(file: string, most: number): KnownRecord {
  const trials = readTrials(readFileSync(file, 'utf8')).slice(0, most);
  const seconds: number[] = [];
  const x: number[] = [];
  const y: number[] = [];
  const z: number[] = [];
  const opening: number[] = [];
  const cycles: { start: number; end: number }[] = [];
  const right: { at: number; label: number }[] = [];
  let from = 0;
  for (const trial of trials) {
    const events = eventsOf(trial);
    if (events === undefined) continue;
    const first = trial.seconds[0] as number;
    trial.seconds.forEach((time, at) => {
      const [i, t] = [
        trial.index[at] as [number, number, number],
        trial.thumb[at] as [number, number, number],
      ];
      seconds.push(from + time - first);
      x.push((i[0] + t[0]) / 2);
      y.push((i[2] + t[2]) / 2);
      z.push((i[1] + t[1]) / 2);
      opening.push(Math.hypot(i[0] - t[0], i[1] - t[1], i[2] - t[2]) / 100);
    });
    const at = (time: number) => from + time - first;
    const end = from + (trial.seconds.at(-1) as number) - first + 1 / 85;
    cycles.push({ start: from, end });
    right.push(
      { at: from, label: rest },
      { at: at(events.leaves), label: reach },
      { at: at(events.arrives), label: atObject },
      { at: at(events.returns), label: back },
    );
    if (events.home !== undefined) right.push({ at: at(events.home), label: rest });
    from = end;
  }
  const hand = {
    x: Float32Array.from(x),
    y: Float32Array.from(y),
    z: Float32Array.from(z),
    opening: Float32Array.from(opening),
    presence: new Float32Array(x.length).fill(1),
  };
  const track: Track = {
    source: 'table',
    frames: x.length,
    width: 0,
    height: 0,
    unit: 'millimetres',
    right: hand,
  };
  return { track, seconds, cycles, left: [], right };
}

function readTrials(text: string): Trial[] {
  const trials: Trial[] = [];
  let last = '';
  for (const line of text.split(/\r?\n/).slice(1)) {
    const cells = line.split('\t').map((cell, column) => (column === 0 ? 0 : Number(cell)));
    if (cells.length < 12) continue;
    const name = line.split('\t').slice(0, 3).join(' ');
    if (name !== last) trials.push({ seconds: [], index: [], thumb: [] });
    last = name;
    const trial = trials.at(-1) as Trial;
    const time = (cells[4] as number) / 1000;
    if (time <= (trial.seconds.at(-1) ?? -1)) continue;
    trial.seconds.push(time);
    trial.index.push([cells[6] as number, cells[7] as number, cells[8] as number]);
    trial.thumb.push([cells[9] as number, cells[10] as number, cells[11] as number]);
  }
  return trials;
}

/** When the hand leaves, arrives, leaves again and is home, by 5 % of the peak speed; undefined when that cannot be told. */
function eventsOf({ seconds, index }: Trial) {
  const speed = index.map((point, at) => {
    const [a, b] = [Math.max(0, at - 3), Math.min(index.length - 1, at + 3)];
    const [p, q] = [index[a] as number[], index[b] as number[]];
    return (
      Math.hypot(...point.map((_, axis) => (q[axis] as number) - (p[axis] as number))) /
      ((seconds[b] as number) - (seconds[a] as number))
    );
  });
  const home = index[0] as number[];
  const away = index.map((point) =>
    Math.hypot(...point.map((value, axis) => value - (home[axis] as number))),
  );
  const far = Math.max(...away);
  const out = speed.indexOf(Math.max(...speed.slice(0, away.findIndex((value) => value > 0.9 * far) + 1)));
  const limit = 0.05 * (speed[out] as number);
  let leaves = out;
  while (leaves > 0 && (speed[leaves] as number) > limit) leaves -= 1;
  let arrives = away.findIndex((value) => value > 0.9 * far);
  while (arrives < speed.length - 1 && (speed[arrives] as number) > limit) arrives += 1;
  let returns = away.length - 1;
  while (returns > arrives && (away[returns] as number) < 0.9 * far) returns -= 1;
  while (returns > arrives && (speed[returns] as number) > limit) returns -= 1;
  if (returns <= arrives || arrives <= leaves) return undefined;
  let back = returns + 5;
  while (back < away.length && (away[back] as number) > 0.12 * far) back += 1;
  while (back < speed.length && (speed[back] as number) > limit) back += 1;
  const time = (at: number) => seconds[at] as number;
  return {
    leaves: time(leaves),
    arrives: time(arrives),
    returns: time(returns),
    home: back < seconds.length - 3 ? time(back) : undefined,
  };
}
