import { type Library, libraryFrom } from '@evenhand/core/develop';
import { type MethodReading, readRecords } from '@evenhand/core/examine';
import { useEffect, useState } from 'react';
import { api } from '../../editor/page-ports.ts';
import { failureFindings } from '../../editor/server-api.ts';
import { keepChoice, keptChoice } from './kept-choice.ts';

/** Other studies whose records stand in for what this one has not measured. */
export interface OtherStudies {
  readonly chosen: readonly string[];
  readonly choose: (ids: readonly string[]) => void;
  /** Undefined while none is chosen or read. */
  readonly library: Library | undefined;
  /** Chosen studies are being read; times are not predicted before. */
  readonly reading: boolean;
  /** What is left out, and why. */
  readonly faults: readonly string[];
  /** The browser did not keep the choice. */
  readonly unkept: boolean;
}

interface Read {
  readonly of: string;
  readonly library: Library | undefined;
  readonly faults: readonly string[];
}

const nothing: Read = { of: '', library: undefined, faults: [] };

export function useLibrary(study: string): OtherStudies {
  const [chosen, setChosen] = useState(() => keptChoice(localStorage, study));
  const [unkept, setUnkept] = useState(false);
  const [read, setRead] = useState<Read>(nothing);
  const key = chosen.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the list
  useEffect(() => {
    if (chosen.length === 0) return setRead(nothing);
    let left = false;
    void readAll(chosen, key).then((all) => {
      if (!left) setRead(all);
    });
    return () => {
      left = true;
    };
  }, [key]);
  return {
    chosen,
    choose: (ids) => {
      const sorted = [...ids].sort();
      setUnkept(!keepChoice(localStorage, study, sorted));
      setChosen(sorted);
    },
    library: read.of === key ? read.library : undefined,
    reading: read.of !== key,
    faults: read.of === key ? read.faults : [],
    unkept,
  };
}

async function readAll(ids: readonly string[], of: string): Promise<Read> {
  const readings: MethodReading[] = [];
  const faults: string[] = [];
  for (const id of ids) {
    const answer = await api.load(id);
    if (answer.ok) {
      const own = readRecords(answer.value.study);
      if (own.length === 0) faults.push(`“${answer.value.study.title}” has no cycles to take times from.`);
      readings.push(...own);
    } else {
      const reasons = failureFindings(answer.error).map(({ message }) => message);
      faults.push(`A chosen study could not be read and is left out: ${reasons.join(' ')}`);
    }
  }
  return { of, library: readings.length === 0 ? undefined : libraryFrom(readings), faults };
}
