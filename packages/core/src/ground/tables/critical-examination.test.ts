import { describe, expect, it } from 'vitest';
import { decisionChoices, examinationHeads, examinationQuestionOf, examinationQuestions } from './index.ts';

describe('the critical examination', () => {
  it('asks four questions under each of five heads (PMC7129597, table 1)', () => {
    expect(examinationHeads.map(({ head }) => head)).toEqual([
      'purpose',
      'place',
      'sequence',
      'person',
      'means',
    ]);
    expect(examinationQuestions.length).toBe(20);
    expect(new Set(examinationQuestions.map(({ id }) => id)).size).toBe(20);
  });

  // PMC7129597, table 1: the first and the last column.
  it.each([
    ['purpose', 'What is achieved?', 'What should be done?'],
    ['place', 'Where is it done?', 'Where should it be done?'],
    ['sequence', 'When is it done?', 'When should it be done?'],
    ['person', 'Who does it?', 'Who should do it?'],
    ['means', 'How is it done?', 'How should it be done?'],
  ] as const)('%s begins with the fact and ends with the proposal', (head, first, last) => {
    expect(examinationQuestionOf(`${head}-1`)).toMatchObject({ text: first, stage: 'primary', asks: 'fact' });
    expect(examinationQuestionOf(`${head}-4`)).toMatchObject({
      text: last,
      stage: 'secondary',
      asks: 'proposal',
    });
  });

  it('the ladder reaches every change, in its order (from memory of the ILO’s book)', () => {
    const reached = examinationHeads.flatMap(({ leadsTo }) => leadsTo);
    expect([...new Set(reached), 'keep']).toEqual(decisionChoices);
  });

  it('asking for a question that is not there is a fault of the program', () => {
    expect(() => examinationQuestionOf('purpose-5' as 'purpose-4')).toThrow('no question purpose-5');
  });
});
