/** Colours of the look's tokens, read where the chart stands, so that light, dark and print are told apart. */
export interface Colours {
  readonly ink: string;
  readonly quiet: string;
  readonly rule: string;
  readonly shade: string;
  readonly paper: string;
  readonly accent: string;
  readonly band: string;
  readonly rival: string;
  readonly rivalBand: string;
  readonly warn: string;
}

export function readColours(element: Element): Colours {
  const style = getComputedStyle(element);
  const token = (name: string): string => style.getPropertyValue(name).trim();
  return {
    ink: token('--ink'),
    quiet: token('--quiet'),
    rule: token('--rule'),
    shade: token('--shade'),
    paper: token('--paper'),
    accent: token('--accent'),
    band: token('--band'),
    rival: token('--rival'),
    rivalBand: token('--rival-band'),
    warn: token('--warn'),
  };
}

/** Calls back when the theme changes, and before and after printing. Returns how to stop. */
export function onColoursChange(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'class', 'style'] });
  const media = [matchMedia('print'), matchMedia('(prefers-color-scheme: dark)')];
  for (const query of media) query.addEventListener('change', changed);
  return () => {
    observer.disconnect();
    for (const query of media) query.removeEventListener('change', changed);
  };
}
