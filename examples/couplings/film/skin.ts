import { MeshStandardMaterial } from 'three';

const noise = /* glsl */ `
float lattice(vec3 p) { return fract(sin(dot(p, vec3(127.1, 311.7, 74.7))) * 43758.5453); }
float smoothNoise(vec3 p) {
  vec3 cell = floor(p); vec3 f = fract(p); f = f * f * (3.0 - 2.0 * f);
  return mix(
    mix(mix(lattice(cell), lattice(cell + vec3(1, 0, 0)), f.x), mix(lattice(cell + vec3(0, 1, 0)), lattice(cell + vec3(1, 1, 0)), f.x), f.y),
    mix(mix(lattice(cell + vec3(0, 0, 1)), lattice(cell + vec3(1, 0, 1)), f.x), mix(lattice(cell + vec3(0, 1, 1)), lattice(cell + vec3(1, 1, 1)), f.x), f.y),
    f.z);
}
`;

/**
 * Skin: the mesh comes grey, so tone, blotches and fine grain are computed from the place on the unbent hand;
 * no picture and no seam is needed. Knuckles and finger ends are redder.
 */
export function skinMaterial(): MeshStandardMaterial {
  const material = new MeshStandardMaterial({ color: 0xcb9a80, roughness: 0.62, metalness: 0 });
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec3 vUnbent;')
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvUnbent = position;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', `#include <common>\nvarying vec3 vUnbent;\n${noise}`)
      .replace(
        '#include <color_fragment>',
        /* glsl */ `#include <color_fragment>
        float blotch = smoothNoise(vUnbent * 70.0) * 0.6 + smoothNoise(vUnbent * 190.0) * 0.4;
        float grain = smoothNoise(vUnbent * 700.0) * 0.6 + smoothNoise(vUnbent * 1500.0) * 0.4;
        float ends = smoothstep(-0.045, -0.115, vUnbent.y);
        diffuseColor.rgb *= mix(vec3(0.90, 0.82, 0.80), vec3(1.05, 1.06, 1.06), blotch);
        diffuseColor.rgb *= mix(0.88, 1.08, grain);
        diffuseColor.rgb *= mix(vec3(1.0), vec3(1.03, 0.92, 0.90), ends);`,
      )
      .replace(
        '#include <normal_fragment_maps>',
        /* glsl */ `#include <normal_fragment_maps>
        vec3 bump = vec3(smoothNoise(vUnbent * 520.0), smoothNoise(vUnbent * 520.0 + 17.0), smoothNoise(vUnbent * 520.0 + 41.0)) - 0.5;
        normal = normalize(normal + bump * 0.22);`,
      );
  };
  return material;
}
