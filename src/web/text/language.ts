/** Languages that the pages speak. A third is a row here and a file beside `de.ts`. */
import { createContext, use } from 'react';
import type { Text } from './en.ts';
import { allUnbroken } from './unbroken.ts';

export const LANGUAGES = {
  en: { name: 'English', locale: 'en-GB', load: async (): Promise<Text> => allUnbroken((await import('./en.ts')).EN) },
  de: { name: 'Deutsch', locale: 'de-DE', load: async (): Promise<Text> => allUnbroken((await import('./de.ts')).DE) },
} as const;
export type Language = keyof typeof LANGUAGES;

export interface Spoken {
  readonly language: Language;
  readonly locale: string;
  readonly text: Text;
  setLanguage(language: Language): void;
}

export const SpokenContext = createContext<Spoken | null>(null);

export function useSpoken(): Spoken {
  const spoken = use(SpokenContext);
  if (spoken === null) throw new Error('useSpoken() is called outside <TextProvider>.');
  return spoken;
}

/** The catalogue in the language chosen. */
export const useText = (): Text => useSpoken().text;

export const isLanguage = (name: string | null | undefined): name is Language =>
  name !== null && name !== undefined && Object.hasOwn(LANGUAGES, name);

const KEY = 'vaporwright.language';

export function rememberedLanguage(): Language {
  const kept = readKept(KEY);
  if (isLanguage(kept)) return kept;
  const wished = navigator.languages.map((tag) => tag.slice(0, 2)).find(isLanguage);
  return wished ?? 'en';
}

export function rememberLanguage(language: Language): void {
  keep(KEY, language);
}

/** Storage may be shut off; a choice then lasts as long as the page. */
export function readKept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function keep(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    // Nothing to do: the choice holds until the page is closed.
  }
}
