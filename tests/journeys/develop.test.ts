import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, startApp } from './app-under-test.ts';
import { seriousFaults } from './axe-faults.ts';
import { keptStudy, openDevelopDesk, slow, unitTime } from './develop-page.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

const openDesk = async (size?: { width: number; height: number }) => await openDevelopDesk(app, size);

const settled = (page: Page) =>
  page.getByText('Changes are being reckoned …').waitFor({ state: 'detached', timeout: 60_000 });
const change = (page: Page, name: RegExp) => page.getByRole('checkbox', { name });

/** Upper and lower edge of the drawing of the bench, pixels. */
async function edges(page: Page): Promise<readonly number[]> {
  const box = await page.locator('.work-plan > svg').first().boundingBox();
  if (box === null) throw new Error('the bench is not drawn');
  return [Math.round(box.y), Math.round(box.y + box.height)];
}

describe('the develop desk', () => {
  it('one click draws the work, its shortest method is proven, one of the ranked changes is taken, the bench rearranged, and the method stands beside the recorded one on the evaluate desk', async () => {
    const { page, faults, strangers } = await openDesk();
    await expect.poll(async () => await page.locator('.step-list > li').count()).toBe(9);
    const present = await unitTime(page);
    await settled(page);
    // The largest saving stands first, and it is the hold.
    await expect
      .poll(async () => await page.locator('.work-changes li label strong').first().textContent())
      .toBe('Fixture instead of hold');
    await change(page, /Fixture instead of hold/).click();
    await expect.poll(async () => await unitTime(page), slow).toBeLessThan(present);
    const held = await unitTime(page);
    await settled(page);
    // The bench is rearranged: the rings come closer to where they are put on.
    const bin = page.getByRole('button', { name: /^Ring bin/ });
    await bin.focus();
    for (let step = 0; step < 10; step += 1) await page.keyboard.press('ArrowDown');
    await expect.poll(async () => await unitTime(page), slow).toBeLessThan(held);
    const nearer = await unitTime(page);
    await page.getByText('proven: no method is shorter with these times').waitFor();
    await settled(page);
    await change(page, /Two units at once/).click();
    await expect.poll(async () => await unitTime(page), slow).toBeLessThan(nearer);
    await page.getByRole('button', { name: 'Add to the study' }).click();
    await page.getByText('The composed method is in the study.').waitFor();
    const study = await keptStudy(app, page);
    const composed = study.methods.at(-1);
    expect(composed).toMatchObject({ kind: 'composed', unitsPerCycle: 2 });
    expect(study.works?.[0]).toMatchObject({
      drawnFrom: { method: 'present' },
      changes: [
        { change: 'fixture', taken: true },
        { change: 'two-units', taken: true },
      ],
    });
    await page.getByRole('link', { name: 'To evaluate' }).click();
    await page.getByRole('button', { name: 'New', exact: true }).click();
    await page
      .getByRole('group', { name: 'After' })
      .getByRole('combobox')
      .selectOption({ label: composed?.name ?? '' });
    await page.getByText('A composed method has no film; its chart stands below.').waitFor();
    expect(faults).toEqual([]);
    expect(strangers).toEqual([]);
  });

  it('gives another figure when a bin is moved with the keys, and the recorded one again', async () => {
    const { page, faults } = await openDesk();
    const before = await unitTime(page);
    const bin = page.getByRole('button', { name: /^Collar bin/ });
    await bin.focus();
    for (let step = 0; step < 20; step += 1) await page.keyboard.press('ArrowUp');
    await expect.poll(async () => await unitTime(page), slow).toBeGreaterThan(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => await unitTime(page), slow).toBe(before);
    expect(faults).toEqual([]);
  });

  it('lets a step be changed with the keys, says at the step what is wrong, and takes it back', async () => {
    const { page, faults } = await openDesk();
    const before = await unitTime(page);
    const steps = page.locator('.step-head');
    await steps.nth(1).focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    const time = page.getByLabel('Time of motion 1 of Grasp body');
    await time.fill('soon');
    await time.press('Enter');
    await page.getByText('“soon” is not a time.').waitFor();
    await time.fill('5');
    await time.press('Enter');
    await expect.poll(async () => await unitTime(page), slow).toBeGreaterThan(before + 2);
    await page.getByLabel('Leaves with').fill('housing');
    await page.getByLabel('Leaves with').press('Enter');
    await page.locator('.step-list > li').first().getByText('a hand carries housing').waitFor();
    await expect
      .poll(async () => await page.getByRole('button', { name: 'Add to the study' }).isDisabled())
      .toBe(true);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => await unitTime(page), slow).toBe(before);
    await steps.nth(0).focus();
    await page.keyboard.press('Insert');
    await expect.poll(async () => await steps.count()).toBe(10);
    await expect
      .poll(async () => await page.evaluate(() => document.activeElement?.textContent))
      .toContain('New step');
    await page.keyboard.press('Alt+ArrowDown');
    await expect.poll(async () => await steps.nth(2).textContent()).toContain('New step');
    await page.keyboard.press('Delete');
    await expect.poll(async () => await steps.count()).toBe(9);
    expect(faults).toEqual([]);
  });

  it('judges at once what is changed by hand: what it breaks, or what it costs, and back again', async () => {
    const { page, faults } = await openDesk();
    await settled(page);
    const add = page.getByRole('button', { name: 'Add to the study' });
    const right = page.locator('[data-row="right"] button.step-bar');
    const unchanged = await edges(page);
    await right.first().focus();
    await page.keyboard.press('Alt+ArrowRight');
    const verdict = page.locator('.hand-verdict');
    await verdict.getByText('Changed by hand, this cannot be done').waitFor();
    // Hand and steps are named, and what cannot be done is not added.
    expect(await verdict.textContent()).toMatch(
      /the right hand carries .+ after “.+”, which does not fit “.+”/,
    );
    expect(await add.isDisabled()).toBe(true);
    // What is broken stands below the rows, in room that was there before: the bench has not moved.
    expect(await edges(page)).toEqual(unchanged);
    const rows = await page.locator('.hand-rows').boundingBox();
    const told = await verdict.boundingBox();
    expect(told?.y).toBeGreaterThanOrEqual((rows?.y ?? 0) + (rows?.height ?? 0));
    expect((told?.y ?? 0) + (told?.height ?? 0)).toBeLessThanOrEqual(900);
    await page.getByRole('button', { name: 'One step back' }).click();
    await expect.poll(async () => await verdict.count()).toBe(0);
    await right.first().focus();
    await page.getByRole('button', { name: '… with what it carries' }).click();
    await verdict.getByText(/this can be done: \d+\.\d+ s a unit, .+ the proven one/).waitFor();
    await verdict.getByText(/90 % interval/).waitFor();
    await add.click();
    await page.getByText('The composed method is in the study.').waitFor();
    const study = await keptStudy(app, page);
    expect(study.methods.at(-1)?.name).toContain('by hand');
    // The first step of the right hand is dragged into the other row: the same as giving it to the other hand.
    await page.getByRole('button', { name: 'Back to the composed one' }).click();
    await expect.poll(async () => await verdict.count()).toBe(0);
    await right.first().focus();
    await right.first().scrollIntoViewIfNeeded();
    const from = await right.first().boundingBox();
    const to = await page.locator('[data-row="left"]').boundingBox();
    if (from === null || to === null) throw new Error('the rows are not there');
    await page.mouse.move(from.x + 10, from.y + 10);
    await page.mouse.down();
    await page.mouse.move(from.x + 60, to.y + 10, { steps: 4 });
    await page.mouse.up();
    await verdict.getByText('Changed by hand, this cannot be done').waitFor();
    expect(faults).toEqual([]);
  });

  it('shows the whole bench beside both scores at 1440 × 900, and follows the look of the system while it is open', async () => {
    const { page } = await openDesk();
    const seen = await page.evaluate(() => {
      const drawing = document.querySelector('.work-plan > svg')?.getBoundingClientRect();
      const room = document.querySelector('.develop-main')?.getBoundingClientRect();
      const scores = document.querySelector('.composed-scores');
      return {
        height: drawing?.height ?? 0,
        within: (drawing?.bottom ?? 0) <= (room?.bottom ?? 0),
        cut: (scores?.scrollHeight ?? 0) - (scores?.clientHeight ?? 0),
      };
    });
    expect(seen.height).toBeGreaterThan(280);
    expect(seen.within).toBe(true);
    expect(seen.cut).toBeLessThanOrEqual(0);
    // A window that changes size at the same time asks for the look while the browser is about to tell it.
    for (let turn = 0; turn < 6; turn += 1) {
      const look = turn % 2 === 0 ? 'dark' : 'light';
      await page.setViewportSize({ width: 1440 - 40 * turn, height: 900 });
      await page.emulateMedia({ colorScheme: look });
      await expect
        .poll(async () => await page.evaluate(() => document.documentElement.dataset.look))
        .toBe(look);
    }
  });

  it.each(['light', 'dark'] as const)(
    'is free of serious faults, %s, and fits a smaller window',
    async (look) => {
      const { page } = await openDesk();
      await page.emulateMedia({ colorScheme: look });
      expect(await seriousFaults(page)).toEqual([]);
      await page.setViewportSize({ width: 1024, height: 768 });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
      // Bench and both scores with their steps stand in the window; what the bench is set up with comes below.
      const lower = await page.evaluate(() => {
        const bottom = (name: string) => document.querySelector(name)?.getBoundingClientRect().bottom ?? 0;
        return {
          bench: bottom('.work-plan > svg'),
          scores: bottom('.develop-below'),
          tools: document.querySelector('.plan-choices')?.getBoundingClientRect().top ?? 0,
        };
      });
      expect(lower.bench).toBeGreaterThan(0);
      expect(lower.scores).toBeGreaterThan(lower.bench);
      expect(lower.scores).toBeLessThanOrEqual(768);
      expect(lower.tools).toBeGreaterThanOrEqual(lower.scores);
      // The changes stand under the steps and not upon them.
      const edges = await page.evaluate(() => {
        const box = (name: string) => document.querySelector(name)?.getBoundingClientRect();
        return [box('.develop-left')?.bottom, box('.develop-side')?.top];
      });
      expect(edges[1]).toBeGreaterThanOrEqual(edges[0] ?? Number.POSITIVE_INFINITY);
    },
  );
});
