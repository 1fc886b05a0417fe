import { type Quaternion, Vector3 } from 'three';
import type { Hand } from '../motions.ts';
import type { Choreography, HandKey } from './choreography.ts';
import type { ItemLeg } from './item-tracks.ts';
import { blendPose, type HandPose, poses } from './poses.ts';

export interface HandState {
  readonly grip: Vector3;
  readonly yaw: number;
  readonly pitch: number;
  readonly roll: number;
  readonly pose: HandPose;
}

export interface ItemState {
  readonly at: Vector3;
  readonly turn: Quaternion;
  readonly gone: boolean;
}

/** Least-jerk course from 0 to 1 (Flash and Hogan 1985). */
export function leastJerk(share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t * t * t * (10 - 15 * t + 6 * t * t);
}

/** The hand at a frame. The yaw is added to the direction of the forearm. */
export function handAt({ keys }: Choreography, hand: Hand, frame: number): HandState {
  const row = keys[hand];
  const index = Math.max(
    0,
    row.findLastIndex((key) => key.start <= frame),
  );
  const key = row[index] as HandKey;
  const from = row[index - 1] ?? key;
  const share = (frame - key.start) / (key.end - key.start);
  const course = leastJerk(share);
  const grip = from.grip
    .clone()
    .lerp(key.grip, course)
    .add(extra(key, from, share, frame));
  const mix = (a: number, b: number) => a + (b - a) * course;
  const shaping =
    key.motion.kind === 'TE' || key.motion.kind === 'unmarked' ? leastJerk(share / 0.65) : course;
  return {
    grip,
    yaw: mix(from.attitude.yaw + from.twist, key.attitude.yaw + key.twist),
    pitch: mix(from.attitude.pitch, key.attitude.pitch),
    roll: mix(from.attitude.roll, key.attitude.roll),
    pose: blendPose(poses[from.pose], poses[key.pose], shaping),
  };
}

/** What a motion adds to the straight course: the arc of a reach, the stirring of a search, the small corrections of positioning. */
function extra(key: HandKey, from: HandKey, share: number, frame: number): Vector3 {
  const swell = Math.sin(Math.PI * Math.min(1, share)) ** 2;
  const seconds = frame / 30;
  switch (key.motion.kind) {
    case 'TE':
    case 'TL': {
      const distance = from.grip.distanceTo(key.grip);
      return new Vector3(0, (0.012 + 0.16 * distance) * swell * (distance > 0.02 ? 1 : 0.3), 0);
    }
    case 'Sh':
      return new Vector3(
        Math.sin(seconds * 11) * 0.02,
        Math.abs(Math.sin(seconds * 9)) * 0.012,
        Math.cos(seconds * 8) * 0.018,
      ).multiplyScalar(swell);
    case 'St':
      return new Vector3(
        Math.sin(seconds * 17) * 0.009,
        0.004,
        Math.cos(seconds * 15) * 0.008,
      ).multiplyScalar(swell);
    case 'P':
      return new Vector3(
        Math.sin(seconds * 21) * 0.0026,
        Math.sin(seconds * 13) * 0.0015,
        Math.cos(seconds * 18) * 0.0026,
      ).multiplyScalar(swell);
    case 'H':
      return new Vector3(
        Math.sin(seconds * 2.1),
        Math.sin(seconds * 1.7),
        Math.cos(seconds * 2.6),
      ).multiplyScalar(0.0012 * swell);
    default:
      return new Vector3();
  }
}

/** A thing at a frame; in the first frames of a leg it passes over from where the leg before would have it. */
export function itemAt(scene: Choreography, item: string, frame: number): ItemState {
  const legs = scene.items.get(item)?.legs ?? [];
  const index = Math.max(
    0,
    legs.findLastIndex((leg) => leg.start <= frame),
  );
  const leg = legs[index];
  if (leg === undefined) throw new RangeError(`no thing ${item} in the script`);
  const now = onLeg(scene, leg, frame);
  const before = legs[index - 1];
  const passed = (frame - leg.start) / 3;
  if (before === undefined || passed >= 1) return now;
  const then = onLeg(scene, before, frame);
  const share = leastJerk(passed);
  return { ...now, at: then.at.lerp(now.at, share), turn: then.turn.slerp(now.turn, share) };
}

function onLeg(scene: Choreography, leg: ItemLeg, frame: number): ItemState {
  const share = leg.end > leg.start ? Math.min(1, (frame - leg.start) / (leg.end - leg.start)) : 1;
  const course = leg.falls ? Math.min(1, share * 1.3) ** 2 : leastJerk(share);
  const at = leg.from.clone().lerp(leg.to, course);
  const turn = leg.turnFrom.clone().slerp(leg.turnTo, leg.falls ? course : leastJerk(share / 0.8));
  const gone = leg.gone === true && share >= 1;
  if (leg.carrier === 'bench') return { at, turn, gone };
  if (typeof leg.carrier === 'string')
    return { at: at.add(handAt(scene, leg.carrier, frame).grip), turn, gone };
  const under = itemAt(scene, leg.carrier.item, frame);
  return {
    at: at.applyQuaternion(under.turn).add(under.at),
    turn: under.turn.clone().multiply(turn),
    gone: under.gone,
  };
}
