import { type ReactNode, useEffect, useState } from 'react';
import type { Session } from '../../server/contract/accounts.ts';
import { readSession } from '../api/client.ts';
import { signOut } from '../api/shop.ts';
import { Button } from '../kit/button.tsx';
import { Message } from '../kit/message.tsx';
import { useIsReachable } from '../offline/connection.ts';
import { Link } from '../router/link.tsx';
import { goTo } from '../router/router.ts';
import { useText } from '../text/language.ts';
import { DisplayDialog } from './display-dialog.tsx';

interface Props {
  readonly current: 'jobs' | 'system' | 'settings' | null;
  /** Name of the page in the window's title. */
  readonly title: string;
  /** Shown at the right end of the head: state of saving, undo. */
  readonly state?: ReactNode;
  /** Whoever only has a link sees no way into the shop. */
  readonly isGuest?: boolean;
  readonly children: ReactNode;
}

/** What stands around every page: the way to the others, units and display, and whether the server is there. */
export function Frame({ current, title, state, isGuest = false, children }: Props): ReactNode {
  const text = useText();
  const isReachable = useIsReachable();
  const [isChoosing, setIsChoosing] = useState(false);
  const session = useSession(!isGuest);
  useEffect(() => {
    document.title = `${title} · ${text.app.name}`;
  }, [title, text]);
  const here = (name: Props['current']): { 'aria-current'?: 'page' } =>
    name === current ? { 'aria-current': 'page' } : {};
  return (
    <>
      <a className="skip" href="#sheet">
        {text.app.skip}
      </a>
      <header className="page-head">
        <div className="inner">
          {isGuest ? (
            <span className="brand">{text.app.name}</span>
          ) : (
            <>
              <Link className="brand" href="/">
                {text.app.name}
              </Link>
              <nav aria-label={text.app.navigation}>
                <Link href="/" {...here('jobs')}>
                  {text.app.jobs}
                </Link>
                <Link href="/system" {...here('system')}>
                  {text.app.system}
                </Link>
                <Link href="/settings" {...here('settings')}>
                  {text.app.settings}
                </Link>
              </nav>
            </>
          )}
          <div className="state">
            {state}
            {session?.user && (
              <Button
                kind="bare"
                title={text.app.signedInAs(session.user.name)}
                onClick={() => void signOut().then(() => goTo('/sign-in'))}
              >
                {text.app.signOut}
              </Button>
            )}
            <Button kind="bare" onClick={() => setIsChoosing(true)}>
              {text.app.display}
            </Button>
          </div>
        </div>
        {!isReachable && (
          <div className="inner away">
            <Message isBad name={text.connection.away}>
              <p className="small">{text.connection.awayWords}</p>
            </Message>
          </div>
        )}
      </header>
      {children}
      {isChoosing && <DisplayDialog onClose={() => setIsChoosing(false)} />}
    </>
  );
}

/** Who is here; leads to signing in where that is asked for. */
export function useSession(isWanted = true): Session | null {
  const [session, setSession] = useState<Session | null>(null);
  useEffect(() => {
    if (!isWanted) return;
    let isCurrent = true;
    readSession().then(
      (found) => {
        if (!isCurrent) return;
        setSession(found);
        if (found.needsLogin && found.user === null && !location.pathname.startsWith('/sign-in')) {
          goTo(`/sign-in?next=${encodeURIComponent(location.pathname)}`, 'replace');
        }
      },
      () => undefined,
    );
    return () => {
      isCurrent = false;
    };
  }, [isWanted]);
  return session;
}
