import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

const axeSource = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');

/** What stands in the way of people who cannot see or point: serious and critical faults found by axe. */
export async function seriousFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  const { violations } = (await page.evaluate(
    "window.axe.run(document, { resultTypes: ['violations'] })",
  )) as {
    violations: { id: string; impact: string | null; nodes: { html: string }[] }[];
  };
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
}
