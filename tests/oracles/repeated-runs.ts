/**
 * Repeated runs by trying every stretch of every row, from the definition alone: a run has two motions or more, lies in
 * one row, comes at least twice without overlap when counted from the left, and is left out when a longer one occurs
 * exactly as often and every occurrence of the shorter lies inside one of the longer. Rows are short; nothing is clever.
 */
export interface OracleMotion {
  readonly word: string;
  readonly time: number;
}

export interface OracleRun {
  readonly words: readonly string[];
  readonly count: number;
  readonly total: number;
}

interface Place {
  readonly row: number;
  readonly at: number;
}

interface Every {
  readonly words: readonly string[];
  readonly places: readonly Place[];
}

export function everyRepeatedRun(rows: readonly (readonly OracleMotion[])[]): OracleRun[] {
  const every = stretches(rows);
  return every
    .filter((run) => run.words.length >= 2 && !every.some((longer) => covers(longer, run)))
    .map((run) => counted(rows, run))
    .filter(({ count }) => count >= 2);
}

function stretches(rows: readonly (readonly OracleMotion[])[]): Every[] {
  const found = new Map<string, { words: readonly string[]; places: Place[] }>();
  rows.forEach((motions, row) => {
    for (let at = 0; at < motions.length; at += 1) {
      for (let end = at + 1; end <= motions.length; end += 1) {
        const words = motions.slice(at, end).map(({ word }) => word);
        const key = JSON.stringify(words);
        const known = found.get(key) ?? { words, places: [] };
        known.places.push({ row, at });
        found.set(key, known);
      }
    }
  });
  return [...found.values()];
}

function covers(longer: Every, run: Every): boolean {
  if (longer.words.length <= run.words.length || longer.places.length !== run.places.length) return false;
  return run.places.every(({ row, at }) =>
    longer.places.some(
      (other) =>
        other.row === row && other.at <= at && at + run.words.length <= other.at + longer.words.length,
    ),
  );
}

function counted(rows: readonly (readonly OracleMotion[])[], { words, places }: Every): OracleRun {
  let [count, total] = [0, 0];
  const free = rows.map(() => 0);
  for (const { row, at } of places) {
    if (at < (free[row] ?? 0)) continue;
    free[row] = at + words.length;
    count += 1;
    for (let step = 0; step < words.length; step += 1) total += rows[row]?.[at + step]?.time ?? 0;
  }
  return { words, count, total };
}

/**
 * Occurrences with one change, between the counted exact ones: at each place in turn another motion instead, one more
 * inside, or one missing, where they overlap nothing taken before. Exact ones are taken first, from the left.
 */
export function nearOccurrences(
  rows: readonly (readonly OracleMotion[])[],
  words: readonly string[],
): { readonly row: number; readonly at: number; readonly length: number; readonly likeness: string }[] {
  const found: { row: number; at: number; length: number; likeness: string }[] = [];
  rows.forEach((motions, row) => {
    const text = motions.map(({ word }) => word);
    const taken = text.map(() => false);
    const take = (at: number, length: number, likeness: string) => {
      if (at + length > text.length || taken.slice(at, at + length).some(Boolean)) return;
      if (!alike(words, text.slice(at, at + length), likeness)) return;
      taken.fill(true, at, at + length);
      found.push({ row, at, length, likeness });
    };
    text.forEach((_, at) => {
      take(at, words.length, 'exact');
    });
    text.forEach((_, at) => {
      take(at, words.length, 'differs');
      take(at, words.length + 1, 'extra');
      take(at, words.length - 1, 'missing');
    });
  });
  return found.sort((a, b) => a.row - b.row || a.at - b.at);
}

function alike(words: readonly string[], text: readonly string[], likeness: string): boolean {
  const same = (a: readonly string[], b: readonly string[]) => JSON.stringify(a) === JSON.stringify(b);
  const without = (list: readonly string[], index: number) => list.filter((_, at) => at !== index);
  if (likeness === 'exact') return same(words, text);
  if (likeness === 'differs') {
    return !same(words, text) && words.some((_, index) => same(without(words, index), without(text, index)));
  }
  if (likeness === 'missing') return words.some((_, index) => same(without(words, index), text));
  return text.some((_, index) => index > 0 && index < text.length - 1 && same(words, without(text, index)));
}
