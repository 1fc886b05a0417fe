import { expect, it } from 'vitest';
import { sittingWords } from './sheet-words.ts';

it('sittings are told with their cycles, code and date', () => {
  const sittings = [
    { id: 'a', start: 1, operatorCode: 'A', date: '2026-03-31' },
    { id: 'b', start: 11, observer: 'KL' },
  ];
  expect(sittingWords(sittings, 20)).toEqual([
    'cycles 1–10: operator A, 2026-03-31',
    'cycles 11–20: observed by KL',
  ]);
});
