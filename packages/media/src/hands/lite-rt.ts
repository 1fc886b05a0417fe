import { type CompiledModel, loadAndCompile, loadLiteRt, Tensor } from '@litertjs/core';
import { type HandModels, type HandOutput, handInput, type PalmOutput } from './hand-models.ts';
import { palmInput } from './palm-anchors.ts';

/** Starts the WebAssembly program; each of its loaders brings one. */
export type ModuleFactory = (settings: object) => Promise<object>;

export interface LiteRtParts {
  readonly factory: ModuleFactory;
  /** Address of the WebAssembly file that belongs to the factory. */
  readonly wasm: string;
  readonly palmModel: Uint8Array;
  readonly handModel: Uint8Array;
}

/** The globals by which the library finds its program; it expects to fetch a script that leaves them behind. */
interface LoaderScope {
  self?: unknown;
  importScripts?: unknown;
  ModuleFactory?: ModuleFactory | undefined;
  Module?: object | undefined;
}

/**
 * The hand models on the processor. The library would fetch its loader as a script of its own; here the loader comes
 * bundled, so the page needs neither `eval` nor another script address.
 */
export async function liteRtHands({ factory, wasm, palmModel, handModel }: LiteRtParts): Promise<HandModels> {
  const scope = globalThis as LoaderScope;
  scope.self ??= globalThis;
  Object.defineProperty(scope, 'importScripts', { value: () => {}, configurable: true, writable: true });
  scope.ModuleFactory = factory;
  const quiet = () => {};
  scope.Module = { locateFile: () => wasm, print: quiet, printErr: quiet };
  await loadLiteRt('litert.js');
  const options = { accelerator: 'wasm' } as const;
  const palms = await loadAndCompile(palmModel, options);
  const hand = await loadAndCompile(handModel, options);
  return {
    palms: async (input) => palmOutput(await run(palms, input, palmInput)),
    hand: async (input) => handOutput(await run(hand, input, handInput)),
    dispose: () => {
      palms.delete();
      hand.delete();
    },
  };
}

async function run(model: CompiledModel, input: Float32Array, size: number): Promise<Float32Array[]> {
  const tensor = new Tensor(input, [1, size, size, 3]);
  let outputs: readonly Tensor[] = [];
  try {
    outputs = await model.run([tensor]);
    return outputs.map((output) => output.toTypedArray() as Float32Array);
  } finally {
    tensor.delete();
    for (const output of outputs) output.delete();
  }
}

function palmOutput(outputs: readonly Float32Array[]): PalmOutput {
  const [boxes, scores] = outputs;
  if (boxes?.length !== 2016 * 18 || scores?.length !== 2016) throw wrongModel('palm', outputs);
  return { boxes, scores };
}

function handOutput(outputs: readonly Float32Array[]): HandOutput {
  const [landmarks, presence, right, world] = outputs;
  const fits = landmarks?.length === 63 && presence?.length === 1 && right?.length === 1;
  if (!fits || world?.length !== 63) throw wrongModel('hand', outputs);
  return { landmarks, presence: presence[0] as number, right: right[0] as number, world };
}

function wrongModel(name: string, outputs: readonly Float32Array[]): TypeError {
  return new TypeError(`the ${name} model gives ${outputs.map(({ length }) => length).join(', ')} numbers`);
}
