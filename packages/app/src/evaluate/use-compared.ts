import {
  type ComparisonFacts,
  comparedMoney,
  type Proof,
  type ProofChoice,
  proofOf,
} from '@evenhand/core/evaluate';
import type { Comparison, Study } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { useEffect, useMemo, useRef, useState } from 'react';
import { ProofClient, type ProofFound } from './proof-client.ts';

/** Comparisons of records with up to this many motions are worked out while the page is drawn. Ours. */
const quickMotions = 1500;
/** Records that are still being changed are compared after so many milliseconds. Ours. */
const pause = 60;

export interface Compared {
  /** Undefined while long records are compared for the first time. */
  readonly facts: ComparisonFacts | undefined;
  /** Why they cannot be compared. */
  readonly refused: string | undefined;
  /** What is shown is of an earlier state. */
  readonly stale: boolean;
}

interface Wish {
  readonly study: Study;
  readonly choice: ProofChoice;
}

interface Worked {
  readonly wish: Wish;
  readonly id: string;
  readonly found: ProofFound;
}

/**
 * A comparison worked out: at once of short records, of long ones in a thread beside the page. Money is reckoned with the
 * proof that stands, so that writing a figure proves nothing anew.
 */
export function useCompared(study: Study, comparison: Comparison, unit: TimeUnit): Compared {
  const wish = useWish(study, comparison, unit);
  const quick = motionsOf(wish) <= quickMotions;
  const now = useMemo(() => (quick ? proofOf(wish.study, wish.choice) : undefined), [wish, quick]);
  const worked = useWorked(quick ? undefined : wish, comparison.id);
  const kept = worked?.id === comparison.id ? worked : undefined;
  const found: ProofFound | undefined = quick ? now : kept?.found;
  const proof = found?.ok === true ? found.value : undefined;
  const facts = useFacts(proof, comparison);
  const refused = found === undefined || found.ok ? undefined : found.error.message;
  return { facts, refused, stale: !quick && kept?.wish !== wish };
}

/** What is proved; the same object as long as nothing of it changes, whatever else changes in the study. */
function useWish(study: Study, comparison: Comparison, unit: TimeUnit): Wish {
  const { films, places, demo } = study;
  const { before, after, proposed, confidence } = comparison;
  const first = study.methods.find(({ id }) => id === before.method);
  const second = study.methods.find(({ id }) => id === after.method);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts of the study that a proof reads
  return useMemo(
    () => ({
      study,
      choice: {
        before: before.method,
        after: after.method,
        cyclesBefore: before.cycles,
        cyclesAfter: after.cycles,
        proposed,
        confidence,
        unit,
      },
    }),
    [first, second, films, places, demo, before, after, proposed, confidence, unit],
  );
}

function useWorked(wish: Wish | undefined, id: string): Worked | undefined {
  const [worked, setWorked] = useState<Worked>();
  const client = useRef<ProofClient>(undefined);
  useEffect(
    () => () => {
      client.current?.cancel();
      client.current?.dispose();
      client.current = undefined;
    },
    [],
  );
  useEffect(() => {
    if (wish === undefined) return setWorked(undefined);
    let gone = false;
    const work = async () => {
      client.current ??= new ProofClient();
      const found = await client.current.prove(wish.study, wish.choice);
      if (found !== undefined && !gone) setWorked({ wish, id, found });
    };
    const timer = setTimeout(() => void work(), pause);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [wish, id]);
  return worked;
}

function useFacts(proof: Proof | undefined, comparison: Comparison): ComparisonFacts | undefined {
  const { money } = comparison;
  const compared = useMemo(
    () => (proof === undefined || money === undefined ? undefined : comparedMoney(proof, money)),
    [proof, money],
  );
  return useMemo(
    () => (proof === undefined ? undefined : { comparison, proof, money: compared }),
    [proof, compared, comparison],
  );
}

function motionsOf({ study, choice }: Wish): number {
  return study.methods
    .filter(({ id }) => id === choice.before || id === choice.after)
    .reduce((sum, { left, right }) => sum + left.items.length + right.items.length, 0);
}
