import { useSyncExternalStore } from 'react';

/** Where the person is: the list of studies, or one desk of one study. */
export type Route =
  | { readonly page: 'studies' }
  | {
      readonly page: 'study';
      readonly study: string;
      readonly desk: 'record' | 'chart' | 'examine';
      readonly method?: string;
    };

export function readRoute(path: string, query: string): Route {
  const match = /^\/studies\/([^/]+)(?:\/(record|chart|examine))?\/?$/.exec(path);
  if (match === null) return { page: 'studies' };
  const method = new URLSearchParams(query).get('method');
  return {
    page: 'study',
    study: decodeURIComponent(match[1] ?? ''),
    desk: match[2] === 'chart' || match[2] === 'examine' ? match[2] : 'record',
    ...(method === null ? {} : { method }),
  };
}

export function routePath(route: Route): string {
  if (route.page === 'studies') return '/';
  const query = route.method === undefined ? '' : `?method=${encodeURIComponent(route.method)}`;
  return `/studies/${encodeURIComponent(route.study)}/${route.desk}${query}`;
}

const listeners = new Set<() => void>();
let known = { text: '', route: readRoute('/', '') };

function current(): Route {
  const text = location.pathname + location.search;
  if (text !== known.text) known = { text, route: readRoute(location.pathname, location.search) };
  return known.route;
}

export function goTo(route: Route): void {
  history.pushState(null, '', routePath(route));
  for (const listener of [...listeners]) listener();
}

/** The address names the method that was chosen, so that it is the same after loading anew; no step back is added. */
export function keepMethod(method: string): void {
  const route = current();
  if (route.page !== 'study' || route.method === method) return;
  history.replaceState(null, '', routePath({ ...route, method }));
  for (const listener of [...listeners]) listener();
}

export function useRoute(): Route {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    addEventListener('popstate', listener);
    return () => {
      listeners.delete(listener);
      removeEventListener('popstate', listener);
    };
  }, current);
}
