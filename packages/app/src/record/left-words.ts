/** How long something still takes: "12 s", and from a minute and a half on "2 min". Never less than a second. */
export function leftWords(seconds: number): string {
  return seconds < 90 ? `${Math.max(1, Math.round(seconds))} s` : `${Math.round(seconds / 60)} min`;
}
