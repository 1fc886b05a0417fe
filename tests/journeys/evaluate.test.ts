import { readFile } from 'node:fs/promises';
import { comparisonOf, syncOf, syncTimeline } from '@evenhand/core/evaluate';
import type { Study } from '@evenhand/core/ground/study';
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

async function openDesk(size?: { width: number; height: number }): Promise<WatchedPage> {
  const watched = await app.page(size);
  const { page } = watched;
  await page.getByRole('link', { name: 'Hose couplings' }).click();
  await page.getByRole('link', { name: 'evaluate', exact: true }).click();
  await page.locator('.pair-film.before canvas[data-frame]').waitFor();
  await page.locator('.pair-film.after canvas[data-frame]').waitFor();
  return watched;
}

async function keptStudy(page: Page): Promise<Study> {
  await allSaved(page);
  const id = new URL(page.url()).pathname.split('/')[2];
  const answer = await page.request.get(`${app.address}api/studies/${id}`);
  return ((await answer.json()) as { study: Study }).study;
}

/** The frames on the two canvases, once both show what they were asked for. */
async function shownFrames(page: Page): Promise<readonly number[]> {
  await page.waitForFunction(() =>
    [...document.querySelectorAll('.pair-film')].every((film) => {
      const asked = /frame (\d+)/.exec(film.querySelector('figcaption')?.textContent ?? '')?.[1];
      return asked !== undefined && film.querySelector('canvas')?.dataset.frame === asked;
    }),
  );
  const texts = await page
    .locator('.pair-film canvas')
    .evaluateAll((all) => all.map((canvas) => (canvas as HTMLCanvasElement).dataset.frame));
  return texts.map(Number);
}

const slider = (page: Page) => page.getByRole('slider', { name: 'Moment of the pair' });

async function moveTo(page: Page, micros: number): Promise<void> {
  await slider(page).evaluate((input, value) => {
    const field = input as HTMLInputElement;
    const setter = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
    setter?.call(field, String(value));
    field.dispatchEvent(new Event('input', { bubbles: true }));
  }, micros);
}

function pagesOf(pdf: string): number {
  return [...pdf.matchAll(/\/Type\s*\/Page(?![s\w])/g)].length;
}

/** A study of two composed methods with so many motions, put beside the demonstration. */
async function addLong(page: Page, motions: number): Promise<void> {
  const per = 20;
  const cycles = motions / (4 * per);
  const method = (id: string, each: number) => {
    const end = cycles * per * each;
    const items = (hand: string) =>
      Array.from({ length: cycles * per }, (_, index) => ({
        id: `${hand}${index}`,
        start: index * each + (index % per === 0 ? 0 : (index * 7919) % 40_000),
        kind: (['TE', 'G', 'TL', 'P', 'A', 'RL'] as const)[index % 6],
        object: `part ${index % 7}`,
        said: 'marked',
      }));
    const starts = Array.from({ length: cycles }, (_, index) => ({
      id: `c${index}`,
      start: index * per * each,
    }));
    return {
      id,
      name: `Method ${id}`,
      kind: 'composed',
      base: { kind: 'micros' },
      unitsPerCycle: 1,
      left: { items: items('l'), end },
      right: { items: items('r'), end },
      cycles: { items: starts, end },
    };
  };
  const study = {
    ...(await keptStudy(page)),
    id: 'long',
    title: 'Long records',
    films: [],
    methods: [method('a', 200_000), method('b', 180_000)],
    comparisons: [{ id: 'c', before: { method: 'a' }, after: { method: 'b' }, confidence: 0.95 }],
  };
  for (const part of ['demo', 'timeStudies', 'examinations'] as const) Reflect.deleteProperty(study, part);
  const answer = await page.request.post(`${app.address}api/studies`, { data: { study } });
  expect(answer.status(), await answer.text()).toBe(201);
}

