import { numberText } from '../../../ground/units/index.ts';

/**
 * The odds in a plain sentence. They say how often chance would do this, not how likely a method is to be better.
 * @param chance 0 to 1; undefined when nothing can be said
 */
export function oddsWords(
  chance: number | undefined,
  verdict: 'shorter' | 'longer' | 'open' | 'unknown',
): string {
  if (chance === undefined) {
    return 'Whether the difference is more than chance cannot be told from these cycles.';
  }
  const often = `If both methods took equally long, chance alone would give a difference as large as this in ${oneOf(chance)} such studies`;
  return verdict === 'open' ? `${often}: the difference is not shown.` : `${often}.`;
}

/** "about 1 of 250", "more than half of all"; to two significant digits. */
export function oneOf(chance: number): string {
  if (chance > 0.5) return 'more than half of all';
  if (chance < 1e-6) return 'fewer than 1 of 1,000,000';
  const times = 1 / chance;
  if (times < 3) return `about ${Math.round(chance * 10)} of 10`;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(times)) - 1);
  return `about 1 of ${grouped(Math.round(times / step) * step)}`;
}

function grouped(value: number): string {
  return numberText(value, 0).replace(/\B(?=(\d{3})+$)/g, ',');
}
