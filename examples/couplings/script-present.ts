import {
  framesPerSecond,
  type MotionDetails,
  type Script,
  type ScriptCycle,
  ScriptWriter,
} from './motions.ts';

const cycles = 7;
/** Cycles counted from 0: in one the ring slips, in one the right hand has to search, in one the work is interrupted. */
const fumbleIn = 2;
const searchIn = 4;
const interruptedIn = 5;

/** The method of today: the left hand holds the body throughout, the right hand does the work. */
export function presentScript(): Script {
  const writer = new ScriptWriter(20_260);
  const marks: ScriptCycle[] = [];
  for (const hand of ['left', 'right'] as const) writer.addFrames(hand, 'unmarked', 15);
  for (let cycle = 0; cycle < cycles; cycle += 1) {
    marks.push({
      start: writer.ends.left,
      ...(cycle === interruptedIn ? { setAside: 'The operator was spoken to and stopped' } : {}),
    });
    presentCycle(writer, cycle);
  }
  const cyclesEnd = writer.ends.left;
  for (const hand of ['left', 'right'] as const) writer.addFrames(hand, 'unmarked', 18);
  return {
    id: 'present',
    framesPerSecond,
    ...writer.rows,
    cycles: marks,
    cyclesEnd,
    frames: writer.ends.left,
  };
}

function presentCycle(writer: ScriptWriter, cycle: number): void {
  const body = { object: 'body', item: `body-${cycle}` };
  const coupling = { object: 'coupling', item: `body-${cycle}` };
  writer.add('left', 'TE', 0.52, {
    ...body,
    from: cycle === 0 ? 'holding-place' : 'finished-box',
    to: 'body-bin',
  });
  writer.add('left', 'G', 0.27, { ...body, from: 'body-bin' });
  writer.add('left', 'TL', 0.6, { ...body, from: 'body-bin', to: 'holding-place' });
  const held = writer.ends.left;
  fetchRing(writer, cycle, held);
  fetchCollar(writer, cycle);
  const finished = writer.ends.right;
  writer.fill('left', 'H', finished, { ...body, to: 'holding-place' });
  writer.add('left', 'TL', 0.62, { ...coupling, from: 'holding-place', to: 'finished-box' });
  writer.add('left', 'RL', 0.17, { ...coupling, to: 'finished-box' });
  writer.fill('right', 'UD', writer.ends.left, { to: 'waiting-place', note: 'waits for the left hand' });
}

function fetchRing(writer: ScriptWriter, cycle: number, held: number): void {
  const ring = { object: 'sealing ring', item: `ring-${cycle}` };
  writer.add('right', 'TE', 0.5, { ...ring, from: 'waiting-place', to: 'ring-bin' });
  if (cycle === searchIn) {
    writer.add('right', 'Sh', 0.95, { ...ring, to: 'ring-bin', note: 'rings hooked into one another' });
  }
  writer.add('right', 'St', 0.24, { ...ring, to: 'ring-bin' });
  writer.add('right', 'G', 0.3, { ...ring, from: 'ring-bin' });
  carryToBody(writer, ring, 'ring-bin', 0.55, held);
  if (cycle === fumbleIn) dropRing(writer, ring);
  writer.add('right', 'P', 0.52, { ...ring, to: 'holding-place' }, 0.15);
  writer.add('right', 'A', 0.45, { ...ring, to: 'holding-place' });
  if (cycle === interruptedIn) interrupt(writer);
  writer.add('right', 'RL', 0.15, ring);
}

function dropRing(writer: ScriptWriter, ring: MotionDetails): void {
  writer.add('right', 'P', 0.38, { ...ring, to: 'holding-place' });
  writer.add('right', 'RL', 0.14, { ...ring, to: 'waiting-place', note: 'ring slips out of the fingers' });
  writer.add('right', 'TE', 0.36, { ...ring, from: 'holding-place', to: 'waiting-place' });
  writer.add('right', 'G', 0.42, { ...ring, from: 'waiting-place', note: 'picks the ring up again' });
  writer.add('right', 'TL', 0.36, { ...ring, from: 'waiting-place', to: 'holding-place' });
}

function interrupt(writer: ScriptWriter): void {
  writer.add('right', 'UD', 2.1, { note: 'spoken to', to: 'holding-place' });
}

function fetchCollar(writer: ScriptWriter, cycle: number): void {
  const collar = { object: 'collar', item: `collar-${cycle}` };
  const here = { ...collar, to: 'holding-place' };
  writer.add('right', 'TE', 0.52, { ...collar, from: 'holding-place', to: 'collar-bin' });
  writer.add('right', 'G', 0.3, { ...collar, from: 'collar-bin' });
  carryToBody(writer, collar, 'collar-bin', 0.6, 0);
  writer.add('right', 'P', 0.46, here, 0.15);
  writer.add('right', 'A', 0.5, { ...here, note: 'first turn' });
  writer.add('right', 'RL', 0.12, collar);
  writer.add('right', 'TE', 0.22, { ...collar, from: 'holding-place', to: 'holding-place' });
  writer.add('right', 'G', 0.15, { ...collar, from: 'holding-place' });
  writer.add('right', 'A', 0.55, { ...here, note: 'second turn, tight' });
  writer.add('right', 'RL', 0.15, collar);
}

/** A part cannot arrive before there is a body to put it on: the carrying then takes longer. */
function carryToBody(
  writer: ScriptWriter,
  part: MotionDetails,
  from: string,
  seconds: number,
  held: number,
): void {
  writer.add('right', 'TL', seconds, { ...part, from, to: 'holding-place' });
  writer.stretch('right', held);
}
