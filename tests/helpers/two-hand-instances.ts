import type { Instance, Mode, Role, Task } from '@evenhand/core/develop';
import { seededRandom } from '@evenhand/core/ground/numerics';

/** The kinds of work that the trials of the composer are made on. */
export interface InstanceKind {
  /** Parts that are put on the base of each unit. */
  readonly parts: number;
  readonly units: number;
  /** What keeps the base meanwhile: a fixture for each unit, or the other hand. */
  readonly base: 'fixture' | 'hand';
}

/**
 * An assembly that the seed alone decides. Bins lie on an arc 28 to 48 cm away, a fixture 22 cm ahead, an exit to one side;
 * a base is got and placed (or held), each part is got and placed, the unit is lifted and dropped: 2 · parts + 4 steps a
 * unit with a fixture, 2 · parts + 2 with a hand. Travel is 70 + 110 · log2(2A/W) ms with widths of 2 to 10 cm, a get takes
 * 150 to 500 ms, a place 250 to 900 ms; six in ten gets and eight in ten places must be looked at; what lies within 15 cm
 * is seen together, a look to elsewhere takes 150 ms; 84 in 100 parts may be got and placed by either hand, the others by one. Parts follow each other in
 * a chain with a chance of a half. Placeholder numbers, calibrated to nothing.
 */
export function twoHandInstance(seed: number, { parts, units, base }: InstanceKind): Instance {
  const random = seededRandom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const ms = (low: number, high: number) => Math.round(between(low, high)) * 1000;
  const places: { name: string; x: number; y: number; width: number }[] = [];
  const addPlace = (name: string, x: number, y: number) =>
    places.push({ name, x, y, width: between(20, 100) }) - 1;
  const bin = (name: string) => {
    const angle = between(0.15, Math.PI - 0.15);
    const away = between(280, 480);
    return addPlace(name, Math.cos(angle) * away, Math.sin(angle) * away);
  };
  const exit = addPlace('exit', random() < 0.5 ? -300 : 300, 150);
  const bins = Array.from({ length: parts + 1 }, (_, part) => bin(`bin ${part}`));
  const tasks: Task[] = [];
  const loads = ['nothing'];
  const spots: { name: string; claimedBy: number; releasedBy: number }[] = [];
  const hands = (which: number, left: Role, time: number, holding?: Role): readonly Mode[] => {
    const one: Mode = { left, ...(holding === undefined ? {} : { right: holding }), time };
    const two: Mode = { right: left, ...(holding === undefined ? {} : { left: holding }), time };
    return which < 0.84 || holding !== undefined ? [one, two] : which < 0.92 ? [one] : [two];
  };
  const add = (task: Task) => tasks.push(task) - 1;
  const after = (...list: readonly number[]) => list.map((task) => ({ task, lag: 0 }));
  for (let unit = 0; unit < units; unit += 1) {
    const bench = addPlace(`bench ${unit}`, (unit - (units - 1) / 2) * 120, 220);
    const load = (name: string) => loads.push(`${name} ${unit}`) - 1;
    const [baseLoad, doneLoad] = [load('base'), load('unit')];
    const eyes = (chance: number, place: number) => (random() < chance ? { eyes: place } : {});
    const baseBin = bins[0] ?? 0;
    const baseHand = base === 'hand' ? 0 : random();
    const got = add({
      name: `get base ${unit}`,
      modes: hands(baseHand, { place: baseBin, before: 0, after: baseLoad }, ms(150, 500)),
      after: [],
      ...eyes(0.6, baseBin),
    });
    let last = got;
    if (base === 'fixture') {
      last = add({
        name: `place base ${unit}`,
        modes: hands(baseHand, { place: bench, before: baseLoad, after: 0 }, ms(250, 900)),
        after: after(got),
        ...eyes(0.8, bench),
      });
    }
    const first = last;
    let [chain, dropHand] = [first, 0];
    for (let part = 1; part <= parts; part += 1) {
      const [partLoad, partBin] = [load(`part ${part}`), bins[part] ?? 0];
      const partHand = base === 'hand' ? 0 : random();
      const gotPart = add({
        name: `get part ${part} ${unit}`,
        modes: hands(partHand, { place: partBin, before: 0, after: partLoad }, ms(150, 500)),
        after: [],
        ...eyes(0.6, partBin),
      });
      const lastPart = part === parts;
      const holding: Role | undefined =
        base === 'hand'
          ? { place: bench, before: baseLoad, after: lastPart ? doneLoad : baseLoad }
          : undefined;
      const chained = base === 'hand' || random() < 0.5;
      chain = add({
        name: `place part ${part} ${unit}`,
        modes: hands(partHand, { place: bench, before: partLoad, after: 0 }, ms(250, 900), holding),
        after: after(gotPart, chained ? chain : first),
        ...eyes(0.8, bench),
      });
    }
    const placed = tasks.flatMap(({ name }, index) =>
      name.startsWith('place part') && name.endsWith(` ${unit}`) ? [index] : [],
    );
    if (base === 'fixture') {
      const unitHand = random();
      const lifted = add({
        name: `lift unit ${unit}`,
        modes: hands(unitHand, { place: bench, before: 0, after: doneLoad }, ms(150, 400)),
        after: after(...placed),
      });
      spots.push({ name: `fixture ${unit}`, claimedBy: first, releasedBy: lifted });
      last = lifted;
      dropHand = unitHand;
    } else last = chain;
    add({
      name: `drop unit ${unit}`,
      modes: hands(dropHand, { place: exit, before: doneLoad, after: 0 }, ms(50, 150)),
      after: after(last),
    });
  }
  const far = (one: number, other: number) => {
    const [a, b] = [places[one], places[other]];
    return a === undefined || b === undefined ? 0 : Math.hypot(a.x - b.x, a.y - b.y);
  };
  return {
    tasks,
    places: places.map(({ name }) => name),
    loads,
    travel: (_hand, from, to) => {
      const distance = far(from, to);
      if (distance < 1) return 0;
      const difficulty = Math.log2((2 * distance) / (places[to]?.width ?? 50));
      return Math.round(70 + 110 * Math.max(0, difficulty)) * 1000;
    },
    apart: (one, other) => one !== other && far(one, other) > 150,
    gazeGap: 150_000,
    spots,
    home: 'free',
  };
}
