/** On the job's sheet: the way to a recording from the car, and to what was left of one. */
import type { ReactNode } from 'react';
import { readLive } from '../api/live.ts';
import { Message } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { Link } from '../router/link.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { LeftCaptures } from './left-captures.tsx';

/** What runs or was left; nothing while there is neither, or no server to ask. */
export function LiveHere(): ReactNode {
  const { job, adopt } = useSheet();
  const { live: text } = useText();
  const [found, again] = useLoaded(job.id, () => readLive(job.id));
  if (found.state !== 'there') return null;
  const { live, left } = found.value;
  return (
    <>
      {live !== null && (
        <Message>
          <p>{text.running}</p>
          <div className="buttons">
            <Link className="button" href={`/jobs/${job.id}/live`}>
              {text.runningOpen}
            </Link>
          </div>
        </Message>
      )}
      <LeftCaptures
        jobId={job.id}
        left={left}
        onKept={(kept) => {
          adopt(kept.job);
          again();
        }}
        onDiscarded={again}
      />
    </>
  );
}

export function LiveLink(): ReactNode {
  const { job } = useSheet();
  const { live } = useText();
  return (
    <Link className="button" href={`/jobs/${job.id}/live`}>
      {live.open}
    </Link>
  );
}
