/** Speeds of play offered to the analyst: film seconds per second; backward is the same with a minus. */
export const speeds = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4] as const;

export type Speed = (typeof speeds)[number];

/** The next offered speed above or below; the fastest and slowest stay. The sign (direction) is kept. */
export function nextSpeed(speed: number, change: 1 | -1): number {
  const size = Math.abs(speed);
  const sign = speed < 0 ? -1 : 1;
  const next =
    change > 0 ? speeds.find((one) => one > size) : [...speeds].reverse().find((one) => one < size);
  return sign * (next ?? (change > 0 ? speeds[speeds.length - 1] : speeds[0]) ?? 1);
}

/** A speed as a person reads it: `1/4×`, `2×`. */
export function speedText(speed: number): string {
  const size = Math.abs(speed);
  const text = size < 1 ? `1/${Math.round(1 / size)}×` : `${size}×`;
  return speed < 0 ? `−${text}` : text;
}
