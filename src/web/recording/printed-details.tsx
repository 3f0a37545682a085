/** A fold that paper never sees closed: print shows what a click would. */
import { type ReactNode, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

interface Props {
  readonly summary: string;
  readonly children: ReactNode;
}

export function PrintedDetails({ summary, children }: Props): ReactNode {
  const [isOpen, setOpen] = useState(false);
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    // At once: the page is laid out for paper when the event has been handled.
    const begin = (): void => flushSync(() => setPrinting(true));
    const end = (): void => setPrinting(false);
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
    };
  }, []);
  // A fold is laid out in one piece, which a page's end cannot part.
  if (isPrinting) return <div>{children}</div>;
  return (
    <details open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
