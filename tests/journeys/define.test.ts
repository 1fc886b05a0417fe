import { readFileSync } from 'node:fs';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, allSaved, startApp, type WatchedPage } from './app-under-test.ts';
import { seriousFaults } from './axe-faults.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

let made = 0;

/** The define desk of the demonstration with a new time study of these elements, in decimal minutes. */
async function openSheet(
  elements: readonly string[],
  size?: { width: number; height: number },
): Promise<WatchedPage & { readonly name: string }> {
  const watched = await app.page(size);
  const { page } = watched;
  made += 1;
  const name = `Couplings with a watch ${made}`;
  await page.getByRole('link', { name: 'Hose couplings' }).click();
  await page.getByRole('link', { name: 'define', exact: true }).click();
  await page.getByRole('button', { name: 'New …' }).click();
  await page.getByLabel('readings: typed').check();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill(name);
  await page.getByLabel('Elements, one a line').fill(elements.join('\n'));
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('heading', { name }).waitFor();
  return { ...watched, name };
}

const gridOf = (page: Page): Locator => page.getByRole('grid');
const bigOf = (page: Page): Locator => page.locator('.standard-block .big');
const wordsOf = (page: Page): Locator => page.locator('.cell-words');

async function keptStudy(page: Page, name: string): Promise<TimeStudy> {
  await allSaved(page);
  const id = new URL(page.url()).pathname.split('/')[2];
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  const { study } = (await answer.json()) as { study: Study };
  const found = study.timeStudies?.find((each) => each.name === name);
  if (found === undefined) throw new Error(`the study has no time study “${name}”`);
  return found;
}

const microsOf = ({ elements }: TimeStudy) =>
  elements.map(({ readings }) => readings.map(({ us }) => (us === undefined ? undefined : us / 60e6)));

async function typeReadings(page: Page, texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
}

async function pasteText(page: Page, text: string): Promise<void> {
  await page.evaluate((block) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', block);
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
    document.querySelector('.reading-grid')?.dispatchEvent(event);
  }, text);
}

/** Two elements over four cycles; the means are 0.052 and 0.063 min, so the standard without allowance is 0.115 min. */
const fourCycles = ['0.050', '0.060', '0.054', '0.064', '0.052', '0.064', '0.052', '0.064'];

