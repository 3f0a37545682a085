import { type ReactNode, useState } from 'react';
import { newestReading } from '../../../jobs/record/monitor-of-job.ts';
import type { HandOverRequest } from '../../../server/contract/hand-over.ts';
import { cancelWork, exportAddress, pdfAddress, startHandOver } from '../../api/jobs.ts';
import { useSession } from '../../frame/frame.tsx';
import { Button } from '../../kit/button.tsx';
import { Choice, Several } from '../../kit/choice.tsx';
import { ErrorMessage, Message } from '../../kit/message.tsx';
import { FactWords } from '../../recording/refusal-words.tsx';
import { Link } from '../../router/link.tsx';
import { LANGUAGES, type Language, useSpoken } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useUnits } from '../../units/units.ts';
import { useSheet } from '../sheet-context.ts';
import { documentUnits } from './document-units.ts';
import { ShareLinks } from './share-links.tsx';

type DocumentPart = HandOverRequest['parts'][number];

export function HandOverSection(): ReactNode {
  const { job, work, flush, follow, isReadOnly, setClosed } = useSheet();
  const { text, language: spoken } = useSpoken();
  const units = useUnits();
  const numbers = useNumbers();
  const session = useSession();
  const words = text.job.handOver;
  const [parts, setParts] = useState<DocumentPart[]>(() =>
    newestReading(job) === undefined ? ['customer', 'evidence'] : ['customer', 'evidence', 'inspection'],
  );
  const [language, setLanguage] = useState<Language>(spoken);
  const [error, setError] = useState<unknown>(null);
  const running = work.find((w) => w.kind === 'hand-over' && (w.state === 'waiting' || w.state === 'running'));

  const last = work.filter((w) => w.kind === 'hand-over').at(-1);

  const make = async (): Promise<void> => {
    setError(null);
    try {
      await flush();
      follow(await startHandOver(job.id, { language, parts, units: documentUnits(units.choice) }));
    } catch (problem) {
      setError(problem);
    }
  };
  const mayChange = session?.role !== 'reader';
  return (
    <>
      <p>{words.lead}</p>
      {mayChange && (
        <>
          <Several<DocumentPart>
            label={words.parts}
            options={(['customer', 'evidence', 'inspection'] as const).map((value) => ({
              value,
              name: words.partNames[value],
            }))}
            values={parts}
            onChange={setParts}
          />
          <Choice<Language>
            label={words.language}
            options={(Object.keys(LANGUAGES) as Language[]).map((value) => ({ value, name: LANGUAGES[value].name }))}
            value={language}
            onChange={setLanguage}
          />
        </>
      )}
      <div className="buttons">
        {mayChange && (
          <Button kind="primary" disabled={parts.length === 0 || running !== undefined} onClick={() => void make()}>
            {words.make}
          </Button>
        )}
        <Link className="button" href={`/jobs/${job.id}/hand-over`}>
          {words.open}
        </Link>
      </div>
      <div className="buttons">
        <a className="button bare" href={exportAddress(job.id)} download>
          {words.exportJob}
        </a>
      </div>
      {running && (
        <div className="stack">
          <p id="hand-over-progress">
            {words.making}: {numbers.percent(running.fraction)}
          </p>
          <div
            className="progress"
            role="progressbar"
            aria-labelledby="hand-over-progress"
            aria-valuenow={Math.round(running.fraction * 100)}
            aria-valuemin={0}
            aria-valuemax={100}
          >
            <i style={{ width: `${running.fraction * 100}%` }} />
          </div>
          <div className="buttons">
            <Button onClick={() => void cancelWork(running.id)}>{words.cancel}</Button>
          </div>
        </div>
      )}
      {last?.state === 'interrupted' && (
        <Message isBad name={words.interrupted}>
          <p>{words.interruptedWords}</p>
        </Message>
      )}
      {last?.state === 'failed' && (
        <Message isBad isLoud name={words.failed}>
          {last.error !== undefined && <FactWords facts={last.error} fileName="" />}
        </Message>
      )}
      {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
      {job.handOvers.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <ul className="rows">
          {job.handOvers.toReversed().map((made) => (
            <li key={made.id}>
              <a className="button bare" href={pdfAddress(job.id, made.id)} target="_blank" rel="noreferrer">
                {words.pdf(numbers.dateTime(made.madeAt))}
              </a>{' '}
              <span className="small quiet">
                {made.by} · {LANGUAGES[made.language].name}
              </span>
            </li>
          ))}
        </ul>
      )}
      {session?.user != null && mayChange && <ShareLinks jobId={job.id} />}
      {!isReadOnly && !job.closed && (
        <div className="buttons">
          <Button onClick={() => void setClosed(true)}>{text.job.closeJob}</Button>
        </div>
      )}
    </>
  );
}
