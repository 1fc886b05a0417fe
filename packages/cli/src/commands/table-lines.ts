/** Columns as wide as their widest cell; the first to the left, the others to the right. */
export function tableLines(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const widths = head.map((title, at) => Math.max(title.length, ...rows.map((row) => row[at]?.length ?? 0)));
  return [head, ...rows].map((cells) =>
    cells
      .map((cell, at) => (at === 0 ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}
