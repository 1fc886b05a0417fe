/**
 * A number with a fixed count of decimals, a point, and a true minus sign; never "-0", never an exponent.
 * The same on every machine: the locale plays no part.
 * @param decimals 0 to 12
 * @throws RangeError when the value is not finite or is 1e21 or more
 */
export function numberText(value: number, decimals: number): string {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e21) {
    throw new RangeError(`a printed number must be finite, got ${value}`);
  }
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

/** A share of 1 as a percentage: 0.125 → "12.5 %". */
export function percentText(share: number, decimals = 1): string {
  return `${numberText(share * 100, decimals)} %`;
}

/** "1 motion", "3 motions". */
export function countText(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
