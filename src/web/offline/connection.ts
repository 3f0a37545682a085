/** Whether the server answers. Asked past the service worker's store, which would answer for it. */
import { useSyncExternalStore } from 'react';
import { API } from '../../server/contract/paths.ts';
import { connection } from '../api/client.ts';

const ASK_AGAIN_MS = 4000;
let timer: ReturnType<typeof setTimeout> | null = null;

export async function askServer(): Promise<boolean> {
  if (timer !== null) clearTimeout(timer);
  timer = null;
  let isThere = false;
  try {
    // The query keeps it out of what the service worker stores.
    isThere = (await fetch(`${API}/session?alive`, { cache: 'no-store' })).status < 500;
  } catch {
    // Not there: said below.
  }
  connection.tell(isThere);
  return isThere;
}

function watch(): void {
  if (!connection.isReachable() && timer === null) timer = setTimeout(() => askServer().then(watch), ASK_AGAIN_MS);
}
connection.subscribe(watch);
window.addEventListener('online', () => void askServer());
window.addEventListener('offline', () => connection.tell(false));
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'visible') void askServer();
});

export const useIsReachable = (): boolean => useSyncExternalStore(connection.subscribe, connection.isReachable);
