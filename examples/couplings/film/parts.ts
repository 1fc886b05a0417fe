import {
  BoxGeometry,
  type BufferGeometry,
  CylinderGeometry,
  ExtrudeGeometry,
  Group,
  LatheGeometry,
  Mesh,
  MeshStandardMaterial,
  type Object3D,
  Path,
  Shape,
  TorusGeometry,
  Vector2,
} from 'three';

export type PartName = 'body' | 'ring' | 'collar';

const brass = new MeshStandardMaterial({ color: 0xc2a05c, metalness: 0.8, roughness: 0.48 });
const steel = new MeshStandardMaterial({ color: 0xb9bdc2, metalness: 0.8, roughness: 0.42 });
const seatSteel = new MeshStandardMaterial({ color: 0x7b8288, metalness: 0.4, roughness: 0.6 });
const rubber = new MeshStandardMaterial({ color: 0x7c2f22, metalness: 0, roughness: 0.6 });

/** Heights above the middle of the body's hexagon, in metres, at which the other parts sit on it. */
export const seat = { ring: 0.0135, collarOn: 0.043, collarHalf: 0.034, collarTight: 0.026 } as const;

/** A part standing upright, its grip in the origin. */
export function makePart(name: PartName): Object3D {
  if (name === 'ring')
    return shadowed(new TorusGeometry(0.0162, 0.0032, 10, 30).rotateX(Math.PI / 2), rubber);
  if (name === 'collar') return shadowed(collarGeometry(), steel);
  const group = new Group();
  group.add(shadowed(hexagon(), brass), shadowed(neckAndBarb(), brass));
  return group;
}

function hexagon(): BufferGeometry {
  const outline = new Shape();
  for (let corner = 0; corner < 6; corner += 1) {
    const angle = (corner * Math.PI) / 3;
    const at: [number, number] = [0.0215 * Math.cos(angle), 0.0215 * Math.sin(angle)];
    if (corner === 0) outline.moveTo(...at);
    else outline.lineTo(...at);
  }
  return standing(outline, 0.018, 0.0016);
}

/** Outside neck with a few thread ridges above the hexagon, hose barb below, a bore through the middle. */
function neckAndBarb(): BufferGeometry {
  const profile: [number, number][] = [
    [0.007, -0.036],
    [0.0095, -0.036],
  ];
  for (let barb = 0; barb < 3; barb += 1) {
    profile.push([0.0118, -0.029 + barb * 0.007], [0.0098, -0.0285 + barb * 0.007]);
  }
  profile.push([0.0105, -0.008], [0.0137, 0.008]);
  for (let ridge = 0; ridge < 6; ridge += 1) {
    profile.push([0.0128, 0.017 + ridge * 0.003], [0.0138, 0.0185 + ridge * 0.003]);
  }
  profile.push([0.0122, 0.037], [0.009, 0.037], [0.0085, 0.03], [0.0085, -0.036], [0.007, -0.036]);
  return new LatheGeometry(
    profile.map(([radius, height]) => new Vector2(radius, height)),
    32,
  );
}

/** A knurled nut with a round hole. */
function collarGeometry(): BufferGeometry {
  const outline = new Shape();
  const teeth = 30;
  for (let step = 0; step < teeth * 2; step += 1) {
    const radius = step % 2 === 0 ? 0.0228 : 0.0212;
    const angle = (step * Math.PI) / teeth;
    if (step === 0) outline.moveTo(radius, 0);
    else outline.lineTo(radius * Math.cos(angle), radius * Math.sin(angle));
  }
  outline.closePath();
  outline.holes.push(new Path().absarc(0, 0, 0.0142, 0, Math.PI * 2, true));
  return standing(outline, 0.018, 0.0018);
}

function standing(outline: Shape, height: number, bevel: number): BufferGeometry {
  const geometry = new ExtrudeGeometry(outline, {
    depth: height - 2 * bevel,
    bevelSize: bevel,
    bevelThickness: bevel,
    bevelOffset: -bevel,
    bevelSegments: 2,
    curveSegments: 24,
  });
  return geometry.translate(0, 0, -(height - 2 * bevel) / 2).rotateX(-Math.PI / 2);
}

export function shadowed(geometry: BufferGeometry, material: MeshStandardMaterial): Mesh {
  const mesh = new Mesh(geometry, material);
  mesh.castShadow = true;
  mesh.receiveShadow = true;
  return mesh;
}

/** An open bin: floor and four walls, the origin in the middle of the floor; metres. */
export function makeBin(width: number, depth: number, height: number, colour: number): Object3D {
  const plastic = new MeshStandardMaterial({ color: colour, roughness: 0.55, metalness: 0 });
  const wall = 0.004;
  const group = new Group();
  const put = (size: [number, number, number], x: number, y: number, z: number) => {
    const mesh = shadowed(new BoxGeometry(...size), plastic);
    mesh.position.set(x, y, z);
    group.add(mesh);
  };
  put([width, wall, depth], 0, wall / 2, 0);
  for (const side of [-1, 1]) {
    put([wall, height, depth], (side * width) / 2, height / 2, 0);
    const low = side > 0 ? height * 0.62 : height;
    put([width + wall, low, wall], 0, low / 2, (side * depth) / 2);
    put([0.009, 0.004, depth + 0.009], (side * (width + 0.005)) / 2, height, 0);
  }
  put([width + 0.013, 0.004, 0.009], 0, height, -(depth + 0.005) / 2);
  return group;
}

/** A fixture nest: a steel seat with two jaws that keep the hexagon from turning. */
export function makeNest(): Object3D {
  const group = new Group();
  const foot = shadowed(new CylinderGeometry(0.03, 0.034, 0.03, 40), seatSteel);
  foot.position.y = 0.022;
  group.add(foot);
  const jaw = new MeshStandardMaterial({ color: 0x4b535c, metalness: 0.35, roughness: 0.5 });
  for (const side of [-1, 1]) {
    const block = shadowed(new BoxGeometry(0.014, 0.018, 0.036), jaw);
    block.position.set(side * 0.0265, 0.045, 0);
    group.add(block);
  }
  return group;
}
