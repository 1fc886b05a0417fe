import type { Method, Study } from '@evenhand/core/ground/study';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, allSaved, shownFrame, startApp, type WatchedPage } from './app-under-test.ts';
import { seriousFaults } from './axe-faults.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

async function openDemo(size?: { width: number; height: number }): Promise<WatchedPage> {
  const watched = await app.page(size);
  await watched.page.getByRole('link', { name: 'Hose couplings' }).click();
  await shownFrame(watched.page);
  return watched;
}

async function headStudy(page: Page): Promise<Study> {
  await allSaved(page);
  const id = new URL(page.url()).pathname.split('/')[2];
  return ((await (await page.request.get(`${app.address}api/studies/${id}`)).json()) as { study: Study })
    .study;
}

const present = (study: Study): Method => {
  const method = study.methods[0];
  if (method === undefined) throw new Error('the demo study should have a method');
  return method;
};

describe('the demo at first start', () => {
  it('stands in the list, marked as invented, with its chart one click away', async () => {
    const { page, strangers, faults } = await app.page();
    await page.getByText('invented demonstration').waitFor();
    await page.getByRole('link', { name: 'Chart' }).click();
    await page.locator('.sheet svg').first().waitFor();
    expect(await page.locator('.sheet svg').first().textContent()).toContain('Invented data');
    expect(strangers).toEqual([]);
    expect(faults).toEqual([]);
  });
});

describe('printing from the chart page', () => {
  for (const [paper, format] of [
    ['a4', 'A4'],
    ['letter', 'Letter'],
  ] as const) {
    it(`gives one sheet of paper for each sheet of the chart, on ${format}`, async () => {
      const { page } = await app.page();
      await page.getByRole('link', { name: 'Chart' }).click();
      await page.getByLabel('Paper').selectOption(paper);
      for (const form of ['two-hand', 'process']) {
        await page.getByLabel('Form').selectOption(form);
        await page.locator('.sheet svg').first().waitFor();
        const printed = (await page.pdf({ format })).toString('latin1');
        expect(printed.match(/\/Type \/Page\b/g)?.length).toBe(await page.locator('.sheet').count());
      }
    });
  }
});

