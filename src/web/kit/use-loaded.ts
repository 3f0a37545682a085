import { useCallback, useEffect, useState } from 'react';

export type Loaded<T> =
  | { readonly state: 'loading' }
  | { readonly state: 'failed'; readonly error: unknown }
  | { readonly state: 'there'; readonly value: T };

/** Loads once per key; `again` loads anew and keeps what is shown until the new one is there. */
export function useLoaded<T>(key: string, load: () => Promise<T>): [Loaded<T>, () => void, (value: T) => void] {
  const [loaded, setLoaded] = useState<Loaded<T>>({ state: 'loading' });
  const [turn, setTurn] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `load` is made anew with every drawing; the key says when it differs.
  useEffect(() => {
    let isCurrent = true;
    load().then(
      (value) => isCurrent && setLoaded({ state: 'there', value }),
      (error: unknown) => isCurrent && setLoaded({ state: 'failed', error }),
    );
    return () => {
      isCurrent = false;
    };
  }, [key, turn]);
  const again = useCallback(() => setTurn((n) => n + 1), []);
  const replace = useCallback((value: T) => setLoaded({ state: 'there', value }), []);
  return [loaded, again, replace];
}
