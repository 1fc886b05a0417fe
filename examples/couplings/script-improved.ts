import type { MotionKind } from '@evenhand/core/ground/tables';
import {
  framesPerSecond,
  type Hand,
  type MotionDetails,
  type Script,
  type ScriptCycle,
  ScriptWriter,
} from './motions.ts';

const cycles = 6;
/** In one cycle, counted from 0, the left ring is not picked up at the first try. */
const fumbleIn = 3;

/** The improved method: a fixture holds two bodies, both hands do the same work at the same time. */
export function improvedScript(): Script {
  const writer = new ScriptWriter(41_007);
  const marks: ScriptCycle[] = [];
  for (const hand of ['left', 'right'] as const) writer.addFrames(hand, 'unmarked', 15);
  for (let cycle = 0; cycle < cycles; cycle += 1) {
    marks.push({ start: writer.ends.left });
    improvedCycle(writer, cycle);
  }
  const cyclesEnd = writer.ends.left;
  for (const hand of ['left', 'right'] as const) writer.addFrames(hand, 'unmarked', 18);
  return {
    id: 'improved',
    framesPerSecond,
    ...writer.rows,
    cycles: marks,
    cyclesEnd,
    frames: writer.ends.left,
  };
}

type Part = 'body' | 'ring' | 'collar';
const names: Record<Part, string> = { body: 'body', ring: 'sealing ring', collar: 'collar' };

function improvedCycle(writer: ScriptWriter, cycle: number): void {
  const both = (kind: MotionKind, seconds: number, details: (hand: Hand) => MotionDetails, spread = 0.1) => {
    for (const hand of ['right', 'left'] as const) writer.add(hand, kind, seconds, details(hand), spread);
  };
  const part = (name: Part) => (hand: Hand) => ({ object: names[name], item: `${name}-${hand}-${cycle}` });
  const fetch = (name: Part, before: string, seconds: number) => {
    const of = part(name);
    both('TE', seconds, (hand) => ({ ...of(hand), from: `${before}-${hand}`, to: `${name}-bin-${hand}` }));
    if (name === 'ring') both('St', 0.28, (hand) => ({ ...of(hand), to: `ring-bin-${hand}` }));
    both('G', name === 'ring' ? 0.38 : 0.33, (hand) => ({ ...of(hand), from: `${name}-bin-${hand}` }), 0.13);
    if (name === 'ring' && cycle === fumbleIn) regrasp(writer, of('left'));
    both('TL', seconds + 0.06, (hand) => ({ ...of(hand), from: `${name}-bin-${hand}`, to: `nest-${hand}` }));
  };
  const place = (name: Part, kind: 'P' | 'A', seconds: number, note?: string) =>
    both(kind, seconds, (hand) => ({
      ...part(name)(hand),
      to: `nest-${hand}`,
      ...(note === undefined ? {} : { note }),
    }));

  fetch('body', cycle === 0 ? 'nest' : 'chute', 0.5);
  eyesOnOneAfterTheOther(writer, 'body', cycle, 0.42);
  both('RL', 0.15, (hand) => ({ ...part('body')(hand), to: `nest-${hand}` }));
  fetch('ring', 'nest', 0.5);
  eyesOnOneAfterTheOther(writer, 'ring', cycle, 0.6);
  place('ring', 'A', 0.5);
  both('RL', 0.15, part('ring'));
  fetch('collar', 'nest', 0.54);
  eyesOnOneAfterTheOther(writer, 'collar', cycle, 0.55);
  place('collar', 'A', 0.55, 'first turn');
  both('RL', 0.13, part('collar'));
  both('TE', 0.22, (hand) => ({ ...part('collar')(hand), from: `nest-${hand}`, to: `nest-${hand}` }));
  both('G', 0.16, (hand) => ({ ...part('collar')(hand), from: `nest-${hand}` }));
  place('collar', 'A', 0.6, 'second turn, tight');
  deliver(writer, cycle);
}

/** Two parts are lined up at once: the eyes serve the right hand first, the left is ready a little later. */
function eyesOnOneAfterTheOther(writer: ScriptWriter, name: Part, cycle: number, seconds: number): void {
  for (const hand of ['right', 'left'] as const) {
    const details = { object: names[name], item: `${name}-${hand}-${cycle}`, to: `nest-${hand}` };
    writer.add(hand, 'P', seconds, details, 0.12);
  }
  if (writer.ends.left - writer.ends.right > 8) {
    const held = { object: names[name], item: `${name}-right-${cycle}`, to: 'nest-right' };
    writer.fill('right', 'H', writer.ends.left - 2, { ...held, note: 'waits for the left hand' });
  }
  writer.stretch('left', writer.ends.right + 2);
}

function regrasp(writer: ScriptWriter, ring: MotionDetails): void {
  writer.add('left', 'RL', 0.13, { ...ring, to: 'ring-bin-left', note: 'two rings came up, lets go' });
  writer.add('left', 'G', 0.4, { ...ring, from: 'ring-bin-left' });
}

/** Drop delivery: the finished coupling goes into the chute beside the nest; the hands come together again for the next pair. */
function deliver(writer: ScriptWriter, cycle: number): void {
  const coupling = (hand: Hand) => ({ object: 'coupling', item: `body-${hand}-${cycle}` });
  for (const hand of ['right', 'left'] as const) {
    writer.add(hand, 'TL', 0.38, { ...coupling(hand), from: `nest-${hand}`, to: `chute-${hand}` });
  }
  const arrived = Math.max(writer.ends.left, writer.ends.right);
  for (const hand of ['right', 'left'] as const) {
    writer.stretch(hand, arrived);
    writer.addFrames(hand, 'RL', 5, { ...coupling(hand), to: `chute-${hand}` });
  }
}
