import { useEffect, useState } from 'react';

/**
 * What a store holds, told now and then: for numbers that are read while something else moves at every frame.
 *
 * @param subscribe and `read` of the store; both must stay the same functions
 * @param everyMs how often at most; the last change is always told
 */
export function useCalmly<T>(subscribe: (listener: () => void) => () => void, read: () => T, everyMs: number): T {
  const [told, setTold] = useState(read);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let lastMs = 0;
    const tell = (): void => {
      timer = undefined;
      lastMs = performance.now();
      setTold(read);
    };
    const end = subscribe(() => {
      if (timer !== undefined) return;
      const waitMs = lastMs + everyMs - performance.now();
      if (waitMs <= 0) tell();
      else timer = setTimeout(tell, waitMs);
    });
    tell();
    return () => {
      clearTimeout(timer);
      end();
    };
  }, [subscribe, read, everyMs]);
  return told;
}
