import { hands } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, groupedBy, isNoise, noiseLimit, totalTime } from './context.ts';
import type { LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords, timeWords } from './stretches.ts';
import { toolUptakes } from './tool-uptakes.ts';

/** Our own choice, no source: what is shorter or comes less often is no sequence worth a batch. */
const limits = { motions: 3, times: 3, longest: 12, tool: 2 } as const;

/** Motions that only bring things to the work and away: a batch or a gang tool makes them once for all. */
const handling = new Set(['TE', 'G', 'TL', 'RL', 'Sh', 'St', 'F', 'PP']);

/** The same motions with the same things, over and over within a cycle. */
interface Repetition {
  readonly pieces: readonly Piece[];
  readonly length: number;
  readonly times: number;
}

/** One sequence is repeated inside the cycle. */
export const repeated: LeadRule = {
  code: 'repeated',
  name: 'The same sequence over and over',
  principles: [19, 18],
  limit: `${noiseLimit} Said when a hand makes the same ${limits.motions} to ${limits.longest} motions at least ${limits.times} times one after another in a cycle, or takes up, uses and lays down the same tool at least ${limits.tool} times in a cycle: our own choice, no source. A record without marked cycles is left out: there the cycle itself repeats.`,
  arrangement: 'kept',
  change:
    'Reaching, grasping, carrying, choosing and letting go are made once for all repetitions instead of once for each: at best all the others are gone, at worst none.',
  remedies: [
    { how: 'combine', text: 'Take several parts at once; a tray or a magazine brings them in their places.' },
    { how: 'combine', text: 'A tool for several at once, or one that stays in the hand until all are done.' },
    {
      how: 'rearrange',
      text: 'Do one motion for all parts, then the next for all, so that nothing is laid down in between.',
    },
    { how: 'eliminate', text: 'Ask whether so many are needed: fewer screws, clips instead of screws.' },
  ],
  questions: [
    'How many fit into the hand at once?',
    'Could they be delivered in the arrangement in which they are used?',
    'Must it be so many? Ask those who designed the product.',
  ],
  find: (context) =>
    hands.flatMap((hand) => {
      const cycles = context.cycles.filter(({ number }) => number > 0);
      const tools = toolDrafts(
        context,
        hand,
        cycles.map((cycle) => cycle[hand]),
      );
      const told = new Set(tools.flatMap(({ effects }) => effects.map(({ piece }) => piece)));
      const found = cycles.flatMap((cycle) => longestRepetition(cycle[hand]) ?? []);
      const runs = [...groupedBy(found, wordsOf)].flatMap(([words, list]) =>
        draft(context, hand, words, list, told),
      );
      return [...tools, ...numbered(runs)];
    }),
};

/** Long names are cut, and what is then alike is told apart by a number. */
function numbered(drafts: readonly LeadDraft[]): LeadDraft[] {
  return [...groupedBy(drafts, ({ about }) => about)].flatMap(([about, list]) =>
    list.map((item, index) => (index === 0 ? item : { ...item, about: `${about} (${index + 1})` })),
  );
}

/** A number for each kind of motion with each thing, so that the many comparisons are of numbers. */
function tokensOf(pieces: CycleReading['left']): readonly number[] {
  const numbers = new Map<string, number>();
  return pieces.map(({ kind, object }) => {
    const word = object === undefined ? kind : `${kind} ${object}`;
    const known = numbers.get(word) ?? numbers.size;
    numbers.set(word, known);
    return known;
  });
}

function wordsOf({ pieces, length }: Repetition): string {
  const words = pieces
    .slice(0, length)
    .map(({ kind, object }) => [motionFactsOf(kind).name, object].filter(Boolean).join(' '));
  return words.join(', ');
}

/** The repetition that takes most time among all periods; undefined when there is none. */
function longestRepetition(pieces: CycleReading['left']): Repetition | undefined {
  const tokens = tokensOf(pieces);
  let best: Repetition | undefined;
  for (let length = limits.motions; length <= limits.longest; length += 1) {
    let same = 0;
    for (let at = length; at <= tokens.length; at += 1) {
      const goesOn =
        at < tokens.length && tokens[at] === tokens[at - length] && pieces[at]?.kind !== 'unmarked';
      if (goesOn) same += 1;
      else {
        best = longer(best, repetitionBefore(pieces, at, same, length));
        same = 0;
      }
    }
  }
  return best;
}

