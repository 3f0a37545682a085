/** Addresses of the pages, and moving between them without loading anew. */
import { useSyncExternalStore } from 'react';

export type Route =
  | { readonly page: 'jobs' }
  | { readonly page: 'job'; readonly id: string }
  | { readonly page: 'hand-over'; readonly id: string }
  | { readonly page: 'system' }
  | { readonly page: 'settings' }
  | { readonly page: 'sign-in'; readonly token: string | null; readonly next: string | null }
  | { readonly page: 'shared'; readonly token: string }
  | { readonly page: 'unknown' };

export function routeOf(path: string, search: string, hash: string): Route {
  const parts = path
    .split('/')
    .filter((part) => part !== '')
    .map(decodeURIComponent);
  const [first, second, third] = parts;
  if (parts.length === 0) return { page: 'jobs' };
  if (first === 'jobs' && second !== undefined && parts.length === 2) return { page: 'job', id: second };
  if (first === 'jobs' && second !== undefined && third === 'hand-over' && parts.length === 3) {
    return { page: 'hand-over', id: second };
  }
  if (first === 'shared' && second !== undefined && parts.length === 2) return { page: 'shared', token: second };
  if (parts.length === 1 && (first === 'system' || first === 'settings')) return { page: first };
  if (parts.length === 1 && first === 'sign-in') {
    // The secret stands behind "#", so that it reaches no log of any server.
    const token = new URLSearchParams(hash.slice(1)).get('first');
    return { page: 'sign-in', token, next: new URLSearchParams(search).get('next') };
  }
  return { page: 'unknown' };
}

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
