import {
  CylinderGeometry,
  Mesh,
  MeshStandardMaterial,
  Object3D,
  SphereGeometry,
  TorusGeometry,
  Vector3,
} from 'three';
import type { Hand } from '../motions.ts';
import { shadowed } from './parts.ts';
import { skinMaterial } from './skin.ts';

const cuffAt = 0.014;
const sleeveLength = 0.5;

/** Forearm with a rolled cuff: a little skin behind the wrist, then the sleeve out of the picture. */
export class Forearm {
  readonly root = new Object3D();

  constructor() {
    const cloth = new MeshStandardMaterial({ color: 0x4d5f70, roughness: 0.95, metalness: 0 });
    const skin = skinMaterial();
    const wrist = shadowed(new SphereGeometry(0.0245, 24, 16), skin);
    wrist.scale.set(1.02, 0.74, 1.2);
    const bare = shadowed(new CylinderGeometry(0.0245, 0.03, cuffAt + 0.03, 28, 1, true), skin);
    bare.position.y = -(cuffAt + 0.03) / 2;
    const sleeve = shadowed(new CylinderGeometry(0.038, 0.06, sleeveLength, 36, 1, true), cloth);
    sleeve.position.y = -cuffAt - sleeveLength / 2;
    const cuff = shadowed(new TorusGeometry(0.0375, 0.0042, 10, 40).rotateX(Math.PI / 2), cloth);
    cuff.position.y = -cuffAt;
    const inside = new Mesh(new CylinderGeometry(0.036, 0.03, 0.002, 28), cloth);
    inside.position.y = -cuffAt - 0.004;
    const tube = new Object3D();
    tube.add(bare, sleeve, cuff, inside);
    tube.rotation.x = -Math.PI / 2;
    tube.scale.set(1, 1, 0.8);
    this.root.add(wrist, tube);
  }

  /** Runs from the elbow to the wrist. */
  place(wrist: Vector3, elbow: Vector3): void {
    this.root.position.copy(wrist);
    this.root.lookAt(elbow);
  }
}

/** The elbow follows the hand a little; metres in the scene. */
export function elbowFor(hand: Hand, grip: Vector3): Vector3 {
  const side = hand === 'left' ? -1 : 1;
  return new Vector3(side * 0.27 + grip.x * 0.22, 0.15 + grip.y * 0.3, 0.5 + grip.z * 0.3);
}