/** The whole repetitions that end where the likeness ends; `same` motions equal the one a period before them. */
function repetitionBefore(
  pieces: CycleReading['left'],
  end: number,
  same: number,
  length: number,
): Repetition | undefined {
  const times = Math.floor(same / length) + 1;
  if (times < limits.times) return undefined;
  const start = end - same - length;
  return { pieces: pieces.slice(start, start + times * length), length, times };
}

function longer(a: Repetition | undefined, b: Repetition | undefined): Repetition | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return totalTime(b.pieces) > totalTime(a.pieces) ? b : a;
}

function draft(
  context: LeadContext,
  hand: LeadDraft['hand'],
  words: string,
  list: readonly Repetition[],
  told: ReadonlySet<Piece>,
): LeadDraft[] {
  const all = list.flatMap(({ pieces }) => pieces);
  const time = aCycle(context, totalTime(all));
  const spare = list.flatMap(({ pieces, length }) =>
    pieces.slice(length).filter((piece) => handling.has(piece.kind) && !told.has(piece)),
  );
  if (isNoise(context, aCycle(context, totalTime(spare)))) return [];
  const times = list.reduce((most, item) => Math.max(most, item.times), 0);
  return [
    {
      hand,
      about: `run ${words.slice(0, 200)}`,
      traces: list.map(({ pieces }) => ({
        cycle: pieces[0]?.cycle ?? 0,
        hand,
        from: pieces[0]?.from ?? 0,
        to: pieces.at(-1)?.to ?? 0,
      })),
      evidence: `The ${hand} hand makes the same sequence up to ${times} times one after another: ${words}. It takes ${timeText(time, 'seconds')} a cycle, ${cycleWords(context, all)}.`,
      figures: [
        { name: 'repeated sequence', value: time, unit: 'time' },
        { name: 'handling after the first time', value: aCycle(context, totalTime(spare)), unit: 'time' },
        { name: 'most times in a cycle', value: times, unit: 'count' },
      ],
      effects: spare.map((piece) => shortened(piece, 0, piece.duration)),
    },
  ];
}

/** The same tool taken up, used and laid down several times in a cycle. */
function toolDrafts(
  context: LeadContext,
  hand: LeadDraft['hand'],
  rows: readonly CycleReading['left'][],
): LeadDraft[] {
  const often = rows.flatMap((pieces) =>
    [...groupedBy(toolUptakes(pieces), ({ tool }) => tool).values()].filter(
      (list) => list.length >= limits.tool,
    ),
  );
  return [...groupedBy(often, ([first]) => first?.tool ?? '')].flatMap(([tool, inCycles]) => {
    const uptakes = inCycles.flat();
    const all = uptakes.flatMap((uptake) => uptake.handling);
    const spare = inCycles.flatMap((list) => list.slice(1).flatMap((uptake) => uptake.handling));
    if (isNoise(context, aCycle(context, totalTime(spare)))) return [];
    const times = inCycles.reduce((most, { length }) => Math.max(most, length), 0);
    return [
      {
        hand,
        about: `tool ${tool}`,
        traces: uptakes.map(({ cycle, from, to }) => ({ cycle, hand, from, to })),
        evidence: `The ${hand} hand takes up ${tool}, uses it and lays it down up to ${times} times in one cycle. Taking up and laying down takes ${timeWords(context, totalTime(all))}, all but the first time ${timeText(aCycle(context, totalTime(spare)), 'seconds')}, ${cycleWords(context, all)}.`,
        figures: [
          {
            name: 'taking up and laying down',
            value: aCycle(context, totalTime(all)),
            unit: 'time' as const,
          },
          {
            name: 'handling after the first time',
            value: aCycle(context, totalTime(spare)),
            unit: 'time' as const,
          },
          { name: 'most times in a cycle', value: times, unit: 'count' as const },
        ],
        effects: spare.map((piece) => shortened(piece, 0, piece.duration)),
      },
    ];
  });
}
