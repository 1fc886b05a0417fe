import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { endOf, type Hand, itemsBetween, type Method, type Study } from '@evenhand/core/ground/study';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, allSaved, shownFrame, startApp } from './app-under-test.ts';

const demoTrack = 'tests/films/tracks/present.track.bin';
const gestures = path.join(process.env.EVENHAND_FILMS ?? '', 'dex_human_hand_video.mp4');
const secondLong = 30;

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterAll(async () => await app?.close());

async function studyAt(page: Page, id: string): Promise<Study> {
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  return ((await answer.json()) as { study: Study }).study;
}

async function demoStudy(page: Page): Promise<Study> {
  const answer = await page.request.get(`${app.address}api/studies`);
  const studies = (await answer.json()) as { id: string; demo: boolean }[];
  return await studyAt(page, studies.find(({ demo }) => demo)?.id ?? '');
}

/** The demo study as it is when a person has marked one cycle of the present method and made a track of its film. */
async function withOneCycle(page: Page, full: Study, index: number): Promise<string> {
  const bytes = readFileSync(demoTrack);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const headers = { 'content-type': 'application/octet-stream', origin: app.address.replace(/\/$/, '') };
  const put = await page.request.put(`${app.address}api/tracks/${sha256}`, { headers, data: bytes });
  expect(put.status()).toBe(204);
  const method = full.methods[0] as Method;
  const [from, to] = [method.cycles.items[index]?.start ?? 0, endOf(method.cycles, index)];
  const row = (hand: Hand) => ({
    end: method[hand].end,
    items: [
      { id: `${hand}a`, start: 0, kind: 'unmarked' as const, said: 'marked' as const },
      ...itemsBetween(method[hand], from, to).map(({ item, start }) => ({ ...item, start })),
      { id: `${hand}z`, start: to, kind: 'unmarked' as const, said: 'marked' as const },
    ],
  });
  const { elements: _, ...rest } = method;
  const track = {
    id: 't',
    sha256,
    name: 'hands',
    bytes: bytes.length,
    source: 'landmarks' as const,
    frames: 1690,
  };
  const study = {
    formatVersion: full.formatVersion,
    id: 'one-cycle',
    title: 'One cycle',
    demo: true,
    operation: full.operation,
    films: full.films.slice(0, 1).map((film) => ({ ...film, tracks: [track] })),
    places: full.places,
    methods: [
      {
        ...rest,
        left: row('left'),
        right: row('right'),
        cycles: { items: [method.cycles.items[index]], end: to },
      },
    ],
  };
  const made = await page.request.post(`${app.address}api/studies`, {
    headers: { origin: headers.origin },
    data: { study },
  });
  expect(made.status(), await made.text()).toBe(201);
  return study.id;
}

async function onlyMethod(page: Page, id: string): Promise<Method> {
  await allSaved(page);
  return (await studyAt(page, id)).methods[0] as Method;
}

const saidOf = ({ left, right }: Method) => [...left.items, ...right.items].map(({ said }) => said);
const open = (page: Page) => page.locator('.review-strip strong');

