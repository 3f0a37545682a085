import { useSyncExternalStore } from 'react';

const query = '(prefers-reduced-motion: reduce)';

const subscribe = (listener: () => void): (() => void) => {
  const media = matchMedia(query);
  media.addEventListener('change', listener);
  return () => media.removeEventListener('change', listener);
};

/** Whether the system asks for less motion. */
export const useLessMotion = (): boolean => useSyncExternalStore(subscribe, () => matchMedia(query).matches);
