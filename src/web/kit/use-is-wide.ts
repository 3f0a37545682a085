import { useSyncExternalStore } from 'react';

/** From here on the drawing has room beside the sheet; the same width as in `look/sheet.css`. */
const wide = matchMedia('(min-width: 76rem)');

const subscribe = (listener: () => void): (() => void) => {
  wide.addEventListener('change', listener);
  return () => wide.removeEventListener('change', listener);
};

export const useIsWide = (): boolean => useSyncExternalStore(subscribe, () => wide.matches);
