import { fundamentalMotions, type GroupingId, groupings } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import { defaultKeyMap, type KeyMap, readKeyMap } from '@evenhand/core/record';

/** What one person likes; kept in this browser and in no study. */
export interface Preferences {
  readonly unit: TimeUnit;
  readonly look: 'system' | 'light' | 'dark';
  readonly keyMap: KeyMap;
  /** A thing that was grasped is named again in the motions that follow, until it is released. */
  readonly carryObject: boolean;
  readonly grouping: GroupingId;
  readonly paper: 'a4' | 'letter';
  readonly showKeys: boolean;
}

export const defaultPreferences: Preferences = {
  unit: 'seconds',
  look: 'system',
  keyMap: defaultKeyMap,
  carryObject: true,
  grouping: 'niebel-freivalds',
  paper: 'a4',
  showKeys: true,
};

const storageKey = 'evenhand-preferences';

/** Reads what was kept; what cannot be read falls back to the default, field by field. */
export function readPreferences(text: string | null): Preferences {
  const value = parse(text);
  const choice = <Key extends keyof Preferences>(
    key: Key,
    fits: (found: unknown) => boolean,
  ): Preferences[Key] => (fits(value[key]) ? (value[key] as Preferences[Key]) : defaultPreferences[key]);
  const kinds = [...fundamentalMotions.map((facts) => facts.kind), 'unmarked' as const];
  return {
    unit: choice('unit', (found) => typeof found === 'string' && found in timeUnits),
    look: choice('look', (found) => found === 'system' || found === 'light' || found === 'dark'),
    keyMap: readKeyMap(value.keyMap, kinds) ?? defaultKeyMap,
    carryObject: choice('carryObject', (found) => typeof found === 'boolean'),
    grouping: choice('grouping', (found) => typeof found === 'string' && found in groupings),
    paper: choice('paper', (found) => found === 'a4' || found === 'letter'),
    showKeys: choice('showKeys', (found) => typeof found === 'boolean'),
  };
}

function parse(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '{}');
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** The preferences of this browser, as a value that can be listened to. */
export class PreferenceStore {
  readonly #storage: Pick<Storage, 'getItem' | 'setItem'>;
  readonly #listeners = new Set<() => void>();
  #value: Preferences;

  constructor(storage: Pick<Storage, 'getItem' | 'setItem'>) {
    this.#storage = storage;
    this.#value = readPreferences(storage.getItem(storageKey));
  }

  readonly value = (): Preferences => this.#value;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  change(fields: Partial<Preferences>): void {
    this.#value = { ...this.#value, ...fields };
    try {
      this.#storage.setItem(storageKey, JSON.stringify(this.#value));
    } catch {
      // A full or forbidden storage: the choice still holds for this window.
    }
    for (const listener of [...this.#listeners]) listener();
  }
}
