import { fail, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Film } from '@evenhand/core/ground/study';
import { type OpenFilm, openFilm } from '@evenhand/media';

/** Opens a film that the server keeps. */
export async function loadFilm({ sha256, name }: Film): Promise<Result<OpenFilm, readonly Finding[]>> {
  const url = `/api/films/${sha256}`;
  const findings = await missing(url, name);
  return findings === undefined ? openFilm({ url, name }) : fail(findings);
}

async function missing(url: string, name: string): Promise<readonly Finding[] | undefined> {
  try {
    const response = await fetch(url, { method: 'HEAD' });
    return response.ok ? undefined : [finding('film/missing', {}, { name })];
  } catch {
    return [finding('server/away')];
  }
}
