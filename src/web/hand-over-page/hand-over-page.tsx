import { type ReactNode, useRef } from 'react';
import { handOverPageAddress, pdfAddress, readJob } from '../api/jobs.ts';
import { Frame } from '../frame/frame.tsx';
import { Button } from '../kit/button.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { Link } from '../router/link.tsx';
import { documentUnits } from '../sheet/hand-over/document-units.ts';
import { useSpoken } from '../text/language.ts';
import { useUnits } from '../units/units.ts';

/** The document as the server makes it, with the way back and the printer beside it. */
export function HandOverPage({ id }: { readonly id: string }): ReactNode {
  const { text, language } = useSpoken();
  const units = useUnits();
  const words = text.job.handOver;
  const [loaded, again] = useLoaded(id, () => readJob(id));
  const frame = useRef<HTMLIFrameElement>(null);
  const newest = loaded.state === 'there' ? loaded.value.handOvers.at(-1) : undefined;
  return (
    <Frame current="jobs" title={words.pageTitle}>
      <main className="paper document" id="sheet" tabIndex={-1}>
        <div className="sheet stack">
          <div className="head-row">
            <h1>{words.pageTitle}</h1>
            <div className="buttons">
              <Button kind="primary" onClick={() => frame.current?.contentWindow?.print()}>
                {words.printing}
              </Button>
              {newest && (
                <a className="button" href={pdfAddress(id, newest.id)} target="_blank" rel="noreferrer">
                  PDF
                </a>
              )}
              <Link className="button" href={`/jobs/${id}`}>
                {words.back}
              </Link>
            </div>
          </div>
          {loaded.state === 'failed' && <ErrorMessage error={loaded.error} onRetry={again} />}
          <iframe
            ref={frame}
            className="hand-over-frame"
            title={words.pageTitle}
            src={handOverPageAddress(id, { language, ...documentUnits(units.choice) })}
          />
        </div>
      </main>
    </Frame>
  );
}
