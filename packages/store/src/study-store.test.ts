import type { Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import type { StudyStore } from './study-store.ts';
import {
  absentAdapters,
  adapters,
  mark,
  plainStudy,
  sent,
  tickingClock,
} from './testing/stores-under-test.ts';

function good<T>(result: Result<T, Finding>): T {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

function code(result: Result<unknown, Finding>): string | undefined {
  return result.ok ? undefined : result.error.code;
}

const starts = (study: Study) => study.methods[0]?.right.items.map((item) => item.start);
const load = async (studies: StudyStore, rev?: number) => good(await studies.load('study-1', rev));

it.each(absentAdapters)('not run here: %s', (name) => {
  expect(adapters.map((adapter) => adapter.name)).not.toContain(name);
});

describe.each(adapters)('a study store: $name', ({ open }) => {
  async function withStudy() {
    const opened = await open(tickingClock());
    good(await opened.studies.create(plainStudy()));
    const edit = async (client: string, ...edits: ReturnType<typeof sent>[]) =>
      good(await opened.studies.edit('study-1', { client, baseRev: 0, edits }));
    return { ...opened, edit };
  }

  it('begins empty', async () => {
    const { studies } = await open(tickingClock());
    expect(await studies.list()).toEqual([]);
    expect(code(await studies.load('study-1'))).toBe('store/not-found');
    expect(code(await studies.edit('study-1', { client: 'w', baseRev: 0, edits: [] }))).toBe(
      'store/not-found',
    );
    expect(code(await studies.editsSince('study-1', 0))).toBe('store/not-found');
    expect(code(await studies.archive('study-1', true))).toBe('store/not-found');
  });

  it('gives a study back as it came, at revision 0', async () => {
    const { studies } = await withStudy();
    expect(await load(studies)).toEqual({ study: plainStudy(), rev: 0 });
  });

  it('refuses an id that is taken, and leaves the first study', async () => {
    const { studies } = await withStudy();
    expect(code(await studies.create({ ...plainStudy(), title: 'Other' }))).toBe('store/taken');
    expect((await load(studies)).study.title).toBe('Couplings');
  });

  it('lists what the head says, the newest change first', async () => {
    const { studies, edit } = await withStudy();
    good(await studies.create({ ...plainStudy('study-2'), demo: true, title: 'Second', methods: [] }));
    const created = { createdAt: '2026-03-01T00:00:01.000Z', films: 0, archived: false };
    expect(await studies.list()).toMatchObject([
      { id: 'study-2', title: 'Second', demo: true, methods: 0, rev: 0 },
      { id: 'study-1', title: 'Couplings', demo: false, methods: 1, rev: 0, ...created },
    ]);
    await edit(
      'w',
      sent('e1', { type: 'study.change', to: { title: 'Third' }, was: { title: 'Couplings' } }),
    );
    expect(await studies.list()).toMatchObject([
      { id: 'study-1', title: 'Third', rev: 1, ...created },
      { id: 'study-2' },
    ]);
  });

  it('archives and takes back without a revision', async () => {
    const { studies } = await withStudy();
    expect(good(await studies.archive('study-1', true))).toMatchObject({ archived: true, rev: 0 });
    expect(await studies.list()).toMatchObject([{ archived: true }]);
    expect(good(await studies.archive('study-1', false))).toMatchObject({ archived: false });
  });

  it('applies edits in order, and every revision can be loaded', async () => {
    const { studies, edit } = await withStudy();
    const done = await edit('w1', sent('e1', mark('a', 1000)), sent('e2', mark('b', 2000)));
    expect(done.results).toEqual([
      { id: 'e1', status: 'applied', rev: 1 },
      { id: 'e2', status: 'applied', rev: 2 },
    ]);
    expect(starts((await load(studies)).study)).toEqual([0, 1000, 2000]);
    expect(starts((await load(studies, 1)).study)).toEqual([0, 1000]);
    expect(starts((await load(studies, 0)).study)).toEqual([0]);
    expect(code(await studies.load('study-1', 3))).toBe('store/not-found');
    expect(code(await studies.load('study-1', -1))).toBe('store/not-found');
  });

  it('keeps who, when and why with an edit', async () => {
    const { studies, edit } = await withStudy();
    const first = sent('e1', mark('a', 1000), { by: 'AB', why: 'seen again at half speed' });
    const done = await edit('w1', first, sent('e2', mark('b', 2000)));
    const kept = [
      { ...first, rev: 1, client: 'w1' },
      { ...sent('e2', mark('b', 2000)), rev: 2, client: 'w1' },
    ];
    expect(done.added).toEqual(kept);
    expect(good(await studies.editsSince('study-1', 0))).toEqual({ rev: 2, edits: kept });
    expect(good(await studies.editsSince('study-1', 1)).edits).toEqual([kept[1]]);
    expect(good(await studies.editsSince('study-1', 2)).edits).toEqual([]);
  });

  it('an edit sent again is answered as the first time and not applied again', async () => {
    const { studies, edit } = await withStudy();
    const first = await edit('w1', sent('e1', mark('a', 1000)));
    await edit('w1', sent('e2', mark('b', 2000)));
    const again = await edit('w1', sent('e1', mark('a', 1000)));
    expect(again).toEqual({ rev: 2, results: first.results, added: [] });
    expect(starts((await load(studies)).study)).toEqual([0, 1000, 2000]);
  });

  it('an id twice in one batch is applied once', async () => {
    const { edit } = await withStudy();
    const done = await edit('w1', sent('e1', mark('a', 1000)), sent('e1', mark('b', 2000)));
    expect(done.results).toEqual([
      { id: 'e1', status: 'applied', rev: 1 },
      { id: 'e1', status: 'applied', rev: 1 },
    ]);
    expect(done.rev).toBe(1);
  });

  it('an edit that does not hold is refused, the others go on', async () => {
    const { studies, edit } = await withStudy();
    const done = await edit(
      'w1',
      sent('e1', mark('a', 1000)),
      sent('e2', mark('b', 1000)),
      sent('e3', mark('c', 3000)),
    );
    expect(done.results.map((item) => [item.id, item.status])).toEqual([
      ['e1', 'applied'],
      ['e2', 'refused'],
      ['e3', 'applied'],
    ]);
    expect(done.results[1]).toMatchObject({ finding: { code: 'edit/boundary-taken' } });
    expect(starts((await load(studies)).study)).toEqual([0, 1000, 3000]);
    expect(done.added.map((item) => item.id)).toEqual(['e1', 'e3']);
  });

  it('a refusal stays a refusal when the same id comes again, though it would hold by then', async () => {
    const opened = await withStudy();
    const taken = mark('a', 1000);
    await opened.edit('w1', sent('e1', taken));
    const first = await opened.edit('w2', sent('e2', mark('b', 1000)));
    if (taken.type !== 'motion.mark') throw new Error('not a mark');
    await opened.edit('w1', sent('e3', { ...taken, type: 'motion.remove' }));
    const { studies } = await opened.reopen();
    const batch = { client: 'w2', baseRev: 0, edits: [sent('e2', mark('b', 1000))] };
    expect(good(await studies.edit('study-1', batch)).results).toEqual(first.results);
    expect(starts((await load(studies)).study)).toEqual([0]);
  });

  it('a group holds as a whole or not at all', async () => {
    const { studies, edit } = await withStudy();
    const edits = [mark('a', 1000), mark('b', 1000)].filter((item) => item.type !== 'group');
    const done = await edit('w1', sent('e1', { type: 'group', name: 'two marks', edits }));
    expect(done.results).toMatchObject([{ status: 'refused' }]);
    expect(await load(studies)).toEqual({ study: plainStudy(), rev: 0 });
  });

  it('batches sent at once are applied one after another', async () => {
    const { studies, edit } = await withStudy();
    const windows = Array.from({ length: 20 }, (_, index) =>
      edit(
        `w${index}`,
        sent(`e${index}`, mark(`m${index}`, 1000 + index)),
        sent(`s${index}`, mark(`s${index}`, 9)),
      ),
    );
    const results = (await Promise.all(windows)).flatMap((done) => done.results);
    const revs = results.flatMap((item) => (item.status === 'applied' ? [item.rev] : []));
    expect(revs.sort((a, b) => a - b)).toEqual(Array.from({ length: 21 }, (_, index) => index + 1));
    expect(results.filter((item) => item.status === 'refused')).toHaveLength(19);
    expect(starts((await load(studies)).study)).toHaveLength(22);
  });

  it('a window that has seen more than the store holds is told so, and nothing is applied', async () => {
    const { studies } = await withStudy();
    const batch = { client: 'w', baseRev: 1, edits: [sent('e1', mark('a', 1000))] };
    expect(code(await studies.edit('study-1', batch))).toBe('store/behind');
    expect((await load(studies)).rev).toBe(0);
  });

  it('the same edit id in two studies is two edits', async () => {
    const { studies, edit } = await withStudy();
    good(await studies.create(plainStudy('study-2')));
    await edit('w', sent('e1', mark('a', 1000)));
    const batch = { client: 'w', baseRev: 0, edits: [sent('e1', mark('a', 2000))] };
    expect(good(await studies.edit('study-2', batch)).results).toEqual([
      { id: 'e1', status: 'applied', rev: 1 },
    ]);
  });

  it('a thousand edits in one batch, and in single ones, can be loaded at any revision', async () => {
    const opened = await withStudy();
    await opened.edit(
      'w',
      ...Array.from({ length: 1000 }, (_, index) => sent(`e${index}`, mark(`a${index}`, index + 1))),
    );
    for (let index = 1000; index < 1100; index += 1)
      await opened.edit('w', sent(`e${index}`, mark(`a${index}`, index + 1)));
    const { studies } = await opened.reopen();
    for (const rev of [0, 1, 199, 200, 201, 999, 1000, 1001, 1099, 1100]) {
      const loaded = await load(studies, rev);
      expect([loaded.rev, starts(loaded.study)?.length]).toEqual([rev, rev + 1]);
    }
    expect((await load(studies)).rev).toBe(1100);
  });

  it('finds everything again when opened anew', async () => {
    const opened = await withStudy();
    await opened.edit('w', sent('e1', mark('a', 1000)));
    await opened.studies.archive('study-1', true);
    const [before, list] = [await load(opened.studies), await opened.studies.list()];
    const { studies } = await opened.reopen();
    expect(await load(studies)).toEqual(before);
    expect(await studies.list()).toEqual(list);
    const batch = { client: 'w', baseRev: 1, edits: [sent('e2', mark('b', 2000))] };
    expect(good(await studies.edit('study-1', batch)).rev).toBe(2);
  });
});
