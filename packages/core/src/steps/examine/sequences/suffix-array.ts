/**
 * The starts of all suffixes of a text in the order of the suffixes, by induced sorting (Nong, Zhang and Chan 2009, "Two
 * Efficient Algorithms for Linear Time Suffix Array Construction", from memory). Time and memory grow with the length.
 * @param text whole numbers from 0 to `letters` − 1
 */
export function suffixArray(text: Int32Array, letters: number): Int32Array {
  const order = new Int32Array(text.length);
  if (text.length > 0) sortSuffixes(text, order, letters);
  return order;
}

interface Sorting {
  readonly text: Int32Array;
  readonly order: Int32Array;
  /** 1 where a suffix comes before the one that begins one letter later. */
  readonly rises: Uint8Array;
  readonly counts: Int32Array;
  readonly ends: Int32Array;
}

function sortSuffixes(text: Int32Array, order: Int32Array, letters: number): void {
  const ends = new Int32Array(letters);
  const work: Sorting = { text, order, rises: risesOf(text), counts: countsOf(text, letters), ends };
  const valleys = valleysOf(work.rises);
  induce(work, valleys);
  const { names, distinct } = nameValleys(work, valleys);
  const sorted = distinct === valleys.length ? inOrder(names) : suffixArray(names, distinct);
  induce(
    work,
    sorted.map((rank) => valleys[rank] as number),
  );
}

function risesOf(text: Int32Array): Uint8Array {
  const rises = new Uint8Array(text.length);
  for (let at = text.length - 2; at >= 0; at -= 1) {
    const [here, next] = [text[at] as number, text[at + 1] as number];
    rises[at] = here < next || (here === next && rises[at + 1] === 1) ? 1 : 0;
  }
  return rises;
}

function countsOf(text: Int32Array, letters: number): Int32Array {
  const counts = new Int32Array(letters);
  for (let at = 0; at < text.length; at += 1) {
    const letter = text[at] as number;
    counts[letter] = (counts[letter] as number) + 1;
  }
  return counts;
}

/** The places where a text begins to rise after it fell. */
function valleysOf(rises: Uint8Array): Int32Array {
  const found: number[] = [];
  for (let at = 1; at < rises.length; at += 1) if (rises[at] === 1 && rises[at - 1] === 0) found.push(at);
  return Int32Array.from(found);
}

/** Puts the valleys into the ends of their buckets, in the order given, and lets them order all other suffixes. */
function induce(work: Sorting, valleys: Int32Array): void {
  const { text, order, rises, ends } = work;
  order.fill(-1);
  bucketEnds(work, false);
  for (let index = valleys.length - 1; index >= 0; index -= 1) {
    const at = valleys[index] as number;
    order[take(ends, text[at] as number, -1)] = at;
  }
  bucketEnds(work, true);
  const last = text.length - 1;
  order[take(ends, text[last] as number, 1)] = last;
  for (let index = 0; index < order.length; index += 1) {
    const at = (order[index] as number) - 1;
    if (at >= 0 && rises[at] === 0) order[take(ends, text[at] as number, 1)] = at;
  }
  bucketEnds(work, false);
  for (let index = order.length - 1; index >= 0; index -= 1) {
    const at = (order[index] as number) - 1;
    if (at >= 0 && rises[at] === 1) order[take(ends, text[at] as number, -1)] = at;
  }
}

/** First places of the buckets, or the places after their last. */
function bucketEnds({ counts, ends }: Sorting, first: boolean): void {
  let sum = 0;
  for (let letter = 0; letter < counts.length; letter += 1) {
    const count = counts[letter] as number;
    ends[letter] = first ? sum : sum + count;
    sum += count;
  }
}

function take(ends: Int32Array, letter: number, step: 1 | -1): number {
  const at = ends[letter] as number;
  ends[letter] = at + step;
  return step === 1 ? at : at - 1;
}

/** Numbers the stretches from each valley to the next in their order; equal stretches have equal numbers. */
function nameValleys(work: Sorting, valleys: Int32Array): { names: Int32Array; distinct: number } {
  const places = new Int32Array(work.text.length).fill(-1);
  valleys.forEach((at, index) => {
    places[at] = index;
  });
  const names = new Int32Array(valleys.length);
  let [distinct, before] = [0, -1];
  for (let index = 0; index < work.order.length; index += 1) {
    const valley = places[work.order[index] as number] as number;
    if (valley < 0) continue;
    if (before < 0 || !sameStretch(work.text, valleys, before, valley)) distinct += 1;
    names[valley] = distinct - 1;
    before = valley;
  }
  return { names, distinct };
}

function sameStretch(text: Int32Array, valleys: Int32Array, a: number, b: number): boolean {
  const [atA, atB] = [valleys[a] as number, valleys[b] as number];
  const [endA, endB] = [valleys[a + 1], valleys[b + 1]];
  if (endA === undefined || endB === undefined || endA - atA !== endB - atB) return false;
  for (let step = 0; step <= endA - atA; step += 1) if (text[atA + step] !== text[atB + step]) return false;
  return true;
}

function inOrder(names: Int32Array): Int32Array {
  const order = new Int32Array(names.length);
  names.forEach((name, index) => {
    order[name] = index;
  });
  return order;
}

/**
 * How many letters each suffix has in common with the one before it in the order, no further than the next separator
 * (letter 0), by Kasai's walk (Kasai and others 2001, from memory); 0 for the first.
 */
export function commonStarts(text: Int32Array, order: Int32Array): Int32Array {
  const n = text.length;
  const rank = new Int32Array(n);
  for (let index = 0; index < n; index += 1) rank[order[index] as number] = index;
  const common = new Int32Array(n);
  let length = 0;
  for (let at = 0; at < n; at += 1) {
    const index = rank[at] as number;
    if (index === 0) {
      length = 0;
      continue;
    }
    const other = order[index - 1] as number;
    while (at + length < n && other + length < n && text[at + length] === text[other + length]) length += 1;
    common[index] = length;
    if (length > 0) length -= 1;
  }
  return cappedAtSeparators(text, order, common);
}

function cappedAtSeparators(text: Int32Array, order: Int32Array, common: Int32Array): Int32Array {
  const reach = new Int32Array(text.length);
  for (let at = text.length - 1; at >= 0; at -= 1) {
    reach[at] = text[at] === 0 ? 0 : 1 + (reach[at + 1] ?? 0);
  }
  return common.map((length, index) => Math.min(length, reach[order[index] as number] as number));
}
