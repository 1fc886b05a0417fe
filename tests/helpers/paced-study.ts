import { seededRandom, standardNormalQuantile } from '@evenhand/core/ground/numerics';
import { emptyStudy, type Method, type Motion, type Place, type Study } from '@evenhand/core/ground/study';

/**
 * Invented records with a known mixture of method and pace: the right hand does one motion after another while the left
 * hand holds, then both wait for a machine.
 */

/** "TE ring bench>bin 4": kind, object, a route for transports, mean length in tenths of a second at a pace of 1. */
export interface PacedMethod {
  readonly motions: readonly string[];
  /** Both hands wait so many tenths of a second in each cycle, whatever the pace. */
  readonly wait?: number;
  /** Time of every motion ÷ its time at a pace of 1. */
  readonly pace: number;
  readonly cycles: number;
}

export interface PacedNoise {
  /** Standard deviation of the logarithm of a motion's length, each for itself. */
  readonly motion: number;
  /** The same for all motions of a cycle together. */
  readonly cycle: number;
}

const tenth = 100_000;

/** On the bench, in millimetres. The two fixtures lie near each other, the far bin does not. */
const places: readonly Place[] = [
  { id: 'bench', name: 'Bench', at: { x: 0, y: 200 } },
  { id: 'fixture', name: 'Fixture', at: { x: 10, y: 210 } },
  { id: 'bin', name: 'Bin', at: { x: 250, y: 300 } },
  { id: 'far-bin', name: 'Far bin', at: { x: 600, y: 500 } },
  { id: 'box', name: 'Box', at: { x: 300, y: 100 } },
];

interface Planned {
  readonly kind: Motion['kind'];
  readonly length: number;
  readonly details: Pick<Motion, 'object' | 'from' | 'to'>;
}

function planned(text: string): Planned {
  const [kind, object, ...rest] = text.split(' ');
  const [from, to] = rest.length > 1 ? (rest[0] ?? '').split('>') : [];
  const details = { ...(object ? { object } : {}), ...(from ? { from } : {}), ...(to ? { to } : {}) };
  return { kind: kind as Motion['kind'], length: Number(rest.at(-1)) * tenth, details };
}

/** Mean length of a cycle at a pace of 1, microseconds. */
export function meanCycle({ motions, wait = 0 }: Pick<PacedMethod, 'motions' | 'wait'>): number {
  return motions.reduce((sum, text) => sum + planned(text).length, wait * tenth);
}

/** A study with the methods `before` and `after`. The same seed gives the same study. */
export function pacedStudy(before: PacedMethod, after: PacedMethod, noise: PacedNoise, seed: number): Study {
  const random = seededRandom(seed);
  const normal = () => standardNormalQuantile((random() * 2 ** 32 + 0.5) / 2 ** 32);
  const spread = (deviation: number) => Math.exp(deviation * normal() - deviation ** 2 / 2);
  const methods = [methodOf('before', before), methodOf('after', after)];
  return { ...emptyStudy('s', 'Couplings'), places: [...places], methods };

  function methodOf(id: string, { motions, wait = 0, pace, cycles }: PacedMethod): Method {
    const rows: { left: Motion[]; right: Motion[] } = { left: [], right: [] };
    const starts: number[] = [];
    let at = 0;
    const add = (hand: 'left' | 'right', motion: Omit<Motion, 'id' | 'said' | 'start'>) =>
      rows[hand].push({ id: `${hand[0]}${rows[hand].length}`, said: 'marked', start: at, ...motion });
    for (let cycle = 0; cycle < cycles; cycle += 1) {
      starts.push(at);
      const common = pace * spread(noise.cycle);
      add('left', { kind: 'H', object: 'body' });
      for (const text of motions) {
        const { kind, length, details } = planned(text);
        add('right', { kind, ...details });
        at += Math.max(1, Math.round(length * common * spread(noise.motion)));
      }
      if (wait === 0) continue;
      add('left', { kind: 'UD' });
      add('right', { kind: 'UD' });
      at += wait * tenth;
    }
    return {
      id,
      name: id === 'before' ? 'Old method' : 'New method',
      kind: 'composed',
      base: { kind: 'micros' },
      unitsPerCycle: 1,
      left: { items: rows.left, end: at },
      right: { items: rows.right, end: at },
      cycles: { items: starts.map((start, index) => ({ id: `c${index}`, start })), end: at },
    };
  }
}
