import type { Study } from '@evenhand/core/ground/study';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, startApp } from './app-under-test.ts';
import { keptStudy, openDevelopDesk } from './develop-page.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

/** Invented: the same motions with a part that the demo does not have. */
function otherStudy(study: Study): Study {
  const text = JSON.stringify({ ...study, works: undefined, id: 'cable-clips', title: 'Cable clips' });
  return JSON.parse(text.replaceAll('"sealing ring"', '"clip"')) as Study;
}

describe('times of other studies on the develop desk', () => {
  it('are used when a study is ticked, said at the motion with the name of the study, remembered, and gone when it is not', async () => {
    const { page, faults } = await openDevelopDesk(app);
    const other = otherStudy(await keptStudy(app, page));
    const made = await page.request.post(`${app.address}api/studies`, { data: { study: other } });
    expect(made.status()).toBe(201);
    await page.locator('.step-head').nth(1).click();
    const object = page.getByLabel(/^Object of motion 2 of /);
    await object.fill('clip');
    await object.press('Enter');
    const motion = page.locator('.motion-row').nth(1);
    await motion.getByText(/by the law|guess/).waitFor();
    await page.getByText('Times from this record and the laws').click();
    const choice = page.getByRole('checkbox', { name: /^Cable clips/ });
    // Two methods of six cycles each.
    await page.locator('.library-choice li').getByText('12 cycles').waitFor();
    await choice.check();
    await motion.getByText(/measured in another study, “Cable clips”, \d+ times/).waitFor();
    await page.getByText(/^1 of \d+ motions have their time from there/).waitFor();
    // What the record has stays its own.
    await page
      .locator('.motion-row')
      .first()
      .getByText(/measured in the record/)
      .waitFor();
    expect(JSON.stringify(await keptStudy(app, page))).not.toContain('cable-clips');
    await page.reload();
    await page.getByText('Times from this record, then from 1 other study').click();
    await expect.poll(async () => await choice.isChecked()).toBe(true);
    await page.locator('.step-head').nth(1).click();
    await motion.getByText(/measured in another study, “Cable clips”/).waitFor();
    await choice.uncheck();
    await motion.getByText(/by the law|guess/).waitFor();
    expect(faults).toEqual([]);
  }, 90_000);
});
