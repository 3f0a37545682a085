/** What was found, where, what was expected, what to do. */
import type { ReactNode } from 'react';
import type { ErrorFacts } from '../../server/contract/error.ts';
import { ApiError } from '../api/client.ts';
import { ErrorWords } from '../kit/message.tsx';
import { useText } from '../text/language.ts';

export function RefusalWords({ error, fileName }: { readonly error: unknown; readonly fileName: string }): ReactNode {
  if (!(error instanceof ApiError)) return <ErrorWords error={error} />;
  return <FactWords facts={error.facts} fileName={fileName} />;
}

export function FactWords({ facts, fileName }: { readonly facts: ErrorFacts; readonly fileName: string }): ReactNode {
  const { errors } = useText();
  const hasPlace =
    facts.line !== undefined || facts.column !== undefined || (facts.file !== undefined && facts.file !== fileName);
  return (
    <>
      <p>{errors.codes[facts.code] ?? facts.message}</p>
      {hasPlace && <p>{errors.where(facts.file ?? fileName, facts.line, facts.column)}</p>}
      {facts.found !== undefined && <p>{errors.found(errors.said(facts.found))}</p>}
      {facts.expected !== undefined && <p>{errors.expected(errors.said(facts.expected))}</p>}
      {facts.advice !== undefined && <p>{errors.said(facts.advice)}</p>}
      {facts.found === undefined && facts.message !== '' && <p className="small quiet">{errors.said(facts.message)}</p>}
    </>
  );
}
