import { useEffect, useState } from 'react';

/** True from the moment an element comes near the window on. */
export function useSeen(): readonly [(element: HTMLElement | null) => void, boolean] {
  const [element, setElement] = useState<HTMLElement | null>(null);
  const [isSeen, setSeen] = useState(false);
  useEffect(() => {
    if (element === null || isSeen) return;
    const watcher = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true);
      },
      { rootMargin: '400px' },
    );
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [element, isSeen]);
  return [setElement, isSeen];
}
