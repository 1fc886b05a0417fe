import { useSyncExternalStore } from 'react';

/** Where the person is: the list of studies, or one desk of one study. */
export type Route =
  | { readonly page: 'studies' }
  | {
      readonly page: 'study';
      readonly study: string;
      readonly desk: DeskName;
      readonly method?: string;
      /** What the desk has open: a time study or a comparison, by its id. */
      readonly open?: string;
      /** A change of the work that the develop desk shows, by its id. */
      readonly change?: string;
    };

const desks = ['record', 'chart', 'examine', 'develop', 'evaluate', 'define', 'watch'] as const;
/** `watch` is the stopwatch of the define step: a page of its own, for a small window. */
export type DeskName = (typeof desks)[number];

export function readRoute(path: string, query: string): Route {
  const match = /^\/studies\/([^/]+)(?:\/([a-z]+))?\/?$/.exec(path);
  if (match === null) return { page: 'studies' };
  const asked = new URLSearchParams(query);
  const [method, open, change] = [asked.get('method'), asked.get('open'), asked.get('change')];
  return {
    page: 'study',
    study: decodeURIComponent(match[1] ?? ''),
    desk: desks.find((desk) => desk === match[2]) ?? 'record',
    ...(method === null ? {} : { method }),
    ...(open === null ? {} : { open }),
    ...(change === null ? {} : { change }),
  };
}

export function routePath(route: Route): string {
  if (route.page === 'studies') return '/';
  const asked = new URLSearchParams();
  if (route.method !== undefined) asked.set('method', route.method);
  if (route.open !== undefined) asked.set('open', route.open);
  if (route.change !== undefined) asked.set('change', route.change);
  const query = asked.size === 0 ? '' : `?${asked}`;
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

/** The address names what the desk has open, so that it is the same after loading anew; no step back is added. */
export function keepOpen(open: string | undefined): void {
  const route = current();
  if (route.page !== 'study' || route.open === open) return;
  const { open: _, ...rest } = route;
  history.replaceState(null, '', routePath(open === undefined ? rest : { ...rest, open }));
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
