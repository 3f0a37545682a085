import type { ReactNode } from 'react';
import { ApiError, Unreachable } from '../api/client.ts';
import { useText } from '../text/language.ts';
import { useServerSaid } from '../text/use-server-said.ts';
import { Button } from './button.tsx';

interface Props {
  readonly name?: string;
  readonly isBad?: boolean;
  readonly children?: ReactNode;
  /** Spoken at once by a screen reader. */
  readonly isLoud?: boolean;
}

export function Message({ name, isBad = false, isLoud = false, children }: Props): ReactNode {
  return (
    <div className={isBad ? 'message bad' : 'message'} role={isLoud ? 'alert' : 'status'}>
      {name && <p className="name">{name}</p>}
      {children}
    </div>
  );
}

/** What went wrong, in the reader's words: what was found, where, what was expected, what to do. */
export function ErrorMessage({
  error,
  onRetry,
  onClose,
}: {
  readonly error: unknown;
  readonly onRetry?: () => void;
  readonly onClose?: () => void;
}): ReactNode {
  const text = useText();
  return (
    <Message isBad isLoud name={text.errors.title}>
      <ErrorWords error={error} />
      {(onRetry || onClose) && (
        <div className="buttons">
          {onRetry && <Button onClick={onRetry}>{text.common.tryAgain}</Button>}
          {onClose && (
            <Button kind="bare" onClick={onClose}>
              {text.common.close}
            </Button>
          )}
        </div>
      )}
    </Message>
  );
}

export function ErrorWords({ error }: { readonly error: unknown }): ReactNode {
  const { errors, connection } = useText();
  const said = useServerSaid();
  if (error instanceof Unreachable) return <p>{connection.cannotReach}</p>;
  if (!(error instanceof ApiError)) return <p>{error instanceof Error ? error.message : String(error)}</p>;
  const { facts } = error;
  const where =
    facts.file === undefined && facts.line === undefined
      ? null
      : errors.where(facts.file ?? '', facts.line, facts.column);
  return (
    <>
      <p>{errors.codes[facts.code] ?? facts.message}</p>
      {facts.message !== '' && facts.code !== 'wrong-password' && <p className="small">{said(facts.message)}</p>}
      {where && <p className="small">{where}</p>}
      {facts.found !== undefined && <p className="small">{errors.found(said(facts.found))}</p>}
      {facts.expected !== undefined && <p className="small">{errors.expected(said(facts.expected))}</p>}
      {facts.advice !== undefined && <p className="small">{said(facts.advice)}</p>}
    </>
  );
}