describe('one cycle is marked, and one key proposes the others', () => {
  it('on the demo film: they stand there to be confirmed, count in nothing until they are, and then they do', async () => {
    const { page, strangers, faults } = await app.page();
    const full = await demoStudy(page);
    const id = await withOneCycle(page, full, 1);
    await page.goto(`${app.address}studies/${id}/record`);
    await shownFrame(page);
    await page.keyboard.press('Alt+KeyP');
    await open(page).waitFor();
    const proposed = await onlyMethod(page, id);
    const truth = (full.methods[0] as Method).cycles.items.map(({ start }) => start);
    const found = proposed.cycles.items.filter(({ setAside }) => setAside === undefined);
    expect(found).toHaveLength(truth.length);
    found.forEach(({ start }, index) => {
      expect(Math.abs(start - (truth[index] ?? 0)), `cycle ${index + 1}`).toBeLessThanOrEqual(secondLong / 2);
    });
    expect(saidOf(proposed)).toContain('proposed');
    const count = Number((await open(page).textContent())?.split(' ')[0]);
    expect(count).toBeGreaterThan(100);

    await page.locator('.review-strip summary').click();
    const remark = page.locator('.review-strip li').first();
    const [, at = ''] = /something goes on from ([\d.]+)/.exec((await remark.textContent()) ?? '') ?? [];
    await remark.getByRole('button', { name: 'Show' }).click();
    await page.waitForFunction(
      (frame) =>
        Math.abs(Number(document.querySelector('output.frame')?.getAttribute('data-frame')) - frame) <= 2,
      Number(at) * secondLong,
    );
    await page.locator('.review-strip summary').click();

    await page.keyboard.press('Control+KeyZ');
    await open(page).waitFor({ state: 'detached' });
    expect(saidOf(await onlyMethod(page, id))).not.toContain('proposed');
    await page.keyboard.press('Control+Shift+KeyZ');
    await open(page).waitFor();

    await page.goto(`${app.address}studies/${id}/examine`);
    await page.getByText('Left out because they hold proposals').first().waitFor();
    await page.goto(`${app.address}studies/${id}/record`);
    await shownFrame(page);

    await page.keyboard.press('Quote');
    await page.locator('.review-strip .what').waitFor();
    await page.keyboard.press('Control+Enter');
    await page.waitForFunction(
      (left) => document.querySelector('.review-strip strong')?.textContent === `${left} to be confirmed`,
      count - 1,
    );
    await page.getByLabel('Confirm all from this certainty on').selectOption('0');
    await page.locator('[data-command="proposals.confirm-above"]').click();
    await open(page).waitFor({ state: 'detached' });
    const done = await onlyMethod(page, id);
    expect(saidOf(done)).not.toContain('proposed');
    expect(done.cycles.items.map(({ said }) => said)).not.toContain('proposed');

    await page.goto(`${app.address}studies/${id}/examine`);
    await page.locator('.examine-desk').waitFor();
    await page.waitForFunction(
      () => !document.body.textContent?.includes('Left out because they hold proposals'),
    );
    expect(strangers).toEqual([]);
    expect(faults).toEqual([]);
  });

  it('without a track it is said what to do', async () => {
    const { page } = await app.page();
    await page.fill('.new-study input', 'no track');
    await page.getByRole('button', { name: 'New study' }).click();
    await page.getByText('agreed').first().click();
    await page.setInputFiles('.add-film input[type=file]', 'examples/couplings/improved.mp4');
    await shownFrame(page);
    await page.keyboard.press('Alt+KeyP');
    await page.getByText('Make a track of this film first').waitFor();
  });

  it.runIf(existsSync(gestures))(
    'on a film of a raised hand whose gestures were timed by eye, tracked here: most of what is proposed begins where one does',
    async () => {
      const { page, strangers, faults } = await app.page();
      await page.fill('.new-study input', 'gestures');
      await page.getByRole('button', { name: 'New study' }).click();
      await page.getByText('agreed').first().click();
      await page.setInputFiles('.add-film input[type=file]', gestures);
      await shownFrame(page);
      // The fourth gesture, 4.8 to 5.9 s, and the open hand up to the next one at 6.5 s.
      await goTo(page, 144);
      for (const key of ['Enter', 'KeyV', 'KeyK']) await page.keyboard.press(key);
      await goTo(page, 177);
      await page.keyboard.press('KeyO');
      await goTo(page, 195);
      for (const key of ['Shift+Enter', 'Digit1', 'Digit0']) await page.keyboard.press(key);
      await page.getByRole('tab', { name: 'Tracks' }).click();
      await page.getByRole('button', { name: 'Find the hands' }).click();
      await page.locator('[data-command="proposals.propose"]').waitFor({ timeout: 500_000 });
      await page.keyboard.press('Alt+KeyP');
      await open(page).waitFor({ timeout: 60_000 });
      const id = new URL(page.url()).pathname.split('/')[2] ?? '';
      const { cycles, left, right } = await onlyMethod(page, id);
      const found = cycles.items.filter(({ said, setAside }) => said !== undefined && setAside === undefined);
      const near = found.filter(({ start }) =>
        timedByEye().some((at) => Math.abs(at - start / secondLong) <= byEye + fifth),
      );
      expect(found.length).toBeGreaterThanOrEqual(4);
      expect(near.length / found.length).toBeGreaterThan(0.5);
      const kept = [...left.items, ...right.items].filter(
        ({ start, said }) => said !== 'proposed' && start === 144,
      );
      expect(kept.map(({ kind }) => kind)).toEqual(['UD', 'G']);
      expect(strangers).toEqual([]);
      expect(faults).toEqual([]);
    },
    600_000,
  );
});

/** Seconds: how well a boundary is known by eye in that film, and what counts as the same boundary. */
const byEye = 0.35;
const fifth = 0.2;

/** Where gestures begin, in seconds: observed_events.csv beside the film. */
function timedByEye(): number[] {
  const table = readFileSync(path.join(path.dirname(gestures), 'observed_events.csv'), 'utf8');
  return table
    .split(/\r?\n/)
    .filter((line) => line.startsWith(path.basename(gestures)))
    .map((line) => Number(line.split(',')[3]));
}

/** Steps to a frame by keys, forwards. */
async function goTo(page: Page, frame: number): Promise<void> {
  for (let at = await shownFrame(page); at < frame; at = await shownFrame(page)) {
    await page.keyboard.press(frame - at >= 10 ? 'Shift+ArrowRight' : 'ArrowRight');
    await page.waitForFunction(
      (was) => document.querySelector('output.frame')?.getAttribute('data-frame') !== String(was),
      at,
    );
  }
}
