import { describe, expect, it } from 'vitest';
import { readingOf } from './testing/record.ts';
import { toolUptakes } from './tool-uptakes.ts';

const uptakes = (row: string) =>
  toolUptakes(readingOf([['UD 1', row]]).cycles[0]?.right ?? []).map(({ tool, from, to, handling }) => ({
    tool,
    from: from / 1e6,
    to: to / 1e6,
    handling: handling.map(({ kind }) => kind).join(' '),
  }));

describe('a tool in one hand, from the reach for it to the letting go', () => {
  it('what brings it to its first use and away from its last is handling; what lies between its uses is not', () => {
    const row =
      'A 1 body, Sh 1 driver, TE 1 driver, G 1 driver, TL 1 driver, P 1 screw, U 1 screw, TL 1 driver, U 1 screw, TL 1 driver, RL 1 driver';
    expect(uptakes(row)).toEqual([{ tool: 'driver', from: 1, to: 11, handling: 'Sh TE G TL TL RL' }]);
  });

  it('a reach for something else before the grasp is no part of it', () => {
    expect(uptakes('TE 1 ring, G 1 driver, U 1, RL 1 driver')).toEqual([
      { tool: 'driver', from: 1, to: 4, handling: 'G RL' },
    ]);
  });

  it.each([
    ['a part that is not used', 'G 1 ring, TL 1 ring, A 1 ring, RL 1 ring'],
    ['a tool that is not let go', 'G 1 driver, U 1 screw'],
    ['another thing let go', 'G 1 driver, U 1 screw, RL 1 screw'],
    ['a thing without a name', 'G 1, U 1, RL 1'],
  ])('%s is none', (_, row) => expect(uptakes(row)).toEqual([]));
});
