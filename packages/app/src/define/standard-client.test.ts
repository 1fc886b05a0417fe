import { emptyTimeStudy, standardAtWork, type WorkedStandard } from '@evenhand/core/define';
import { emptyStudy, type TimeStudy } from '@evenhand/core/ground/study';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { StandardClient, type StandardFailed } from './standard-client.ts';

const study = emptyStudy('s', 'S');
const timeStudy: TimeStudy = {
  ...emptyTimeStudy({ id: 't', name: 'T' }),
  ratingError: 0.05,
  elements: [
    {
      id: 'fit',
      name: 'fit',
      work: 'worker',
      readings: [4, 4.2, 3.9, 4.1, 9].map((time, index) => ({
        cycle: index + 1,
        us: Math.round(time * 1_000_000),
        ...(index === 4 ? { setAside: 'part fell' } : {}),
        ...(index === 1 ? { rating: 90 } : {}),
      })),
    },
    {
      id: 'rest',
      name: 'rest',
      work: 'worker',
      readings: [{ cycle: 1 }, { cycle: 2, us: 700_000 }, { cycle: 3, us: 720_000 }],
    },
  ],
};
const wish = { draws: 200, seed: 5 };
type Answer = WorkedStandard | StandardFailed | undefined;
const workedOf = (answer: Answer): WorkedStandard => {
  if (answer === undefined || 'failed' in answer) throw new Error(`no standard: ${JSON.stringify(answer)}`);
  return answer;
};

/** A thread as the client sees it: what it is given and what it gives back is copied, and it can be stopped. */
class Thread {
  static begun: Thread[] = [];
  static atWork: ((data: unknown, answer: (data: unknown) => void) => void) | undefined;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  onmessageerror: (() => void) | null = null;
  asked = 0;
  stopped = false;

  constructor() {
    Thread.begun.push(this);
  }

  postMessage(data: unknown, transfer: ArrayBuffer[]): void {
    this.asked += 1;
    const copy = structuredClone(data, { transfer });
    queueMicrotask(() => {
      if (!this.stopped) Thread.atWork?.(copy, (answer) => this.give(answer));
    });
  }

  give(answer: unknown): void {
    if (!this.stopped) this.onmessage?.({ data: structuredClone(answer) });
  }

  terminate(): void {
    this.stopped = true;
  }
}

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

describe('the standard without a thread', () => {
  it('is worked out at once, as the core does', async () => {
    vi.stubGlobal('Worker', undefined);
    const answer = workedOf(await new StandardClient().workOut(study, timeStudy, wish));
    expect(answer).toEqual(standardAtWork(study, timeStudy, wish));
    expect(answer.bootstrap?.draws).toBe(200);
  });
});

describe('the standard in a thread of its own', () => {
  beforeEach(async () => {
    Thread.begun = [];
    // The module of the worker, with the two functions that a worker finds around it.
    let listener: ((event: { data: unknown }) => void) | undefined;
    let answerTo: (data: unknown) => void = () => {};
    vi.stubGlobal('addEventListener', (_: string, given: typeof listener) => {
      listener = given;
    });
    vi.stubGlobal('postMessage', (data: unknown) => answerTo(data));
    await import('./standard-worker.ts');
    Thread.atWork = (data, answer) => {
      answerTo = answer;
      listener?.({ data });
    };
    vi.stubGlobal('Worker', Thread);
  });

  it('is the same as on the page, with the cells of every reading', async () => {
    const client = new StandardClient();
    const { sheet, bootstrap } = workedOf(await client.workOut(study, timeStudy, wish));
    const direct = standardAtWork(study, timeStudy, wish);
    expect(bootstrap).toEqual(direct.bootstrap);
    expect(sheet.standard?.standard).toEqual(direct.sheet.standard?.standard);
    expect(sheet.standard?.interval).toEqual(direct.sheet.standard?.interval);
    expect(sheet.rows.map(({ cells }) => cells)).toEqual(direct.sheet.rows.map(({ cells }) => cells));
    expect(sheet.pilot).toEqual(direct.sheet.pilot);
    expect(sheet.timeStudy).toBe(timeStudy);
  });

  it('keeps its thread from one request to the next', async () => {
    const client = new StandardClient();
    await client.workOut(study, timeStudy, wish);
    await client.workOut(study, timeStudy, wish);
    expect(Thread.begun.map(({ asked }) => asked)).toEqual([2]);
    client.dispose();
    expect(Thread.begun[0]?.stopped).toBe(true);
  });

  it('the latest request wins; the one before is answered with nothing and its thread is stopped', async () => {
    const client = new StandardClient();
    const first = client.workOut(study, { ...timeStudy, rating: 50 }, wish);
    const second = client.workOut(study, timeStudy, wish);
    expect(await first).toBeUndefined();
    expect(workedOf(await second).bootstrap).toEqual(standardAtWork(study, timeStudy, wish).bootstrap);
    expect(Thread.begun.map(({ stopped }) => stopped)).toEqual([true, false]);
  });

  it('is cancelled by whoever leaves the page', async () => {
    const client = new StandardClient();
    const asked = client.workOut(study, timeStudy, wish);
    client.cancel();
    expect(await asked).toBeUndefined();
    expect(Thread.begun[0]?.stopped).toBe(true);
    client.cancel();
  });

  it('an answer to an older request is left lying', async () => {
    const atWork = Thread.atWork;
    Thread.atWork = () => {};
    const client = new StandardClient();
    const asked = client.workOut(study, timeStudy, wish);
    Thread.begun[0]?.give({ number: -1, failed: 'of another one' });
    await Promise.resolve();
    Thread.begun[0]?.give({ number: 1, failed: 'of this one' });
    expect(await asked).toMatchObject({ failed: expect.stringContaining('of this one') });
    Thread.atWork = atWork;
  });

  it.each([
    ['breaks', (thread: Thread) => thread.onerror?.({ message: 'out of memory' }), 'out of memory'],
    ['cannot be loaded', (thread: Thread) => thread.onerror?.({ message: '' }), 'could not be begun'],
    ['gives what cannot be read', (thread: Thread) => thread.onmessageerror?.(), 'could not be read'],
  ])('a thread that %s is told in words, and the next request has a new one', async (_title, harm, words) => {
    const atWork = Thread.atWork;
    Thread.atWork = () => {};
    const client = new StandardClient();
    const asked = client.workOut(study, timeStudy, wish);
    const [thread] = Thread.begun;
    if (thread === undefined) throw new Error('no thread');
    harm(thread);
    const answer = await asked;
    expect(answer).toMatchObject({ failed: expect.stringContaining(words) });
    expect(answer).toMatchObject({ failed: expect.stringContaining('load the page anew') });
    Thread.atWork = atWork;
    workedOf(await client.workOut(study, timeStudy, wish));
    expect(Thread.begun.length).toBe(2);
  });
});
