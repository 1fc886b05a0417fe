import { Vector3 } from 'three';
import { type Hand, motionEnd, type Script, type ScriptMotion, seededRandom } from '../motions.ts';
import { improvedPlaces, presentPlaces } from '../workplace.ts';
import { type Attitude, attitudes } from './attitudes.ts';
import { benchPoint, deliveryPoint, fallen, holdHeight, lying, nestHeight, type Rest, up } from './bench.ts';
import { type ItemTrack, itemTracks } from './item-tracks.ts';
import { seat } from './parts.ts';
import type { PoseName } from './poses.ts';

/** Where a hand is at the end of a motion; between two ends it moves with the least jerk. */
export interface HandKey {
  readonly motion: ScriptMotion;
  readonly start: number;
  readonly end: number;
  readonly grip: Vector3;
  readonly attitude: Attitude;
  readonly pose: PoseName;
  /** Turn about the upright axis through the grip, in degrees, on top of the attitude. */
  readonly twist: number;
}

export interface Choreography {
  readonly script: Script;
  readonly places: ReadonlyMap<string, Vector3>;
  readonly keys: Readonly<Record<Hand, readonly HandKey[]>>;
  readonly items: ReadonlyMap<string, ItemTrack>;
}

export function choreograph(script: Script): Choreography {
  const list = script.id === 'present' ? presentPlaces : improvedPlaces;
  const places = new Map(list.map((place) => [place.id, benchPoint(place)]));
  const rest = restPoints(script, places);
  const keys = {
    left: handKeys(script, 'left', places, rest),
    right: handKeys(script, 'right', places, rest),
  };
  return { script, places, keys, items: itemTracks(script, places, rest) };
}

/** Every thing lies in its bin at first, on top of the heap, each a little apart from the others. */
function restPoints(script: Script, places: ReadonlyMap<string, Vector3>): ReadonlyMap<string, Rest> {
  const random = seededRandom(77);
  const found = new Map<string, Rest>();
  for (const hand of ['left', 'right'] as const) {
    for (const { item } of script[hand]) {
      if (item === undefined || found.has(item)) continue;
      const name = item.split('-')[0] ?? '';
      const bin = places.get(script.id === 'present' ? `${name}-bin` : `${name}-bin-${hand}`);
      if (bin === undefined) throw new RangeError(`there is no bin for ${item}`);
      const cycle = Number(item.split('-').at(-1));
      found.set(item, { at: heapSlot(bin, cycle, name), turn: lying(name, random) });
    }
  }
  return found;
}

const slots = [
  [-0.026, 0.012],
  [0.022, -0.014],
  [0.028, 0.02],
  [-0.03, -0.022],
  [0, 0.026],
  [0.002, -0.026],
  [-0.004, 0.002],
] as const;

function heapSlot(bin: Vector3, cycle: number, name: string): Vector3 {
  const [x, z] = slots[cycle % slots.length] ?? [0, 0];
  const spread = name === 'ring' ? 0.8 : 1.05;
  return bin.clone().add(new Vector3(x * spread, name === 'ring' ? 0.021 : 0.037, z * spread));
}

function handKeys(
  script: Script,
  hand: Hand,
  places: ReadonlyMap<string, Vector3>,
  rest: ReadonlyMap<string, Rest>,
): HandKey[] {
  const row = script[hand];
  const keys: HandKey[] = [];
  row.forEach((motion, index) => {
    const before = keys.at(-1);
    const span = { motion, start: motion.start, end: motionEnd(row, index, script.frames) };
    keys.push({ ...span, ...endState({ script, hand, motion, next: row[index + 1], before, places, rest }) });
  });
  return keys;
}

interface Situation {
  readonly script: Script;
  readonly hand: Hand;
  readonly motion: ScriptMotion;
  readonly next: ScriptMotion | undefined;
  readonly before: HandKey | undefined;
  readonly places: ReadonlyMap<string, Vector3>;
  readonly rest: ReadonlyMap<string, Rest>;
}

type EndState = Pick<HandKey, 'grip' | 'attitude' | 'pose' | 'twist'>;

