import type { BenchSpot, Work } from '@evenhand/core/develop';
import { seededRandom } from '@evenhand/core/ground/numerics';

/**
 * Couplings put together at a bench, invented: a body is laid into a fixture, each part is got from its bin and put on, the
 * coupling is lifted out and laid down at an exit. Step times are given, so that only moves are predicted. Bins and exit
 * stand on the first of the spots, in an order that the seed draws.
 */
export function benchWork(
  seed: number,
  parts: number,
  spotCount: number,
): { readonly work: Work; readonly spots: readonly BenchSpot[] } {
  const random = seededRandom(seed);
  const ms = (low: number, high: number) => Math.round(low + (high - low) * random()) * 1000;
  const spots = Array.from({ length: spotCount }, (_, index): BenchSpot => {
    const angle = Math.PI * ((index + 0.5) / spotCount);
    const away = 220 + 60 * (index % 3);
    return { at: { x: Math.round(away * Math.cos(angle)), y: 140 + Math.round(away * Math.sin(angle)) } };
  });
  const order = spots.map((spot) => ({ spot, key: random() })).sort((a, b) => a.key - b.key);
  const names = ['body bin', ...Array.from({ length: parts }, (_, part) => `bin ${part + 1}`), 'exit'];
  const places = names.map((name, index): Work['places'][number] => ({
    id: name.replace(' ', '-'),
    name,
    kind: name === 'exit' ? 'exit' : 'bin',
    at: order[index]?.spot.at ?? { x: 0, y: 0 },
    size: { x: 30, y: 30 },
  }));
  const known = (kind: 'G' | 'P' | 'RL', us: number) => ({ kind, us });
  const steps: Work['steps'][number][] = [];
  const step = (
    name: string,
    place: string,
    us: number,
    load: { before?: string; after?: string },
    follows: readonly string[],
    eyes: boolean,
  ) => {
    const id = `step-${steps.length + 1}`;
    steps.push({
      id,
      name,
      motions: [known(load.after === undefined ? 'P' : 'G', us)],
      hand: 'either',
      place,
      ...load,
      eyes,
      ...(follows.length === 0 ? {} : { follows: follows.map((before) => ({ step: before })) }),
      unit: 1,
    });
    return id;
  };
  const got = step('get body', 'body-bin', ms(150, 500), { after: 'body' }, [], random() < 0.6);
  const laid = step('lay body in', 'fixture', ms(250, 900), { before: 'body' }, [got], random() < 0.8);
  const put = Array.from({ length: parts }, (_, part) => {
    const name = `part ${part + 1}`;
    const taken = step(`get ${name}`, `bin-${part + 1}`, ms(150, 500), { after: name }, [], random() < 0.6);
    return step(`put ${name} on`, 'fixture', ms(250, 900), { before: name }, [taken, laid], random() < 0.8);
  });
  const lifted = step('lift out', 'fixture', ms(150, 400), { after: 'coupling' }, put, false);
  step('lay down', 'exit', ms(50, 150), { before: 'coupling' }, [lifted], false);
  return {
    spots,
    work: {
      workFormat: 1,
      title: `Couplings ${seed}, invented`,
      demo: true,
      unitsPerCycle: 1,
      home: 'free',
      places: [
        ...places,
        {
          id: 'fixture',
          name: 'fixture',
          kind: 'fixture',
          at: { x: 0, y: 200 },
          stays: true,
          size: { x: 60, y: 60 },
        },
      ],
      steps,
      spots: [{ name: 'fixture', place: 'fixture', claimedBy: laid, releasedBy: lifted }],
    },
  };
}

/** A step of 0.3 s with either hand at a place; what the hand carries before and after, where it carries something. */
export function graspStep(id: string, place: string, before?: string, after?: string) {
  return {
    id,
    name: id,
    motions: [{ kind: 'G' as const, us: 300_000 }],
    hand: 'either' as const,
    place,
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
    eyes: false,
    unit: 1,
  };
}