describe('the study sheet', () => {
  it('says in one sentence what to do where there is no time study', async () => {
    const { page, faults } = await app.page();
    await page.fill('.new-study input', 'nothing timed yet');
    await page.getByRole('button', { name: 'New study' }).click();
    await page.getByRole('link', { name: 'define', exact: true }).click();
    await page.getByText('No time study yet. Choose New … to take the times').waitFor();
    expect(faults).toEqual([]);
  });

  it('of the demonstration follows a changed reading and comes back with undo', async () => {
    const { page, faults } = await app.page();
    await page.getByRole('link', { name: 'Hose couplings' }).click();
    await page.getByRole('link', { name: 'define', exact: true }).click();
    await gridOf(page).focus();
    const before = Number(await bigOf(page).getAttribute('data-standard'));
    expect(before).toBeGreaterThan(0);
    const words = await bigOf(page).textContent();
    await page.keyboard.type('0.5');
    await page.keyboard.press('Enter');
    await expect
      .poll(async () => Number(await bigOf(page).getAttribute('data-standard')))
      .toBeGreaterThan(before);
    await page.keyboard.press('Control+z');
    await bigOf(page)
      .getByText(words ?? '', { exact: true })
      .waitFor();
    await page.locator('[data-bootstrap=done]').waitFor();
    await page.locator('.run-part p').getByText('of their mean').waitFor();
    expect(faults).toEqual([]);
  });

  it('is written with the keyboard alone: Enter goes down the elements and on to the next cycle', async () => {
    const { page, name, faults, strangers } = await openSheet(['Take body', 'Put ring on']);
    await gridOf(page).focus();
    await typeReadings(page, fourCycles);
    await bigOf(page).getByText('0.1150 min').waitFor();
    expect(microsOf(await keptStudy(page, name))).toEqual([
      [0.05, 0.054, 0.052, 0.052],
      [0.06, 0.064, 0.064, 0.064],
    ]);
    // F2 opens a cell with what is in it: 0.050 becomes 0.054, so the mean rises by 0.001.
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('F2');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('0,054');
    await page.keyboard.press('Tab');
    await bigOf(page).getByText('0.1160 min').waitFor();
    await wordsOf(page).getByText('Take body, cycle 2: 0.0540 min (3.24 s)').waitFor();
    await page.keyboard.press('Control+z');
    await bigOf(page).getByText('0.1150 min').waitFor();
    expect(faults).toEqual([]);
    expect(strangers).toEqual([]);
  });

  it('keeps wrong input in its cell and says there what is wrong', async () => {
    const { page, name } = await openSheet(['Take body', 'Put ring on']);
    await gridOf(page).focus();
    await typeReadings(page, fourCycles);
    await page.keyboard.press('Control+Home');
    for (const [text, words] of [
      ['0.o5', 'is not a time. Write a number in decimal minutes'],
      ['0', 'A reading of 0 is no time'],
      ['3 kg', 'is not a time'],
    ] as const) {
      await page.keyboard.press('F2');
      await page.keyboard.press('Control+A');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
      await gridOf(page).getByRole('alert').getByText(words).waitFor();
      expect(await gridOf(page).locator('input').inputValue()).toBe(text);
      await page.keyboard.press('Escape');
    }
    expect(microsOf(await keptStudy(page, name))[0]?.[0]).toBe(0.05);
    // Clicking elsewhere leaves it as it was typed; the cell says so, and Delete gives the reading back its place.
    await page.keyboard.press('F2');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('ten');
    await page.getByRole('gridcell', { name: '0.060' }).click();
    await page.locator('.grid-cell.wrong').click();
    await wordsOf(page).getByText('“ten” is not a time').waitFor();
  });

  it('sets a proposed reading aside with a reason, never without, and undo counts it again', async () => {
    const { page, name } = await openSheet(['Take body']);
    await gridOf(page).focus();
    await typeReadings(page, ['0.050', '0.052', '0.051', '0.053', '0.050', '0.120']);
    const proposed = page.locator('.grid-cell.proposed');
    await proposed.getByText('0.120').click();
    await wordsOf(page).getByText('lies above').waitFor();
    // (0.050 + 0.052 + 0.051 + 0.053 + 0.050 + 0.120) / 6, and without the last of them / 5.
    await bigOf(page).getByText('0.0627 min').waitFor();
    await page.keyboard.press('a');
    await page.keyboard.press('Enter');
    await page.getByText('Nothing is set aside without a reason').waitFor();
    expect((await keptStudy(page, name)).elements[0]?.readings[5]).toEqual({ cycle: 6, us: 7_200_000 });
    await page.keyboard.type('ring fell');
    await page.keyboard.press('Enter');
    await bigOf(page).getByText('0.0512 min').waitFor();
    await wordsOf(page).getByText('Set aside, because: ring fell.').waitFor();
    expect((await keptStudy(page, name)).elements[0]?.readings[5]).toEqual({
      cycle: 6,
      us: 7_200_000,
      setAside: 'ring fell',
    });
    await page.locator('.summary-table').getByText('(+1)').waitFor();
    await page.keyboard.press('Control+z');
    await bigOf(page).getByText('0.0627 min').waitFor();
  });

  it('takes a block from a spreadsheet: names make elements, what cannot be taken stays marked, undo is one step', async () => {
    const { page, name, faults } = await openSheet(['Take body']);
    await gridOf(page).focus();
    const before = await keptStudy(page, name);
    await pasteText(
      page,
      'cycle\ttake body\tScrew collar\n1\t0.05\t0.14\n2\t0.05\tfoo\n3\t-\t0.16 (slipped)\n',
    );
    await page.getByText('Pasted 5 readings of 2 elements. New: Screw collar. 1 cell could not').waitFor();
    const pasted = await keptStudy(page, name);
    expect(pasted.elements.map((element) => element.name)).toEqual(['Take body', 'Screw collar']);
    expect(microsOf(pasted)).toEqual([
      [0.05, 0.05, undefined],
      [0.14, 0.16],
    ]);
    expect(pasted.elements[1]?.readings[1]?.setAside).toBe('slipped');
    await page.locator('.grid-cell.wrong').click();
    await gridOf(page).getByRole('alert').getByText('“foo” is not a time').waitFor();
    await page.keyboard.type('0.15');
    await page.keyboard.press('Enter');
    expect(await page.locator('.grid-cell.wrong').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await keptStudy(page, name)).toEqual(before);
    expect(faults).toEqual([]);
  });

  it('stays quick with 10,000 cycles: only what is seen is drawn', async () => {
    const { page, faults } = await openSheet(['Take body', 'Put ring on', 'Screw collar']);
    await gridOf(page).focus();
    const lines = Array.from({ length: 10_000 }, (_, index) => {
      const wave = (index % 7) / 1000;
      return `${(0.05 + wave).toFixed(3)}\t${(0.06 + wave).toFixed(3)}\t${(0.14 + wave).toFixed(3)}`;
    });
    await pasteText(page, `Take body\tPut ring on\tScrew collar\n${lines.join('\n')}`);
    await page.getByText('Pasted 30000 readings').waitFor();
    await page.keyboard.press('Control+End');
    await page.locator('.grid-cycle').getByText('10001', { exact: true }).waitFor();
    expect(await page.locator('.grid-cell').count()).toBeLessThan(400);
    // The means of the waves are 0.003 each: 0.05 + 0.06 + 0.14 + 0.009.
    await bigOf(page).getByText('0.2590 min').waitFor();
    await page.locator('[data-bootstrap=done]').waitFor();
    expect(faults).toEqual([]);
  });
});

