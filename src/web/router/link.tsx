import type { AnchorHTMLAttributes, MouseEvent, ReactNode } from 'react';
import { goTo } from './router.ts';

type Props = AnchorHTMLAttributes<HTMLAnchorElement> & { readonly href: string };

/** A true link: it opens in another tab as any other, and moves without loading on a plain press. */
export function Link({ href, onClick, ...rest }: Props): ReactNode {
  const press = (event: MouseEvent<HTMLAnchorElement>): void => {
    onClick?.(event);
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey) return;
    event.preventDefault();
    goTo(href);
  };
  return <a href={href} onClick={press} {...rest} />;
}
