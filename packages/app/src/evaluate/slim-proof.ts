import type { Proof } from '@evenhand/core/evaluate';

/** A proof as it travels between threads: without the readings, which hold functions, and without the pieces of them. */
export type SlimProof = Omit<Proof, 'before' | 'after'>;

export function slimProof({ before: _, after: __, ...proof }: Proof): SlimProof {
  const { decomposition, pace } = proof;
  const bare = <Side extends { readonly pieces: readonly unknown[] }>(side: Side): Side => ({
    ...side,
    pieces: [],
  });
  return {
    ...proof,
    decomposition: {
      ...decomposition,
      rows: decomposition.rows.map((row) => ({ ...row, before: bare(row.before), after: bare(row.after) })),
    },
    pace: {
      ...pace,
      motions: pace.motions.map((motion) => ({
        ...motion,
        before: bare(motion.before),
        after: bare(motion.after),
      })),
    },
  };
}
