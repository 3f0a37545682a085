import { type FormEvent, type ReactNode, useState } from 'react';
import { createShare, readShares, revokeShare } from '../../api/jobs.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/fields.tsx';
import { ErrorMessage, Message } from '../../kit/message.tsx';
import { useLoaded } from '../../kit/use-loaded.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';

/** Links with which somebody outside reads this one job. */
export function ShareLinks({ jobId }: { readonly jobId: string }): ReactNode {
  const text = useText();
  const numbers = useNumbers();
  const words = text.job.handOver;
  const [shares, again] = useLoaded(jobId, () => readShares(jobId));
  const [label, setLabel] = useState('');
  const [address, setAddress] = useState<string | null>(null);
  const [isCopied, setIsCopied] = useState(false);
  const [error, setError] = useState<unknown>(null);

  const attempt = async (request: () => Promise<void>): Promise<void> => {
    setError(null);
    try {
      await request();
      again();
    } catch (problem) {
      setError(problem);
    }
  };
  const make = (event: FormEvent): void => {
    event.preventDefault();
    void attempt(async () => {
      const made = await createShare(jobId, label);
      setAddress(new URL(made.url, location.href).href);
      setIsCopied(false);
      setLabel('');
    });
  };
  return (
    <div className="stack">
      <h3>{words.share}</h3>
      <p className="small quiet">{words.shareWords}</p>
      <form className="fields" onSubmit={make}>
        <TextField label={words.shareFor} value={label} maxLength={120} onChange={setLabel} />
        <div className="align-end">
          <Button type="submit">{words.makeShare}</Button>
        </div>
      </form>
      {address !== null && (
        <Message name={words.shareOnce}>
          <p className="code">{address}</p>
          <div className="buttons">
            <Button
              onClick={() =>
                void navigator.clipboard?.writeText(address).then(
                  () => setIsCopied(true),
                  () => undefined,
                )
              }
            >
              {isCopied ? words.copied : words.copy}
            </Button>
          </div>
        </Message>
      )}
      {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
      {shares.state === 'there' && shares.value.length > 0 && (
        <ul className="rows">
          {shares.value.map((share) => (
            <li key={share.id} className="row-head">
              <span>
                {share.label || words.unnamedShare}{' '}
                <span className="small quiet">{words.shareUntil(numbers.date(share.expiresAt))}</span>
              </span>
              <Button
                kind="bare"
                aria-label={words.revokeLabel(share.label || words.unnamedShare)}
                onClick={() => void attempt(async () => void (await revokeShare(jobId, share.id)))}
              >
                {words.revoke}
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
