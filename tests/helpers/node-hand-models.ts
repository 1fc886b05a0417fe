import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';
import { type HandModels, liteRtHands, type ModuleFactory, packedPalmModel } from '@evenhand/media/hands';

const require = createRequire(import.meta.url);
const modules = path.resolve(import.meta.dirname, '..', '..', 'node_modules');
const wasmFolder = path.join(modules, '@litertjs', 'core', 'wasm');

/** The loader as Node runs it: the variant without relaxed SIMD, which Node 20 lacks. */
function nodeFactory(): ModuleFactory {
  const file = path.join(wasmFolder, 'litert_wasm_compat_internal.js');
  const code = `(function (require, __filename, __dirname) { ${readFileSync(file, 'utf8')}\n; return ModuleFactory; })`;
  return vm.runInThisContext(code, { filename: file })(require, file, wasmFolder);
}

let made: Promise<HandModels> | undefined;

/** The models in Node, as they lie in node_modules; made once for all tests of a file. */
export function nodeHandModels(): Promise<HandModels> {
  const folder = path.join(modules, '@mediapipe', 'hands');
  made ??= liteRtHands({
    factory: nodeFactory(),
    wasm: path.join(wasmFolder, 'litert_wasm_compat_internal.wasm'),
    palmModel: packedPalmModel(readFileSync(path.join(folder, 'hands_solution_packed_assets.data'))),
    handModel: readFileSync(path.join(folder, 'hand_landmark_full.tflite')),
  });
  return made;
}
