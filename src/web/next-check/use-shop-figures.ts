import { useEffect, useRef, useState } from 'react';
import type { Changes } from '../../checks/figure.ts';
import { readSettings, writeSettings } from '../api/shop.ts';
import { usableChanges } from './state-of-job.ts';

/** After this pause in typing the figures are saved for the shop (judgement, as for the sheet). */
const PAUSE_MS = 600;

export interface ShopFigures {
  readonly changes: Changes;
  readonly change: (changes: Changes) => void;
  readonly error: unknown;
}

/** The shop's own minutes, costs and probabilities; shown at once, saved with the settings after a pause. */
export function useShopFigures(): ShopFigures {
  const [changes, setChanges] = useState<Changes>({});
  const [error, setError] = useState<unknown>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  useEffect(() => {
    let isCurrent = true;
    readSettings().then(
      ({ figures }) => isCurrent && figures !== undefined && setChanges(usableChanges(figures)),
      // Without the settings the defaults plan as well; they are shown with their marks.
      () => undefined,
    );
    return () => {
      isCurrent = false;
    };
  }, []);
  const change = (next: Changes): void => {
    setChanges(next);
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = setTimeout(() => {
      readSettings()
        .then((settings) => writeSettings({ ...settings, figures: { ...next } }))
        .then(
          () => setError(null),
          (problem: unknown) => setError(problem),
        );
    }, PAUSE_MS);
  };
  return { changes, change, error };
}
