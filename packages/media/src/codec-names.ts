/** Codes of containers and of the demuxer, in plain words. Left out: what has no better name than its code. */
const names: readonly (readonly [pattern: RegExp, name: string])[] = [
  [/^(avc|avc1|avc3|V_MPEG4\/ISO\/AVC)$/i, 'H.264'],
  [/^(hevc|hvc1|hev1|dvh1|dvhe|V_MPEGH\/ISO\/HEVC)$/i, 'HEVC (H.265)'],
  [/^(vvc1|vvi1)$/i, 'VVC (H.266)'],
  [/^(vp8|vp08|V_VP8)$/i, 'VP8'],
  [/^(vp9|vp09|V_VP9)$/i, 'VP9'],
  [/^(av1|av01|V_AV1)$/i, 'AV1'],
  [/^(mp4v|V_MPEG4\/ISO\/(ASP|SP|AP)|V_MPEG4\/MS\/V3|xvid|divx|dx50)$/i, 'MPEG-4 part 2'],
  [/^(prores|ap[a-z0-9]{2}|V_PRORES)$/i, 'ProRes'],
  [/^(jpeg|mjp[abg2]|dmb1|V_MJPEG)$/i, 'Motion JPEG'],
  [/^(s263|h263)$/i, 'H.263'],
  [/^V_MPEG[12]$/i, 'MPEG-1 or MPEG-2'],
  [/^V_THEORA$/i, 'Theora'],
];

/** `mp4v` → `MPEG-4 part 2 (mp4v)`; an unknown code stays as it is. */
export function codecText(code: string): string {
  const name = codecName(code);
  return name === code ? `“${code}”` : `${name} (${code})`;
}

export function codecName(code: string): string {
  return names.find(([pattern]) => pattern.test(code))?.[1] ?? code;
}
