import { useEffect, useSyncExternalStore } from 'react';
import { PreferenceStore, type Preferences } from '../editor/preferences.ts';

export const preferences = new PreferenceStore(localStorage);

export function usePreferences(): Preferences {
  return useSyncExternalStore(preferences.subscribe, preferences.value);
}

// Asking a media query what it says takes its event away when the browser has not sent that yet, and whoever listens is
// never told. So it is asked once; after that only its events count.
const darkQuery = matchMedia('(prefers-color-scheme: dark)');
let systemIsDark = darkQuery.matches;
const darkListeners = new Set<() => void>();
darkQuery.addEventListener('change', ({ matches }) => {
  systemIsDark = matches;
  for (const listener of [...darkListeners]) listener();
});

function onSystemDark(listener: () => void): () => void {
  darkListeners.add(listener);
  return () => darkListeners.delete(listener);
}

/** The look in force: what the person chose, or what the system says. */
export function useLook(): 'light' | 'dark' {
  const { look } = usePreferences();
  const systemDark = useSyncExternalStore(onSystemDark, () => systemIsDark);
  return look === 'system' ? (systemDark ? 'dark' : 'light') : look;
}

/** Writes the look on the page, where the style sheet reads it. */
export function useLookOnPage(): void {
  const look = useLook();
  useEffect(() => {
    document.documentElement.dataset.look = look;
  }, [look]);
}
