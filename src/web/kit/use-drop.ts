import { type DragEvent, useEffect, useState } from 'react';

interface DropArea {
  readonly isOver: boolean;
  readonly handlers: Readonly<Record<'onDragOver' | 'onDragLeave' | 'onDrop', (event: DragEvent<HTMLElement>) => void>>;
}

/** Files may be dropped anywhere on the page. */
export function useDrop(take: (files: readonly File[]) => void, isOn = true): DropArea {
  const [isOver, setIsOver] = useState(false);
  useEffect(() => {
    // A part of the page may take the file itself, so that our own handler never hears of it.
    const end = (): void => setIsOver(false);
    window.addEventListener('drop', end, true);
    return () => window.removeEventListener('drop', end, true);
  }, []);
  const holdsFiles = (event: DragEvent): boolean => isOn && [...event.dataTransfer.types].includes('Files');
  return {
    isOver,
    handlers: {
      onDragOver: (event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        event.dataTransfer.dropEffect = 'copy';
        setIsOver(true);
      },
      onDragLeave: (event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setIsOver(false);
      },
      onDrop: (event) => {
        setIsOver(false);
        if (!holdsFiles(event)) return;
        event.preventDefault();
        take([...event.dataTransfer.files]);
      },
    },
  };
}
