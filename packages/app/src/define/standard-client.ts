import {
  filledSheet,
  packTimeStudy,
  type StandardWish,
  standardAtWork,
  type WorkedStandard,
} from '@evenhand/core/define';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import type { StandardAnswer, StandardRequest } from './standard-worker.ts';

/** Something broke that no reading and no field is to blame for. */
export interface StandardFailed {
  /** In words for a person. */
  readonly failed: string;
}

/** Works out time studies beside the page. The latest request wins: an earlier one is answered with undefined. */
export class StandardClient {
  #worker: Worker | undefined;
  #number = 0;
  #waiting:
    | {
        readonly number: number;
        readonly study: Study;
        readonly timeStudy: TimeStudy;
        readonly answer: (worked: WorkedStandard | StandardFailed | undefined) => void;
      }
    | undefined;

  workOut(
    study: Study,
    timeStudy: TimeStudy,
    wish: StandardWish,
  ): Promise<WorkedStandard | StandardFailed | undefined> {
    this.cancel();
    if (typeof Worker === 'undefined') return withoutWorker(study, timeStudy, wish);
    this.#number += 1;
    const number = this.#number;
    this.#worker ??= this.#begin();
    const packed = packTimeStudy(timeStudy);
    const request: StandardRequest = { number, study: partOf(study, timeStudy), packed, wish };
    const buffers = packed.readings.flatMap(({ cycle, us, rating }) => [
      cycle.buffer,
      us.buffer,
      rating.buffer,
    ]);
    this.#worker.postMessage(request, buffers);
    return new Promise((answer) => {
      this.#waiting = { number, study, timeStudy, answer };
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
    const worker = new Worker(new URL('./standard-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<StandardAnswer>) => {
      const waiting = this.#waiting;
      if (waiting?.number !== data.number) return;
      this.#waiting = undefined;
      if ('failed' in data) return waiting.answer(failedFor(data.failed));
      const { worked } = data;
      const { study, timeStudy } = waiting;
      const method = study.methods.find(({ id }) => id === timeStudy.source.method);
      waiting.answer({ ...worked, sheet: { ...filledSheet(worked.sheet, timeStudy), method } });
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

/** Where there are no workers, as in tests outside a browser. */
async function withoutWorker(
  study: Study,
  timeStudy: TimeStudy,
  wish: StandardWish,
): Promise<WorkedStandard | StandardFailed> {
  try {
    return standardAtWork(study, timeStudy, wish);
  } catch (error) {
    return failedFor(error instanceof Error ? error.message : String(error));
  }
}

/** The reason is for whoever mends the program; the rest tells a person what to do. */
function failedFor(reason: string): StandardFailed {
  const why = reason === '' ? 'its calculation could not be begun' : reason;
  return {
    failed: `The standard could not be worked out beside the page (${why}). Nothing is lost; load the page anew.`,
  };
}

/** A time study by readings needs no more of the study than the name of its method. */
function partOf(study: Study, { source }: TimeStudy): Study {
  if (source.kind === 'record') return study;
  const methods = study.methods
    .filter(({ id }) => id === source.method)
    .map((method) => ({
      ...method,
      left: { items: [], end: 0 },
      right: { items: [], end: 0 },
      cycles: { items: [], end: 0 },
    }));
  return { ...study, films: [], places: [], methods, timeStudies: [], comparisons: [], examinations: [] };
}
