import fc from 'fast-check';
import { expect, it } from 'vitest';
import { textWidth } from '../../../ground/scene/index.ts';
import { wrapWhole } from './wrap-whole.ts';

it('a figure stays together with its unit, its sign and its digits', () => {
  const text =
    'It takes 7.60 s a unit, saves 36.2 % of 200\u2009000 units, costs € 34 an hour and 5.2 min of 9 TMU.';
  for (let room = 45; room < 300; room += 7) {
    const lines = wrapWhole(text, room, 8, 400);
    expect(lines.join(' ')).toBe(text);
    for (const whole of ['7.60 s', '36.2 %', '200\u2009000', '€ 34', '5.2 min', '9 TMU'])
      expect(lines.filter((line) => line.includes(whole)).length).toBe(1);
  }
});

it('every line fits, and nothing is lost but where it is cut', () => {
  fc.assert(
    fc.property(
      fc.array(fc.stringMatching(/^[a-z0-9%€]{1,14}$/), { maxLength: 25 }),
      fc.integer({ min: 20, max: 200 }),
      (words, room) => {
        const lines = wrapWhole(words.join(' '), room, 8, 600);
        for (const line of lines) expect(textWidth(line, 8, 600)).toBeLessThanOrEqual(room);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
        const cut = wrapWhole(words.join(' '), room, 8, 600, 2);
        expect(cut.length).toBeLessThanOrEqual(2);
        for (const line of cut) expect(textWidth(line, 8, 600)).toBeLessThanOrEqual(room);
      },
    ),
    { seed: 21, numRuns: 300 },
  );
});
