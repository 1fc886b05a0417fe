import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseStudy } from '../../../ground/study/index.ts';
import { type Work, type WorkPlace, workFromRecord } from '../work/index.ts';
import { benchSize, cornersOf, roomOf } from '../workplace/index.ts';
import { changedBy, changeOf } from './rules.ts';

const demo = parseStudy(
  readFileSync(
    new URL('../../../../../../examples/couplings/couplings.evenhand.json', import.meta.url),
    'utf8',
  ),
);

function demoWork(): Work {
  if (!demo.ok) throw new Error('demo');
  const drawn = workFromRecord(demo.value, 'present');
  if (!drawn.ok) throw new Error(drawn.error.message);
  return drawn.value.work;
}

/** The demonstration with a fixture, and with as many units. */
function made(work: Work, ...ids: ('fixture' | 'two-units' | 'four-units')[]): Work {
  const changed = changedBy(
    work,
    ids.flatMap((id) => changeOf(id, work) ?? []),
  );
  if (changed === undefined) throw new Error('the change cannot be made');
  return changed;
}

/** Pairs of places whose upright rectangles share some of the bench. */
function overlapping({ places }: Work): string[] {
  return places.flatMap((one, index) =>
    places.slice(index + 1).flatMap((other) => (overlap(one, other) ? [`${one.id} ${other.id}`] : [])),
  );
}

/** By the corners as they are drawn. */
function overlap(one: WorkPlace, other: WorkPlace): boolean {
  const [a, b] = [cornersOf(one), cornersOf(other)];
  if (a.length === 0 || b.length === 0) return false;
  return (['x', 'y'] as const).every((side) => {
    const [mine, its] = [a.map((corner) => corner[side]), b.map((corner) => corner[side])];
    return Math.max(...mine) > Math.min(...its) + 1e-6 && Math.max(...its) > Math.min(...mine) + 1e-6;
  });
}

const twinOf = ({ places }: Work, id: string) => places.find(({ mirror }) => mirror === id);

function expectMirrored(work: Work, own: readonly WorkPlace[]): void {
  for (const { id } of own) {
    const [place, twin] = [work.places.find((item) => item.id === id), twinOf(work, id)];
    expect(twin?.at, id).toEqual(place?.at === undefined ? undefined : { x: -place.at.x, y: place.at.y });
  }
}

function expectOnBench(work: Work, { width, depth }: { readonly width: number; readonly depth: number }) {
  for (const corner of work.places.flatMap(cornersOf)) {
    expect(Math.abs(corner.x)).toBeLessThanOrEqual(width / 2 + 1e-6);
    expect(corner.y).toBeGreaterThanOrEqual(-1e-6);
    expect(corner.y).toBeLessThanOrEqual(depth + 1e-6);
  }
}

/** Up to five places on the default bench, 1 m by 0.5 m, that are clear of each other. */
const benchArb = fc
  .array(
    fc.record({
      x: fc.integer({ min: -380, max: 380 }),
      y: fc.integer({ min: 120, max: 380 }),
      size: fc.record({ x: fc.integer({ min: 30, max: 110 }), y: fc.integer({ min: 30, max: 110 }) }),
      angle: fc.constantFrom(undefined, 0, 30, -45),
      kind: fc.constantFrom<WorkPlace['kind']>('bin', 'fixture', 'exit', 'tool'),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((spots) =>
    spots.map(
      ({ x, y, size, angle, kind }, index): WorkPlace => ({
        id: `p${index}`,
        name: `Place ${index}`,
        kind,
        at: { x, y },
        size,
        ...(angle === undefined ? {} : { angle }),
      }),
    ),
  );

function workAt(places: readonly WorkPlace[]): Work {
  return {
    workFormat: 1,
    title: 'Places',
    unitsPerCycle: 1,
    home: 'free',
    places: [...places],
    steps: places.map(({ id }, index) => ({
      id: `s${index}`,
      name: `Use ${id}`,
      motions: [{ kind: 'U', us: 500_000 }],
      hand: 'either' as const,
      place: id,
      eyes: false,
      unit: 1,
    })),
  };
}

describe('several units at once: every place has room of its own', () => {
  it.each(['two-units', 'four-units'] as const)(
    '%s on the plan of the demonstration: nothing overlaps, all lies on the bench, each place has its twin in the mirror',
    (id) => {
      const before = made(demoWork(), 'fixture');
      expect(overlapping(before)).toEqual([]);
      const work = made(demoWork(), 'fixture', id);
      expect(overlapping(work)).toEqual([]);
      expectOnBench(work, benchSize(before));
      expectMirrored(work, before.places);
    },
  );

  it('a bin whose spot is free keeps it, and one in the way moves only as far as it must', () => {
    const before = demoWork();
    const work = made(before, 'fixture', 'two-units');
    const at = (of: Work, id: string) => of.places.find((place) => place.id === id)?.at;
    expect(at(work, 'body-bin')).toEqual(at(before, 'body-bin'));
    expect(at(work, 'finished-box')).toEqual(at(before, 'finished-box'));
    // In the mirror the collars would stand 70 mm beside the bodies; 80 mm of bin and 20 mm of gap make 100.
    expect(at(work, 'collar-bin')).toEqual({ x: (at(before, 'body-bin')?.x ?? 0) - 100, y: 305 });
  });

  it('any places on a bench: never two on one spot, on the bench as long as it has room, and in the mirror', () => {
    fc.assert(
      fc.property(benchArb, fc.constantFrom('two-units', 'four-units'), (places, id) => {
        const before = workAt(places);
        const work = made(before, id as 'two-units');
        expect(overlapping(work)).toEqual([]);
        expectMirrored(work, places);
        // Four nests of five large places may need more than a bench has.
        if (id === 'two-units') expectOnBench(work, benchSize(before));
      }),
      { numRuns: 150 },
    );
  });

  it('what stays is not moved, and its twin stands in the mirror or where it is free', () => {
    const places: WorkPlace[] = [
      {
        id: 'press',
        name: 'Press',
        kind: 'machine',
        at: { x: 10, y: 300 },
        stays: true,
        size: { x: 120, y: 120 },
      },
      { id: 'rack', name: 'Rack', kind: 'tool', at: { x: 260, y: 300 }, stays: true },
      { id: 'bin', name: 'Bin', kind: 'bin', at: { x: -20, y: 310 } },
    ];
    const work = made(workAt(places), 'two-units');
    expect(overlapping(work)).toEqual([]);
    expect(work.places.find(({ id }) => id === 'press')?.at).toEqual({ x: 10, y: 300 });
    // One of the two racks is the one that stays where it is.
    const racks = work.places.filter(({ id }) => id.startsWith('rack'));
    expect(racks.map(({ at }) => at?.x).sort()).toEqual([-260, 260]);
    expect(twinOf(work, 'press')?.at?.x).toBeGreaterThan(0);
  });

  it('a turned place has a twin that is turned the other way', () => {
    const work = made(
      workAt([
        {
          id: 'tray',
          name: 'Tray',
          kind: 'bin',
          at: { x: -200, y: 300 },
          size: { x: 120, y: 60 },
          angle: 30,
        },
      ]),
      'two-units',
    );
    expect(twinOf(work, 'tray')?.angle).toBe(-30);
    expect(roomOf(twinOf(work, 'tray') as WorkPlace)).toEqual(roomOf(work.places[0] as WorkPlace));
  });
});