function endState(of: Situation): EndState {
  const { motion, before } = of;
  const still = before ?? restingHand(of);
  const small = motion.object === 'sealing ring';
  const open: PoseName = small ? 'openSmall' : 'openWide';
  const closed: PoseName = small ? 'gripSmall' : 'gripWide';
  const attitude = attitudeFor(of, still.attitude);
  const grip = gripAfter(of, still.grip);
  switch (motion.kind) {
    case 'TE':
    case 'St':
    case 'Sh':
      return { grip, attitude, pose: open, twist: motion.from === motion.to ? startTwist : 0 };
    case 'G':
      return { grip, attitude, pose: closed, twist: still.twist };
    case 'P':
      return { grip, attitude, pose: closed, twist: motion.object === 'collar' ? startTwist : 0 };
    case 'A':
      return { grip, attitude, pose: closed, twist: motion.object === 'collar' ? -startTwist : 0 };
    case 'RL':
      return { grip, attitude, pose: open, twist: still.twist };
    case 'UD':
      return motion.note === 'spoken to' ? still : { grip, attitude, pose: 'relaxed', twist: 0 };
    case 'unmarked':
      return before === undefined ? still : { grip, attitude, pose: 'relaxed', twist: 0 };
    default:
      return { grip, attitude, pose: closed, twist: 0 };
  }
}

const startTwist = 20;

function restingHand(of: Situation): EndState {
  return { grip: restPoint(of), attitude: attitudes.rest, pose: 'relaxed', twist: 0 };
}

function restPoint({ hand, script, places }: Situation): Vector3 {
  const waiting = hand === 'right' && script.id === 'present' ? places.get('waiting-place') : undefined;
  const side = hand === 'left' ? -1 : 1;
  return (waiting ?? benchPoint({ x: side * 135, y: 150 })).clone().setY(0.022);
}

function attitudeFor({ script, hand, motion }: Situation, before: Attitude): Attitude {
  if (motion.kind === 'UD' && motion.note !== 'spoken to') return attitudes.rest;
  if (motion.kind === 'unmarked') return attitudes.rest;
  if (motion.kind === 'RL' || motion.kind === 'UD') return before;
  const { to } = motion;
  if (to === undefined) return before;
  if (hand === 'left' && script.id === 'present') {
    if (to === 'holding-place') return attitudes.hold;
    return to === 'finished-box' ? attitudes.deliver : attitudes.pick;
  }
  return to.includes('bin') || to === 'waiting-place' ? attitudes.pick : attitudes.assemble;
}

function gripAfter(of: Situation, still: Vector3): Vector3 {
  const { motion, places, rest } = of;
  const item = motion.item === undefined ? undefined : rest.get(motion.item);
  const place = motion.to === undefined ? undefined : places.get(motion.to);
  switch (motion.kind) {
    case 'unmarked':
    case 'UD':
      return of.before === undefined || motion.note !== 'spoken to' ? restPoint(of) : still;
    case 'TE':
      if (motion.to?.includes('bin')) return (item?.at ?? still).clone().add(up(0.016));
      if (motion.to === 'waiting-place') return fallen(places).add(up(0.018));
      return still.clone();
    case 'Sh':
    case 'St':
      return (item?.at ?? still).clone().add(up(0.01));
    case 'G':
      if (motion.from?.includes('bin')) return (item?.at ?? still).clone();
      return motion.from === 'waiting-place' ? fallen(places) : still.clone().add(up(-0.008));
    case 'RL':
      return still.clone().add(up(motion.object === 'collar' ? 0.008 : 0.014));
    case 'TL':
    case 'P':
    case 'A':
      return place === undefined ? still : workPoint(of, place);
    default:
      return still;
  }
}

function workPoint({ script, motion, next }: Situation, place: Vector3): Vector3 {
  const base = place.clone().add(up(script.id === 'present' ? holdHeight : nestHeight));
  if (motion.object === 'coupling') return deliveryPoint(script, motion, place);
  if (motion.object === 'body')
    return base.add(up(motion.kind === 'TL' && script.id === 'improved' ? 0.03 : 0));
  const ring = motion.object === 'sealing ring';
  if (motion.kind === 'TL') return base.add(new Vector3(0.012, ring ? 0.066 : 0.074, 0.008));
  if (motion.kind === 'P') {
    if (next?.kind === 'RL') return base.add(new Vector3(0.008, 0.05, 0.004));
    return base.add(up(ring ? 0.041 : seat.collarOn));
  }
  if (ring) return base.add(up(seat.ring + 0.004));
  return base.add(up(motion.note === 'first turn' ? seat.collarHalf : seat.collarTight));
}
