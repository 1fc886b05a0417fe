import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import { emptyStudy, type Motion, parseStudy, type Study, writeStudy } from '@evenhand/core/ground/study';
import { printRace, race } from './harness.ts';

/** Motions as they follow one another in plain assembly work; only their number matters here. */
const kinds = ['TE', 'G', 'TL', 'P', 'A', 'RL'] as const satisfies readonly Motion['kind'][];

/** A composed method with as many motions as asked for, half of them for each hand, 200 ms apart. */
function studyOf(motions: number): Study {
  const each = motions / 2;
  const row = (hand: string) => ({
    items: Array.from({ length: each }, (_, index) => ({
      id: `${hand}${index}`,
      start: index * 200_000,
      kind: kinds[index % kinds.length] ?? ('TE' as const),
      object: 'body',
      said: 'marked' as const,
    })),
    end: each * 200_000,
  });
  const method = {
    id: 'm',
    name: 'Long method',
    kind: 'composed' as const,
    base: { kind: 'micros' as const },
    unitsPerCycle: 1,
    left: row('l'),
    right: row('r'),
    cycles: { items: [], end: each * 200_000 },
  };
  return { ...emptyStudy('s', 'Long study'), methods: [method] };
}

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

const small = opened(writeStudy(studyOf(600)));
const text = writeStudy(studyOf(60_000));
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
