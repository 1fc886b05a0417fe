import { useEffect, useSyncExternalStore } from 'react';
import { PreferenceStore, type Preferences } from '../editor/preferences.ts';

export const preferences = new PreferenceStore(localStorage);

export function usePreferences(): Preferences {
  return useSyncExternalStore(preferences.subscribe, preferences.value);
}

const darkQuery = matchMedia('(prefers-color-scheme: dark)');

/** The look in force: what the person chose, or what the system says. */
export function useLook(): 'light' | 'dark' {
  const { look } = usePreferences();
  const systemDark = useSyncExternalStore(
    (listener) => {
      darkQuery.addEventListener('change', listener);
      return () => darkQuery.removeEventListener('change', listener);
    },
    () => darkQuery.matches,
  );
  return look === 'system' ? (systemDark ? 'dark' : 'light') : look;
}

/** Writes the look on the page, where the style sheet reads it. */
export function useLookOnPage(): void {
  const look = useLook();
  useEffect(() => {
    document.documentElement.dataset.look = look;
  }, [look]);
}
