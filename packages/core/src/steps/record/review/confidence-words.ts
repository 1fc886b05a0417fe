import { percentText } from '../../../ground/units/index.ts';

/** From this chance on the word holds; common practice, no source. */
const words: readonly (readonly [least: number, word: string])[] = [
  [0.95, 'almost certain'],
  [0.8, 'likely'],
  [0.5, 'uncertain'],
];

/** A confidence in a word and a number, “likely, 87 %”. Never 100 %: nobody has looked yet. */
export function confidenceText(confidence: number | undefined): string {
  if (confidence === undefined) return 'no confidence is known';
  const word = words.find(([least]) => confidence >= least)?.[1] ?? 'doubtful';
  return `${word}, ${percentText(Math.min(0.99, Math.floor(confidence * 100) / 100), 0)}`;
}
