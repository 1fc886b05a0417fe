import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Film, Study } from '@evenhand/core/ground/study';
import { decodeTrack, encodeTrack, writeTrackCsv } from '@evenhand/core/record';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, allSaved, shownFrame, startApp, type WatchedPage } from './app-under-test.ts';
import { seriousFaults } from './axe-faults.ts';

/** The hands of the demonstration film, as the landmark models found them. */
const decoded = decodeTrack(new Uint8Array(readFileSync('tests/films/tracks/present.track.bin')));
if (!decoded.ok) throw new Error(decoded.error.message);
const table = writeTrackCsv(decoded.value);
const asFile = (text: string) => ({
  name: 'hands of present.csv',
  mimeType: 'text/csv',
  buffer: Buffer.from(text),
});

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

async function openTracks(): Promise<WatchedPage> {
  const watched = await app.page();
  await watched.page.getByRole('link', { name: 'Hose couplings' }).click();
  await shownFrame(watched.page);
  await watched.page.getByRole('tab', { name: 'Tracks' }).click();
  return watched;
}

async function filmOf(page: Page): Promise<Film> {
  await allSaved(page);
  const answer = await page.request.get(`${app.address}api/studies/couplings`);
  const film = ((await answer.json()) as { study: Study }).study.films[0];
  if (film === undefined) throw new Error('the demo study should have a film');
  return film;
}

async function readTable(page: Page, text: string): Promise<void> {
  if (!(await page.locator('.tracks-panel input[type=file]').isVisible()))
    await page.getByText('Read a table (CSV)').click();
  await page.setInputFiles('.tracks-panel input[type=file]', asFile(text));
}

describe('a track from a table', () => {
  it('is kept beside the film, shown, measured, laid over the film, removed and brought back', async () => {
    const { page, strangers, faults } = await openTracks();
    await readTable(page, table.replace('frame,hand', 'frame,hands'));
    await page.getByText('The column “hand” is missing').waitFor();
    expect((await filmOf(page)).tracks).toBeUndefined();
    const choose = async (buffer: Buffer) =>
      await page.setInputFiles('.tracks-panel input[type=file]', {
        name: 'hands.track.bin',
        mimeType: 'application/octet-stream',
        buffer,
      });
    await choose(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13]));
    await page.getByText('This is no table of text').waitFor();
    const file = Buffer.from(encodeTrack(decoded.value));
    await choose(file.subarray(0, file.length - 4));
    await page.getByText('it is cut off or was added to').waitFor();
    await choose(file);
    await page.locator('.track-list li').waitFor();
    expect((await filmOf(page)).tracks).toMatchObject([
      { name: 'hands.track', frames: decoded.value.frames },
    ]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.locator('.track-list li').waitFor({ state: 'detached' });

    await readTable(page, table);
    await page.locator('.track-list li').waitFor();
    const [track] = (await filmOf(page)).tracks ?? [];
    expect(track).toMatchObject({ name: 'hands of present', source: 'table', frames: decoded.value.frames });
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a table' }).click();
    expect(await readFile(await (await saving).path(), 'utf8')).toBe(table);

    await page.locator('section[aria-label=Chronocyclegraph] select').first().selectOption('all');
    await page.locator('.film-overlay circle').first().waitFor();
    // Six cycles that count, each of some seven seconds, a dot of each hand every 0.04 s; gaps leave some out.
    const dots = await page.locator('.film-overlay .graph > *').count();
    expect(dots).toBeGreaterThan(1600);
    expect(dots).toBeLessThan(2600);
    const drawing = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as SVG' }).click();
    expect(await readFile(await (await drawing).path(), 'utf8')).toContain('6 cycles; a dot each 0.04 s');
    expect(await seriousFaults(page)).toEqual([]);

    await page.locator('.track-list').getByRole('button', { name: 'Remove' }).click();
    await page.getByText('A track says where each hand is').waitFor();
    expect((await filmOf(page)).tracks).toBeUndefined();
    await page.keyboard.press('Control+KeyZ');
    await page.locator('.track-list li').waitFor();
    await page.getByRole('button', { name: 'Save as a table' }).waitFor();
    expect([strangers, faults]).toEqual([[], []]);
  });

  it('the bench is measured with the keyboard alone, and figures of a motion are in millimetres', async () => {
    const { page, faults } = await openTracks();
    await page.locator('.track-list li').waitFor();
    await page.getByRole('tab', { name: 'Motions' }).click();
    await page.keyboard.press('ArrowUp');
    await page.getByText('px/s').first().waitFor();
    await page.getByRole('tab', { name: 'Tracks' }).click();
    await page.getByRole('button', { name: 'Click four corners' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('.pick-layer').focus();
    const go = async (key: string, times: number) => {
      for (let time = 0; time < times; time += 1) await page.keyboard.press(`Shift+${key}`);
      await page.keyboard.press('Enter');
    };
    // The first corner is set wrongly and taken back; then a rectangle of 400 × 200 pixels round the middle.
    await page.keyboard.press('Enter');
    await page.keyboard.press('Backspace');
    for (let time = 0; time < 5; time += 1) await page.keyboard.press('Shift+ArrowDown');
    await go('ArrowLeft', 10);
    await go('ArrowRight', 20);
    await go('ArrowUp', 10);
    await go('ArrowLeft', 20);
    await page.getByText('Measured by a rectangle of 297 × 210 mm').waitFor();
    const { width, height, calibration } = await filmOf(page);
    const [x, y] = [width / 2, height / 2];
    expect(calibration).toMatchObject({
      kind: 'rectangle',
      corners: [
        { x: x - 200, y: y + 100 },
        { x: x + 200, y: y + 100 },
        { x: x + 200, y: y - 100 },
        { x: x - 200, y: y - 100 },
      ],
    });
    await page.getByRole('tab', { name: 'Motions' }).click();
    await page.getByText('m/s').first().waitFor();
    expect(faults).toEqual([]);
  });
});
