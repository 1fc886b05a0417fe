import { BufferTarget, CanvasSource, Mp4OutputFormat, Output } from 'mediabunny';
import type { Object3D } from 'three';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import type { Hand, Script } from '../motions.ts';
import { improvedScript } from '../script-improved.ts';
import { presentScript } from '../script-present.ts';
import { elbowFor, Forearm } from './arm.ts';
import { type Choreography, choreograph } from './choreography.ts';
import { loadHand, type RiggedHand } from './hand.ts';
import leftHand from './hands/left.glb?url';
import rightHand from './hands/right.glb?url';
import { handAt, itemAt } from './movement.ts';
import { makePart, type PartName } from './parts.ts';
import { makeStage, type Stage } from './stage.ts';

interface Film {
  readonly script: Script;
  readonly scene: Choreography;
  readonly stage: Stage;
  readonly hands: Readonly<Record<Hand, { readonly rig: RiggedHand; readonly arm: Forearm }>>;
  readonly things: ReadonlyMap<string, Object3D>;
  readonly picture: HTMLCanvasElement;
  readonly ink: CanvasRenderingContext2D;
  readonly backdrop: Backdrop;
}

/** What lies still, kept as a picture until another thing begins or ends to move. */
interface Backdrop {
  readonly canvas: HTMLCanvasElement;
  readonly ink: CanvasRenderingContext2D;
  moving: string;
}

let film: Film | undefined;

async function open(id: string, width: number, height: number): Promise<number> {
  const script = id === 'present' ? presentScript() : improvedScript();
  const scene = choreograph(script);
  const stage = makeStage(script, width, height, document.createElement('canvas'));
  const loader = new GLTFLoader();
  const load = async (hand: Hand, url: string) => {
    const rig = await loadHand(loader, url, hand);
    const arm = new Forearm();
    stage.scene.add(rig.root, rig.mesh, arm.root);
    return { rig, arm };
  };
  const hands = { left: await load('left', leftHand), right: await load('right', rightHand) };
  const things = new Map<string, Object3D>();
  for (const item of scene.items.keys()) {
    const thing = makePart(item.split('-')[0] as PartName);
    stage.scene.add(thing);
    things.set(item, thing);
  }
  const picture = sheet(width, height);
  document.body.append(picture.canvas);
  const backdrop = { ...sheet(width, height), moving: 'nothing drawn yet' };
  film = { script, scene, stage, hands, things, picture: picture.canvas, ink: picture.ink, backdrop };
  return script.frames;
}

function sheet(width: number, height: number): Pick<Backdrop, 'canvas' | 'ink'> {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const ink = canvas.getContext('2d');
  if (ink === null) throw new Error('this browser gives no canvas');
  return { canvas, ink };
}

function draw(frame: number): void {
  if (film === undefined) throw new Error('no film is open');
  const { scene, stage, hands, things, picture, ink } = film;
  for (const hand of ['left', 'right'] as const) {
    const state = handAt(scene, hand, frame);
    const elbow = elbowFor(hand, state.grip);
    const forearm = (Math.atan2(state.grip.x - elbow.x, elbow.z - state.grip.z) * 180) / Math.PI;
    const { rig, arm } = hands[hand];
    rig.place(state.grip, { ...state, yaw: forearm + state.yaw }, state.pose);
    arm.place(rig.root.position, elbow);
  }
  const moving = new Set<string>();
  for (const [item, thing] of things) {
    const { at, turn, gone } = itemAt(scene, item, frame);
    thing.position.copy(at);
    thing.quaternion.copy(turn);
    thing.visible = !gone;
    if (moves(scene, item, frame)) moving.add(item);
  }
  drawBackdrop(film, moving);
  drawMoving(film, moving);
  ink.drawImage(film.backdrop.canvas, 0, 0);
  ink.drawImage(stage.renderer.domElement, 0, 0);
  caption(ink, picture);
}

/** From shortly before a thing is first touched until it lies where it stays; a part on a body moves as long as the body does. */
function moves(scene: Choreography, item: string, frame: number): boolean {
  const legs = scene.items.get(item)?.legs ?? [];
  const last = legs.at(-1);
  const touched = legs[1]?.start ?? Number.POSITIVE_INFINITY;
  if (last === undefined || frame < touched - 2) return false;
  if (typeof last.carrier === 'object' && frame >= last.end) return moves(scene, last.carrier.item, frame);
  return last.carrier !== 'bench' || frame < last.end + 2;
}

function drawBackdrop({ stage, hands, things, backdrop }: Film, moving: ReadonlySet<string>): void {
  const gone = [...things].filter(([, thing]) => !thing.visible).map(([item]) => item);
  const key = [...moving, '/', ...gone].join();
  if (key === backdrop.moving) return;
  backdrop.moving = key;
  const shown = [...things].filter(([, thing]) => thing.visible);
  for (const [item, thing] of shown) thing.visible = !moving.has(item);
  showHands(hands, false);
  stage.fixed.visible = true;
  stage.shaded.visible = false;
  stage.renderer.render(stage.scene, stage.camera);
  backdrop.ink.fillStyle = '#8a857b';
  backdrop.ink.fillRect(0, 0, backdrop.canvas.width, backdrop.canvas.height);
  backdrop.ink.drawImage(stage.renderer.domElement, 0, 0);
  for (const [, thing] of shown) thing.visible = true;
}

function drawMoving({ stage, hands, things }: Film, moving: ReadonlySet<string>): void {
  for (const [item, thing] of things) thing.visible = thing.visible && moving.has(item);
  showHands(hands, true);
  stage.fixed.visible = false;
  stage.shaded.visible = true;
  stage.renderer.render(stage.scene, stage.camera);
}

function showHands(hands: Film['hands'], visible: boolean): void {
  for (const { rig, arm } of Object.values(hands)) {
    rig.mesh.visible = visible;
    arm.root.visible = visible;
  }
}

function caption(ink: CanvasRenderingContext2D, { width, height }: HTMLCanvasElement): void {
  const size = Math.round(height / 42);
  ink.font = `${size}px sans-serif`;
  ink.textAlign = 'right';
  ink.fillStyle = 'rgba(40, 36, 30, 0.72)';
  ink.fillText('invented demonstration', width - size, size * 1.7);
}

/** Draws every frame and packs them as H.264; each frame lasts exactly one frame of the script. */
async function record(bitrate: number, frames = Number.POSITIVE_INFINITY): Promise<string> {
  if (film === undefined) throw new Error('no film is open');
  const { script, picture } = film;
  const target = new BufferTarget();
  const output = new Output({ format: new Mp4OutputFormat({ fastStart: 'in-memory' }), target });
  const source = new CanvasSource(picture, {
    codec: 'avc',
    bitrate,
    keyFrameInterval: 3,
    latencyMode: 'quality',
  });
  output.addVideoTrack(source, { frameRate: script.framesPerSecond });
  await output.start();
  for (let frame = 0; frame < Math.min(frames, script.frames); frame += 1) {
    draw(frame);
    await source.add(frame / script.framesPerSecond, 1 / script.framesPerSecond);
    if (frame % 50 === 0) console.log(`${script.id}: frame ${frame} of ${script.frames}`);
  }
  await output.finalize();
  return base64(new Uint8Array(target.buffer ?? new ArrayBuffer(0)));
}

function base64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 32_768)
    text += String.fromCharCode(...bytes.subarray(at, at + 32_768));
  return btoa(text);
}

/** What the driver calls. */
export const desk = { open, draw, record, still: () => film?.picture.toDataURL('image/png') ?? '' };
declare global {
  var filmDesk: typeof desk;
}
globalThis.filmDesk = desk;
