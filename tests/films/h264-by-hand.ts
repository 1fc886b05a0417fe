import { numberBits } from './number-picture.ts';

/**
 * H.264 written bit by bit (ITU-T H.264, 7.3), because browsers' encoders make no B-frames: 64 × 64 pixels, one
 * macroblock for each cell of the number, stored without coding (I_PCM), so what is decoded is exact. In P pictures a
 * cell that has not changed is skipped and so copied from the reference: without the reference the number is wrong.
 */

export type PictureKind = 'IDR' | 'I' | 'P' | 'B';

export interface HandPicture {
  readonly kind: PictureKind;
  /** The number in the picture. */
  readonly number: number;
  /** Position in the order of presentation since the last IDR picture. */
  readonly order: number;
  /** Reference pictures since the last IDR picture. */
  readonly frameNumber: number;
  /** Number in the reference that a P picture copies from. */
  readonly reference?: number;
}

export const handSize = 64;

class BitWriter {
  readonly #bits: number[] = [];

  u(length: number, value: number): this {
    for (let at = length - 1; at >= 0; at -= 1) this.#bits.push(Math.floor(value / 2 ** at) % 2);
    return this;
  }

  /** Exponential Golomb code (9.1). */
  ue(value: number): this {
    const length = Math.floor(Math.log2(value + 1));
    return this.u(length, 0).u(length + 1, value + 1);
  }

