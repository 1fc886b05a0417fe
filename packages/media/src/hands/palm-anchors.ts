/** Size of the picture that the palm model takes, in pixels. */
export const palmInput = 192;

/**
 * Where the boxes of the palm model are centred, as shares of its picture: two numbers to each of the 2016 boxes.
 * A grid cell has two boxes in each layer, and layers of one stride share a grid: one of 8 pixels, three of 16, so 24 × 24
 * × 2 and 12 × 12 × 6 boxes, row by row. Source: the anchor options published with the model (MediaPipe,
 * palm_detection_cpu.pbtxt: strides 8, 16, 16, 16, offsets 0.5, aspect ratio 1, fixed size).
 */
export function palmAnchors(): Float32Array {
  const grids = [
    { stride: 8, boxes: 2 },
    { stride: 16, boxes: 6 },
  ];
  const centres = grids.flatMap(({ stride, boxes }) => {
    const cells = palmInput / stride;
    return Array.from({ length: cells * cells }, (_, cell) => {
      const [x, y] = [((cell % cells) + 0.5) / cells, (Math.floor(cell / cells) + 0.5) / cells];
      return Array.from({ length: boxes }, () => [x, y]).flat();
    }).flat();
  });
  return Float32Array.from(centres);
}
