import { type FormEvent, type ReactNode, useState } from 'react';
import { makeFirstAccount, signIn } from '../api/shop.ts';
import { Frame, useSession } from '../frame/frame.tsx';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/fields.tsx';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { Link } from '../router/link.tsx';
import { goTo } from '../router/router.ts';
import { useText } from '../text/language.ts';

interface Props {
  /** From the one-time link that makes the first account. */
  readonly token: string | null;
  readonly next: string | null;
}

const SHORTEST = 10;

/** Only to pages of our own: an address with a host would lead elsewhere. */
const safeNext = (next: string | null): string => (next !== null && /^\/(?![/\\])/.test(next) ? next : '/');

export function SignInPage({ token, next }: Props): ReactNode {
  const text = useText();
  const words = text.shop.signIn;
  const session = useSession();
  const isFirst = token !== null;
  return (
    <Frame current={null} title={isFirst ? words.firstTitle : words.title} isGuest>
      <main className="paper narrow-paper" id="sheet" tabIndex={-1}>
        <div className="sheet stack">
          <h1>{isFirst ? words.firstTitle : words.title}</h1>
          {session?.user != null || session?.needsLogin === false ? (
            <>
              <p>{session.user === null ? words.noNeed : words.already}</p>
              <p>
                <Link className="button primary" href={safeNext(next)}>
                  {words.goOn}
                </Link>
              </p>
            </>
          ) : (
            <>
              {!isFirst && session?.needsFirst && (
                <Message>
                  <p>{words.needsFirst}</p>
                </Message>
              )}
              <SignInForm token={token} next={safeNext(next)} />
            </>
          )}
        </div>
      </main>
    </Frame>
  );
}

function SignInForm({ token, next }: { readonly token: string | null; readonly next: string }): ReactNode {
  const text = useText();
  const words = text.shop.signIn;
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const [again, setAgain] = useState('');
  const [isTried, setIsTried] = useState(false);
  const [isSending, setIsSending] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const isFirst = token !== null;
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setIsTried(true);
    if (isSending || name.trim() === '' || (isFirst && (password.length < SHORTEST || password !== again))) return;
    setIsSending(true);
    setError(null);
    try {
      if (token !== null) await makeFirstAccount(token, name.trim(), password);
      else await signIn(name.trim(), password);
      goTo(next, 'replace');
    } catch (problem) {
      setError(problem);
      setIsSending(false);
    }
  };
  return (
    <form className="stack" onSubmit={(event) => void submit(event)} noValidate>
      <p className="quiet">{isFirst ? words.firstWords : words.words}</p>
      <TextField
        label={words.name}
        name="name"
        autoComplete="username"
        value={name}
        maxLength={80}
        onChange={setName}
      />
      <TextField
        label={words.password}
        name="password"
        type="password"
        autoComplete={isFirst ? 'new-password' : 'current-password'}
        value={password}
        hint={isFirst ? text.shop.accounts.passwordHint : undefined}
        error={isFirst && isTried && password.length < SHORTEST ? words.tooShort : undefined}
        onChange={setPassword}
      />
      {isFirst && (
        <TextField
          label={words.repeat}
          name="repeat"
          type="password"
          autoComplete="new-password"
          value={again}
          error={isTried && again !== password ? words.notSame : undefined}
          onChange={setAgain}
        />
      )}
      {error !== null && <ErrorMessage error={error} />}
      <div className="buttons">
        <Button type="submit" kind="primary" disabled={isSending}>
          {isFirst ? words.firstGo : words.go}
        </Button>
      </div>
    </form>
  );
}
