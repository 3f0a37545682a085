import { useEffect, useRef, useState } from 'react';
import type { Loaded } from '../kit/use-loaded.ts';

/** What a question was answered; a new key asks anew and keeps what is shown until the new answer is there. */
export function useAnswer<T>(key: string | null, ask: () => Promise<T>): Loaded<T> {
  const [answer, setAnswer] = useState<Loaded<T>>({ state: 'loading' });
  const latest = useRef(ask);
  latest.current = ask;
  useEffect(() => {
    if (key === null) return;
    let isCurrent = true;
    latest.current().then(
      (value) => isCurrent && setAnswer({ state: 'there', value }),
      (error: unknown) => isCurrent && setAnswer({ state: 'failed', error }),
    );
    return () => {
      isCurrent = false;
    };
  }, [key]);
  return answer;
}
