import { type Proof, type ProofChoice, proofOf } from '@evenhand/core/evaluate';
import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import { type SlimProof, slimProof } from './slim-proof.ts';

/** What the page asks for. `study` is what the two methods need of it. */
export interface ProofRequest {
  readonly number: number;
  readonly study: Study;
  readonly choice: ProofChoice;
}

export type ProofAnswer =
  | { readonly number: number; readonly proof: Result<SlimProof, Finding> }
  | { readonly number: number; readonly failed: string };

/** A proof in a thread of its own, so that long records do not hold the page up. */
addEventListener('message', (event: MessageEvent<ProofRequest>) => {
  const { number, study, choice } = event.data;
  try {
    const proof: Result<Proof, Finding> = proofOf(study, choice);
    const slim: Result<SlimProof, Finding> = proof.ok ? { ok: true, value: slimProof(proof.value) } : proof;
    const answer: ProofAnswer = { number, proof: slim };
    postMessage(answer);
  } catch (error) {
    const answer: ProofAnswer = { number, failed: error instanceof Error ? error.message : String(error) };
    postMessage(answer);
  }
});
