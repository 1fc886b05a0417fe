import { emptyStudy, type Method, type Motion, type Study } from '../../../../ground/study/index.ts';
import type { MotionKind } from '../../../../ground/tables/index.ts';

type Given = readonly [seconds: number, kind: MotionKind, more?: Partial<Motion>];

/** A row of motions by their starts in seconds. */
export function row(prefix: string, end: number, given: readonly Given[]): Method['left'] {
  const items = given.map(([seconds, kind, more], index) => ({
    id: `${prefix}${index}`,
    start: seconds * 1e6,
    kind,
    said: 'marked' as const,
    ...more,
  }));
  return { items, end: end * 1e6 };
}

const ring = { object: 'ring' };
const body = { object: 'body' };
const toRings = { to: 'rings' };
const toFixture = { object: 'ring', to: 'fixture' };

/**
 * Invented: two cycles of 4 s and 6 s in which the left hand holds a body and the right one fetches a ring and puts it on.
 * Grasping the ring takes 0.5 s and 1 s, holding the body 3.5 s and 5.5 s.
 */
export const couplings: Study = {
  ...emptyStudy('s', 'Hose couplings'),
  operation: { name: 'Put hose couplings together', part: 'hose coupling' },
  places: [
    { id: 'rings', name: 'rings, right' },
    { id: 'fixture', name: 'fixture' },
  ],
  methods: [
    {
      id: 'm',
      name: 'Present method',
      kind: 'composed',
      base: { kind: 'micros' },
      unitsPerCycle: 1,
      left: row('l', 10, [
        [0, 'G', body],
        [0.5, 'H', body],
        [4, 'G', body],
        [4.5, 'H', body],
      ]),
      right: row('r', 10, [
        [0, 'TE', toRings],
        [1, 'G', ring],
        [1.5, 'TL', toFixture],
        [3, 'A', ring],
        [4, 'TE', toRings],
        [6, 'G', ring],
        [7, 'TL', toFixture],
        [9, 'A', ring],
      ]),
      cycles: {
        items: [
          { id: 'c1', start: 0 },
          { id: 'c2', start: 4e6 },
        ],
        end: 10e6,
      },
      elements: [
        { id: 'e2', name: 'put it on', hand: 'right', at: 1.5e6 },
        { id: 'e1', name: 'fetch the ring', hand: 'right', at: 0 },
      ],
    },
  ],
};

/** The same with the method changed. */
export function withMethod(change: (method: Method) => Partial<Method>): Study {
  const [method] = couplings.methods;
  if (method === undefined) throw new RangeError('no method');
  return { ...couplings, methods: [{ ...method, ...change(method) }] };
}

/** On a film of 50 frames a second in which frame 0 is second 0; the person filmed has a code. */
export function onFilm(operatorCode?: string): Study {
  const frames = (at: number) => Math.round(at / 20_000);
  const inFrames = <T extends Method['left'] | Method['cycles']>({ items, end }: T) => ({
    items: items.map((item) => ({ ...item, start: frames(item.start) })),
    end: frames(end),
  });
  const study = withMethod((method) => ({
    base: { kind: 'frames', film: 'f' },
    left: inFrames(method.left) as Method['left'],
    right: inFrames(method.right) as Method['right'],
    cycles: inFrames(method.cycles),
    elements: (method.elements ?? []).map((element) => ({ ...element, at: frames(element.at) })),
  }));
  const film = {
    id: 'f',
    sha256: '0'.repeat(64),
    name: 'couplings.mp4',
    bytes: 1,
    container: 'MP4',
    codec: 'avc1',
    width: 4,
    height: 3,
    rotation: 0,
    frameTimes: { ticksPerSecond: 50, start: 0, steps: [{ repeat: 500, deltas: [1] }] },
    clock: { kind: 'identity' },
    ...(operatorCode === undefined ? {} : { operatorCode }),
  } as const;
  return { ...study, films: [film] };
}
