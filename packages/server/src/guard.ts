import { finding } from '@evenhand/core/ground/findings';
import type { MiddlewareHandler } from 'hono';

const rules = [
  "default-src 'self'",
  "script-src 'self'",
  // The hash is that of the one style that the widget library writes into the page (touch-action of pressable things).
  "style-src 'self' 'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "media-src 'self' blob:",
  "worker-src 'self' blob:",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
];
const policy = rules.join('; ');
/** For the worker that seeks hands alone: its models run as WebAssembly, which `script-src 'self'` by itself forbids. */
const workerPolicy = policy.replace("script-src 'self'", "script-src 'self' 'wasm-unsafe-eval'");
const handsWorker = /^\/assets\/hands-worker-[\w-]+\.js$/;

const headers: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/** Lets only our own page on this machine through, and says on every answer what a page of ours may do. */
export function guard(port: () => number): MiddlewareHandler {
  return async (context, next) => {
    const reason = stranger(context.req.raw.headers, context.req.path, port());
    if (reason === undefined) await next();
    else context.res = context.json({ findings: [finding('server/refused', {}, { reason })] }, 403);
    for (const [name, value] of Object.entries(headers)) context.header(name, value);
    if (handsWorker.test(context.req.path)) context.header('Content-Security-Policy', workerPolicy);
  };
}

/**
 * Why a request is not from our own page on this machine; undefined when it is. Checking Host stops a foreign name that
 * was made to point at this machine; checking Origin and Sec-Fetch-Site stops another page, of another port of this
 * machine as well, that sends requests here. A link from elsewhere may open a page, but never ask the API.
 */
function stranger(sent: Headers, path: string, port: number): string | undefined {
  const host = sent.get('host') ?? '';
  if (host !== `127.0.0.1:${port}` && host !== `localhost:${port}`)
    return `it was sent to ${host === '' ? 'no host' : host} and not to 127.0.0.1:${port}`;
  const origin = sent.get('origin');
  if (origin !== null && origin !== `http://${host}`) return 'it came from another page';
  const site = sent.get('sec-fetch-site');
  const ours = site === null || site === 'same-origin' || site === 'none';
  const opensPage = sent.get('sec-fetch-mode') === 'navigate' && !path.startsWith('/api/');
  return ours || opensPage ? undefined : 'it came from another page';
}
