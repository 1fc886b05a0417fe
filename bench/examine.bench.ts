import type { MethodReading } from '@evenhand/core/examine';
import { figuresOf, findLeads, readMethod, repeatedSequences, variationOf } from '@evenhand/core/examine';
import type { Study } from '@evenhand/core/ground/study';
import { fixed, printRace, printTable, quantile, race } from './harness.ts';
import { manyCycles } from './many-cycles.ts';

function read(study: Study): MethodReading {
  const reading = readMethod(study, 'm');
  if (!reading.ok) throw new Error(reading.error.message);
  return reading.value;
}

/** Everything that the examine desk shows. */
function examine(study: Study): unknown {
  const reading = read(study);
  return [
    findLeads(reading),
    figuresOf(reading, 'niebel-freivalds'),
    repeatedSequences(reading),
    variationOf(reading),
  ];
}

/** The same runs by counting every stretch of up to twelve motions as text: simple, and quadratic in their length. */
function countedStretches(study: Study): number {
  const counts = new Map<string, number>();
  for (const { left, right } of read(study).cycles) {
    for (const pieces of [left, right]) {
      const words = pieces.map(({ kind, object }) => `${kind} ${object ?? ''}`);
      for (let from = 0; from < words.length; from += 1) {
        for (let to = from + 2; to <= Math.min(words.length, from + 12); to += 1) {
          const stretch = words.slice(from, to).join('|');
          counts.set(stretch, (counts.get(stretch) ?? 0) + 1);
        }
      }
    }
  }
  return counts.size;
}

const sizes = {
  one: manyCycles(1),
  middle: manyCycles(150),
  large: manyCycles(1500),
  huge: manyCycles(15_000),
};
const motions = (study: Study) =>
  (study.methods[0]?.left.items.length ?? 0) + (study.methods[0]?.right.items.length ?? 0);
const named = (study: Study) =>
  `${motions(study).toLocaleString('en')} motions, ${study.methods[0]?.cycles.items.length} cycles`;

printRace(
  `figures, leads, sequences and variation: ${named(sizes.one)} (wanted: 5 ms)`,
  await race(
    { 'all of them': () => examine(sizes.one), 'leads alone': () => findLeads(read(sizes.one)) },
    { rounds: 50, warmUp: 20 },
  ),
);
printRace(
  `the same: ${named(sizes.large)} (wanted: 1 s)`,
  await race(
    {
      'all of them': () => examine(sizes.large),
      'reading alone': () => read(sizes.large),
      'with leads': () => findLeads(read(sizes.large)),
      'with figures': () => figuresOf(read(sizes.large), 'niebel-freivalds'),
      'with repeated sequences': () => repeatedSequences(read(sizes.large)),
      'with variation': () => variationOf(read(sizes.large)),
      'rival: every stretch of up to 12 motions counted as text': () => countedStretches(sizes.large),
    },
    { rounds: 5, warmUp: 1 },
  ),
);

const growth: { readonly n: number; readonly ms: number }[] = [];
for (const study of [sizes.middle, sizes.large, sizes.huge]) {
  const [timing] = await race({ all: () => examine(study) }, { rounds: 3, warmUp: 1 });
  growth.push({ n: motions(study), ms: quantile(timing?.ms ?? [], 0.5) });
}
const exponent = (from: number, to: number, of: (n: number) => number) =>
  fixed(Math.log(of(to) / of(from)) / Math.log(to / from));
const timeOf = (n: number) => growth.find((item) => item.n === n)?.ms ?? Number.NaN;
const nLogN = (n: number) => n * Math.log(n);
const first = growth[0]?.n ?? Number.NaN;
printTable(
  'growth: time as a power of the number of motions, beside the power that n log n has there',
  ['motions', 'median ms', 'power since the first line', 'n log n', 'power since the line above', 'n log n'],
  growth.map(({ n, ms }, index) => {
    const before = growth[index - 1]?.n;
    if (before === undefined) return [String(n), fixed(ms), '', '', '', ''];
    const powers = [first, before].flatMap((from) => [exponent(from, n, timeOf), exponent(from, n, nLogN)]);
    return [String(n), fixed(ms), ...powers];
  }),
);
