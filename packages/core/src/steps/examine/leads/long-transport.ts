import { micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { workAreaOf, workAreas } from '../../../ground/tables/index.ts';
import { numberText, timeText } from '../../../ground/units/index.ts';
import type { Piece } from '../reading/index.ts';
import { shortened } from '../stake/index.ts';
import { aCycle, allPieces, groupedBy, isNoise, noiseLimit, totalTime, traceOf } from './context.ts';
import type { EvidenceFigure, LeadContext, LeadDraft, LeadRule } from './lead.ts';
import { cycleWords, timeWords } from './stretches.ts';

/** A transport is long when it takes more than this many times the middle one of the others of its kind. Ours. */
const longRatio = 1.5;
const { maximumRadius, who } = workAreas.small;

/** Transports of one kind and hand with one thing between the same places. */
interface Route {
  readonly hand: Hand;
  readonly kind: 'TE' | 'TL';
  readonly about: string;
  readonly object: string | undefined;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly pieces: readonly Piece[];
  /** Mean of one, microseconds. */
  readonly mean: number;
}

/** What the other routes of the same kind take, microseconds for one. */
interface Others {
  readonly quickest: number;
  readonly middle: number;
}

/** The hand travels far, empty or loaded. */
export const longTransport: LeadRule = {
  code: 'long-transport',
  name: 'Long transport',
  principles: [11, 14, 4],
  limit: `Long: one takes more than ${numberText(longRatio, 1)} times the middle one of the other transports of its kind in the record (ours), or its place lies beyond the maximum work area (${numberText(maximumRadius, 0)} mm from the shoulder: ${who}, ANSUR II; the shoulder taken above the near edge of the bench, which is ours). No table of movement times is used. ${noiseLimit}`,
  arrangement: 'kept',
  change:
    'The transport takes at best as long as the quickest other one of its kind in the record, at the worst as long as the middle one of the others; one from a place to itself is left out.',
  remedies: [
    {
      how: 'eliminate',
      text: 'A feeder, a chute or gravity brings the part to where it is used, or takes it away.',
    },
    { how: 'combine', text: 'Carry two at once, or something on each way.' },
    {
      how: 'rearrange',
      text: 'Bring the place nearer: what is used most often lies nearest to where it is used.',
    },
    { how: 'simplify', text: 'Clear the way: no rim to lift over, no obstacle to go around.' },
  ],
  questions: [
    'What keeps the place where it is: size, weight, a machine, habit?',
    'Does the hand go far, or does it go slowly because of the load, the aim or something in its way?',
    'What would have to move to make room nearer by?',
  ],
  caution:
    'Reach differs from person to person, and height and load count as much as distance. The radius comes from a survey of body sizes (ANSUR II, NATICK/TR-15/007) and is a hint, no limit for a person: local rules and qualified people decide.',
  find,
};

function find(context: LeadContext): LeadDraft[] {
  const routes = routesOf(context);
  const ranked = { TE: ranking(routes, 'TE'), TL: ranking(routes, 'TL') };
  return routes.flatMap((route) => draft(context, route, othersOf(ranked[route.kind], route)));
}

function routesOf(context: LeadContext): Route[] {
  const transports = allPieces(context).filter(
    (piece) => piece.duration > 0 && (piece.kind === 'TE' || piece.kind === 'TL') && !staysThere(piece),
  );
  const names = neutralNames(context);
  const groups = groupedBy(transports, (piece) => `${piece.hand} ${aboutOf(names, piece)}`);
  return [...groups.values()].flatMap((pieces): Route[] => {
    const [first] = pieces;
    if (first === undefined) return [];
    const { hand, kind, object, motion } = first;
    const about = aboutOf(names, first);
    const mean = totalTime(pieces) / pieces.length;
    const [from, to] = [motion?.from, motion?.to];
    return [{ hand, kind: kind === 'TE' ? 'TE' : 'TL', about, object, from, to, pieces, mean }];
  });
}

/** From a place to itself: a short way by nature, no measure for others. */
function staysThere({ motion }: Piece): boolean {
  return motion?.from !== undefined && motion.from === motion.to;
}

/** Names of places that are the same for a place and the one that serves the other hand in the same way. */
function neutralNames({ reading }: LeadContext): ReadonlyMap<string, string> {
  const { places } = reading.study;
  const names = new Map(places.map(({ id, name }) => [id, name]));
  return new Map(
    places.map(({ id, mirror, name }) => {
      const twin = mirror === undefined || mirror === id ? undefined : names.get(mirror);
      return [id, twin === undefined ? name : [name, twin].sort().join(' / ')];
    }),
  );
}

/** "TE ring, from Front to Ring bin": the same in either hand where the places mirror one another. */
function aboutOf(names: ReadonlyMap<string, string>, { kind, object, motion }: Piece): string {
  const words = object === undefined ? kind : `${kind} ${object}`;
  const from = motion?.from === undefined ? '' : ` from ${names.get(motion.from) ?? motion.from}`;
  const to = motion?.to === undefined ? '' : ` to ${names.get(motion.to) ?? motion.to}`;
  return from + to === '' ? words : `${words},${from}${to}`;
}

function ranking(routes: readonly Route[], kind: Route['kind']): readonly Route[] {
  return routes.filter((route) => route.kind === kind).sort((a, b) => a.mean - b.mean);
}

/** The quickest and the middle one of a ranking without the route itself; undefined when there is no other. */
function othersOf(ranked: readonly Route[], route: Route): Others | undefined {
  const own = ranked.indexOf(route);
  const count = ranked.length - 1;
  const at = (index: number) => ranked[index >= own ? index + 1 : index]?.mean ?? 0;
  if (count === 0) return undefined;
  return { quickest: at(0), middle: (at(Math.floor((count - 1) / 2)) + at(Math.floor(count / 2))) / 2 };
}

function draft(context: LeadContext, route: Route, others: Others | undefined): LeadDraft[] {
  const { about, hand, mean, pieces } = route;
  const total = totalTime(pieces);
  const excess = others === undefined ? 0 : pieces.length * (mean - others.middle);
  const slow =
    others !== undefined && mean > longRatio * others.middle && !isNoise(context, aCycle(context, excess));
  const far = farthest(context, route);
  const beyond = far?.area === 'beyond' && !isNoise(context, aCycle(context, total));
  if (!slow && !beyond) return [];
  return [
    {
      hand,
      about,
      traces: pieces.map(traceOf),
      evidence: `${transportWords(context, route)} for ${timeWords(context, total)}, ${cycleWords(context, pieces)}.${ratioWords(route, others)}${far?.words ?? ''}`,
      figures: figuresOf(context, route, others, far?.distance),
      effects: pieces.map((piece) =>
        shortened(piece, others?.quickest ?? piece.duration, others?.middle ?? piece.duration),
      ),
    },
  ];
}

function transportWords({ reading }: LeadContext, { from, hand, kind, object, to }: Route): string {
  const verb = kind === 'TE' ? (object === undefined ? 'reaches' : 'reaches for') : 'carries';
  const what = object ?? (kind === 'TE' ? '' : 'something');
  const start = from === undefined ? '' : `from ${reading.placeName(from)}`;
  const end = to === undefined ? '' : `to ${reading.placeName(to)}`;
  return ['The', hand, 'hand', verb, what, start, end].filter((word) => word !== '').join(' ');
}

function ratioWords({ kind, mean }: Route, others: Others | undefined): string {
  const one = timeText(micros(Math.round(mean)), 'seconds');
  const name = kind === 'TE' ? 'empty' : 'loaded';
  if (others === undefined) return ` One takes ${one}; the record has no other ${name} transport to compare.`;
  const middle = timeText(micros(Math.round(others.middle)), 'seconds');
  return ` One takes ${one}, ${numberText(mean / others.middle, 1)} times the middle one of the other ${name} transports (${middle}).`;
}

interface Far {
  readonly distance: number;
  readonly area: ReturnType<typeof workAreaOf>['area'];
  readonly words: string;
}

const areaWords = {
  normal: 'within the sweep of the forearm',
  maximum: 'within the sweep of the straight arm',
  beyond: `beyond the maximum work area of ${numberText(maximumRadius, 0)} mm (${who})`,
} as const;

/** The end of the route that is farther from the shoulder, where its position is known. */
function farthest({ reading }: LeadContext, { from, hand, to }: Route): Far | undefined {
  let far: Far | undefined;
  for (const id of [from, to]) {
    const at = reading.study.places.find((place) => place.id === id)?.at;
    if (at === undefined || id === undefined) continue;
    const { area, distance } = workAreaOf(at, hand);
    if (far !== undefined && far.distance >= distance) continue;
    const words = ` ${reading.placeName(id)} lies ${numberText(distance, 0)} mm from the ${hand} shoulder, ${areaWords[area]}.`;
    far = { area, distance, words };
  }
  return far;
}

function figuresOf(
  context: LeadContext,
  { mean, pieces }: Route,
  others: Others | undefined,
  distance: number | undefined,
): EvidenceFigure[] {
  const figures: EvidenceFigure[] = [
    { name: 'transport', value: aCycle(context, totalTime(pieces)), unit: 'time' },
    { name: 'one transport', value: mean, unit: 'time' },
  ];
  if (others !== undefined) {
    figures.push({ name: 'middle one of the others', value: others.middle, unit: 'time' });
    figures.push({ name: 'to the middle one of the others', value: mean / others.middle, unit: 'ratio' });
  }
  if (distance !== undefined) figures.push({ name: 'from the shoulder', value: distance, unit: 'length' });
  return figures;
}
