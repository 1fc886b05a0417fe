const cutOffHertz = 10;
const threshold = 0.05;
const padding = 4;

/**
 * Smoothness of a movement as the spectral arc length of its speed: the length of the curve that the spectrum of the
 * speed draws, the steadier the movement the shorter. Without unit, below 0; nearer to 0 is smoother. It does not change
 * with the size of the movement and hardly with its duration.
 *
 * Source: S. Balasubramanian, A. Melendez-Calderon, A. Roby-Brami, E. Burdet, “On the analysis of movement smoothness”,
 * Journal of NeuroEngineering and Rehabilitation 12:112 (2015): up to 10 Hz, as far as the spectrum reaches 0.05 of its
 * size at 0 Hz, zeros added to 16 times the next power of two.
 * @param speeds speed at equal steps of time, of one movement from rest to rest
 * @param perSecond samples a second, above 0
 * @returns nothing for fewer than 5 samples or a hand that does not move
 */
export function spectralArcLength(speeds: ArrayLike<number>, perSecond: number): number | undefined {
  const count = speeds.length;
  if (count < 5 || !(perSecond > 0)) return undefined;
  const size = 2 ** (Math.ceil(Math.log2(count)) + padding);
  const last = Math.min(size / 2, Math.floor((cutOffHertz * size) / perSecond));
  const spectrum = Array.from({ length: last + 1 }, (_, bin) =>
    magnitude(speeds, (2 * Math.PI * bin) / size),
  );
  // Speeds are not below 0, so the spectrum is largest at 0 Hz.
  const most = spectrum[0] ?? 0;
  if (!(most > 0)) return undefined;
  const reach = spectrum.findLastIndex((value) => value / most >= threshold);
  if (reach < 1) return undefined;
  let length = 0;
  for (let bin = 1; bin <= reach; bin += 1)
    length += Math.hypot(1 / reach, ((spectrum[bin] as number) - (spectrum[bin - 1] as number)) / most);
  return -length;
}

/** Size of the Fourier sum at an angle a sample; the turning is by multiplication, exact to 1e-10 for 100,000 samples. */
function magnitude(values: ArrayLike<number>, angle: number): number {
  const [turnReal, turnImaginary] = [Math.cos(angle), Math.sin(angle)];
  let [real, imaginary, cos, sin] = [0, 0, 1, 0];
  for (let index = 0; index < values.length; index += 1) {
    const value = values[index] as number;
    real += value * cos;
    imaginary += value * sin;
    [cos, sin] = [cos * turnReal - sin * turnImaginary, cos * turnImaginary + sin * turnReal];
  }
  return Math.hypot(real, imaginary);
}
