import {
  type Bone,
  Euler,
  type Group,
  MathUtils,
  type Object3D,
  Quaternion,
  Object3D as Root,
  type SkinnedMesh,
  Vector3,
} from 'three';
import type { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import type { Hand } from '../motions.ts';
import { fingerNames, type HandPose } from './poses.ts';
import { skinMaterial } from './skin.ts';

const chains = {
  thumb: ['thumb-metacarpal', 'thumb-phalanx-proximal', 'thumb-phalanx-distal', 'thumb-tip'],
  index: finger('index'),
  middle: finger('middle'),
  ring: finger('ring'),
  pinky: finger('pinky'),
} as const;

function finger(name: string): readonly string[] {
  const joints = ['metacarpal', 'phalanx-proximal', 'phalanx-intermediate', 'phalanx-distal', 'tip'];
  return joints.map((joint) => `${name}-finger-${joint}`);
}

/** A hand of the mesh is 177 mm from wrist joint to middle finger tip; scaled to a hand of about 190 mm from the wrist crease. */
const scale = 1.06;
const padDepth = 0.007;

/** One rigged hand: put its grip point somewhere, give it an attitude and a pose, and the wrist follows. */
export class RiggedHand {
  readonly mesh: SkinnedMesh;
  readonly root = new Root();
  readonly #wrist: Bone;
  readonly #bones = new Map<string, Bone>();
  readonly #rest = new Map<string, Quaternion>();
  readonly #side: 1 | -1;

  constructor(mesh: SkinnedMesh, bones: readonly Bone[], side: Hand) {
    this.mesh = mesh;
    this.#side = side === 'left' ? 1 : -1;
    for (const bone of bones) this.#bones.set(bone.name, bone);
    this.#wrist = this.bone('wrist');
    this.chainUp();
    this.root.add(this.#wrist);
    this.#wrist.position.set(0, 0, 0);
    this.#wrist.quaternion.identity();
    this.root.scale.setScalar(scale);
    for (const [name, bone] of this.#bones) this.#rest.set(name, bone.quaternion.clone());
  }

  bone(name: string): Bone {
    const found = this.#bones.get(name);
    if (found === undefined) throw new RangeError(`the hand has no bone ${name}`);
    return found;
  }

  /** The file keeps all joints side by side; a finger bends as a chain only when each joint hangs on the one before. */
  private chainUp(): void {
    for (const chain of Object.values(chains)) {
      let parent: Object3D = this.#wrist;
      for (const name of chain) {
        const bone = this.bone(name);
        parent.attach(bone);
        parent = bone;
      }
    }
  }

  /** Bends the fingers and turns the hand about its grip point, which comes to lie at `grip` (metres). */
  place(grip: Vector3, attitude: { yaw: number; pitch: number; roll: number }, pose: HandPose): void {
    this.bend(pose);
    this.root.position.set(0, 0, 0);
    this.root.quaternion.identity();
    this.root.updateMatrixWorld(true);
    const offset = this.gripPoint();
    const { yaw, pitch, roll } = attitude;
    const euler = new Euler(-MathUtils.degToRad(pitch), -MathUtils.degToRad(yaw), 0, 'YXZ');
    const turn = new Quaternion().setFromEuler(euler);
    const rolled = new Quaternion().setFromAxisAngle(
      new Vector3(0, 0, 1),
      this.#side * MathUtils.degToRad(roll),
    );
    this.root.quaternion.copy(turn).multiply(rolled);
    this.root.position.copy(grip).sub(offset.applyQuaternion(this.root.quaternion));
    this.root.updateMatrixWorld(true);
  }

  /** Between the pads of the thumb and of the first two fingers. */
  gripPoint(): Vector3 {
    const pad = (name: string) => {
      const tip = this.bone(name);
      return new Vector3(0, -padDepth, 0.004).applyMatrix4(tip.matrixWorld);
    };
    const fingers = pad('index-finger-tip').add(pad('middle-finger-tip')).multiplyScalar(0.5);
    return fingers.add(pad('thumb-tip')).multiplyScalar(0.5);
  }

  private bend(pose: HandPose): void {
    for (const name of fingerNames) {
      const bends = pose[name];
      const joints = chains[name];
      joints.slice(name === 'thumb' ? 0 : 1, name === 'thumb' ? 3 : 4).forEach((joint, index) => {
        const flex = bends[index] ?? 0;
        const spread = index === 0 ? (bends[3] ?? 0) : 0;
        const twist = index === 0 ? (bends[4] ?? 0) : 0;
        this.turn(joint, flex, this.#side * spread, this.#side * twist);
      });
    }
  }

  private turn(joint: string, flex: number, spread: number, twist: number): void {
    const bone = this.bone(joint);
    const euler = new Euler(
      -MathUtils.degToRad(flex),
      MathUtils.degToRad(spread),
      MathUtils.degToRad(twist),
      'YXZ',
    );
    bone.quaternion
      .copy(this.#rest.get(joint) ?? new Quaternion())
      .multiply(new Quaternion().setFromEuler(euler));
  }
}

export async function loadHand(loader: GLTFLoader, url: string, side: Hand): Promise<RiggedHand> {
  const file = await loader.loadAsync(url);
  let mesh: SkinnedMesh | undefined;
  (file.scene as Group).traverse((item) => {
    if ('isSkinnedMesh' in item) mesh = item as SkinnedMesh;
  });
  if (mesh === undefined) throw new RangeError(`${url} holds no rigged mesh`);
  file.scene.updateMatrixWorld(true);
  mesh.material = skinMaterial();
  mesh.frustumCulled = false;
  mesh.castShadow = true;
  mesh.receiveShadow = true;
  return new RiggedHand(mesh, mesh.skeleton.bones, side);
}