describe('accessibility: axe-core finds no serious fault', () => {
  for (const look of ['light', 'dark'] as const) {
    it(`on the list, the desk with its three panels, the keys and the chart, in ${look}`, async () => {
      const { page, faults } = await app.page();
      await page.getByRole('link', { name: 'Hose couplings' }).waitFor();
      await page.getByLabel('Look').selectOption(look);
      expect(await seriousFaults(page)).toEqual([]);
      await page.getByRole('link', { name: 'Hose couplings' }).click();
      await shownFrame(page);
      await page.keyboard.press('ArrowUp');
      expect(await seriousFaults(page)).toEqual([]);
      for (const tab of ['Cycles', 'Film and study']) {
        await page.getByRole('tab', { name: tab }).click();
        expect(await seriousFaults(page)).toEqual([]);
      }
      await page.keyboard.press('F1');
      await page.locator('dialog[open]').waitFor();
      expect(await seriousFaults(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByRole('link', { name: 'Chart', exact: true }).click();
      await page.locator('.sheet svg').first().waitFor();
      expect(await seriousFaults(page)).toEqual([]);
      expect(faults).toEqual([]);
    });
  }
});

describe('small windows', () => {
  for (const [name, size] of [
    ['1024 by 768', { width: 1024, height: 768 }],
    ['1440 by 900 at 200 %', { width: 720, height: 450 }],
  ] as const) {
    it(`${name}: nothing reaches over the side, film and score can be seen`, async () => {
      const { page } = await openDemo(size);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
      for (const part of ['.film-canvas canvas', '.score canvas', '.motion-list']) {
        await page.locator(part).first().scrollIntoViewIfNeeded();
        const box = await page.locator(part).first().boundingBox();
        expect(box?.width).toBeGreaterThan(150);
        expect(box?.height).toBeGreaterThan(60);
      }
    });
  }
});

describe('the desk by the keyboard alone', () => {
  it('selects, moves boundaries, splits, joins, names, copies and sets aside; undo takes all of it back', async () => {
    const { page, faults } = await openDemo();
    const before = await headStudy(page);
    const press = async (...keys: string[]) => {
      for (const key of keys) await page.keyboard.press(key);
    };
    const cycle = present(before).cycles.items[0];
    // Into the first motion of the first cycle, and one frame more.
    await press('Home', 'BracketRight', 'ArrowRight', 'ArrowRight');
    await page.waitForFunction(
      (start) =>
        Number(document.querySelector('output.frame[data-ready=true]')?.getAttribute('data-frame')) === start,
      (cycle?.start ?? 0) + 2,
    );
    await press('ArrowUp');
    const first = present(before).left.items.find((item) => item.start === cycle?.start);
    await press('Control+ArrowRight');
    expect(present(await headStudy(page)).left.items.find((item) => item.id === first?.id)?.start).toBe(
      (first?.start ?? 0) + 1,
    );
    await press('Control+ArrowLeft');
    expect(present(await headStudy(page)).left).toEqual(present(before).left);
    await press('ArrowRight', 'ArrowRight');
    await shownFrame(page);
    await press('Alt+KeyX');
    expect(present(await headStudy(page)).left.items.length).toBe(present(before).left.items.length + 1);
    await press('Alt+KeyJ');
    expect(present(await headStudy(page)).left).toEqual(present(before).left);
    await press('Alt+Enter', 'Alt+KeyN');
    const copied = present(await headStudy(page));
    const kindsIn = (method: Method, hand: 'left' | 'right', from: number, to: number) =>
      method[hand].items.filter((item) => item.start >= from && item.start < to).map((item) => item.kind);
    const [one, two, three] = copied.cycles.items.map((item) => item.start);
    for (const hand of ['left', 'right'] as const) {
      expect(kindsIn(copied, hand, two ?? 0, three ?? 0)).toEqual(kindsIn(copied, hand, one ?? 0, two ?? 0));
    }
    await page.getByRole('tab', { name: 'Cycles' }).click();
    await page.getByLabel('Why cycle 2 is set aside').fill('copied for a trial');
    await press('Enter');
    expect(present(await headStudy(page)).cycles.items[1]?.setAside).toBe('copied for a trial');
    const undo = page.getByRole('button', { name: 'Undo' });
    while (await undo.isEnabled()) await undo.click();
    expect(await headStudy(page)).toEqual(before);
    expect(faults).toEqual([]);
  });

  it('names a motion’s object and places in the panel; a new place is made once', async () => {
    const { page } = await openDemo();
    const before = await headStudy(page);
    await page.keyboard.press('ArrowDown');
    const panel = page.getByRole('region', { name: 'Selection' });
    await panel.getByLabel('Object').fill('test plug');
    await page.keyboard.press('Enter');
    await panel.getByLabel('To', { exact: true }).fill('side tray');
    await page.keyboard.press('Enter');
    // Letters typed into a field mark nothing.
    const after = await headStudy(page);
    expect(after.places.map((place) => place.name)).toEqual([
      ...before.places.map((place) => place.name),
      'side tray',
    ]);
    const undo = page.getByRole('button', { name: 'Undo' });
    while (await undo.isEnabled()) await undo.click();
    expect(await headStudy(page)).toEqual(before);
  });
});

describe('what a field cannot take', () => {
  it('is said in words, changes nothing, and does not stay in the field', async () => {
    const { page } = await openDemo({ width: 1024, height: 768 });
    const before = await headStudy(page);
    await page.getByRole('tab', { name: 'Film and study' }).click();
    await page.getByLabel('Units a cycle').fill('many');
    await page.keyboard.press('Enter');
    await page.getByText('write a whole number from 1 to 10 000').waitFor();
    expect(await page.getByLabel('Units a cycle').inputValue()).toBe(String(present(before).unitsPerCycle));
    // The message must not lie over anything that can be pressed.
    await page.getByRole('button', { name: 'Add a film' }).click({ timeout: 3000 });
    await page.keyboard.press('Escape');
    await page.getByLabel('Scene clock').selectOption('points');
    await page.getByLabel('At the shown frame the clock reads').fill('99:00');
    await page.getByRole('button', { name: 'Set', exact: true }).click();
    await page.getByText('point 2 must show a later time than point 1').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await headStudy(page)).toEqual(before);
  });
});

describe('two windows on one study', () => {
  it('tell each other, merge what still fits, and set apart what does not', async () => {
    const one = await openDemo();
    const two = await openDemo();
    await one.page.getByText('open in 2 windows').waitFor();
    const before = await headStudy(one.page);
    // Both change the same title from the same state: the second to arrive no longer fits.
    const rename = async (page: Page, title: string) => {
      await page.getByRole('tab', { name: 'Film and study' }).click();
      await page.getByLabel('Title').fill(title);
      await page.keyboard.press('Enter');
    };
    await two.page.route('**/api/studies/*/edits*', async (route) => await route.abort());
    await two.page.route('**/api/studies/*/events*', async (route) => await route.abort());
    await rename(two.page, 'Couplings, second window');
    await two.page.getByText('Server away').waitFor();
    await rename(one.page, 'Couplings, first window');
    await allSaved(one.page);
    await two.page.unrouteAll();
    await two.page.getByRole('button', { name: '1 edit set apart' }).click();
    await two.page.locator('dialog[open]').getByText('changed it meanwhile').waitFor();
    expect((await headStudy(one.page)).title).toBe('Couplings, first window');
    await two.page.locator('dialog[open]').getByRole('button', { name: 'Drop' }).click();
    await one.page.getByRole('button', { name: 'Undo' }).click();
    expect((await headStudy(one.page)).title).toBe(before.title);
    await two.page.getByRole('heading', { name: before.title, level: 1 }).waitFor();
  });
});
