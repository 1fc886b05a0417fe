import { describe, expect, it } from 'vitest';
import { leadRules } from '../../examine/index.ts';
import { leadAnswers } from './answers.ts';
import { changeCodes } from './change.ts';
import { changeRules } from './rules.ts';

describe('what answers each kind of lead', () => {
  it.each(leadRules.map(({ code }) => code))('%s: a change, or why there is none', (code) => {
    const { changes, words } = leadAnswers[code];
    expect(changes.length > 0 || (words?.length ?? 0) > 20).toBe(true);
    for (const change of changes) expect(changeCodes).toContain(change);
    expect(new Set(changes).size).toBe(changes.length);
  });

  it('answers no lead that there is not', () => {
    expect(Object.keys(leadAnswers).sort()).toEqual(leadRules.map(({ code }) => code).sort());
  });

  it('every kind of change has its rule, in the order in which they are made, and exclusions go both ways', () => {
    expect(changeRules.map(({ code }) => code)).toEqual([...changeCodes]);
    for (const { code, excludes = [] } of changeRules) {
      for (const other of excludes)
        expect(changeRules.find((rule) => rule.code === other)?.excludes, `${code} ${other}`).toContain(code);
    }
  });
});
