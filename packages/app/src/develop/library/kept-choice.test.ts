import { describe, expect, it } from 'vitest';
import { keepChoice, keptChoice } from './kept-choice.ts';

const storageWith = (items: Map<string, string>) => ({
  getItem: (key: string) => items.get(key) ?? null,
  setItem: (key: string, value: string) => void items.set(key, value),
  removeItem: (key: string) => void items.delete(key),
});

describe('the choice of other studies', () => {
  it('is kept for one study and not for another, and is none at first', () => {
    const items = new Map<string, string>();
    expect(keptChoice(storageWith(items), 'one')).toEqual([]);
    expect(keepChoice(storageWith(items), 'one', ['a', 'b'])).toBe(true);
    expect(keptChoice(storageWith(items), 'one')).toEqual(['a', 'b']);
    expect(keptChoice(storageWith(items), 'two')).toEqual([]);
    keepChoice(storageWith(items), 'one', []);
    expect(items.size).toBe(0);
  });

  it('is none where what was kept cannot be read, and says when nothing could be kept', () => {
    expect(keptChoice({ getItem: () => '{"not": "a list"' }, 'one')).toEqual([]);
    expect(keptChoice({ getItem: () => '[1, "a"]' }, 'one')).toEqual(['a']);
    const full = {
      setItem: () => {
        throw new Error('full');
      },
      removeItem: () => {},
    };
    expect(keepChoice(full, 'one', ['a'])).toBe(false);
  });
});