describe('the sheet on paper', () => {
  it('is a PDF, and prints as the same pages by whatever way printing is asked for', async () => {
    const { page, faults } = await openSheet(['Take body', 'Put ring on']);
    await gridOf(page).focus();
    await typeReadings(page, fourCycles);
    await bigOf(page).getByText('0.1150 min').waitFor();
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'PDF' }).click(),
    ]);
    expect(file.suggestedFilename()).toMatch(/Hose couplings - Couplings with a watch \d+\.pdf/);
    expect(
      readFileSync(await file.path())
        .subarray(0, 5)
        .toString('latin1'),
    ).toBe('%PDF-');
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('.print-sheets svg').count()).toBeGreaterThan(0);
    expect(await page.locator('.print-sheets').textContent()).toContain('0.1150 min');
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await page.locator('.print-sheets').waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });
});

describe('rating, allowances and the standard', () => {
  it('name their convention, and the same figure read the other way is shown as another standard', async () => {
    const { page } = await openSheet(['Take body', 'Put ring on']);
    await gridOf(page).focus();
    await typeReadings(page, fourCycles);
    await page.getByLabel('Relaxation, as agreed').fill('12');
    await page.keyboard.press('Enter');
    // 0.115 · 1.12 and 0.115 / 0.88
    await bigOf(page).getByText('0.1288 min').waitFor();
    const block = page.getByRole('region', { name: 'The standard' });
    await block.getByText('that is 10.7 % of the shift').waitFor();
    await block.getByText('would give 0.1307 min: another standard').waitFor();
    await page.getByRole('radio', { name: /^the shift/ }).check();
    await bigOf(page).getByText('0.1307 min').waitFor();
    await page.getByLabel('Relaxation, as agreed').fill('100');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText('Write a number from 0 and below 100.').waitFor();
    await bigOf(page).getByText('0.1307 min').waitFor();
    await page.getByLabel('Rating of the study').fill('400');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').getByText('The rating of the time study cannot be used: 400').waitFor();
  });

  it('come from a published table, its editions side by side', async () => {
    const { page } = await openSheet(['Take body', 'Put ring on']);
    await gridOf(page).focus();
    await typeReadings(page, fourCycles);
    await page.getByRole('combobox', { name: 'Relaxation', exact: true }).selectOption('table');
    // 5 % personal needs, 4 % basic fatigue and 2 % standing in the column for men (the table’s own source).
    await page.getByRole('combobox', { name: 'Standing' }).selectOption({ index: 1 });
    await page.getByText('11 % of basic time').waitFor();
    await bigOf(page).getByText('0.1277 min').waitFor();
    await page.getByText('These figures are time for rest.').waitFor();
  });

  it('faults lead to their places', async () => {
    const { page } = await openSheet(['Take body', 'Put ring on']);
    await gridOf(page).focus();
    await typeReadings(page, fourCycles);
    await page.getByLabel('Rating of the study').fill('');
    await page.keyboard.press('Enter');
    await bigOf(page).getByText('not yet').waitFor();
    const fault = page.getByRole('list', { name: /in the way/ }).getByRole('button');
    await fault.first().click();
    const focused = page.getByLabel('Rating of the study');
    expect(await focused.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.type('105');
    await page.keyboard.press('Enter');
    // 0.115 · 1.05
    await bigOf(page).getByText('0.1207 min').waitFor();
  });
});

describe('a study of a marked film', () => {
  it('takes its times from there: they are not typed here, but rated and set aside', async () => {
    const { page, faults } = await app.page();
    await page.getByRole('link', { name: 'Hose couplings' }).click();
    await page.getByRole('link', { name: 'define', exact: true }).click();
    await page.getByRole('button', { name: 'New …' }).click();
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('from the film');
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('heading', { name: 'from the film' }).waitFor();
    await bigOf(page).getByText('min').waitFor();
    await gridOf(page).focus();
    await page.keyboard.type('5');
    await page.getByText('The times of this study come from the marked film').waitFor();
    await page.getByLabel('Ratings of single readings').check();
    await gridOf(page).focus();
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('110');
    await page.keyboard.press('Enter');
    expect((await keptStudy(page, 'from the film')).elements[0]?.readings).toEqual([
      { cycle: 1, rating: 110 },
    ]);
    expect(faults).toEqual([]);
  });
});

describe('the list of time studies', () => {
  it('copies, renames and removes; the address keeps what is open, and undo brings it back', async () => {
    const { page, name } = await openSheet(['Take body']);
    await page.getByRole('button', { name: 'Copy', exact: true }).click();
    await page.getByRole('heading', { name: `${name}, copy` }).waitFor();
    await page.getByRole('button', { name: 'Rename' }).click();
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('second sheet');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'second sheet' }).waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'second sheet' }).waitFor();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await page.getByText('“second sheet” was removed. Undo brings it back.').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('combobox', { name: 'Time study' }).selectOption({ label: 'second sheet' });
    await page.getByRole('heading', { name: 'second sheet' }).waitFor();
  });
});

