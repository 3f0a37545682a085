import { useEffect, useRef } from 'react';

const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName));

/** Ctrl+Z (or Command+Z) outside fields takes the last change back; inside a field it is the field's own. */
export function useUndoKey(undo: () => Promise<void>, isOn: boolean): void {
  const latest = useRef(undo);
  latest.current = undo;
  useEffect(() => {
    if (!isOn) return;
    const press = (event: KeyboardEvent): void => {
      if (event.key.toLowerCase() !== 'z' || event.shiftKey || event.altKey || !(event.ctrlKey || event.metaKey))
        return;
      if (isField(event.target) || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      void latest.current();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [isOn]);
}
