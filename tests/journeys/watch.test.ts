import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, allSaved, startApp, type WatchedPage } from './app-under-test.ts';
import { seriousFaults } from './axe-faults.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

interface Size {
  readonly width: number;
  readonly height: number;
}
const phone = { width: 390, height: 844 };
const desktop = { width: 1440, height: 900 };
let made = 0;

/** The stopwatch with a new time study of three elements. */
async function openWatch(
  size: Size,
  elements = ['fetch', 'fit', 'lay down'],
): Promise<WatchedPage & { readonly name: string }> {
  const watched = await app.page(desktop);
  const { page } = watched;
  made += 1;
  const name = `By the watch ${made}`;
  await page.getByRole('link', { name: 'Hose couplings' }).click();
  await page.getByRole('link', { name: 'define', exact: true }).click();
  await page.getByRole('button', { name: 'New …' }).click();
  await page.getByLabel('readings: typed').check();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill(name);
  await page.getByLabel('Elements, one a line').fill(elements.join('\n'));
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('heading', { name }).waitFor();
  await page.getByRole('link', { name: 'Stopwatch' }).click();
  await page.setViewportSize(size);
  await page.locator('.watch-read').waitFor();
  return { ...watched, name };
}

async function kept(page: Page, name: string): Promise<TimeStudy> {
  await allSaved(page);
  const id = new URL(page.url()).pathname.split('/')[2];
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  const found = ((await answer.json()) as { study: Study }).study.timeStudies?.find(
    (each) => each.name === name,
  );
  if (found === undefined) throw new Error(`the study has no time study “${name}”`);
  return found;
}

const keys: Readonly<Record<string, readonly [code: string, number: number]>> = {
  ' ': ['Space', 32],
  m: ['KeyM', 77],
  f: ['KeyF', 70],
  z: ['KeyZ', 90],
  p: ['KeyP', 80],
  Escape: ['Escape', 27],
};

/**
 * Keys that bear moments of our own, as if the keyboard had sent them then: "key after seconds". Gives the moments that the
 * page saw, in milliseconds.
 */
async function pressAt(page: Page, presses: readonly (readonly [key: string, after: number])[]) {
  await page.evaluate(() => {
    const stamps: number[] = [];
    Object.assign(window, { stamps });
    addEventListener('keydown', (event) => stamps.push(event.timeStamp), { capture: true });
  });
  const session = await page.context().newCDPSession(page);
  let timestamp = Date.now() / 1000;
  for (const [key, after] of presses) {
    timestamp += after;
    const [code, windowsVirtualKeyCode] = keys[key] ?? ['', 0];
    const event = { key, code, windowsVirtualKeyCode };
    await session.send('Input.dispatchKeyEvent', { ...event, type: 'rawKeyDown', timestamp });
    await session.send('Input.dispatchKeyEvent', { ...event, type: 'keyUp', timestamp: timestamp + 0.02 });
  }
  await session.detach();
  return await page.evaluate(() => (window as unknown as { stamps: number[] }).stamps);
}

/** Whole microseconds between two moments that the page saw. */
function between(stamps: readonly number[], from: number, to: number): number {
  return Math.round((stamps[to] ?? 0) * 1000) - Math.round((stamps[from] ?? 0) * 1000);
}

type Row = readonly (readonly [cycle: number, us: number | undefined])[];
const rows = ({ elements }: TimeStudy): readonly Row[] =>
  elements.map(({ readings }) => readings.map(({ cycle, us }) => [cycle, us] as const));

/** Milliseconds by which a browser may have moved a moment: it stamps in steps. */
const stampStep = 3;

