/** Before the recording: which line, what is done, what to mind. */
import { type ReactNode, useState } from 'react';
import type { Job } from '../../jobs/record/job.ts';
import type { LiveStatus } from '../../server/contract/live.ts';
import { startLive } from '../api/live.ts';
import { Button } from '../kit/button.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { Section } from '../kit/section.tsx';
import { useText } from '../text/language.ts';
import { LiveCautions } from './live-cautions.tsx';
import { emptyPort, PortForm, portOf } from './port-form.tsx';
import { asProcedure, ProcedureChoice, type Said } from './procedure-choice.tsx';

interface Props {
  readonly job: Job;
  readonly onStarted: (live: LiveStatus) => void;
}

export function StartForm({ job, onStarted }: Props): ReactNode {
  const { live: text } = useText();
  const [port, setPort] = useState(() => emptyPort(job.car?.layout));
  const [said, setSaid] = useState<Said | null>(null);
  const [error, setError] = useState<unknown>(null);
  const [isBusy, setBusy] = useState(false);
  const request = portOf(port);
  const start = async (): Promise<void> => {
    if (request === null || said === null) return;
    setBusy(true);
    setError(null);
    try {
      onStarted((await startLive(job.id, { port: request, procedure: asProcedure(said) })).live);
    } catch (problem) {
      setError(problem);
      setBusy(false);
    }
  };
  const layout = request?.kind === 'simulated' ? request.layout : job.car?.layout;
  return (
    <>
      <Section id="line" name={text.port.title} isFirst={request === null}>
        <PortForm draft={port} onChange={setPort} />
      </Section>
      <Section id="what" name={text.what.title} isFirst={request !== null && said === null}>
        <div className="stack">
          <p>{text.what.words}</p>
          <ProcedureChoice label={text.what.legend} value={said} onChange={setSaid} />
          <LiveCautions said={said} layout={layout} />
          {job.car === null && <p>{text.finding.noCar}</p>}
          {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
          <div className="buttons">
            <Button kind="primary" disabled={request === null || said === null || isBusy} onClick={() => void start()}>
              {isBusy ? text.starting : text.start}
            </Button>
          </div>
        </div>
      </Section>
    </>
  );
}