describe('accessibility of the define desk: axe-core finds no serious fault', () => {
  for (const look of ['light', 'dark'] as const) {
    it(`on the sheet with a wrong cell and on the calculators, in ${look}`, async () => {
      const { page, faults } = await openSheet(['Take body', 'Put ring on']);
      await page.getByLabel('Look').selectOption(look);
      await gridOf(page).focus();
      await typeReadings(page, fourCycles);
      await page.keyboard.type('foo');
      await page.keyboard.press('F2');
      await page.getByRole('gridcell', { name: '0.060' }).click();
      await page.getByRole('combobox', { name: 'Relaxation', exact: true }).selectOption('table');
      await page.locator('.run-part svg').waitFor();
      expect(await seriousFaults(page)).toEqual([]);
      await page.getByRole('button', { name: 'Calculators' }).click();
      await page.getByRole('heading', { name: 'Learning curve' }).waitFor();
      expect(await seriousFaults(page)).toEqual([]);
      expect(faults).toEqual([]);
    });
  }

  for (const [name, size] of [
    ['1024 by 768', { width: 1024, height: 768 }],
    ['1440 by 900 at 200 %', { width: 720, height: 450 }],
  ] as const) {
    it(`${name}: nothing reaches over the side; standard, readings and summary can be seen`, async () => {
      const { page } = await openSheet(['Take body', 'Put ring on'], size);
      await gridOf(page).focus();
      await typeReadings(page, fourCycles);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
      for (const part of ['.standard-block', '.reading-grid', '.summary-table', '.run-part svg']) {
        await page.locator(part).first().scrollIntoViewIfNeeded();
        const box = await page.locator(part).first().boundingBox();
        expect(box?.width).toBeGreaterThan(250);
        expect(box?.height).toBeGreaterThan(60);
      }
    });
  }
});
