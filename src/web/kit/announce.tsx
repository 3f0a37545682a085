/** One quiet voice for the whole page: what happened is said to a screen reader and shown for a while. */
import { type ReactNode, useEffect, useSyncExternalStore } from 'react';

interface Said {
  readonly words: string;
  readonly count: number;
}
let said: Said = { words: '', count: 0 };
const listeners = new Set<() => void>();

export function announce(words: string): void {
  said = { words, count: said.count + 1 };
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

const SHOWN_MS = 8000;

export function Announcer(): ReactNode {
  const { words, count } = useSyncExternalStore(subscribe, () => said);
  useEffect(() => {
    if (words === '') return;
    const timer = setTimeout(() => {
      if (said.count === count) announce('');
    }, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [words, count]);
  return (
    <div className="announcer" role="status" aria-live="polite">
      {words}
    </div>
  );
}
