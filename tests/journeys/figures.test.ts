import { readFileSync } from 'node:fs';
import { methodClock, type Study } from '@evenhand/core/ground/study';
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

async function openView(view: 'Figures' | 'Before and after'): Promise<WatchedPage> {
  const watched = await app.page();
  const { page } = watched;
  await page.getByRole('link', { name: 'Hose couplings' }).click();
  await shownFrame(page);
  await page.getByRole('link', { name: 'examine', exact: true }).click();
  await page.getByRole('button', { name: view, exact: true }).click();
  await page.locator('.plot, .scene svg').first().waitFor();
  return watched;
}

const block = (page: Page, name: RegExp | string) => page.getByRole('region', { name, exact: true }).first();

async function headStudy(page: Page): Promise<Study> {
  await allSaved(page);
  const id = new URL(page.url()).pathname.split('/')[2];
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  return ((await answer.json()) as { study: Study }).study;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
}

/** The left hand's holds and the counted cycles of the demonstration, read from the study by their boundaries alone. */
function truth(
  study: Study,
  index = 0,
): { readonly holds: readonly Stretch[]; readonly cycles: readonly Stretch[] } {
  const method = study.methods[index];
  if (method === undefined) throw new Error('the demonstration should have two methods');
  const clock = methodClock(study, method);
  const stretch = (from: number, to: number): Stretch => ({
    from,
    to,
    seconds: (clock.timeOf(to) - clock.timeOf(from)) / 1e6,
  });
  const next = (row: { items: readonly { start: number }[]; end: number }, at: number) =>
    row.items[at + 1]?.start ?? row.end;
  const cycles = method.cycles.items.flatMap((cycle, at) =>
    cycle.setAside === undefined ? [stretch(cycle.start, next(method.cycles, at))] : [],
  );
  const holds = method.left.items.flatMap(({ kind, start }, at) => {
    const end = next(method.left, at);
    const counts = cycles.some(({ from, to }) => from <= start && end <= to);
    return kind === 'H' && counts ? [stretch(start, end)] : [];
  });
  return { holds, cycles };
}

const meanOf = (list: readonly Stretch[]) =>
  list.reduce((sum, { seconds }) => sum + seconds, 0) / list.length;

describe('the figures beside the film', () => {
  it('are drawn in the page’s own typeface and colours, under the policy of the page, with nothing from elsewhere', async () => {
    const { page, faults, strangers } = await openView('Figures');
    await expect.poll(async () => await page.locator('.plot').count()).toBeGreaterThan(8);
    expect(await page.locator('.plot style').count()).toBe(0);
    const looks = await page.locator('.plot').evaluateAll((plots) =>
      plots.map((plot) => {
        const { fontFamily, color, display } = getComputedStyle(plot);
        return `${fontFamily.includes('IBM Plex Sans')} ${color === getComputedStyle(document.body).color} ${display}`;
      }),
    );
    expect(new Set(looks)).toEqual(new Set(['true true block']));
    expect(strangers).toEqual([]);
    expect(faults).toEqual([]);
  });

  it('lead to the frames behind them: a bar of a plot, and the same figure in its table by the keyboard', async () => {
    const { page, faults } = await openView('Figures');
    const { holds } = truth(await headStudy(page));
    const times = block(page, 'Time by motion');
    const bar = times.locator('.hit', { has: page.locator('title', { hasText: 'hold (H), left hand' }) });
    await bar.first().click();
    const shown = page.getByRole('region', { name: 'On the film' });
    const words = (at: number) => new RegExp(`frames ${holds[at]?.from} to ${holds[at]?.to}`);
    await shown.getByText(words(0)).waitFor();
    await shown.getByText(`1 of ${holds.length} places`).waitFor();
    await shown.getByRole('button', { name: 'Next' }).click();
    await shown.getByText(words(1)).waitFor();
    await page.waitForFunction(
      ([from, to]) => {
        const frame = Number(document.querySelector('output.frame')?.getAttribute('data-frame'));
        return frame >= Number(from) && frame < Number(to);
      },
      [holds[1]?.from, holds[1]?.to],
    );
    await shown.getByRole('button', { name: 'Stop' }).click();
    await shown.waitFor({ state: 'detached' });
    await times.locator('summary').focus();
    await page.keyboard.press('Enter');
    const row = times.getByRole('row', { name: /^hold \(H\) left/ });
    await row.getByRole('button').focus();
    await page.keyboard.press('Enter');
    await shown.getByText(words(0)).waitFor();
    expect(faults).toEqual([]);
  });

  it('are copied as a table with tabs: mean, deviation and share of a motion as its boundaries give them', async () => {
    const { page } = await openView('Figures');
    const { holds, cycles } = truth(await headStudy(page));
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    const times = block(page, 'Time by motion');
    await times.getByRole('button', { name: /^Copy table/ }).click();
    await times.getByText('Copied').waitFor();
    const lines = (await page.evaluate(() => navigator.clipboard.readText())).split('\n');
    const heads = lines.find((line) => line.startsWith('Motion\t'))?.split('\t') ?? [];
    const cells = lines.find((line) => /^hold \(H\)\tleft\t/.test(line))?.split('\t') ?? [];
    const cell = (head: RegExp) => Number(cells[heads.findIndex((text) => head.test(text))]);
    const mean = meanOf(holds);
    const deviation = Math.sqrt(
      holds.reduce((sum, { seconds }) => sum + (seconds - mean) ** 2, 0) / (holds.length - 1),
    );
    expect(holds).toHaveLength(cycles.length);
    expect(cell(/^s a cycle/)).toBeCloseTo(mean, 2);
    expect(cell(/^deviation/)).toBeCloseTo(deviation, 2);
    expect(cell(/^%/)).toBeCloseTo((100 * mean) / meanOf(cycles), 0);
  });

  it('name the author of each division into effective and ineffective, and change with it', async () => {
    const { page } = await openView('Figures');
    const first = block(page, /^Effective and ineffective after Niebel & Freivalds/);
    await first.waitFor();
    await page.getByLabel('Grouped after').selectOption({ label: 'Groover' });
    await block(page, /^Effective and ineffective after Groover/).waitFor();
    expect(await page.getByText('after Niebel & Freivalds').count()).toBe(0);
  });
});

