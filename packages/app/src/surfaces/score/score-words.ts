import { micros } from '@evenhand/core/ground/base';
import { findItem, type MethodClock } from '@evenhand/core/ground/study';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { timeText } from '@evenhand/core/ground/units';
import { describeMotion, type ScoreHit } from '@evenhand/core/record';
import type { ScoreState } from './score-events.ts';

/** What lies under the pointer in words, for where the blocks are too narrow to hold their own; '' for the rest. */
export function wordsFor(state: ScoreState, clock: MethodClock, hit: ScoreHit): string {
  if (hit.part === 'run') return 'Too close together to tell apart here. Zoom in to see each motion.';
  if (hit.part !== 'motion') return '';
  const found = findItem(state.method[hit.hand], hit.motionId);
  if (found === undefined) return '';
  const { item } = found;
  const place = (id: string | undefined) => state.study.places.find((known) => known.id === id)?.name;
  const facts = motionFactsOf(item.kind);
  const time = timeText(micros(clock.timeOf(found.end) - clock.timeOf(found.start)), state.unit);
  const says = describeMotion({
    kind: item.kind,
    object: item.object,
    from: place(item.from),
    to: place(item.to),
  });
  const name = item.kind === 'unmarked' ? 'Not marked yet' : `${facts.code}, ${facts.name}`;
  return [
    `${name}, ${time}`,
    ...(item.kind === 'unmarked' || says === facts.name ? [] : [says]),
    ...(item.said === 'proposed' ? ['Proposed by the program, not confirmed yet'] : []),
    ...(item.note === undefined ? [] : [item.note]),
  ].join('\n');
}
