import type { ButtonHTMLAttributes, ReactNode } from 'react';

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  /** `primary`: the one thing to press; `bare`: looks like a link, for what is second. */
  readonly kind?: 'primary' | 'plain' | 'bare';
};

export function Button({ kind = 'plain', className = '', type = 'button', ...rest }: Props): ReactNode {
  return <button type={type} className={`button ${kind === 'plain' ? '' : kind} ${className}`.trim()} {...rest} />;
}
