import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import { parseStudy, type Study, writeStudy } from '@evenhand/core/ground/study';
import { printRace, race } from './harness.ts';
import { longStudy } from './long-study.ts';

function opened(text: string): Study {
  const result = parseStudy(text);
  if (!result.ok) throw new Error(result.error.map((item) => item.message).join('\n'));
  return result.value;
}

/** Moves a boundary in the middle of the right hand's row to and fro: the edit of a dragged mark. */
function mover(study: Study): () => void {
  const motion = study.methods[0]?.right.items[Math.floor((study.methods[0]?.right.items.length ?? 0) / 2)];
  if (!motion) throw new Error('the study has no motion');
  const near = motion.start + 50_000;
  let [now, was, to] = [study, motion.start, near];
  return () => {
    const edit: Edit = { type: 'motion.move', method: 'm', hand: 'right', motion: motion.id, to, was };
    const applied = applyEdit(now, edit);
    if (!applied.ok) throw new Error(applied.error.message);
    now = applied.value.study;
    [was, to] = [to, was];
  };
}

const small = opened(writeStudy(longStudy(600)));
const text = writeStudy(longStudy(60_000));
const large = opened(text);

printRace(
  `opening a study with 60,000 motions (${(text.length / 1e6).toFixed(1)} MB of text)`,
  await race(
    { 'JSON.parse alone': () => JSON.parse(text), 'read, checked and opened': () => opened(text) },
    { rounds: 15 },
  ),
);
printRace(
  'one edit: a boundary is moved',
  await race({ '600 motions': mover(small), '60,000 motions': mover(large) }, { rounds: 200, warmUp: 20 }),
);