describe('the evaluate desk', () => {
  it('shows the frames of both films that belong together, by phase and by element', async () => {
    const { page, faults, strangers } = await openDesk();
    const study = await keptStudy(page);
    const kept = study.comparisons?.[0];
    if (kept === undefined) throw new Error('the demonstration should compare two methods');
    const facts = comparisonOf(study, kept);
    if (!facts.ok) throw new Error(facts.error.message);
    const { before, after } = facts.value.proof;
    const shown = (label: string) => page.getByLabel(label).inputValue().then(Number);
    const numbers = { before: await shown('Shown before'), after: await shown('Shown after') };
    const position = {
      before: before.cycles.findIndex(({ number }) => number === numbers.before),
      after: after.cycles.findIndex(({ number }) => number === numbers.after),
    };
    const [one, two] = [before.cycles[position.before], after.cycles[position.after]];
    if (one === undefined || two === undefined)
      throw new Error('the shown cycles should be among those that count');
    const durations = { before: one.duration, after: two.duration };
    for (const [button, mode] of [
      ['Element', 'elements'],
      ['Phase', 'phase'],
      ['Real time', 'real'],
    ] as const) {
      await page.getByRole('button', { name: button, exact: true }).click();
      const timeline = syncTimeline(syncOf(before, after, position), mode, durations);
      for (const share of [0, 0.31, 0.77]) {
        const time = Math.round(timeline.length * share);
        await moveTo(page, time);
        const wanted = timeline.at(time);
        const frames = [
          // The end of a cycle is the first frame of the next one; its last frame stands for it.
          Math.min(
            one.to - 1,
            before.clock.boundaryAt(before.clock.timeOf(one.from) + Math.round(wanted.before)),
          ),
          Math.min(
            two.to - 1,
            after.clock.boundaryAt(after.clock.timeOf(two.from) + Math.round(wanted.after)),
          ),
        ];
        expect(await shownFrames(page), `${mode} at ${share}`).toEqual(frames);
      }
    }
    expect(faults).toEqual([]);
    expect(strangers).toEqual([]);
  });

  it('plays, steps by frames and stops by the keyboard', async () => {
    const { page, faults } = await openDesk();
    await page.locator('.evaluate-side').focus();
    // The two columns scroll, never the page.
    expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
    const [first] = await shownFrames(page);
    await page.keyboard.press('Space');
    await page.waitForFunction((from) => {
      const text = document.querySelector('.pair-film.before figcaption')?.textContent ?? '';
      return Number(/frame (\d+)/.exec(text)?.[1]) > (from ?? 0) + 5;
    }, first);
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    await page.keyboard.press('Home');
    const start = await shownFrames(page);
    expect(start[0]).toBe(first);
    for (let step = 0; step < 4; step += 1) await page.keyboard.press('ArrowRight');
    const later = await shownFrames(page);
    expect((later[0] ?? 0) + (later[1] ?? 0)).toBeGreaterThan((start[0] ?? 0) + (start[1] ?? 0));
    for (let step = 0; step < 4; step += 1) await page.keyboard.press('ArrowLeft');
    expect(await shownFrames(page)).toEqual(start);
    expect(faults).toEqual([]);
  });

  it('plays the frames of a row of the difference, in the film they come from', async () => {
    const { page, faults } = await openDesk();
    const study = await keptStudy(page);
    const kept = study.comparisons?.[0];
    const facts = kept === undefined ? undefined : comparisonOf(study, kept);
    if (facts?.ok !== true) throw new Error('the demonstration should compare two methods');
    const { before } = facts.value.proof;
    const number = Number(await page.getByLabel('Shown before').inputValue());
    const grasps = before.cycles
      .find((cycle) => cycle.number === number)
      ?.right.filter(({ kind, object }) => kind === 'G' && object === 'collar');
    const [span] = grasps ?? [];
    if (span === undefined) throw new Error('a collar should be grasped in the cycle on screen');
    await page.getByLabel('Speed').selectOption({ label: '1/4×' });
    await page.getByRole('button', { name: /play grasp, collar/ }).click();
    const stretch = page.getByText(new RegExp(`grasp, collar, right hand, before, cycle ${number}`));
    await stretch.waitFor();
    // The frame of before stays on screen until the first one of the stretch is decoded.
    const onScreen = async () =>
      Number(await page.locator('.pair-film.before canvas').getAttribute('data-frame'));
    await expect.poll(async () => (await onScreen()) >= span.from && (await onScreen()) < span.to).toBe(true);
    // While it repeats, no other frame of that film comes on screen.
    const seen = await page.evaluate(
      () =>
        new Promise<number[]>((done) => {
          const canvas = document.querySelector<HTMLCanvasElement>('.pair-film.before canvas');
          const frames = new Set<number>();
          let shown = 0;
          let last = -1;
          const look = () => {
            const frame = Number(canvas?.dataset.frame);
            if (frame !== last) shown += 1;
            last = frame;
            frames.add(frame);
            if (shown < 20) requestAnimationFrame(look);
            else done([...frames].sort((a, b) => a - b));
          };
          look();
        }),
    );
    expect(seen.length).toBeGreaterThan(2);
    expect(seen.every((frame) => frame >= span.from && frame < span.to)).toBe(true);
    const place = async () => Number(/place (\d+) of/.exec((await stretch.textContent()) ?? '')?.[1]);
    const first = await place();
    await page.getByRole('button', { name: 'Next place' }).click();
    await expect.poll(place).toBe(first + 1);
    await page.keyboard.press('Escape');
    await page.getByText(/^Only grasp, collar/).waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });

  it('copies the claim with what it rests on', async () => {
    const { page } = await openDesk();
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.getByRole('button', { name: 'Copy', exact: true }).click();
    await page.getByText('Copied, with what it rests on.').waitFor();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    const [sentence] = text.split('\n');
    expect(sentence).toBe(await page.locator('.claim .sentence').textContent());
    expect(text).toMatch(/cycles 1–5, 7 of 7/);
  });

  it('says the claim, turns it into money, refuses wrong input in words, and undoes', async () => {
    const { page, faults } = await openDesk();
    await page
      .getByText(/Invented data, no proof: .*36\.2 % of the time is saved/)
      .first()
      .waitFor();
    const cost = page.getByRole('textbox', { name: 'Cost of the change, likely' });
    const value = () =>
      page.locator('.money-rows tr', { hasText: 'Net present value' }).locator('td').nth(1).textContent();
    const first = await value();
    await cost.fill('6000');
    await cost.press('Enter');
    await expect.poll(value).not.toBe(first);
    expect((await keptStudy(page)).comparisons?.[0]?.money?.cost).toBe(6000);
    const years = page.getByRole('textbox', { name: 'Years, likely' });
    await years.fill('half');
    await years.press('Enter');
    await page.getByText('“half” cannot be used. Write a whole number from 1 and up to 50.').waitFor();
    expect(await years.inputValue()).toBe('half');
    await page.locator('.evaluate-side').focus();
    await page.keyboard.press('Control+z');
    await expect.poll(value).toBe(first);
    const lowest = page.getByRole('textbox', { name: 'Cost of the change, lowest' });
    await lowest.fill('7000');
    await lowest.press('Enter');
    await page
      .getByText(/cost of the change: .* not in order/)
      .first()
      .waitFor();
    expect(faults).toEqual([]);
  });

  it('begins a comparison of its own, with cycles that are there and none that are not', async () => {
    const { page, faults } = await openDesk();
    await page.getByRole('button', { name: 'New', exact: true }).click();
    const cycles = page.getByRole('textbox', { name: 'Cycles before' });
    await cycles.fill('1-3, 9');
    await cycles.press('Enter');
    await page.getByText('“Present method” has no cycle 9; it has 7.').waitFor();
    await cycles.fill('1-3');
    await cycles.press('Enter');
    await expect
      .poll(async () => (await keptStudy(page)).comparisons?.at(-1)?.before.cycles)
      .toEqual([1, 2, 3]);
    await page.getByRole('button', { name: 'Exchange' }).click();
    await page
      .getByText(/more time is needed/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Remove', exact: true }).click();
    await expect.poll(async () => (await keptStudy(page)).comparisons?.length).toBe(1);
    expect(faults).toEqual([]);
  });

  it('compares long records beside the page, and reckons money without comparing them again', async () => {
    const { page, faults } = await openDesk();
    await addLong(page, 20_000);
    await page.addInitScript(() => {
      // The words may be gone before a question from outside gets there, so the page itself watches for them.
      const seen = () => document.body?.textContent?.includes('Comparing …') === true;
      new MutationObserver(() => {
        if (seen()) document.documentElement.dataset.compared = 'beside';
      }).observe(document, { childList: true, subtree: true, characterData: true });
    });
    await page.goto(`${app.address}studies/long/evaluate`);
    await page
      .getByText(/“Method b” takes/)
      .first()
      .waitFor();
    expect(await page.locator('html').getAttribute('data-compared')).toBe('beside');
    await page.getByRole('button', { name: 'Reckon what it is worth' }).click();
    await page.getByRole('textbox', { name: 'Cost of an hour, likely' }).fill('30');
    await page.keyboard.press('Enter');
    await page.getByRole('rowheader', { name: 'Net present value' }).waitFor();
    expect(await page.locator('.claim.stale').count()).toBe(0);
    expect(faults).toEqual([]);
  });

  it('saves the proof as a PDF of one page', async () => {
    const { page, faults } = await openDesk();
    const waiting = page.waitForEvent('download');
    await page.getByRole('button', { name: 'PDF of one page' }).click();
    const file = await (await waiting).path();
    const bytes = (await readFile(file)).toString('latin1');
    expect(bytes.startsWith('%PDF-')).toBe(true);
    expect(pagesOf(bytes)).toBe(1);
    const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pagesOf(printed)).toBe(1);
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    expect(await page.locator('body > .print-proof svg').textContent()).toMatch(/36\.2 %/);
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await page.locator('body > .print-proof').waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });

  it.each(['light', 'dark'] as const)(
    'is free of serious faults, %s, also at twice the size',
    async (look) => {
      const { page } = await openDesk();
      await page.emulateMedia({ colorScheme: look });
      for (const summary of await page.locator('.evaluate-side summary').all()) await summary.click();
      expect(await seriousFaults(page)).toEqual([]);
      await page.setViewportSize({ width: 720, height: 450 });
      await page.getByRole('button', { name: 'PDF of one page' }).waitFor();
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
    },
  );
});
