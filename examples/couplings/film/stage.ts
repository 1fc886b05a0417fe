import {
  CanvasTexture,
  CylinderGeometry,
  DirectionalLight,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  MeshStandardMaterial,
  NeutralToneMapping,
  Object3D,
  PCFShadowMap,
  PerspectiveCamera,
  PMREMGenerator,
  RepeatWrapping,
  RingGeometry,
  Scene,
  ShadowMaterial,
  SRGBColorSpace,
  type Vector3,
  WebGLRenderer,
} from 'three';
import { RoomEnvironment } from 'three/addons/environments/RoomEnvironment.js';
import { RoundedBoxGeometry } from 'three/addons/geometries/RoundedBoxGeometry.js';
import { type Script, seededRandom } from '../motions.ts';
import { improvedPlaces, presentPlaces } from '../workplace.ts';
import { benchPoint, lying } from './bench.ts';
import { makeBin, makeNest, makePart, type PartName, shadowed } from './parts.ts';

export interface Stage {
  readonly renderer: WebGLRenderer;
  readonly scene: Scene;
  readonly camera: PerspectiveCamera;
  /** Bench, bins and heaps: drawn once and kept as a picture. */
  readonly fixed: Object3D;
  /** The same surfaces, seen only where something that moves throws its shadow on them. */
  readonly shaded: Object3D;
}

/** The bench seen from above, a little from the operator's side, with everything on it that never moves. */
export function makeStage(script: Script, width: number, height: number, canvas: HTMLCanvasElement): Stage {
  const renderer = new WebGLRenderer({ canvas, alpha: true, antialias: true, preserveDrawingBuffer: true });
  renderer.setPixelRatio(1);
  renderer.setSize(width, height, false);
  renderer.toneMapping = NeutralToneMapping;
  renderer.toneMappingExposure = 0.9;
  renderer.shadowMap.enabled = true;
  renderer.shadowMap.type = PCFShadowMap;
  const scene = new Scene();
  scene.environment = new PMREMGenerator(renderer).fromScene(new RoomEnvironment(), 0.03).texture;
  scene.environmentIntensity = 0.36;
  const camera = new PerspectiveCamera(25.5, width / height, 0.1, 4);
  camera.position.set(0, 1.2, 0.2);
  camera.lookAt(0, 0, -0.008);
  light(scene);
  const fixed = new Object3D();
  bench(fixed);
  furnish(fixed, script);
  const shaded = shadowCatchers(fixed);
  for (const place of script.id === 'present' ? presentPlaces : improvedPlaces) {
    if (place.id.includes('-bin'))
      heap(fixed, place.id.split('-')[0] as PartName, benchPoint(place), place.x + 1000);
  }
  scene.add(fixed, shaded);
  return { renderer, scene, camera, fixed, shaded };
}

/**
 * Copies of the fixed surfaces that are clear except in shadow; they also hide what goes behind them.
 * Black and without blending: the nearest surface alone writes its shadow into the clear picture.
 */
function shadowCatchers(fixed: Object3D): Object3D {
  const shaded = fixed.clone(true);
  const material = new ShadowMaterial({ color: 0x000000, opacity: 0.3, transparent: false });
  shaded.traverse((item) => {
    if (!(item instanceof Mesh)) return;
    item.material = material;
    item.castShadow = false;
    item.receiveShadow = true;
    item.renderOrder = -1;
  });
  return shaded;
}

function light(scene: Scene): void {
  scene.add(new HemisphereLight(0xfffaf2, 0xb8ad9a, 0.62));
  const lamp = new DirectionalLight(0xfff8ee, 1.95);
  lamp.position.set(-0.3, 1.4, -0.32);
  lamp.castShadow = true;
  lamp.shadow.mapSize.set(2048, 2048);
  Object.assign(lamp.shadow.camera, {
    left: -0.62,
    right: 0.62,
    top: 0.5,
    bottom: -0.5,
    near: 0.4,
    far: 2.4,
  });
  lamp.shadow.radius = 5;
  lamp.shadow.bias = -0.0004;
  lamp.shadow.normalBias = 0.0012;
  scene.add(lamp);
}

