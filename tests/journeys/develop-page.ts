import type { Study } from '@evenhand/core/ground/study';
import type { Page } from 'playwright-core';
import { type AppUnderTest, allSaved, type WatchedPage } from './app-under-test.ts';

/** A method is worked out beside the page, on a machine that may have other things to do. */
export const slow = { timeout: 30_000 };

/** The develop desk of the demo with its work drawn anew and the shortest method found. */
export async function openDevelopDesk(
  app: AppUnderTest,
  size?: { width: number; height: number },
): Promise<WatchedPage> {
  const watched = await app.page(size);
  const { page } = watched;
  await page.getByRole('link', { name: 'Hose couplings' }).click();
  await page.getByRole('link', { name: 'develop', exact: true }).click();
  // The study is the same for all journeys of a file: what an earlier one kept is put aside.
  const draw = page.getByRole('button', { name: 'Draw the work' });
  const remove = page.getByRole('button', { name: 'Remove this work' });
  await draw.or(remove).waitFor();
  if (await remove.isVisible()) await remove.click();
  await draw.click();
  await page.getByText('proven: no method is shorter with these times').waitFor();
  return watched;
}

/** Seconds a unit of the method that is shown. */
export async function unitTime(page: Page): Promise<number> {
  const text = await page.locator('.develop-verdict .sentence').textContent();
  return Number(/^(\d+\.\d+) s a unit/.exec(text ?? '')?.[1]);
}

/** The study as the server has kept it. */
export async function keptStudy(app: AppUnderTest, page: Page): Promise<Study> {
  await allSaved(page);
  const id = new URL(page.url()).pathname.split('/')[2];
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  return ((await answer.json()) as { study: Study }).study;
}
