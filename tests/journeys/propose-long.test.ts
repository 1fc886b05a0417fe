import { createHash } from 'node:crypto';
import { emptyStudy, type Hand, type Method, type Study } from '@evenhand/core/ground/study';
import { encodeTrack } from '@evenhand/core/record';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { madeStudy } from '../helpers/made-study.ts';
import { madeTrack } from '../helpers/made-tracks.ts';
import { type AppUnderTest, allSaved, startApp } from './app-under-test.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp();
});
afterAll(async () => await app?.close());

const rate = 30;
const cycles = 40;

/** A record of about nine minutes of which one cycle is marked; its film is elsewhere, its track is here. */
async function longRecord(page: Page): Promise<string> {
  const made = madeTrack({ seed: 3, cycles });
  const { frames } = made.track;
  const bytes = encodeTrack(made.track);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const origin = app.address.replace(/\/$/, '');
  const put = await page.request.put(`${app.address}api/tracks/${sha256}`, {
    headers: { 'content-type': 'application/octet-stream', origin },
    data: Buffer.from(bytes),
  });
  expect(put.status()).toBe(204);
  const [method] = madeStudy(made, [1]).methods as [Method];
  const frameOf = (us: number) => Math.round((us * rate) / 1e6);
  const inFrames = <Item extends { readonly start: number }>({
    items,
    end,
  }: {
    items: readonly Item[];
    end: number;
  }) => ({
    items: items.map((item) => ({ ...item, start: frameOf(item.start) })),
    end: frameOf(end),
  });
  const row = (hand: Hand) => inFrames(method[hand]);
  const study: Study = {
    ...emptyStudy('long', 'A long film'),
    films: [
      {
        id: 'f',
        sha256: 'f'.repeat(64),
        name: 'long.mp4',
        bytes: 1,
        container: 'mp4',
        codec: 'avc1',
        width: 1280,
        height: 720,
        rotation: 0,
        frameTimes: { ticksPerSecond: rate, start: 0, steps: [{ repeat: frames, deltas: [1] }] },
        clock: { kind: 'identity' },
        tracks: [{ id: 't', sha256, name: 'hands', bytes: bytes.length, source: 'table', frames }],
      },
    ],
    methods: [
      {
        ...method,
        base: { kind: 'frames', film: 'f' },
        left: row('left'),
        right: row('right'),
        cycles: inFrames(method.cycles),
      },
    ],
  };
  const kept = await page.request.post(`${app.address}api/studies`, { headers: { origin }, data: { study } });
  expect(kept.status(), await kept.text()).toBe(201);
  return study.id;
}

async function saidOf(page: Page, id: string): Promise<readonly (string | undefined)[]> {
  await allSaved(page);
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  const [method] = ((await answer.json()) as { study: Study }).study.methods as [Method];
  return [...method.left.items, ...method.right.items].map(({ said }) => said);
}

describe('proposals in a long film', () => {
  it('it is said how far they are and how long they take, the page answers meanwhile, Stop ends them at once', async () => {
    const { page, faults } = await app.page();
    const id = await longRecord(page);
    await page.goto(`${app.address}studies/${id}/record`);
    const propose = page.locator('[data-command="proposals.propose"]');
    await propose.waitFor();
    await page.keyboard.press('Alt+KeyP');
    const strip = page.locator('.review-strip');
    await strip.getByText(/\d+ %, about \d+ (s|min) left/).waitFor();
    const share = () => strip.locator('progress').evaluate((bar) => (bar as HTMLProgressElement).value);
    expect(await share()).toBeGreaterThan(0);
    // The page does what it is told while the search goes on.
    await page.getByRole('tab', { name: 'Tracks' }).click();
    await page.getByText('Of the frames, the left hand').waitFor();
    expect(await strip.locator('progress').count()).toBe(1);
    await strip.getByRole('button', { name: 'Stop' }).click();
    await strip.locator('progress').waitFor({ state: 'detached' });
    await propose.waitFor();
    expect(await saidOf(page, id)).not.toContain('proposed');

    await page.keyboard.press('Alt+KeyP');
    await page.locator('.review-strip strong').waitFor({ timeout: 120_000 });
    const proposed = (await saidOf(page, id)).filter((said) => said === 'proposed');
    expect(proposed.length).toBeGreaterThan(cycles * 10);
    expect(faults.filter((fault) => !fault.includes('404'))).toEqual([]);
  });
});
