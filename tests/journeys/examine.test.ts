import type { Study } from '@evenhand/core/ground/study';
import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type AppUnderTest, allSaved, shownFrame, startApp, type WatchedPage } from './app-under-test.ts';
import { seriousFaults } from './axe-faults.ts';

let app: AppUnderTest;
beforeAll(async () => {
  app = await startApp(['--demo']);
});
afterEach(async () => await app?.closePages());
afterAll(async () => await app?.close());

async function openDesk(size?: { width: number; height: number }): Promise<WatchedPage> {
  const watched = await app.page(size);
  const { page } = watched;
  await page.getByRole('link', { name: 'Hose couplings' }).click();
  await shownFrame(page);
  await page.getByRole('link', { name: 'examine', exact: true }).click();
  await leadsOf(page).first().waitFor();
  await shownFrame(page);
  return watched;
}

const leadsOf = (page: Page): Locator => page.getByRole('list', { name: /^Leads/ }).locator('> li');
const headOf = (lead: Locator): Locator => lead.locator('.lead-head');

async function headStudy(page: Page): Promise<Study> {
  await allSaved(page);
  const id = new URL(page.url()).pathname.split('/')[2];
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  return ((await answer.json()) as { study: Study }).study;
}

/** The left hand's first hold in the demonstration, read from the study itself. */
function firstHold(study: Study): { from: number; to: number; id: string } {
  const [method] = study.methods;
  const items = method?.left.items ?? [];
  const at = items.findIndex(({ kind }) => kind === 'H');
  const [hold, next] = [items[at], items[at + 1]];
  if (hold === undefined || next === undefined) throw new Error('the demonstration should hold something');
  return { from: hold.start, to: next.start, id: hold.id };
}

/** The frames that are shown from now until the film has begun its loop again. */
async function framesOfOneLoop(page: Page): Promise<readonly number[]> {
  return await page.evaluate(
    () =>
      new Promise<number[]>((resolve) => {
        const seen: number[] = [];
        const look = () => {
          const frame = Number(document.querySelector('output.frame')?.getAttribute('data-frame'));
          const last = seen.at(-1);
          if (frame !== last) seen.push(frame);
          if (last !== undefined && frame < last) resolve(seen);
          else requestAnimationFrame(look);
        };
        look();
      }),
  );
}

/** How many columns of the score hold a long upright line in the ink that points things out. */
async function uprightLines(page: Page): Promise<number> {
  return await page.evaluate(() => {
    const ink = getComputedStyle(document.documentElement).getPropertyValue('--accent').trim();
    const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(ink.slice(at, at + 2), 16));
    let columns = 0;
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>('.score canvas')) {
      const context = canvas.getContext('2d');
      if (context === null || canvas.width === 0) continue;
      const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
      for (let x = 0; x < canvas.width; x += 1) {
        let count = 0;
        for (let y = 0; y < canvas.height; y += 1) {
          const at = 4 * (y * canvas.width + x);
          if (data[at] === red && data[at + 1] === green && data[at + 2] === blue) count += 1;
        }
        if (count > canvas.height / 5) columns += 1;
      }
    }
    return columns;
  });
}