function bench(fixed: Object3D): void {
  const paper = new MeshStandardMaterial({
    map: grainTexture('#e3dccd', 2, 7),
    roughness: 0.85,
    metalness: 0,
  });
  const top = shadowed(new RoundedBoxGeometry(1.5, 0.03, 0.8, 3, 0.008), paper);
  top.position.set(0, -0.015, 0.24 - 0.4);
  fixed.add(top);
  const mat = new MeshStandardMaterial({ map: grainTexture('#b9bcb3', 2, 3), roughness: 0.95, metalness: 0 });
  const pad = shadowed(new RoundedBoxGeometry(0.43, 0.006, 0.24, 3, 0.003), mat);
  pad.position.set(0, 0.0005, 0.085);
  fixed.add(pad);
}

/** Flat colour with a fine, even fleck, so that the surface does not look computed. */
function grainTexture(colour: string, strength: number, seed: number): CanvasTexture {
  const canvas = document.createElement('canvas');
  canvas.width = 512;
  canvas.height = 512;
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser gives no canvas');
  context.fillStyle = colour;
  context.fillRect(0, 0, 512, 512);
  const image = context.getImageData(0, 0, 512, 512);
  const random = seededRandom(seed);
  for (let at = 0; at < image.data.length; at += 4) {
    const fleck = (random() + random() - 1) * strength;
    for (let channel = 0; channel < 3; channel += 1)
      image.data[at + channel] = (image.data[at + channel] ?? 0) + fleck;
  }
  context.putImageData(image, 0, 0);
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  texture.repeat.set(3, 2);
  return texture;
}

function furnish(fixed: Object3D, script: Script): void {
  for (const place of script.id === 'present' ? presentPlaces : improvedPlaces) {
    const at = benchPoint(place);
    const put = (item: Object3D) => {
      item.position.copy(at);
      fixed.add(item);
    };
    if (place.id.includes('-bin')) {
      const name = place.id.split('-')[0] as PartName;
      put(makeBin(name === 'ring' ? 0.115 : 0.15, name === 'ring' ? 0.105 : 0.125, 0.044, 0x87939b));
    }
    if (place.id === 'finished-box') put(makeBin(0.15, 0.15, 0.045, 0xb9a98c));
    if (place.id.startsWith('nest')) put(makeNest());
    if (place.id.startsWith('chute')) put(makeChute());
  }
  if (script.id === 'improved') fixed.add(fixturePlate());
}

function fixturePlate(): Object3D {
  const steel = new MeshStandardMaterial({ color: 0x8d949a, metalness: 0.55, roughness: 0.5 });
  const plate = shadowed(new RoundedBoxGeometry(0.25, 0.012, 0.09, 3, 0.003), steel);
  plate.position.copy(benchPoint({ x: 0, y: 210 }, 0.006));
  return plate;
}

function makeChute(): Object3D {
  const hole = new Mesh(
    new CylinderGeometry(0.037, 0.037, 0.001, 40),
    new MeshBasicMaterial({ color: 0x2b2926 }),
  );
  hole.position.y = 0.004;
  const rim = shadowed(
    new RingGeometry(0.035, 0.046, 48).rotateX(-Math.PI / 2),
    new MeshStandardMaterial({ color: 0x6f767c, metalness: 0.5, roughness: 0.45 }),
  );
  rim.position.y = 0.0048;
  const group = new Mesh();
  group.add(hole, rim);
  return group;
}

/** Parts that stay in the bin, below the ones that are taken. */
function heap(fixed: Object3D, name: PartName, { x, z }: Vector3, seed: number): void {
  const random = seededRandom(seed);
  const wide = name === 'ring' ? 0.062 : name === 'body' ? 0.07 : 0.088;
  const deep = name === 'ring' ? 0.052 : name === 'body' ? 0.048 : 0.062;
  const columns = name === 'ring' ? 5 : 4;
  for (let index = 0; index < columns * 4; index += 1) {
    const part = makePart(name);
    const column = index % columns;
    const row = Math.floor(index / columns);
    const jitter = () => (random() - 0.5) * 0.012;
    part.position.set(
      x + (column / (columns - 1) - 0.5) * wide + jitter(),
      (name === 'ring' ? 0.008 : 0.017) + random() * 0.006,
      z + (row / 3 - 0.5) * deep + jitter(),
    );
    part.quaternion.copy(lying(name, random));
    fixed.add(part);
  }
}
