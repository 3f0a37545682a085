import type { ReactNode } from 'react';
import { useText } from '../text/language.ts';

/** Stands inside the step that needs it. */
export function Caution({ children }: { readonly children: ReactNode }): ReactNode {
  const text = useText();
  return (
    <div className="caution" role="note">
      <p className="name">{text.common.caution}</p>
      {children}
    </div>
  );
}
