/** Settings, accounts, backup. */
import type { Account, Role, SecurityEvent, Session } from '../../server/contract/accounts.ts';
import type { Settings } from '../../server/contract/settings.ts';
import { fetchAnswer, fetchJson, readSession } from './client.ts';

export const readSettings = (): Promise<Settings> => fetchJson('GET', '/settings');
export const writeSettings = (settings: Settings): Promise<Settings> =>
  fetchJson('PUT', '/settings', { json: settings });

export async function signIn(name: string, password: string): Promise<Session> {
  await fetchJson('POST', '/session', { json: { name, password } });
  return readSession(true);
}

export async function makeFirstAccount(token: string, name: string, password: string): Promise<Session> {
  await fetchJson('POST', '/accounts/first', { json: { token, name, password } });
  return readSession(true);
}

/** Also forgets what was kept for reading without a server: the next person must not see it. */
export async function signOut(): Promise<void> {
  await fetchJson('DELETE', '/session');
  await forgetReadings();
  await readSession(true);
}

export async function forgetReadings(): Promise<void> {
  if ('caches' in window) await caches.delete('opened-jobs');
  for (const key of Object.keys(localStorage)) if (key.startsWith('vaporwright.draft.')) localStorage.removeItem(key);
}

export const readAccounts = async (): Promise<readonly Account[]> =>
  (await fetchJson<{ accounts: Account[] }>('GET', '/accounts')).accounts;
export const createAccount = (name: string, role: Role, password: string): Promise<unknown> =>
  fetchJson('POST', '/accounts', { json: { name, role, password } });
export const changeAccount = (
  id: string,
  change: { readonly role?: Role; readonly isActive?: boolean; readonly password?: string },
): Promise<unknown> => fetchJson('PATCH', `/accounts/${encodeURIComponent(id)}`, { json: change });

export const readSecurityLog = async (): Promise<readonly SecurityEvent[]> =>
  (await fetchJson<{ events: SecurityEvent[] }>('GET', '/security-log')).events;

export async function makeBackup(): Promise<{ blob: Blob; fileName: string }> {
  const answer = await fetchAnswer('POST', '/backup');
  const named = /filename="?([^";]+)"?/.exec(answer.headers.get('content-disposition') ?? '')?.[1];
  return { blob: await answer.blob(), fileName: named ?? 'vaporwright.backup' };
}

export function restoreBackup(file: File, confirm: boolean): Promise<unknown> {
  const form = new FormData();
  if (confirm) form.append('confirm', 'true');
  form.append('file', file);
  return fetchJson('POST', '/restore', { form });
}
