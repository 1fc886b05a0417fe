/** Where the full palm model lies in the packed file, in bytes; the table stands in the package’s own loader script. */
const place = { from: 11, to: 2_341_291 };

/**
 * The palm model out of the packed file of `@mediapipe/hands`.
 * @throws TypeError when there is no model at that place
 */
export function packedPalmModel(packed: Uint8Array): Uint8Array {
  const model = packed.slice(place.from, place.to);
  // Every model of this format bears these four letters from its fifth byte on.
  const mark = String.fromCharCode(...model.subarray(4, 8));
  if (mark !== 'TFL3') throw new TypeError('the packed file holds no palm model at its usual place');
  return model;
}
