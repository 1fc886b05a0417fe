import { type Proof, type ProofChoice, proofOf } from '@evenhand/core/evaluate';
import { readMethod } from '@evenhand/core/examine';
import { ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import type { ProofAnswer, ProofRequest } from './proof-worker.ts';
import type { SlimProof } from './slim-proof.ts';

/** A proof, or in words why there is none. */
export type ProofFound = Result<Proof, { readonly message: string }>;

interface Waiting {
  readonly number: number;
  readonly study: Study;
  readonly choice: ProofChoice;
  readonly answer: (found: ProofFound | undefined) => void;
}

/** Proves beside the page. The latest request wins: an earlier one is answered with undefined. */
export class ProofClient {
  #worker: Worker | undefined;
  #number = 0;
  #waiting: Waiting | undefined;

  prove(study: Study, choice: ProofChoice): Promise<ProofFound | undefined> {
    this.cancel();
    if (typeof Worker === 'undefined') return Promise.resolve(proofOf(study, choice));
    this.#number += 1;
    const number = this.#number;
    this.#worker ??= this.#begin();
    const request: ProofRequest = { number, study: partOf(study, choice), choice };
    this.#worker.postMessage(request);
    return new Promise((answer) => {
      this.#waiting = { number, study, choice, answer };
    });
  }

  /** Nobody waits for the answer any more. A calculation that runs is stopped with its thread. */
  cancel(): void {
    if (this.#waiting === undefined) return;
    this.#waiting.answer(undefined);
    this.#waiting = undefined;
    this.dispose();
  }

  dispose(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #begin(): Worker {
    const worker = new Worker(new URL('./proof-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<ProofAnswer>) => {
      const waiting = this.#waiting;
      if (waiting?.number !== data.number) return;
      this.#waiting = undefined;
      waiting.answer('failed' in data ? failedFor(data.failed) : withReadings(data.proof, waiting));
    };
    worker.onerror = ({ message }) => this.#stopped(message);
    worker.onmessageerror = () => this.#stopped('its answer could not be read');
    return worker;
  }

  #stopped(reason: string): void {
    this.#waiting?.answer(failedFor(reason));
    this.#waiting = undefined;
    this.dispose();
  }
}

/** The readings hold functions and do not travel; reading the two methods again is quick. */
function withReadings(slim: Result<SlimProof, Finding>, { study, choice }: Waiting): ProofFound {
  if (!slim.ok) return slim;
  const { proposed } = choice;
  const before = readMethod(study, choice.before, { cycles: choice.cyclesBefore, proposed });
  if (!before.ok) return before;
  const after = readMethod(study, choice.after, { cycles: choice.cyclesAfter, proposed });
  return after.ok ? ok({ ...slim.value, before: before.value, after: after.value }) : after;
}

/** The reason is for whoever mends the program; the rest tells a person what to do. */
function failedFor(reason: string): ProofFound {
  const why = reason === '' ? 'its calculation could not be begun' : reason;
  const message = `The methods could not be compared beside the page (${why}). Nothing is lost; load the page anew.`;
  return { ok: false, error: { message } };
}

/** What a comparison reads of the study: the two methods, the films, the places. */
function partOf(study: Study, { before, after }: ProofChoice): Study {
  const methods = study.methods.filter(({ id }) => id === before || id === after);
  return { ...study, methods, timeStudies: [], comparisons: [], examinations: [] };
}
