/** What was found, where, what was expected, what to do. */
import type { ReactNode } from 'react';
import type { ErrorFacts } from '../../server/contract/error.ts';
import { ApiError } from '../api/client.ts';
import { ErrorWords } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { useServerSaid } from '../text/use-server-said.ts';

export function RefusalWords({ error, fileName }: { readonly error: unknown; readonly fileName: string }): ReactNode {
  if (!(error instanceof ApiError)) return <ErrorWords error={error} />;
  return <FactWords facts={error.facts} fileName={fileName} />;
}

export function FactWords({ facts, fileName }: { readonly facts: ErrorFacts; readonly fileName: string }): ReactNode {
  const { errors } = useText();
  const said = useServerSaid();
  const hasPlace =
    facts.line !== undefined || facts.column !== undefined || (facts.file !== undefined && facts.file !== fileName);
  return (
    <>
      <p>{errors.codes[facts.code] ?? facts.message}</p>
      {hasPlace && <p>{errors.where(facts.file ?? fileName, facts.line, facts.column)}</p>}
      {facts.found !== undefined && <p>{errors.found(said(facts.found))}</p>}
      {facts.expected !== undefined && <p>{errors.expected(said(facts.expected))}</p>}
      {facts.advice !== undefined && <p>{said(facts.advice)}</p>}
      {facts.found === undefined && facts.message !== '' && <p className="small quiet">{said(facts.message)}</p>}
    </>
  );
}
