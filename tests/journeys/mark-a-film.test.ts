import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import process from 'node:process';
import type { Study } from '@evenhand/core/ground/study';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, allSaved, shownFrame, startApp } from './app-under-test.ts';

const folder = process.env.EVENHAND_FILMS ?? '';
const leftKeys = ['KeyF', 'KeyD', 'KeyS', 'KeyA', 'KeyG', 'KeyR', 'KeyE', 'KeyW', 'KeyV', 'KeyX'];
const leftKinds = ['TE', 'G', 'TL', 'RL', 'P', 'A', 'U', 'H', 'UD', 'I'];
const rightKeys = ['KeyJ', 'KeyK', 'KeyL', 'Semicolon', 'KeyH', 'KeyU', 'KeyI', 'KeyO', 'KeyM', 'Period'];

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp();
});
afterAll(async () => await app?.close());

async function step(page: Page, key: string): Promise<number> {
  const before = await shownFrame(page);
  await page.keyboard.press(key);
  await page.waitForFunction(
    (was) => document.querySelector('output.frame')?.getAttribute('data-frame') !== String(was),
    before,
  );
  return await shownFrame(page);
}

async function openFilm(page: Page, film: string): Promise<void> {
  await page.fill('.new-study input', `study of ${path.basename(film)}`);
  await page.getByRole('button', { name: 'New study' }).click();
  await page.getByText('agreed').first().click();
  await page.setInputFiles('.add-film input[type=file]', film);
  await shownFrame(page);
}

async function studyOf(page: Page): Promise<Study> {
  const id = new URL(page.url()).pathname.split('/')[2];
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  return ((await answer.json()) as { study: Study }).study;
}

const films = [
  path.join(folder, 'sam2_03_blocks.mp4'),
  path.join(folder, 'intel_bottle-detection.mp4'),
  'examples/couplings/present.mp4',
];

describe('ten motions of each hand are marked, charted, closed and found again', () => {
  for (const film of films) {
    it.runIf(existsSync(film))(`on ${path.basename(film)}`, async () => {
      const { page, strangers, faults } = await app.page();
      await openFilm(page, film);
      const marked: { hand: 'left' | 'right'; start: number; kind: string }[] = [];
      await page.keyboard.press('Enter');
      for (const [index, kind] of leftKinds.entries()) {
        const left = await step(page, 'Shift+ArrowRight');
        await page.keyboard.press(leftKeys[index] ?? '');
        marked.push({ hand: 'left', start: left, kind });
        const right = await step(page, 'ArrowRight');
        await page.keyboard.press(rightKeys[index] ?? '');
        marked.push({ hand: 'right', start: right, kind });
      }
      await allSaved(page);
      const method = (await studyOf(page)).methods[0];
      for (const hand of ['left', 'right'] as const) {
        const expected = marked
          .filter((item) => item.hand === hand)
          .map(({ start, kind }) => ({ start, kind }));
        const found = method?.[hand].items.map(({ start, kind }) => ({ start, kind }));
        expect(found).toEqual([{ start: 0, kind: 'unmarked' }, ...expected]);
      }
      await page.keyboard.press('Control+KeyZ');
      await page.keyboard.press('Control+Shift+KeyZ');
      await allSaved(page);
      await page.getByRole('link', { name: 'Chart', exact: true }).click();
      await page.locator('.sheet svg').first().waitFor();
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: 'PDF' }).click();
      const pdf = await readFile(await (await download).path());
      expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-');
      const address = page.url();
      await page.close();
      const again = await app.page();
      await again.page.goto(address.replace('/chart', '/record'));
      await shownFrame(again.page);
      const reopened = (await studyOf(again.page)).methods[0];
      expect(reopened?.left.items.map((item) => item.kind)).toEqual(['unmarked', ...leftKinds]);
      expect(reopened?.cycles.items.map((item) => item.start)).toEqual([0]);
      expect([...strangers, ...again.strangers]).toEqual([]);
      expect([...faults, ...again.faults]).toEqual([]);
    });
  }
});

describe('a server that goes away', () => {
  it('leaves the edits waiting in the browser and takes them when it is back', async () => {
    const { page } = await app.page();
    await openFilm(page, 'examples/couplings/present.mp4');
    await allSaved(page);
    await app.stopServer();
    await page.keyboard.press('KeyF');
    await page.getByText('Server away').waitFor();
    await app.startServer();
    await allSaved(page);
    await page.locator('.save-state:not(.away)').waitFor();
    expect((await studyOf(page)).methods[0]?.left.items[0]?.kind).toBe('TE');
  });
});

describe('a file that is not a film', () => {
  it('is refused in words and leaves the study as it was', async () => {
    const { page } = await app.page();
    await page.fill('.new-study input', 'wrong file');
    await page.getByRole('button', { name: 'New study' }).click();
    await page.setInputFiles('.add-film input[type=file]', {
      name: 'notes.mp4',
      mimeType: 'video/mp4',
      buffer: Buffer.from('only words'),
    });
    await page.locator('.add-film [role=alert]').waitFor();
    expect(await page.locator('.add-film [role=alert]').textContent()).toContain('notes.mp4');
    expect((await studyOf(page)).films).toEqual([]);
  });
});
