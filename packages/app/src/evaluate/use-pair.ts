import {
  type CycleSync,
  type Proof,
  type SyncMode,
  type SyncTimeline,
  syncModes,
  syncOf,
  syncTimeline,
} from '@evenhand/core/evaluate';
import { type MethodReading, readMethod } from '@evenhand/core/examine';
import { useEffect, useMemo, useState } from 'react';
import { FilmPair, type PairCycle, type Side } from './film-pair.ts';

export interface ShownPair {
  /** Undefined until the page has been painted once. */
  readonly pair: FilmPair | undefined;
  readonly mode: SyncMode;
  readonly modes: readonly SyncMode[];
  readonly basis: CycleSync['basis'];
  /** How the two are kept in step, in words. */
  readonly words: string;
  readonly setMode: (mode: SyncMode) => void;
}

/** Both films along one time. The pair lives as long as the comparison is open; other cycles or another mode change it. */
export function usePair(proof: Proof, positions: Readonly<Record<Side, number>>): ShownPair {
  const { before, after } = positions;
  const sync = useMemo(() => {
    const [one, two] = [around(proof.before, before), around(proof.after, after)];
    return syncOf(one.reading, two.reading, { before: one.position, after: two.position });
  }, [proof, before, after]);
  const modes: readonly SyncMode[] =
    sync.basis === 'phase' ? ['phase', 'real'] : ['elements', 'phase', 'real'];
  const [wanted, setMode] = useState<SyncMode>();
  const mode = wanted !== undefined && modes.includes(wanted) ? wanted : (modes[0] ?? 'phase');
  const made = useMemo(() => {
    const cycle = (reading: MethodReading, position: number): PairCycle => ({ reading, position });
    const cycles = { before: cycle(proof.before, before), after: cycle(proof.after, after) };
    const durations = {
      before: proof.before.cycles[before]?.duration ?? 0,
      after: proof.after.cycles[after]?.duration ?? 0,
    };
    return { cycles, timeline: syncTimeline(sync, mode, durations) };
  }, [proof, before, after, sync, mode]);
  // Where nothing but the phase can be kept, the words say why.
  const spoken = mode === 'elements' || (mode === 'phase' && sync.basis === 'phase');
  const words = spoken ? sync.words : `In step ${syncModes[mode]}.`;
  return { pair: usePairOf(made), mode, modes, setMode, basis: sync.basis, words };
}

/** What belongs together in two cycles is told from so many cycles on either side of each, so that long records stay quick. Ours. */
const neighbours = 20;

/** A reading of the cycles near one of them, and where that one stands among them. */
function around(reading: MethodReading, position: number): PairCycle {
  const { study, method, cycles, choice } = reading;
  if (cycles.length <= 2 * neighbours + 1) return { reading, position };
  const first = Math.min(Math.max(0, position - neighbours), cycles.length - 2 * neighbours - 1);
  const numbers = cycles.slice(first, first + 2 * neighbours + 1).map(({ number }) => number);
  const near = readMethod(study, method.id, { ...choice, cycles: numbers });
  return near.ok ? { reading: near.value, position: position - first } : { reading, position };
}

interface Made {
  readonly cycles: Readonly<Record<Side, PairCycle>>;
  readonly timeline: SyncTimeline;
}

function usePairOf(made: Made): FilmPair | undefined {
  const [pair, setPair] = useState<FilmPair>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: made once; what changes later is told to it
  useEffect(() => {
    const first = new FilmPair(made.cycles, made.timeline);
    setPair(first);
    return () => first.dispose();
  }, []);
  useEffect(() => pair?.change(made.cycles, made.timeline), [pair, made]);
  return pair;
}

/** Among those that count, the position of the cycle whose length lies nearest to the mean. */
export function middleCycle({ cycles }: MethodReading): number {
  const mean = cycles.reduce((sum, { duration }) => sum + duration, 0) / cycles.length;
  const far = cycles.map(({ duration }) => Math.abs(duration - mean));
  return far.reduce((best, distance, index) => (distance < (far[best] ?? 0) ? index : best), 0);
}
