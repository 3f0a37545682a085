/** Drafts that outlive a closed window: kept on this device until the server has them. */
import { keep, readKept } from '../text/language.ts';
import type { Drafts } from './job-saver.ts';

const keyOf = (id: string): string => `vaporwright.draft.${id}`;

export function readDrafts(id: string): Drafts {
  try {
    const kept: unknown = JSON.parse(readKept(keyOf(id)) ?? '{}');
    return typeof kept === 'object' && kept !== null ? (kept as Drafts) : {};
  } catch {
    return {};
  }
}

export function keepDrafts(id: string, drafts: Drafts): void {
  if (Object.keys(drafts).length > 0) keep(keyOf(id), JSON.stringify(drafts));
  else
    try {
      localStorage.removeItem(keyOf(id));
    } catch {
      // Storage is shut off: there is nothing to remove.
    }
}
