const width = 100;

/** Breaks a sentence into lines; the first begins with `first`, the others with `indent`. */
export function wrapped(text: string, indent: string, first = indent): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(' ')) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}
