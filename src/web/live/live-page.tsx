/** Recording from the car: the line is chosen here, and what comes is seen here. */
import type { ReactNode } from 'react';
import type { Job } from '../../jobs/record/job.ts';
import type { LiveKept, LiveOfJob } from '../../server/contract/live.ts';
import { readJob } from '../api/jobs.ts';
import { readLive } from '../api/live.ts';
import { Frame, useSession } from '../frame/frame.tsx';
import { announce } from '../kit/announce.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { Link } from '../router/link.tsx';
import { goTo } from '../router/router.ts';
import { useText } from '../text/language.ts';
import { LeftCaptures } from './left-captures.tsx';
import './live.css';
import { Running } from './running.tsx';
import { StartForm } from './start-form.tsx';

interface Found {
  readonly job: Job;
  readonly here: LiveOfJob;
}

export function LivePage({ id }: { readonly id: string }): ReactNode {
  const { live: text, job: jobText, common } = useText();
  const [found, again, replace] = useLoaded(id, async (): Promise<Found> => {
    const [job, here] = await Promise.all([readJob(id), readLive(id)]);
    return { job, here };
  });
  const job = found.state === 'there' ? found.value.job : null;
  return (
    <Frame current="jobs" title={text.title}>
      <main className="paper" id="sheet" tabIndex={-1}>
        <div className="sheet live">
          <header className="head-row">
            <div>
              <h1>{text.title}</h1>
              {job !== null && <p className="sub">{text.sub(jobText.title(job.vehicle.name), job.number)}</p>}
            </div>
            <Link className="button" href={`/jobs/${id}`}>
              {text.back}
            </Link>
          </header>
          {found.state === 'loading' && <p className="quiet">{common.loading}</p>}
          {found.state === 'failed' && <ErrorMessage error={found.error} onRetry={again} />}
          {found.state === 'there' && <Here found={found.value} again={again} replace={replace} />}
        </div>
      </main>
    </Frame>
  );
}

interface HereProps {
  readonly found: Found;
  readonly again: () => void;
  readonly replace: (found: Found) => void;
}

function Here({ found, again, replace }: HereProps): ReactNode {
  const { live: text } = useText();
  const session = useSession();
  const { job, here } = found;
  const isReader = session?.role === 'reader';
  const kept = ({ recordingId }: LiveKept): void => {
    announce(recordingId === null ? text.keep.keptFile : text.keep.kept);
    goTo(`/jobs/${job.id}#${recordingId === null ? 'files' : 'recordings'}`);
  };
  const discarded = (): void => {
    announce(text.discard.done);
    again();
  };
  if (here.live !== null)
    return (
      <Running
        key={here.live.id}
        first={here.live}
        layout={job.car?.layout}
        canChange={!isReader}
        onKept={kept}
        onDiscarded={discarded}
        onGone={again}
      />
    );
  if (isReader) return <p>{text.reader}</p>;
  if (job.closed) return <p>{text.closed}</p>;
  return (
    <>
      <LeftCaptures jobId={job.id} left={here.left} onKept={kept} onDiscarded={discarded} />
      <StartForm
        job={job}
        onStarted={(live) => {
          replace({ job, here: { ...here, live } });
          // The form is gone: what comes begins at the top.
          window.scrollTo(0, 0);
          document.getElementById('sheet')?.focus();
        }}
      />
    </>
  );
}