describe('elements', () => {
  it('are named, found in the other cycles, renamed and taken away again', async () => {
    const { page, faults } = await openView('Figures');
    const elements = block(page, 'Named elements');
    // The demonstration names elements of its own; this journey begins without any.
    const remove = elements.getByRole('button', { name: /^Remove/ });
    for (let left = await remove.count(); left > 0; left -= 1) {
      await remove.first().click();
      await expect.poll(async () => await remove.count()).toBe(left - 1);
    }
    const before = await headStudy(page);
    expect(before.methods[0]?.elements).toBeUndefined();
    await elements.getByLabel('Name', { exact: true }).fill('take the body');
    await page.keyboard.press('Enter');
    const name = elements.getByLabel('Name of the element');
    await name.waitFor();
    const made = (await headStudy(page)).methods[0]?.elements ?? [];
    expect(made).toMatchObject([{ name: 'take the body' }]);
    await elements
      .getByText(/all 6|6 of 6/)
      .first()
      .waitFor();
    await name.fill('reach and take the body');
    await page.keyboard.press('Enter');
    await expect
      .poll(async () => (await headStudy(page)).methods[0]?.elements?.[0]?.name)
      .toBe('reach and take the body');
    await elements.getByText('Critical examination of this element').click();
    const answer = elements.locator('textarea[data-question="purpose-2"]');
    await answer.fill('The body must come to the front.');
    await answer.blur();
    await expect
      .poll(async () => (await headStudy(page)).examinations?.[0])
      .toMatchObject({
        subject: { kind: 'element', element: made[0]?.id },
        answers: [{ question: 'purpose-2', text: 'The body must come to the front.' }],
      });
    await remove.click();
    await name.waitFor({ state: 'detached' });
    await expect.poll(async () => (await headStudy(page)).methods).toEqual(before.methods);
    expect(faults).toEqual([]);
  });
});

describe('before and after', () => {
  it('says the difference for a unit in words, the other way round when exchanged, and gives the picture as a file', async () => {
    const { page, faults } = await openView('Before and after');
    const study = await headStudy(page);
    const middle = (index: number) => {
      const sorted = truth(study, index)
        .cycles.map(({ seconds }) => seconds)
        .sort((a, b) => a - b);
      const units = study.methods[index]?.unitsPerCycle ?? 1;
      return (sorted[Math.floor((sorted.length - 1) / 2)] ?? Number.NaN) / units;
    };
    const [upper, lower] = [middle(0), middle(1)];
    const saved = ((upper - lower) / upper) * 100;
    const gained = (upper / lower - 1) * 100;
    const difference = page.locator('.difference');
    await difference
      .getByText(
        `${(upper - lower).toFixed(2)} s a unit less: ${saved.toFixed(0)} % of the time saved, ${gained.toFixed(0)} % more output`,
      )
      .waitFor();
    await page.getByRole('button', { name: 'Exchange' }).click();
    await difference.getByText(`${(upper - lower).toFixed(2)} s a unit more`).waitFor();
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as SVG' }).click();
    const file = await (await coming).path();
    const svg = readFileSync(file, 'utf8');
    expect(svg).toMatch(/^<svg /);
    expect(svg).toContain('font-face');
    expect(faults).toEqual([]);
  });

  it('tells the pictures in words, as a table that can be copied', async () => {
    const { page } = await openView('Before and after');
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    const words = block(page, 'Both cycles in words');
    await words.getByRole('button', { name: /^Copy table/ }).click();
    await words.getByText('Copied').waitFor();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(text).toMatch(/Present method, cycle \d, stretch by stretch/);
    expect(text).toMatch(/Improved method, cycle \d, stretch by stretch/);
    expect(text).toContain('hold body');
  });
});

describe('accessibility of the figures: axe-core finds no serious fault', () => {
  for (const look of ['light', 'dark'] as const) {
    it(`in the figures with their tables open and in the comparison, in ${look}`, async () => {
      const { page } = await openView('Figures');
      await page.getByLabel(/^Look(as|$)/).selectOption(look);
      await page.getByLabel(/tables open/i).check();
      expect(await seriousFaults(page)).toEqual([]);
      await page.getByRole('button', { name: 'Before and after', exact: true }).click();
      await page.locator('.scene svg').waitFor();
      expect(await seriousFaults(page)).toEqual([]);
    });
  }
});
