import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Edit } from '@evenhand/core/ground/edit';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';

/** An edit with who and when, as it is sent and kept. */
export interface Envelope {
  readonly id: string;
  readonly edit: Edit;
  /** ISO 8601, the clock of the window that made it. */
  readonly at: string;
}

/** An edit that the server has kept, at its place in the study's history. */
export interface KeptEdit extends Envelope {
  readonly rev: number;
  readonly client: string;
}

export interface StudyEntry {
  readonly id: string;
  readonly title: string;
  readonly rev: number;
  readonly changedAt: string;
  readonly demo: boolean;
  readonly archived: boolean;
  readonly films: number;
  readonly methods: number;
}

export type EditResult =
  | { readonly id: string; readonly status: 'applied'; readonly rev: number }
  | { readonly id: string; readonly status: 'refused'; readonly finding: Finding };

/** Why a request did not succeed: the server is away, or it answered with findings. */
export type Failure =
  | { readonly kind: 'away' }
  | { readonly kind: 'refused'; readonly status: number; readonly findings: readonly Finding[] };

export type Answer<T> = Promise<Result<T, Failure>>;

/** What the page asks of the local server. */
export interface ServerApi {
  readonly studies: () => Answer<readonly StudyEntry[]>;
  readonly create: (study: Study) => Answer<{ readonly id: string; readonly rev: number }>;
  readonly load: (id: string) => Answer<{ readonly study: Study; readonly rev: number }>;
  readonly send: (
    id: string,
    client: string,
    baseRev: number,
    edits: readonly Envelope[],
  ) => Answer<{ readonly rev: number; readonly results: readonly EditResult[] }>;
  readonly since: (
    id: string,
    rev: number,
  ) => Answer<{ readonly rev: number; readonly edits: readonly KeptEdit[] }>;
  readonly archive: (id: string, archived: boolean) => Answer<unknown>;
  readonly pdf: (body: unknown) => Answer<Blob>;
}

type Fetch = (path: string, init?: RequestInit) => Promise<Response>;

/** @param ask usually `fetch`; a test gives its own */
export function serverApi(ask: Fetch): ServerApi {
  const json = <T>(path: string, body?: unknown) =>
    request<T>(ask, path, body, (response) => response.json() as Promise<T>);
  const at = (id: string) => `/api/studies/${encodeURIComponent(id)}`;
  return {
    studies: () => json('/api/studies'),
    create: (study) => json('/api/studies', { study }),
    load: (id) => json(at(id)),
    send: (id, client, baseRev, edits) => json(`${at(id)}/edits`, { client, baseRev, edits }),
    since: (id, rev) => json(`${at(id)}/edits?since=${rev}`),
    archive: (id, archived) => json(`${at(id)}/archive`, { archived }),
    pdf: (body) => request(ask, '/api/pdf', body, (response) => response.blob()),
  };
}

async function request<T>(
  ask: Fetch,
  path: string,
  body: unknown,
  read: (response: Response) => Promise<T>,
): Answer<T> {
  const init =
    body === undefined
      ? {}
      : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
  try {
    const response = await ask(path, init);
    if (response.ok) return ok(await read(response));
    // A server that met a fault of its own (a full disk, going down) keeps nothing: to a person it is away, and edits wait.
    if (response.status >= 500) return fail({ kind: 'away' });
    return fail({ kind: 'refused', status: response.status, findings: await findingsOf(response) });
  } catch {
    return fail({ kind: 'away' });
  }
}

async function findingsOf(response: Response): Promise<readonly Finding[]> {
  try {
    const body = (await response.json()) as { findings?: readonly Finding[] };
    if (Array.isArray(body.findings) && body.findings.length > 0) return body.findings;
  } catch {
    // Not JSON: the status alone has to do.
  }
  return [finding('server/refused', {}, { reason: `the server answered ${response.status}` })];
}

/** What to tell a person about a failure. */
export function failureFindings(failure: Failure): readonly Finding[] {
  return failure.kind === 'away' ? [finding('server/away')] : failure.findings;
}
