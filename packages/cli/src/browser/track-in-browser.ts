import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { decodeTrack } from '@evenhand/core/record';
import { type PageMessage, serveFilmPage } from '@evenhand/server';
import type { FoundTrack, TrackWishes } from '../io.ts';
import { headlessBrowser, openHeadless } from './headless.ts';

/** The page must show signs of life at least this often. */
const silentMs = 120_000;

/**
 * Seeks the hands of a film by the same page and workers as the program itself, in a browser without a window.
 * Findings: `hands/no-browser`, `hands/not-built`, `hands/search`, or what is wrong with the film.
 */
export async function trackInBrowser(
  file: string,
  wishes: TrackWishes,
): Promise<Result<FoundTrack, readonly Finding[]>> {
  const { browser, reason } = headlessBrowser();
  if (browser === null) return fail([finding('hands/no-browser', {}, { reason })]);
  const talk = conversation(wishes);
  const served = await serveFilmPage(file, talk.hear);
  if (!served.ok) {
    talk.end();
    return fail([served.error]);
  }
  const page = await openHeadless(browser, addressOf(served.value.address, wishes));
  const gone = page.ended.then((last) => stopped(`the browser ended${last === '' ? '' : `: ${last}`}`));
  try {
    return await Promise.race([talk.answer, gone]);
  } finally {
    talk.end();
    await page.close();
    served.value.close();
  }
}

function addressOf(address: string, { name, mirrored, workers }: TrackWishes): string {
  const url = new URL(address);
  url.searchParams.set('name', name);
  url.searchParams.set('workers', String(workers));
  if (mirrored) url.searchParams.set('mirrored', '');
  return url.href;
}

function stopped(reason: string): Result<never, readonly Finding[]> {
  return fail([finding('hands/search', {}, { reason })]);
}

type Answer = Result<FoundTrack, readonly Finding[]>;

interface Conversation {
  readonly hear: (message: PageMessage) => void;
  readonly answer: Promise<Answer>;
  readonly end: () => void;
}

/** What the page says, turned into one answer. */
function conversation(wishes: TrackWishes): Conversation {
  let findings: readonly Finding[] = [];
  let report: FoundTrack['report'] | undefined;
  let give: (answer: Answer) => void = () => {};
  const answer = new Promise<Answer>((resolve) => {
    give = resolve;
  });
  const silence = () => give(stopped('the page has said nothing for two minutes'));
  let waiting = setTimeout(silence, silentMs);
  const hear = (message: PageMessage) => {
    clearTimeout(waiting);
    waiting = setTimeout(silence, silentMs);
    if (message.kind === 'track') {
      const track = decodeTrack(message.bytes);
      if (!track.ok || report === undefined) give(stopped('the page sent no track'));
      else give(ok({ track: track.value, report, findings }));
      return;
    }
    const said = message.body as Said;
    if (said?.kind === 'progress') wishes.onProgress(said.progress);
    else if (said?.kind === 'found') ({ findings, report } = said);
    else if (said?.kind === 'refused') give(fail(said.findings));
    else give(stopped(said?.reason ?? 'the page said something that cannot be read'));
  };
  return { hear, answer, end: () => clearTimeout(waiting) };
}

/** What our own page says. */
type Said =
  | { readonly kind: 'progress'; readonly progress: Parameters<TrackWishes['onProgress']>[0] }
  | { readonly kind: 'found'; readonly report: FoundTrack['report']; readonly findings: readonly Finding[] }
  | { readonly kind: 'refused'; readonly findings: readonly Finding[] }
  | { readonly kind: 'failed'; readonly reason: string }
  | undefined;
