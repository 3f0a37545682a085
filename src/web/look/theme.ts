/** Light or dark: as the system says, unless chosen here. */
import { useSyncExternalStore } from 'react';
import { keep, readKept } from '../text/language.ts';

export const THEMES = ['system', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];

const KEY = 'vaporwright.theme';
const dark = matchMedia('(prefers-color-scheme: dark)');
const listeners = new Set<() => void>();

let chosen: Theme = THEMES.find((theme) => theme === readKept(KEY)) ?? 'system';

const shown = (): 'light' | 'dark' => (chosen === 'system' ? (dark.matches ? 'dark' : 'light') : chosen);

function apply(): void {
  document.documentElement.dataset.theme = shown();
  const paper = shown() === 'dark' ? '#17191d' : '#fbfaf5';
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', paper);
  for (const listener of listeners) listener();
}
dark.addEventListener('change', apply);
apply();

export function chooseTheme(theme: Theme): void {
  chosen = theme;
  keep(KEY, theme);
  apply();
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** What was chosen, and what is shown; canvases redraw when it changes. */
export const useTheme = (): { chosen: Theme; shown: 'light' | 'dark' } => ({
  chosen: useSyncExternalStore(subscribe, () => chosen),
  shown: useSyncExternalStore(subscribe, shown),
});
