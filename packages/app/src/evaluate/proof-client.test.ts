import { type ProofChoice, proofOf, proofPage } from '@evenhand/core/evaluate';
import type { Method, Study } from '@evenhand/core/ground/study';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { plainStudy } from '../../../../tests/helpers/plain-study.ts';
import { ProofClient } from './proof-client.ts';
import type { ProofRequest } from './proof-worker.ts';
import { slimProof } from './slim-proof.ts';

/** Five cycles of either method; the new one leaves the hold out. */
function study(): Study {
  const base = plainStudy();
  const [first] = base.methods;
  if (first === undefined) throw new Error('no method');
  const method = (id: string, cycle: number): Method => {
    const starts = [0, 1, 2, 3, 4].map((index) => index * cycle + index * index * 1000);
    const end = 5 * cycle + 25_000;
    const items = (kind: 'TE' | 'G', hand: string) =>
      starts.map((start, index) => ({
        id: `${hand}${index}`,
        start,
        kind,
        object: 'body',
        said: 'marked' as const,
      }));
    return {
      ...first,
      id,
      name: id,
      left: { items: items('TE', 'l'), end },
      right: { items: items('G', 'r'), end },
      cycles: { items: starts.map((start, index) => ({ id: `c${index}`, start })), end },
    };
  };
  return { ...base, methods: [method('old', 4_000_000), method('new', 3_000_000)] };
}

const choice: ProofChoice = { before: 'old', after: 'new' };

/** A thread as the client sees it: what it is given and what it gives back is copied, and it can be stopped. */
class Thread {
  static begun: Thread[] = [];
  static silent = false;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  stopped = false;

  constructor() {
    Thread.begun.push(this);
  }

  postMessage(data: ProofRequest): void {
    const { number, study: given, choice: wish } = structuredClone(data);
    queueMicrotask(() => {
      if (this.stopped || Thread.silent) return;
      const proof = proofOf(given, wish);
      const answer = proof.ok ? { ok: true, value: slimProof(proof.value) } : proof;
      this.onmessage?.({ data: structuredClone({ number, proof: answer }) });
    });
  }

  terminate(): void {
    this.stopped = true;
  }
}

beforeEach(() => {
  Thread.begun = [];
  Thread.silent = false;
  vi.stubGlobal('Worker', Thread);
});
afterEach(() => void vi.unstubAllGlobals());

describe('a proof worked out beside the page', () => {
  it('is the proof that the page itself would have found, with its readings', async () => {
    const found = await new ProofClient().prove(study(), choice);
    const own = proofOf(study(), choice);
    if (found?.ok !== true || !own.ok) throw new Error('both should be proofs');
    expect(found.value.claim).toEqual(own.value.claim);
    expect(found.value.difference).toEqual(own.value.difference);
    expect(found.value.before.cycles).toEqual(own.value.before.cycles);
    const page = (proof: typeof own.value) =>
      proofPage(
        study(),
        {
          comparison: {
            id: 'c',
            before: { method: 'old' },
            after: { method: 'new' },
            confidence: 0.95,
          },
          proof,
          money: undefined,
        },
        { paper: 'a4', unit: 'seconds', date: '2026-01-01' },
      );
    expect(page(found.value)).toEqual(page(own.value));
  });

  it('says in words why there is none', async () => {
    const found = await new ProofClient().prove(study(), { before: 'old', after: 'gone' });
    expect(found).toMatchObject({ ok: false, error: { code: 'record/no-method' } });
  });

  it('gives an earlier request up for a later one, with its thread', async () => {
    const client = new ProofClient();
    Thread.silent = true;
    const first = client.prove(study(), choice);
    Thread.silent = false;
    const second = client.prove(study(), { before: 'new', after: 'old' });
    expect(await first).toBeUndefined();
    expect((await second)?.ok).toBe(true);
    expect(Thread.begun.map(({ stopped }) => stopped)).toEqual([true, false]);
  });

  it('tells a person when its thread breaks, and begins another for the next request', async () => {
    const client = new ProofClient();
    Thread.silent = true;
    const broken = client.prove(study(), choice);
    Thread.begun[0]?.onerror?.({ message: '' });
    const found = await broken;
    expect(found?.ok === false && found.error.message).toMatch(/could not be begun.*load the page anew/);
    Thread.silent = false;
    expect((await client.prove(study(), choice))?.ok).toBe(true);
  });
});
