import { type RefObject, useLayoutEffect, useState } from 'react';

/** The narrowest a drawing is made for; below, it scrolls. */
const LEAST = 340;
/** Wider is not better: lines get long and labels lose what they name. */
const MOST = 860;
const STEP = 10;

/** Width of an element, in steps, so that a drag of the window does not place anew at every pixel. */
export function useWidth(element: RefObject<HTMLElement | null>, most = MOST): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const node = element.current;
    if (node === null) return undefined;
    const take = () => {
      const room = Math.floor(node.clientWidth / STEP) * STEP;
      setWidth(Math.min(most, Math.max(LEAST, room)));
    };
    take();
    const watch = new ResizeObserver(take);
    watch.observe(node);
    return () => watch.disconnect();
  }, [element, most]);
  return width;
}
