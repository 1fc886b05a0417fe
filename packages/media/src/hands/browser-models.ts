/// <reference path="./bundled-files.d.ts" />
import { supportsFeature } from '@litertjs/core';
import compatWasm from '@litertjs/core/wasm/litert_wasm_compat_internal.wasm?url';
import wasm from '@litertjs/core/wasm/litert_wasm_internal.wasm?url';
import handModel from '@mediapipe/hands/hand_landmark_full.tflite?url';
import packedModels from '@mediapipe/hands/hands_solution_packed_assets.data?url';
import type { HandModels } from './hand-models.ts';
import { liteRtHands, type ModuleFactory } from './lite-rt.ts';
import { packedPalmModel } from './packed-palm-model.ts';

/** The models as the page’s own server hands them out. */
export async function browserHandModels(): Promise<HandModels> {
  const [runtime, packed, hand] = await Promise.all([loader(), bytes(packedModels), bytes(handModel)]);
  return liteRtHands({ ...runtime, palmModel: packedPalmModel(packed), handModel: hand });
}

/** The faster program where the browser has its instructions, else the one for older browsers. */
async function loader(): Promise<{ readonly factory: ModuleFactory; readonly wasm: string }> {
  if (await supportsFeature('relaxedSimd')) {
    const { ModuleFactory } = await import('@litertjs/core/wasm/litert_wasm_internal.js');
    return { factory: ModuleFactory, wasm: absolute(wasm) };
  }
  const { ModuleFactory } = await import('@litertjs/core/wasm/litert_wasm_compat_internal.js');
  return { factory: ModuleFactory, wasm: absolute(compatWasm) };
}

function absolute(address: string): string {
  return new URL(address, self.location.href).href;
}

async function bytes(address: string): Promise<Uint8Array> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`the server answered ${answer.status} for ${address}`);
  return new Uint8Array(await answer.arrayBuffer());
}