describe('leads on the examine desk', () => {
  it('stand in the order of what they are worth, each with where it is and its interval', async () => {
    const { page, strangers, faults } = await openDesk();
    expect(new URL(page.url()).pathname).toMatch(/^\/studies\/[^/]+\/examine$/);
    const texts = await headOf(leadsOf(page)).locator('.worth .number:first-child').allTextContents();
    expect(texts.length).toBeGreaterThan(3);
    // "0.14 to 0.40 s a cycle", or one number where both ends are the same.
    const worth = texts.map((text) => {
      const [low, high] = [...text.matchAll(/\d+\.\d+/g)].map(([number]) => Number(number));
      return (low ?? Number.NaN) + (high ?? low ?? Number.NaN);
    });
    for (const [index, value] of worth.entries()) {
      // Each end is rounded to a hundredth.
      if (index > 0) expect(value).toBeLessThanOrEqual((worth[index - 1] ?? 0) + 0.02);
    }
    await page.getByText('All together, which is not their sum').waitFor();
    await page.getByText('cycles 1–5, 7 counted, of 7; 1 set aside').waitFor();
    expect(strangers).toEqual([]);
    expect(faults).toEqual([]);
  });

  it('play their frames in a loop and light their motions; Escape stops it', async () => {
    const { page, faults } = await openDesk();
    const { from, to } = firstHold(await headStudy(page));
    const hold = leadsOf(page).filter({ hasText: 'Holding in one hand' });
    await page.getByLabel('Speed').selectOption({ label: '4×' });
    await headOf(hold).click();
    await hold.getByText(`Occurrence 1 of 6: cycle 1, frames ${from} to ${to}`).waitFor();
    await page.waitForFunction(
      (start) => Number(document.querySelector('output.frame')?.getAttribute('data-frame')) > start,
      from,
    );
    const frames = await framesOfOneLoop(page);
    expect(Math.min(...frames)).toBeGreaterThanOrEqual(from);
    expect(Math.max(...frames)).toBeLessThan(to);
    expect(Math.max(...frames)).toBeGreaterThan(from + (to - from) / 2);
    const lit = await uprightLines(page);
    await page.keyboard.press('Escape');
    await hold.getByRole('button', { name: 'Show again' }).waitFor();
    await page.locator('[data-command="film.play"]', { hasText: 'Play' }).waitFor();
    // Two sides of the frame around the motion are gone, the line of the shown frame stays.
    expect(await uprightLines(page)).toBeLessThan(lit);
    expect(faults).toEqual([]);
  });

  it('are walked through and played by the keyboard alone, and no key marks anything', async () => {
    const { page } = await openDesk();
    const before = await headStudy(page);
    const leads = leadsOf(page);
    await headOf(leads.first()).focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    const second = leads.nth(1);
    expect(await headOf(second).evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    expect(await headOf(second).getAttribute('aria-expanded')).toBe('true');
    await second.getByText('Occurrence 1 of 6').waitFor();
    await page.keyboard.press('Period');
    await second.getByText('Occurrence 2 of 6').waitFor();
    await page.keyboard.press('Comma');
    await page.keyboard.press('Comma');
    await second.getByText('Occurrence 6 of 6').waitFor();
    await page.keyboard.press('Escape');
    await second.getByRole('button', { name: 'Show again' }).waitFor();
    for (const key of ['KeyF', 'KeyJ', 'Alt+KeyX', 'Delete', 'Control+ArrowRight'])
      await page.keyboard.press(key);
    expect(await headStudy(page)).toEqual(before);
  });
});

describe('a motion chosen on the score', () => {
  it('shows the leads that it is part of', async () => {
    const { page, faults } = await openDesk();
    const hold = leadsOf(page).filter({ hasText: 'Holding in one hand' });
    await headOf(hold).click();
    await page.keyboard.press('Escape');
    // The score still shows the cycle: the hold fills most of its left hand.
    await page.getByText('Show again').waitFor();
    await page.locator('.score [role=img]').click({ position: { x: 300, y: 110 } });
    const selected = page.getByRole('region', { name: 'Selected motion' });
    await selected.getByText('hold (H) body, left hand').waitFor();
    const words = (await selected.getByRole('status').textContent()) ?? '';
    const count = Number(/(\d+) leads? with this motion/.exec(words)?.[1]);
    const touched = leadsOf(page).filter({ hasText: 'The selected motion is part of this.' });
    expect(count).toBeGreaterThan(0);
    expect(await touched.count()).toBe(count);
    expect(await touched.first().textContent()).toContain('Holding in one hand');
    await selected.getByRole('button', { name: /^Go to/ }).click();
    expect(await headOf(touched.first()).evaluate((element) => element === document.activeElement)).toBe(
      true,
    );
    // Nothing selected, nothing pointed at.
    await page.keyboard.press('Escape');
    await selected.waitFor({ state: 'detached' });
    expect(await touched.count()).toBe(0);
    expect(faults).toEqual([]);
  });
});

describe('the critical examination of a lead', () => {
  it('says what the record knows, keeps answers and the decision, and has them after loading anew', async () => {
    const { page } = await openDesk();
    const before = await headStudy(page);
    const open = async () => {
      const lead = leadsOf(page).filter({ hasText: 'Holding in one hand' });
      await headOf(lead).click();
      await page.keyboard.press('Escape');
      await lead.getByText('Critical examination of this lead').click();
      return lead;
    };
    const lead = await open();
    await lead.getByText('From the record:').first().waitFor();
    const heads = await lead.locator('.critical legend').allTextContents();
    expect(heads.map((text) => text.split(' ')[0])).toEqual([
      'Purpose',
      'Place',
      'Sequence',
      'Person',
      'Means',
      'Decision',
    ]);
    await lead.getByLabel('Is it necessary, and why?').fill('No: a nest could keep the body upright.');
    await lead.getByRole('button', { name: 'eliminate' }).click();
    // A decision without a reason is refused in words.
    await lead.getByRole('button', { name: 'Decide' }).click();
    expect((await headStudy(page)).examinations?.[0]?.decision).toBeUndefined();
    await page.locator('.desk-message p').waitFor();
    await lead.getByLabel('Because').fill('The nest costs an hour of the workshop.');
    await lead.getByRole('button', { name: 'Decide' }).click();
    await lead.getByText('Decided: eliminate.').waitFor();
    expect((await headStudy(page)).examinations).toEqual([
      {
        id: expect.any(String),
        subject: { kind: 'lead', method: before.methods[0]?.id, lead: 'hold:left:body' },
        answers: [{ question: 'purpose-2', text: 'No: a nest could keep the body upright.' }],
        decision: { choice: 'eliminate', reason: 'The nest costs an hour of the workshop.' },
      },
    ]);
    await page.reload();
    await leadsOf(page).first().waitFor();
    const again = await open();
    await again.getByText('(1 answer, decided: eliminate)').waitFor();
    expect(await again.getByLabel('Is it necessary, and why?').inputValue()).toContain('a nest could keep');
    await page.getByText('Answered or decided so far: 1 subject').click();
    await page.getByText('Decided: eliminate, because The nest costs').waitFor();
    await again.getByRole('button', { name: 'Take the decision back' }).click();
    await again.getByLabel('Is it necessary, and why?').fill('');
    await again.getByLabel('Because').focus();
    expect((await headStudy(page)).examinations ?? []).toEqual([]);
  });
});

describe('what is counted', () => {
  it('cycles are chosen by their numbers, and a wrong choice is refused in words', async () => {
    const { page } = await openDesk();
    const cycles = page.getByLabel('Cycles', { exact: true });
    await cycles.fill('1-3');
    await page.keyboard.press('Enter');
    await page.getByText('cycles 1–3 counted, of 7; 1 set aside').waitFor();
    await cycles.fill('4-2');
    await page.keyboard.press('Enter');
    await page.getByText('4–2 runs backwards').waitFor();
    await page.getByRole('button', { name: 'Count all cycles' }).click();
    await page.getByText('cycles 1–5, 7 counted').waitFor();
  });

  it('hours a year come from the yearly volume, which is set here and undone', async () => {
    const { page } = await openDesk();
    const before = await headStudy(page);
    const volume = page.getByLabel('Units a year');
    const head = page.locator('.joint .sum');
    await volume.fill('lots');
    await page.keyboard.press('Enter');
    await page.getByText('is no number of units a year').waitFor();
    await volume.fill('');
    await page.keyboard.press('Enter');
    await head.filter({ hasNotText: 'hours a year' }).waitFor();
    expect((await headStudy(page)).operation.unitsAYear).toBeUndefined();
    // 360 000 units a year at one a cycle: a second a cycle is 100 hours a year.
    await volume.fill('360 000');
    await page.keyboard.press('Enter');
    await head.filter({ hasText: 'hours a year' }).waitFor();
    const text = (await head.textContent()) ?? '';
    const [low, high] = [...text.matchAll(/\d+\.\d+/g)].map(([number]) => Number(number));
    const hours = /(\d+) to (\d+) hours/.exec(text);
    expect(Math.abs(Number(hours?.[1]) - 100 * (low ?? Number.NaN))).toBeLessThanOrEqual(1);
    expect(Math.abs(Number(hours?.[2]) - 100 * (high ?? Number.NaN))).toBeLessThanOrEqual(1);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await headStudy(page)).toEqual(before);
  });

  it('another method is another list, and the address keeps it', async () => {
    const { page } = await openDesk();
    const first = await leadsOf(page).first().textContent();
    await page.getByLabel('Method').selectOption({ index: 1 });
    await expect.poll(async () => await leadsOf(page).first().textContent()).not.toBe(first);
    await page.reload();
    await leadsOf(page).first().waitFor();
    expect(await page.getByLabel('Method').inputValue()).toBe(new URL(page.url()).searchParams.get('method'));
    expect(await leadsOf(page).first().textContent()).not.toBe(first);
  });

  it('a film with nothing marked leads back to marking', async () => {
    const { page } = await app.page();
    await page.fill('.new-study input', 'nothing marked yet');
    await page.getByRole('button', { name: 'New study' }).click();
    await page.getByRole('link', { name: 'examine', exact: true }).click();
    await page.getByText('no method yet').waitFor();
    await page.getByRole('link', { name: 'Add a film and mark it' }).click();
    await page.getByText('agreed').first().click();
    await page.setInputFiles('.add-film input[type=file]', 'examples/couplings/present.mp4');
    await shownFrame(page);
    await page.getByRole('link', { name: 'examine', exact: true }).click();
    await page.getByRole('alert').waitFor();
    await page.getByRole('link', { name: 'To the record desk' }).click();
    await page.getByRole('tab', { name: 'Motions' }).waitFor();
  });
});

