import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useText } from '../text/language.ts';
import { Button } from './button.tsx';

interface Props {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** The person must choose; Escape and the closing button are withheld. */
  readonly isForced?: boolean;
}

/** A step aside from the sheet: focus stays in it, Escape closes it, and focus goes back to where it was. */
export function Dialog({ title, onClose, children, isForced = false }: Props): ReactNode {
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  const text = useText();
  useEffect(() => {
    const element = dialog.current;
    const before = document.activeElement;
    if (element !== null && !element.open) {
      element.showModal();
      // To what is to be filled in, past the closing button.
      element.querySelector<HTMLElement>(':scope > .stack :is(input, textarea, select, button)')?.focus();
    }
    return () => {
      element?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      className="dialog"
      aria-labelledby={heading}
      onCancel={(event) => {
        if (event.target !== dialog.current) return;
        event.preventDefault();
        if (!isForced) onClose();
      }}
      onClose={(event) => {
        // The browser may close it past `cancel` (a second Escape); the page must know.
        if (event.target === dialog.current && !isForced) onClose();
      }}
    >
      <header>
        <h2 id={heading}>{title}</h2>
        {!isForced && (
          <Button kind="bare" onClick={onClose}>
            {text.common.close}
          </Button>
        )}
      </header>
      <div className="stack">{children}</div>
    </dialog>
  );
}
