const storageKey = (study: string) => `evenhand-library ${study}`;

/** The studies whose records a person lets stand in; kept in this browser, for the study has no place for it. */
export function keptChoice(storage: Pick<Storage, 'getItem'>, study: string): readonly string[] {
  try {
    const value: unknown = JSON.parse(storage.getItem(storageKey(study)) ?? '[]');
    return Array.isArray(value) ? value.filter((id): id is string => typeof id === 'string') : [];
  } catch {
    return [];
  }
}

/** Whether the browser kept it; else the choice holds for this window. */
export function keepChoice(
  storage: Pick<Storage, 'setItem' | 'removeItem'>,
  study: string,
  ids: readonly string[],
): boolean {
  try {
    if (ids.length === 0) storage.removeItem(storageKey(study));
    else storage.setItem(storageKey(study), JSON.stringify(ids));
    return true;
  } catch {
    return false;
  }
}
