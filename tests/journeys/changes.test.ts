import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, startApp } from './app-under-test.ts';
import { seriousFaults } from './axe-faults.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

/** Methods are worked out beside the page, on a machine that may have other things to do. */
const slow = { timeout: 60_000 };

describe('changes of the work', () => {
  it('from a lead to its change with one click, costs written, the front combined, a combination taken', async () => {
    const { page, faults } = await app.page();
    await page.getByRole('link', { name: 'Hose couplings' }).click();
    await page.getByRole('link', { name: 'examine', exact: true }).click();
    await page.locator('[data-lead^="hold"] .lead-head').click();
    await page.locator('.lead-answers').getByRole('link', { name: 'Fixture instead of hold' }).click();
    const row = page.locator('[data-change="fixture"]');
    await row.locator('.number').filter({ hasText: /\d s$/ }).waitFor(slow);
    await expect.poll(async () => await row.getAttribute('class')).toContain('asked');
    await page.getByText('proven: no method is shorter with these times').waitFor(slow);
    for (const [name, cost] of [
      ['Fixture instead of hold', '600..800..1200'],
      ['Guide or funnel', '300'],
    ] as const) {
      const field = page.getByRole('textbox', { name: `Cost of ${name}` });
      await field.fill(cost);
      await field.press('Enter');
    }
    await page.getByRole('button', { name: 'Combine the changes' }).click();
    await page.locator('.front-points li').first().waitFor(slow);
    const points = await page.locator('.front-points li strong').allTextContents();
    expect(points[0]).toBe('As it is');
    expect(points.at(-1)).toBe('Guide or funnel + Fixture instead of hold');
    await page.getByText(/^All 4 combinations/).waitFor();
    await page.getByRole('img', { name: /^Time for a unit against cost/ }).waitFor();
    const before = await page.locator('.develop-verdict .sentence').textContent();
    await page.getByRole('button', { name: 'Take these' }).last().click();
    await expect
      .poll(async () => await page.locator('.develop-verdict .sentence').textContent(), slow)
      .not.toBe(before);
    expect(await seriousFaults(page)).toEqual([]);
    expect(faults).toEqual([]);
  }, 180_000);
});
