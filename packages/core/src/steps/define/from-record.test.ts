import { describe, expect, it } from 'vitest';
import { type CycleText, tenth, twoHandStudy } from '../../../../../tests/helpers/two-hand-study.ts';
import type { ElementMark, Study } from '../../ground/study/index.ts';
import { type RecordChoice, readingsFromRecord } from './from-record.ts';

const model = 'TE ring 2, G ring 1, TL ring 3, A ring 4, TE nut 3, A nut 5';
const cycle = (right: string): CycleText => ({ left: 'UD 1', right });
const mark = (name: string, at: number): ElementMark => ({ id: name, name, hand: 'right', at: at * tenth });

/** Three cycles of 1.8, 2.0 and 1.4 s; in the third nothing of the second element is done as in the model. */
function study(elements: readonly ElementMark[] = [], setAside?: string): Study {
  const made = twoHandStudy([
    cycle(model),
    cycle('TE ring 3, G ring 1, TL ring 4, A ring 4, TE nut 3, A nut 5'),
    cycle('TE ring 2, G ring 1, TL ring 3, A ring 4, I nut 4'),
  ]);
  const [method] = made.methods;
  if (method === undefined) throw new Error('no method');
  const items = method.cycles.items.map((item, index) =>
    index === 1 && setAside !== undefined ? { ...item, setAside } : item,
  );
  const own = elements.length === 0 ? {} : { elements: [...elements] };
  return { ...made, methods: [{ ...method, ...own, cycles: { ...method.cycles, items } }] };
}

function read(from: Study, choice: Partial<RecordChoice> = {}) {
  const found = readingsFromRecord(from, 'm', { unit: 'seconds', ...choice });
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}
const times = (from: Study, choice?: Partial<RecordChoice>) =>
  read(from, choice).elements.map(({ name, readings }) => [name, ...readings.map(({ time }) => time)]);

describe('readings of a record', () => {
  it('without elements are those of the whole cycle, in the wanted unit, and that is said', () => {
    expect(times(study())).toEqual([['whole cycle', 1.8, 2, 1.4]]);
    // 1 TMU is 0.036 s.
    expect(times(study(), { unit: 'tmu' })[0]?.[1]).toBeCloseTo(50, 9);
    expect(read(study())).toMatchObject({ basis: 'cycle', rule: undefined, cycles: [1, 2, 3] });
    expect(read(study()).notes.map(({ code }) => code)).toContain('define/whole-cycle');
    expect(times(study(), { cycles: [3, 1] })).toEqual([['whole cycle', 1.8, 1.4]]);
  });

  it('are those of the named elements; where one was not found its reading is missed and that is said', () => {
    const named = study([mark('fit ring', 0), mark('fit nut', 10)]);
    const found = read(named);
    expect(found.basis).toBe('elements');
    expect(found.rule).toMatch(/alignment/);
    expect(times(named)[0]?.slice(0, 3)).toEqual(['fit ring', 1, 1.2]);
    expect(times(named)[1]?.slice(0, 3)).toEqual(['fit nut', 0.8, 0.8]);
    const unread = found.elements.filter(({ readings }) => readings[2]?.time === undefined);
    const told = found.notes.filter(({ code }) => code.startsWith('define/element-'));
    expect(unread.length).toBeGreaterThan(0);
    expect(told.length).toBe(unread.length);
    for (const { message } of told) expect(message).toContain('cycle 3');
  });

  it('of a cycle that is set aside are set aside with its reason, also when it is asked for', () => {
    for (const cycles of [undefined, [1, 2]]) {
      const [element] = read(study([], 'spoken to'), { cycles }).elements;
      expect(element?.readings[1]).toEqual({ cycle: 2, time: 2, setAside: 'spoken to' });
      expect(element?.readings[0]).toEqual({ cycle: 1, time: 1.8 });
    }
  });

  it('refuses in words what gives no reading', () => {
    const codeOf = (from: Study, method: string, cycles?: number[]) => {
      const found = readingsFromRecord(from, method, { unit: 'seconds', cycles });
      return found.ok ? 'read' : found.error.code;
    };
    expect(codeOf(study(), 'other')).toBe('record/no-method');
    expect(codeOf(study(), 'm', [4])).toBe('record/no-cycle');
    expect(codeOf(study([], 'spoken to'), 'm', [2])).toBe('examine/no-cycle-left');
    expect(codeOf(study(), 'm', [2])).toBe('read');
  });

  it('takes a record without cycles as one reading', () => {
    const base = study();
    const methods = base.methods.map((method) => ({ ...method, cycles: { items: [], end: 0 } }));
    const found = read({ ...base, methods });
    expect(found.cycles).toEqual([0]);
    expect(found.elements[0]?.readings).toEqual([{ cycle: 1, time: 5.2 }]);
  });
});
