import {
  type Source,
  shoes,
  sittingHeight,
  sources,
  type WorkKind,
  workHeights,
} from '../../../ground/tables/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import {
  elbowHeight,
  type PeopleRange,
  type Person,
  type Posture,
  peopleRanges,
  personText,
  sizesOf,
} from './people.ts';

/** Heights of the hands at work that suit a person, millimetres above the floor, with shoes. */
export interface SuitedHeight {
  readonly person: Person;
  readonly low: number;
  readonly high: number;
}

export interface HeightAdvice {
  readonly kind: WorkKind;
  readonly posture: Posture;
  /** Above the elbow, millimetres. */
  readonly fromElbow: readonly [low: number, high: number];
  readonly source: Source;
  readonly smallest: SuitedHeight;
  readonly largest: SuitedHeight;
  /** A height that suits both ends of the range; undefined where only a bench or a seat that moves does. */
  readonly common: readonly [low: number, high: number] | undefined;
  /** What other publications say, in words. */
  readonly others: readonly { readonly words: string; readonly source: Source }[];
  readonly sentence: string;
  readonly cautions: readonly string[];
}

/** At which height the hands should work, by the kind of work and by who works. */
export function heightAdvice(kind: WorkKind, posture: Posture, people: PeopleRange): HeightAdvice {
  const { smallest, largest, name } = peopleRanges[people];
  const chosen = workHeights.find((facts) => facts.kind === kind && facts.fromElbow !== undefined);
  const { fromElbow, source } =
    posture === 'sitting' || chosen?.fromElbow === undefined
      ? sittingHeight
      : { fromElbow: chosen.fromElbow, source: chosen.source };
  const suited = (person: Person): SuitedHeight => {
    const elbow = elbowHeight(person, posture);
    return { person, low: elbow + fromElbow[0], high: elbow + fromElbow[1] };
  };
  const [small, large] = [suited(smallest), suited(largest)];
  const common = large.low <= small.high ? ([large.low, small.high] as const) : undefined;
  const range = `${mm(small.low)} to ${mm(large.high)} mm above the floor (${name}, ${numberText(shoes, 0)} mm for shoes)`;
  return {
    kind,
    posture,
    fromElbow,
    source: sources[source],
    smallest: small,
    largest: large,
    common,
    others: posture === 'sitting' ? [] : othersOf(kind, source),
    sentence:
      common === undefined
        ? `No one height suits all: the hands should work ${elbowWords(fromElbow)}, ${range}. The bench, the seat or a platform must be set for each person.`
        : `The hands should work ${elbowWords(fromElbow)}, ${range}; ${mm(common[0])} to ${mm(common[1])} mm suits all.`,
    cautions: cautionsOf(kind, posture, small),
  };
}

function othersOf(kind: WorkKind, but: keyof typeof sources): HeightAdvice['others'] {
  return workHeights
    .filter((facts) => facts.kind === kind && facts.source !== but)
    .map(({ fromElbow, fromFloor, note, source }) => ({
      words: [
        ...(fromElbow === undefined ? [] : [elbowWords(fromElbow)]),
        ...(fromFloor === undefined ? [] : [`${mm(fromFloor[0])} to ${mm(fromFloor[1])} mm above the floor`]),
        ...(note === undefined ? [] : [note]),
      ].join(', '),
      source: sources[source],
    }));
}

function cautionsOf(kind: WorkKind, posture: Posture, small: SuitedHeight): string[] {
  const thighs = sizesOf(small.person).thighs + shoes;
  const room = small.high - thighs;
  return [
    'A hint from published figures and a survey of body sizes, no limit for a person: local rules and qualified people decide.',
    ...(posture === 'sitting'
      ? [
          `Bench, rim and drawer together may be ${numberText(room, 0)} mm thick above the thighs of ${personText(small.person)}; the seat is taken to be as high as the hollow of the knee.`,
        ]
      : []),
    ...(posture === 'sitting' && kind !== 'light'
      ? [`The published heights for ${kind} work are for standing; none was found for sitting.`]
      : []),
    ...(kind === 'precision' && posture === 'standing' ? ['The forearms must be supported.'] : []),
  ];
}

function mm(value: number): string {
  return numberText(value, 0);
}

function elbowWords([low, high]: readonly [number, number]): string {
  if (low === 0 && high === 0) return 'at the height of the elbow';
  const [near, far] = low < 0 ? [-high, -low] : [low, high];
  const where = low < 0 ? 'below' : 'above';
  return near === far
    ? `${mm(near)} mm ${where} the elbow`
    : `${mm(near)} to ${mm(far)} mm ${where} the elbow`;
}
