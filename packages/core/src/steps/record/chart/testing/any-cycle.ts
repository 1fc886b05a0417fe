import fc from 'fast-check';
import { motionKinds } from '../../../../ground/tables/index.ts';
import type { ShortMotion, ShortStudy } from './charted-study.ts';

const word = fc.string({ minLength: 1, maxLength: 14 }).filter((text) => text.trim() !== '');
const longText = fc
  .array(word, { minLength: 1, maxLength: 12 })
  .map((words) => words.join(' ').slice(0, 200));

const motion = fc.tuple(
  fc.constantFrom(...motionKinds),
  fc.oneof(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 90 })),
  fc.record(
    { object: longText, from: fc.constantFrom('bin', 'jig'), to: fc.constantFrom('bin', 'jig') },
    { requiredKeys: [] },
  ),
) satisfies fc.Arbitrary<ShortMotion>;

/** One cycle of up to `most` motions a hand, with anything an analyst may write, of which at least one is a motion. */
export function anyCycle(most: number): fc.Arbitrary<ShortStudy> {
  const row = fc.array(motion, { minLength: 1, maxLength: most });
  return fc
    .record({ left: row, right: row, demo: fc.boolean(), from: fc.integer({ min: 0, max: 20 }) })
    .map(({ left, right, demo, from }) => {
      const frames = (motions: readonly ShortMotion[]) => motions.reduce((sum, item) => sum + item[1], 0);
      const end = Math.max(frames(left), frames(right));
      const first: readonly ShortMotion[] = [['G', 21], ...left];
      return { left: first, right, demo, cycles: [from, end + 21] };
    });
}