describe('accessibility of the examine desk: axe-core finds no serious fault', () => {
  for (const look of ['light', 'dark'] as const) {
    it(`with a lead and its examination open, in ${look}`, async () => {
      const { page, faults } = await openDesk();
      await page.getByLabel('Look').selectOption(look);
      const lead = leadsOf(page).first();
      await headOf(lead).click();
      await page.keyboard.press('Escape');
      await page.keyboard.press('ArrowUp');
      await lead.getByText('Critical examination of this lead').click();
      await lead.locator('.critical textarea').first().waitFor();
      expect(await seriousFaults(page)).toEqual([]);
      expect(faults).toEqual([]);
    });
  }

  for (const [name, size] of [
    ['1024 by 768', { width: 1024, height: 768 }],
    ['1440 by 900 at 200 %', { width: 720, height: 450 }],
  ] as const) {
    it(`${name}: nothing reaches over the side; film, score and leads can be seen`, async () => {
      const { page } = await openDesk(size);
      await headOf(leadsOf(page).first()).click();
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
      for (const part of ['.film-canvas canvas', '.score canvas', '.lead-body']) {
        await page.locator(part).first().scrollIntoViewIfNeeded();
        const box = await page.locator(part).first().boundingBox();
        expect(box?.width).toBeGreaterThan(150);
        expect(box?.height).toBeGreaterThan(60);
      }
    });
  }
});
