import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import type { Motion, Study } from '@evenhand/core/ground/study';
import { openConnection, openStore } from '@evenhand/store';
import { printRace, race } from './harness.ts';
import { longStudy } from './long-study.ts';

/** A boundary in the middle of the right hand's row goes to and fro: the edit of a dragged mark. */
function moves(study: Study): () => Edit {
  const items: readonly Motion[] = study.methods[0]?.right.items ?? [];
  const motion = items[Math.floor(items.length / 2)];
  if (motion === undefined) throw new Error('the study has no motion');
  let [was, to] = [motion.start, motion.start + 50_000];
  return () => {
    const edit: Edit = { type: 'motion.move', method: 'm', hand: 'right', motion: motion.id, to, was };
    [was, to] = [to, was];
    return edit;
  };
}

const folder = mkdtempSync(path.join(tmpdir(), 'evenhand-bench-'));
try {
  const opened = await openStore({ folder, clock: Date.now });
  if (!opened.ok) throw new Error(opened.error.message);
  const store = opened.value;
  const [small, large] = [longStudy(600, 'small'), longStudy(60_000, 'large')];
  await store.studies.create(small);
  await store.studies.create(large);

  let sent = 0;
  const editor = (study: Study) => {
    const next = moves(study);
    return async () => {
      sent += 1;
      const edits = [{ id: `e${sent}`, edit: next(), at: '2026-03-01T10:00:00.000Z' }];
      const done = await store.studies.edit(study.id, { client: 'w', baseRev: 0, edits });
      if (!done.ok || done.value.added.length !== 1) throw new Error('the edit was not applied');
    };
  };

  /** What would be done without a history: the document is written anew at every edit, just as safely. */
  const rival = await openConnection(path.join(folder, 'rival.sqlite'));
  rival.exec('create table studies (id text primary key, document text not null)');
  const write = rival.prepare('insert or replace into studies values (?, ?)');
  let document = large;
  const next = moves(large);
  const rewrite = () => {
    const applied = applyEdit(document, next());
    if (!applied.ok) throw new Error(applied.error.message);
    document = applied.value.study;
    write.run(document.id, JSON.stringify(document));
  };

  printRace(
    'one edit, applied and on the disk',
    await race(
      {
        'the store, 60,000 motions': editor(large),
        'the store, 600 motions': editor(small),
        'the whole document rewritten, 60,000 motions': rewrite,
      },
      { rounds: 150, warmUp: 10 },
    ),
  );
  rival.close();

  // Some edits after the last snapshot, as when a study is opened in the middle of the work.
  const edit = editor(large);
  for (let index = 0; index < 130; index += 1) await edit();
  await store.dispose();
  const text = JSON.stringify(large);
  const open = async (id: string) => {
    const again = await openStore({ folder, clock: Date.now });
    if (!again.ok) throw new Error(again.error.message);
    const loaded = await again.value.studies.load(id);
    if (!loaded.ok) throw new Error(loaded.error.message);
    await again.value.dispose();
  };
  printRace(
    'opening the store and loading a study',
    await race(
      {
        'JSON.parse of 60,000 motions alone': () => JSON.parse(text),
        '60,000 motions': () => open('large'),
        '600 motions': () => open('small'),
      },
      { rounds: 15 },
    ),
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
