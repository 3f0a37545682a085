/** Moving between the pages without loading anew. */
import { useSyncExternalStore } from 'react';
import { type Route, routeOf } from './routes.ts';

const listeners = new Set<() => void>();
const tell = (): void => {
  for (const listener of listeners) listener();
};
window.addEventListener('popstate', tell);

export function goTo(address: string, how: 'push' | 'replace' = 'push'): void {
  if (how === 'push') history.pushState(null, '', address);
  else history.replaceState(null, '', address);
  window.scrollTo(0, 0);
  tell();
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export function useRoute(): Route {
  const address = useSyncExternalStore(subscribe, () => location.pathname + location.search);
  const [path = '/', search = ''] = address.split('?');
  return routeOf(path, search, location.hash);
}