  align(bit: 0): this {
    while (this.#bits.length % 8 !== 0) this.#bits.push(bit);
    return this;
  }

  /** The NAL unit with its header byte; 0 0 0…3 is escaped (7.4.1). */
  unit(header: number): Uint8Array {
    this.#bits.push(1);
    this.align(0);
    const bytes = [header];
    let zeros = 0;
    for (let at = 0; at < this.#bits.length; at += 8) {
      const byte = this.#bits.slice(at, at + 8).reduce((sum, bit) => sum * 2 + bit, 0);
      if (zeros >= 2 && byte <= 3) {
        bytes.push(3);
        zeros = 0;
      }
      bytes.push(byte);
      zeros = byte === 0 ? zeros + 1 : 0;
    }
    return Uint8Array.from(bytes);
  }
}

/** Sequence parameters: Main profile, level 1.1; `announced`: says how many pictures are put into another order. */
function sequence(announced: boolean): Uint8Array {
  const bits = new BitWriter().u(8, 77).u(8, 0).u(8, 11);
  bits.ue(0).ue(4).ue(0).ue(4); // id, log2_max_frame_num 8, order count type 0 with 8 bits
  bits.ue(2).u(1, 0); // reference frames, no gaps
  bits.ue(handSize / 16 - 1).ue(handSize / 16 - 1);
  bits.u(1, 1).u(1, 1).u(1, 0); // frames only, direct_8x8, no cropping
  if (!announced) return bits.u(1, 0).unit(0x67);
  bits.u(1, 1).u(4, 0).u(1, 0).u(2, 0).u(1, 0); // VUI without aspect, overscan, signal, chroma, timing, HRD, pic_struct …
  return bits.u(1, 1).u(1, 1).ue(0).ue(0).ue(10).ue(10).ue(1).ue(2).unit(0x67); // … but with a bitstream restriction: one picture is put off
}

function pictureParameters(): Uint8Array {
  const bits = new BitWriter().ue(0).ue(0).u(1, 0).u(1, 0).ue(0).ue(0).ue(0).u(1, 0).u(2, 0);
  return bits.ue(0).ue(0).ue(0).u(1, 1).u(1, 0).u(1, 0).unit(0x68); // quantiser 26, deblocking can be switched off
}

/** AVCDecoderConfigurationRecord (ISO/IEC 14496-15, 5.3.3). */
export function handDescription(announced = true): Uint8Array {
  const [sps, pps] = [sequence(announced), pictureParameters()];
  const head = [1, 77, 0, 11, 0xff, 0xe1, sps.length >> 8, sps.length & 255];
  return Uint8Array.from([...head, ...sps, 1, pps.length >> 8, pps.length & 255, ...pps]);
}

const sliceTypes: Readonly<Record<PictureKind, number>> = { IDR: 7, I: 7, P: 5, B: 6 };
const pcmTypes: Readonly<Record<PictureKind, number>> = { IDR: 25, I: 25, P: 30, B: 48 };

/** One picture as an MP4 sample: its NAL unit after four bytes of length. */
export function handPicture(picture: HandPicture): Uint8Array {
  const { kind } = picture;
  const bits = sliceHeader(picture);
  const before = picture.reference === undefined ? undefined : numberBits(picture.reference);
  let skipped = 0;
  for (const [at, bit] of numberBits(picture.number).entries()) {
    if (kind === 'P' && before?.[at] === bit) {
      skipped += 1;
      continue;
    }
    if (kind === 'P' || kind === 'B') bits.ue(skipped);
    skipped = 0;
    bits.ue(pcmTypes[kind]).align(0);
    for (let pixel = 0; pixel < 256; pixel += 1) bits.u(8, bit ? 235 : 16);
    for (let pixel = 0; pixel < 128; pixel += 1) bits.u(8, 128);
  }
  if (skipped > 0) bits.ue(skipped);
  const unit = bits.unit(kind === 'IDR' ? 0x65 : kind === 'B' ? 0x01 : 0x41);
  const size = [unit.length >>> 24, (unit.length >> 16) & 255, (unit.length >> 8) & 255, unit.length & 255];
  return Uint8Array.from([...size, ...unit]);
}

function sliceHeader({ kind, order, frameNumber }: HandPicture): BitWriter {
  const bits = new BitWriter()
    .ue(0)
    .ue(sliceTypes[kind])
    .ue(0)
    .u(8, frameNumber % 256);
  if (kind === 'IDR') bits.ue(0);
  bits.u(8, (order * 2) % 256);
  if (kind === 'B') bits.u(1, 1); // direct_spatial_mv_pred
  if (kind === 'P' || kind === 'B') bits.u(1, 0); // as many references as the picture parameters say
  if (kind === 'P') bits.u(1, 0); // references in their usual order
  if (kind === 'B') bits.u(1, 0).u(1, 0);
  if (kind === 'IDR') bits.u(1, 0).u(1, 0);
  else if (kind !== 'B') bits.u(1, 0); // no adaptive marking
  return bits.ue(0).ue(1); // quantiser as in the parameters (0), no deblocking
}

/** A picture in the order of decoding, with its place in the order of presentation of the whole film. */
export interface HandPacket {
  readonly data: Uint8Array;
  readonly key: boolean;
  readonly frame: number;
}

/**
 * A film of groups `I B B P B B P …` in the order of presentation, coded `I P B B P B B …`.
 * @param groups how many groups
 * @param open later groups begin with an I picture that is no IDR and has two B pictures shown before it
 */
export function handFilm(groups: number, steps: number, open = false): HandPacket[] {
  const packets: HandPacket[] = [];
  let idrFrame = 0;
  let frameNumber = 0;
  const add = (kind: PictureKind, frame: number, reference?: number) => {
    const picture = { kind, number: frame, order: frame - idrFrame, frameNumber };
    const data = handPicture(reference === undefined ? picture : { ...picture, reference });
    packets.push({ data, key: kind === 'IDR' || kind === 'I', frame });
    if (kind !== 'B') frameNumber += 1;
  };
  let anchor = 0;
  for (let group = 0; group < groups; group += 1) {
    if (group > 0 && open) {
      add('I', anchor + 3);
      add('B', anchor + 1);
      add('B', anchor + 2);
      anchor += 3;
    } else {
      const start = group === 0 ? 0 : anchor + 1;
      idrFrame = start;
      frameNumber = 0;
      add('IDR', start);
      anchor = start;
    }
    for (let step = 0; step < steps; step += 1) {
      add('P', anchor + 3, anchor);
      add('B', anchor + 1);
      add('B', anchor + 2);
      anchor += 3;
    }
  }
  return packets;
}