describe.each([phone, desktop])('the stopwatch in a window of $width × $height', (size) => {
  it('times cycles with a foreign element, a missed reading and one taken back, and loses nothing when loaded anew', async () => {
    const { page, name, faults } = await openWatch(size);
    const stamps = await pressAt(page, [
      [' ', 0],
      // Cycle 1.
      [' ', 2],
      [' ', 1.25],
      [' ', 0.8],
      // Cycle 2: something foreign within “fetch”; the end of “fit” goes by unseen.
      ['f', 0.5],
      ['f', 1.2],
      [' ', 1.3],
      ['m', 1],
      [' ', 1.1],
      // Cycle 3: a press too many, taken back; the pause since then stays a pause.
      [' ', 0.4],
      ['z', 0.1],
      ['p', 0.3],
      ['p', 9],
      [' ', 0.7],
    ]);
    const first = await kept(page, name);
    expect(rows(first)).toEqual([
      [
        [1, between(stamps, 0, 1)],
        [2, between(stamps, 3, 4) + between(stamps, 5, 6)],
        [3, between(stamps, 8, 11) + between(stamps, 12, 13)],
      ],
      [
        [1, between(stamps, 1, 2)],
        [2, undefined],
      ],
      [
        [1, between(stamps, 2, 3)],
        [2, undefined],
      ],
    ]);
    const known = [2, 1.8, 1.5, 1.25, 0.8];
    const read = rows(first).flatMap((row) => row.flatMap(([, us]) => (us === undefined ? [] : [us])));
    for (const [index, seconds] of known.entries())
      expect(Math.abs((read[index] ?? 0) / 1000 - seconds * 1000)).toBeLessThan(stampStep);
    expect(first.foreign).toMatchObject([
      { cycle: 2, element: first.elements[0]?.id, us: between(stamps, 4, 5) },
    ]);
    await page.getByRole('textbox', { name: 'Foreign element of cycle 2: what was it?' }).fill('a question');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await kept(page, name)).foreign?.[0]?.what).toBe('a question');

    await page.reload();
    await page
      .getByText(
        'Timing was interrupted in cycle 3, during “fit”. Every reading before it is kept; the watch goes on with cycle 4.',
      )
      .waitFor();
    expect(rows(await kept(page, name))).toEqual(rows(first));
    const more = await pressAt(page, [
      [' ', 0],
      [' ', 1],
      [' ', 1.1],
      [' ', 1.2],
      ['Escape', 0.4],
    ]);
    await page.getByText('Ended', { exact: true }).waitFor();
    // By hand: 3.7 s, 3.3 s, nothing and 0.4 s, in decimal minutes.
    expect(await page.locator('.watch-sums dd').allTextContents()).toEqual([
      '0.0617 min',
      '0.0550 min',
      '0.0000 min',
      '0.0067 min',
    ]);
    const last = await kept(page, name);
    expect(rows(last).map((row) => row.at(-1))).toEqual([
      [4, between(more, 0, 1)],
      [4, between(more, 1, 2)],
      [4, between(more, 2, 3)],
    ]);
    await page.reload();
    await page.locator('.watch-read').waitFor();
    expect(await page.getByText('Timing was interrupted').count()).toBe(0);
    expect(faults).toEqual([]);
  });

  it('is free of serious faults in light and dark, and nothing is wider than the window', async () => {
    const { page } = await openWatch(size);
    const look = async () => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await seriousFaults(page)).toEqual([]);
      }
      expect(await tooWide(page)).toEqual([]);
    };
    await look();
    for (const key of ['Space', 'Space', 'm', 'Space']) await page.keyboard.press(key);
    await look();
    await page.getByRole('button', { name: 'Names and order' }).click();
    await look();
    await page.keyboard.press('Escape');
    await look();
  });
});

/** Elements that reach over the right edge of the window, unless what they lie in scrolls or is hidden. */
async function tooWide(page: Page): Promise<readonly string[]> {
  return await page.evaluate(() => {
    const found = [...document.querySelectorAll('.study-page *')].filter(
      (element) =>
        element.getBoundingClientRect().right > innerWidth + 0.5 &&
        element.closest('.hidden, .watch-recent, [role=timer]') === null,
    );
    const page = document.documentElement.scrollWidth > innerWidth ? ['the page'] : [];
    return [...page, ...found.map((element) => element.className || element.tagName)];
  });
}

