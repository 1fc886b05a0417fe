import { Quaternion, Vector3 } from 'three';
import type { Script, ScriptMotion } from '../motions.ts';
import type { BenchPlace } from '../workplace.ts';

/** Height of the body's hexagon when it is held in front, and when it sits in the nest; metres above the bench. */
export const holdHeight = 0.062;
export const nestHeight = 0.047;
const nearEdge = 0.24;

/** Bench millimetres to the scene's metres: x to the right, y up, z towards the operator. */
export function benchPoint(place: Pick<BenchPlace, 'x' | 'y'>, height = 0): Vector3 {
  return new Vector3(place.x / 1000, height, nearEdge - place.y / 1000);
}

/** How a thing lies at first. */
export interface Rest {
  readonly at: Vector3;
  readonly turn: Quaternion;
}

/** Any turn about the upright axis, lying as such a part does in a heap. */
export function lying(name: string, random: () => number): Quaternion {
  const about = new Quaternion().setFromAxisAngle(new Vector3(0, 1, 0), random() * Math.PI * 2);
  const steep = name === 'body' ? Math.PI / 2 : name === 'collar' ? 0.15 + random() * 0.5 : random() * 0.3;
  return about.multiply(new Quaternion().setFromAxisAngle(new Vector3(1, 0, 0), steep));
}

export const up = (height: number) => new Vector3(0, height, 0);

/** Where a slipped ring comes to lie: beside the holding place. */
export function fallen(places: ReadonlyMap<string, Vector3>): Vector3 {
  return (places.get('holding-place') ?? new Vector3()).clone().add(new Vector3(0.075, 0.008, -0.035));
}

const boxSlots = [
  [-0.03, -0.03],
  [0.02, -0.028],
  [-0.028, 0.006],
  [0.024, 0.01],
  [-0.024, 0.036],
  [0.022, 0.038],
  [0, 0],
] as const;

/** Where the coupling of this cycle is let go. */
export function deliveryPoint(script: Script, motion: ScriptMotion, place: Vector3): Vector3 {
  if (script.id === 'improved') return place.clone().add(up(0.075));
  const cycle = Number(motion.item?.split('-').at(-1) ?? 0);
  const [x, z] = boxSlots[cycle % boxSlots.length] ?? [0, 0];
  return place.clone().add(new Vector3(x, cycle === 6 ? 0.058 : 0.034, z));
}
