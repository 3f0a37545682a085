import { type ReactNode, useState } from 'react';
import { useText } from '../text/language.ts';

interface Props {
  readonly label: string;
  /** What stands there now, in words; the fold shows it when it is shut. */
  readonly words?: string | undefined;
  readonly isOpenAtFirst?: boolean;
  /** Name of the act of opening; "Change" where something stands already. */
  readonly act?: string;
  readonly children: ReactNode;
}

/** A part of the form that is read at rest and filled in where it stands. */
export function Fold({ label, words, isOpenAtFirst = false, act, children }: Props): ReactNode {
  const text = useText();
  const [isOpen, setIsOpen] = useState(isOpenAtFirst);
  return (
    <details
      className="fold"
      open={isOpen}
      onToggle={(event) => event.target === event.currentTarget && setIsOpen(event.currentTarget.open)}
    >
      <summary>
        <span className="name">{label}</span>
        {words !== undefined && words !== '' && <span className="words">{words}</span>}
        <span className="act">{isOpen ? text.common.close : (act ?? text.common.change)}</span>
      </summary>
      <div className="stack">{children}</div>
    </details>
  );
}
