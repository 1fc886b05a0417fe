import { Quaternion, Vector3 } from 'three';
import { type Hand, motionEnd, type Script, type ScriptMotion, seededRandom } from '../motions.ts';
import { deliveryPoint, fallen, lying, nestHeight, type Rest } from './bench.ts';
import { seat } from './parts.ts';

/** What carries a thing from a frame on: the bench, a hand, or another thing it sits on. */
export interface ItemLeg {
  readonly start: number;
  readonly end: number;
  readonly carrier: 'bench' | Hand | { readonly item: string };
  /** Place relative to the carrier at the start and at the end of the leg, in metres. */
  readonly from: Vector3;
  readonly to: Vector3;
  readonly turnFrom: Quaternion;
  readonly turnTo: Quaternion;
  /** A falling thing gathers speed; all others move with the least jerk. */
  readonly falls?: boolean;
  readonly gone?: boolean;
}

export interface ItemTrack {
  readonly legs: readonly ItemLeg[];
}

const upright = new Quaternion();
const here = new Vector3();
const spun = (degrees: number) =>
  new Quaternion().setFromAxisAngle(new Vector3(0, 1, 0), (-degrees * Math.PI) / 180);

/** Follows every thing through the script: out of the bin, in the hand, on the body, away. */
export function itemTracks(
  script: Script,
  places: ReadonlyMap<string, Vector3>,
  rest: ReadonlyMap<string, Rest>,
): ReadonlyMap<string, ItemTrack> {
  const legs = new Map<string, ItemLeg[]>();
  for (const [item, { at, turn }] of rest) {
    legs.set(item, [{ start: 0, end: 0, carrier: 'bench', from: at, to: at, turnFrom: turn, turnTo: turn }]);
  }
  for (const hand of ['left', 'right'] as const) {
    script[hand].forEach((motion, index) => {
      const own = motion.item === undefined ? undefined : legs.get(motion.item);
      if (own === undefined) return;
      const span = { start: motion.start, end: motionEnd(script[hand], index, script.frames) };
      const leg = nextLeg({ script, hand, motion, span, places, before: own.at(-1), home: own[0]?.from });
      if (leg !== undefined) own.push(leg);
    });
  }
  return new Map([...legs].map(([item, list]) => [item, { legs: list }]));
}

interface Step {
  readonly script: Script;
  readonly hand: Hand;
  readonly motion: ScriptMotion;
  readonly span: { readonly start: number; readonly end: number };
  readonly places: ReadonlyMap<string, Vector3>;
  readonly before: ItemLeg | undefined;
  readonly home: Vector3 | undefined;
}

function nextLeg(step: Step): ItemLeg | undefined {
  const { motion, hand, span, before } = step;
  const turn = before?.turnTo ?? upright;
  const onItem = typeof before?.carrier === 'object';
  switch (motion.kind) {
    case 'G': {
      if (onItem) return undefined;
      const start = Math.round(span.start + (span.end - span.start) * 0.7);
      return { start, end: span.end, carrier: hand, from: here, to: here, turnFrom: turn, turnTo: turn };
    }
    case 'TL': {
      const hangs = motion.object === 'coupling' && step.script.id === 'improved';
      const offset = hangs ? new Vector3(0, -seat.collarTight, 0) : here;
      return { ...span, carrier: hand, from: offset, to: offset, turnFrom: turn, turnTo: upright };
    }
    case 'A':
      return assembled(step, onItem ? turn : upright);
    case 'RL':
      return released(step, turn);
    default:
      return undefined;
  }
}

function assembled({ motion, span, before, hand }: Step, turn: Quaternion): ItemLeg | undefined {
  const item = motion.item?.replace(/^(ring|collar)/, 'body');
  if (item === undefined) return undefined;
  const onto = { ...span, carrier: { item } };
  if (motion.object === 'sealing ring') {
    const from = new Vector3(0, 0.041, 0);
    return { ...onto, from, to: new Vector3(0, seat.ring, 0), turnFrom: upright, turnTo: upright };
  }
  const first = motion.note === 'first turn';
  const from = typeof before?.carrier === 'object' ? before.to : new Vector3(0, seat.collarOn, 0);
  const to = new Vector3(0, first ? seat.collarHalf : seat.collarTight, 0);
  const side = hand === 'left' ? -1 : 1;
  return { ...onto, from, to, turnFrom: turn, turnTo: turn.clone().multiply(spun(side * 70)) };
}

function released(step: Step, turn: Quaternion): ItemLeg | undefined {
  const { script, motion, span, places, before } = step;
  const place = motion.to === undefined ? undefined : places.get(motion.to);
  if (place === undefined || typeof before?.carrier === 'object') return undefined;
  const bench = { ...span, carrier: 'bench' as const, turnFrom: turn };
  if (motion.object === 'coupling') {
    const from = deliveryPoint(script, motion, place);
    if (script.id === 'improved') {
      from.y -= seat.collarTight;
      return { ...bench, from, to: from.clone().setY(-0.09), turnTo: turn, falls: true, gone: true };
    }
    const random = seededRandom(span.start);
    return {
      ...bench,
      from,
      to: from.clone().setY(from.y - 0.012),
      turnTo: lying('body', random),
      falls: true,
    };
  }
  if (motion.object === 'body') {
    const nest = place.clone().setY(nestHeight);
    return { ...bench, from: nest, to: nest, turnTo: upright };
  }
  if (motion.to?.includes('bin')) {
    const back = before?.carrier === step.hand ? step.home : undefined;
    return back && { ...bench, from: back, to: back, turnTo: turn, falls: true };
  }
  const from = (places.get('holding-place') ?? place).clone().add(new Vector3(0.008, 0.112, 0.004));
  return { ...bench, from, to: fallen(places), turnTo: upright, falls: true };
}
