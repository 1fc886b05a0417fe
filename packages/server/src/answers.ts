import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Context } from 'hono';

/** What an error answer carries. */
export interface Refusal {
  readonly findings: readonly Finding[];
}

export function refusal(reason: string): Refusal {
  return { findings: [finding('server/refused', {}, { reason })] };
}

/** A body that cannot be read. */
export function badBody(context: Context, reason: string): Response {
  return context.json({ findings: [finding('server/body', {}, { reason })] }, 400);
}

/** A finding of the store with the status that goes with it. */
export function sayFinding(context: Context, error: Finding): Response {
  return context.json({ findings: [error] } satisfies Refusal, statusOf(error));
}

function statusOf({ code }: Finding): 400 | 404 | 409 | 422 {
  if (code === 'store/not-found') return 404;
  if (code === 'store/taken' || code === 'store/behind') return 409;
  return code === 'film/hash' || code === 'track/hash' ? 422 : 400;
}

/** The JSON of a body, or why there is none. */
export type Body =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly reason: string };

export async function readBody(context: Context): Promise<Body> {
  const type = context.req.header('content-type') ?? '';
  if (!/^application\/json\b/i.test(type))
    return { ok: false, reason: 'its content type must be application/json' };
  const text = await context.req.text();
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    return { ok: false, reason: error instanceof Error ? error.message : String(error) };
  }
}

/**
 * The answer to a fault that no route foresaw. A disk that is full or cannot be written is told as what it is, with 503,
 * so that a window keeps its edits and tries again; anything else is a fault of the program. Never a stack trace.
 */
export function sayFault(context: Context, error: unknown): Response {
  const reason = diskFault(error);
  if (reason !== undefined) return context.json({ findings: [finding('store/failed', {}, { reason })] }, 503);
  return context.json({ findings: [finding('server/failed')] }, 500);
}

const diskCodes: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is used up',
  EROFS: 'the disk can only be read',
  EACCES: 'access is denied',
  EPERM: 'access is denied',
  EIO: 'the disk reports a fault',
  EMFILE: 'too many files are open',
};

function diskFault(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  if (/SQLITE/.test(String(error.code))) return error.message;
  return diskCodes[String(error.code)];
}
