/** The two models of a hand, behind a port: they run in a worker of the page and in Node. */
export interface HandModels {
  /** @param input 192 × 192 × 3 numbers between 0 and 1 */
  readonly palms: (input: Float32Array) => Promise<PalmOutput>;
  /** @param input 224 × 224 × 3 numbers between 0 and 1 */
  readonly hand: (input: Float32Array) => Promise<HandOutput>;
  readonly dispose: () => void;
}

export interface PalmOutput {
  /** 2016 × 18: see `findPalms`. */
  readonly boxes: Float32Array;
  /** 2016 log-odds. */
  readonly scores: Float32Array;
}

export interface HandOutput {
  /** 21 × 3: across and down in pixels of the model’s picture, and depth in the same unit towards the camera negative. */
  readonly landmarks: Float32Array;
  /** How sure it is that a hand is there, 0 to 1. */
  readonly presence: number;
  /** Above 0.5 an anatomical right hand in a picture that is not mirrored; 0 to 1. */
  readonly right: number;
  /** 21 × 3 in metres, in the space of the hand. */
  readonly world: Float32Array;
}

/** Size of the picture that the hand model takes, in pixels. */
export const handInput = 224;