describe('the stopwatch', () => {
  it('fits a window of 360 × 740: the steps fold, and what is pressed is large enough for a thumb', async () => {
    const { page } = await openWatch({ width: 360, height: 740 }, [
      'tighten the collar and lay the coupling down',
      'fit',
    ]);
    await page.keyboard.press('Space');
    await page.keyboard.press('Space');
    expect(await tooWide(page)).toEqual([]);
    // On its side, and as a window at 200 %: time and large button are in sight together.
    for (const flat of [
      { width: 740, height: 360 },
      { width: 720, height: 450 },
    ]) {
      await page.setViewportSize(flat);
      expect(await tooWide(page)).toEqual([]);
      for (const part of ['.watch-time', '.watch-now', '.watch-read']) {
        const box = await page.locator(part).boundingBox();
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(flat.height);
      }
    }
    await page.setViewportSize({ width: 360, height: 740 });
    expect((await page.locator('.watch-read').boundingBox())?.height).toBeGreaterThanOrEqual(80);
    for (const button of await page.locator('.watch-rarer button, .watch-rating div button').all()) {
      const box = await button.boundingBox();
      expect(Math.min(box?.height ?? 0, (box?.width ?? 0) * 1.4)).toBeGreaterThanOrEqual(42);
    }
    expect((await page.locator('.bar').boundingBox())?.height).toBeLessThanOrEqual(44);
    const steps = page.getByRole('navigation', { name: 'Steps of the study' });
    expect(await steps.isVisible()).toBe(false);
    await page.getByRole('button', { name: 'define …' }).click();
    await steps.getByRole('link', { name: 'define', exact: true }).click();
    await page.getByRole('link', { name: 'Stopwatch' }).waitFor();
  });

  it('rates the last and the running element, reads one out of order, pauses and ends', async () => {
    const { page, name, faults } = await openWatch(desktop);
    for (const key of ['Space', 'Space', '+']) await page.keyboard.press(key);
    await page.getByRole('button', { name: 'rate the running' }).click();
    await page.getByRole('button', { name: '85', exact: true }).click();
    await page.getByRole('button', { name: /lay down/ }).click();
    await page.keyboard.press('p');
    await page.getByText('stands still').waitFor();
    await page.keyboard.press('Space');
    await page.locator('.watch-now', { hasText: 'fit' }).waitFor();
    await page.locator('.watch-read').click();
    await page.getByRole('button', { name: 'End' }).click();
    await page.getByText('Ended', { exact: true }).waitFor();
    const { elements } = await kept(page, name);
    expect(elements.map(({ readings }) => readings.map(({ cycle, rating }) => [cycle, rating]))).toEqual([
      [[1, 105]],
      [[1, undefined]],
      [[1, 85]],
    ]);
    expect(faults).toEqual([]);
  });

  it('names elements while it runs, takes their order, and goes on while the sheet is looked at', async () => {
    const { page } = await openWatch(phone);
    const name = 'Time study by the watch';
    await page.getByRole('combobox', { name: 'Time study' }).selectOption({ label: 'begin another …' });
    await page.getByText('No element yet').waitFor();
    await page.getByRole('textbox', { name: 'New element' }).fill('reach');
    await page.getByRole('button', { name: 'Add' }).click();
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.getByRole('button', { name: 'Add' }).click();
    await page.getByRole('button', { name: 'Read', exact: true }).click();
    await page.locator('.watch-now', { hasText: 'element 2' }).waitFor();
    await page.getByRole('textbox', { name: 'Name of element 2' }).fill('place');
    await page.keyboard.press('Enter');
    await page.locator('.watch-now', { hasText: 'place' }).waitFor();
    await page.getByRole('button', { name: 'define …' }).click();
    await page.getByRole('link', { name: 'define', exact: true }).click();
    await page.getByRole('link', { name: 'Stopwatch' }).waitFor();
    await page.goBack();
    await page.locator('.watch-now', { hasText: 'place' }).waitFor();
    await page.getByRole('button', { name: 'Read', exact: true }).click();
    await expect
      .poll(async () => (await kept(page, name)).elements.map((each) => [each.name, each.readings.length]))
      .toEqual([
        ['reach', 1],
        ['place', 1],
      ]);
    await page.getByRole('button', { name: 'Names and order' }).click();
    await page.getByRole('button', { name: 'element 2: up' }).click();
    await expect
      .poll(async () => (await kept(page, name)).elements.map((each) => each.name))
      .toEqual(['place', 'reach']);
    await page.locator('.watch-now', { hasText: 'place' }).waitFor();
  });

  it('goes back to zero where that is chosen, and notes who is timed by a code', async () => {
    const { page, name } = await openWatch(phone);
    await page.getByRole('radio', { name: /Back to zero/ }).check();
    await page.getByRole('textbox', { name: 'Operator code' }).fill('K7');
    await page.getByRole('combobox', { name: 'Begins with' }).selectOption('fit');
    await page.locator('.watch-time').click();
    await pressAt(page, [
      [' ', 0],
      ['m', 1],
      [' ', 2],
      [' ', 3],
    ]);
    const { source, sittings, elements } = await kept(page, name);
    expect(source).toMatchObject({ kind: 'readings', timing: 'repetitive' });
    expect(sittings).toMatchObject([{ start: 1, operatorCode: 'K7' }]);
    const seconds = elements.map(({ readings }) =>
      readings.map(({ cycle, us }) => [cycle, us === undefined ? 'missed' : Math.round(us / 100_000) / 10]),
    );
    expect(seconds).toEqual([[[2, 3]], [[1, 'missed']], [[1, 2]]]);
  });
});
