const most = 20;

/** A list for a sentence: the first twenty, and how many more there are. */
export function namesText(names: readonly string[]): string {
  const shown = names.slice(0, most).map((name) => `“${name}”`);
  const more = names.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}
