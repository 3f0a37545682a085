import { lazy, type ReactNode, Suspense, useMemo } from 'react';
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import { ApiError } from '../api/client.ts';
import {
  readShared,
  readSharedPreview,
  readSharedRule,
  readSharedSamples,
  sharedFileAddress,
  sharedPdfAddress,
} from '../api/jobs.ts';
import { Frame } from '../frame/frame.tsx';
import { Caution } from '../kit/caution.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { Section } from '../kit/section.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { useSeen } from '../kit/use-seen.ts';
import '../recording/recording.css';
import { CarFacts } from '../sheet/car/car-facts.tsx';
import { SheetContext, type SheetJob } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

// Charts and their library come with what is seen of them.
const RecordingChart = lazy(async () => ({
  default: (await import('../recording/recording-chart.tsx')).RecordingChart,
}));
const MonitorSection = lazy(async () => ({ default: (await import('../monitor/monitor-section.tsx')).MonitorSection }));
const FindingSheet = lazy(async () => ({ default: (await import('../finding/finding-sheet.tsx')).FindingSheet }));

/** One job to be read by whoever has the link. */
export function SharedPage({ token }: { readonly token: string }): ReactNode {
  const text = useText();
  const words = text.shop.shared;
  const [loaded, again] = useLoaded(token, () => readShared(token));
  const isGone = loaded.state === 'failed' && loaded.error instanceof ApiError && loaded.error.status === 404;
  return (
    <Frame current={null} title={words.title} isGuest>
      <main className="paper" id="sheet" tabIndex={-1}>
        <div className="sheet">
          {loaded.state === 'there' ? (
            <SharedJob job={loaded.value} token={token} />
          ) : (
            <div className="stack">
              <h1>{isGone ? words.gone : words.title}</h1>
              {loaded.state === 'loading' && <p className="quiet">{text.common.loading}</p>}
              {isGone && <p>{words.goneWords}</p>}
              {loaded.state === 'failed' && !isGone && <ErrorMessage error={loaded.error} onRetry={again} />}
            </div>
          )}
        </div>
      </main>
    </Frame>
  );
}

/** The sheet of whoever has the link: it can be read, and that is all. */
function guestSheet(job: Job, token: string): SheetJob {
  const nothing = async (): Promise<void> => undefined;
  return {
    job,
    isReadOnly: true,
    state: 'saved',
    work: [],
    readSamples: (recordingId) => readSharedSamples(token, recordingId),
    readPreview: (recordingId) => readSharedPreview(token, recordingId),
    readRules: async () => {
      const rule = await readSharedRule(token);
      return { inspectionRules: [rule], inspectionRule: rule.id };
    },
    save: () => undefined,
    flush: nothing,
    takeIn: nothing,
    adopt: () => undefined,
    follow: () => undefined,
    undo: nothing,
    setClosed: nothing,
  };
}

function SharedJob({ job, token }: { readonly job: Job; readonly token: string }): ReactNode {
  const text = useText();
  const numbers = useNumbers();
  const words = text.shop.shared;
  const parts = text.job.sections;
  const sheet = useMemo(() => guestSheet(job, token), [job, token]);
  return (
    <SheetContext value={sheet}>
      <header>
        <h1>{text.job.title(job.vehicle.name)}</h1>
        <p className="sub">
          {text.job.sub(job.number, numbers.date(job.createdAt))} · {words.words}
        </p>
        {job.demo && <p className="demo-mark small">{text.job.demo}</p>}
      </header>
      <Section id="complaint" name={parts.complaint}>
        {job.complaint.words !== '' && (
          <p className="owner-words">
            <q>{job.complaint.words}</q>
          </p>
        )}
        {job.codes.length > 0 && (
          <p>
            {words.codes}:{' '}
            {numbers.list(job.codes.map(({ code, status }) => `${code} (${text.trade.codeStatus[status]})`))}
          </p>
        )}
      </Section>
      {job.car !== null && (
        <Section id="car" name={parts.car}>
          <CarFacts car={job.car} />
        </Section>
      )}
      <Section id="recordings" name={parts.recordings}>
        {job.recordings.length === 0 && <p className="quiet">{text.recording.none}</p>}
        {job.recordings.map((entry) => (
          <SharedRecording key={entry.id} entry={entry} />
        ))}
      </Section>
      <Section id="finding" name={parts.finding} isFirst>
        <SharedFinding job={job} />
      </Section>
      {job.checks.length > 0 && (
        <Section id="checks" name={words.checks}>
          <ul className="rows">
            {job.checks.map((check) => (
              <li key={check.id}>
                <h3>{check.what}</h3>
                <p>{check.result}</p>
              </li>
            ))}
          </ul>
        </Section>
      )}
      {job.repairs.length > 0 && (
        <Section id="repair" name={parts.repair}>
          <ul className="rows">
            {job.repairs.map((repair) => (
              <li key={repair.id}>{repair.what}</li>
            ))}
          </ul>
        </Section>
      )}
      <Section id="proof" name={parts.proof}>
        {job.proof !== null && (
          <>
            <p className="finding-sentence">{text.job.proof.verdicts[job.proof.verdict]}</p>
            {job.proof.words !== '' && <p>{job.proof.words}</p>}
          </>
        )}
        <p>
          {words.missing}: {job.proof?.missing || words.nothingMissing}
        </p>
        <Caution>
          <p>{words.caution}</p>
        </Caution>
      </Section>
      <Section id="monitor" name={parts.monitor}>
        <Suspense fallback={<p className="quiet">{text.common.loading}</p>}>
          <MonitorSection />
        </Suspense>
      </Section>
      {job.handOvers.length > 0 && (
        <Section id="hand-over" name={parts.handOver}>
          <ul className="rows">
            {job.handOvers.toReversed().map((made) => (
              <li key={made.id}>
                <a className="button bare" href={sharedPdfAddress(token, made.id)} target="_blank" rel="noreferrer">
                  {text.job.handOver.pdf(numbers.dateTime(made.madeAt))}
                </a>
              </li>
            ))}
          </ul>
        </Section>
      )}
      {job.attachments.length > 0 && (
        <Section id="files" name={parts.files}>
          <ul className="rows">
            {job.attachments.map((file) => (
              <li key={file.id}>
                <a className="button bare" href={sharedFileAddress(token, file.id)} target="_blank" rel="noreferrer">
                  {file.fileName}
                </a>{' '}
                {file.caption}
              </li>
            ))}
          </ul>
        </Section>
      )}
    </SheetContext>
  );
}

/** One recording with its chart. */
function SharedRecording({ entry }: { readonly entry: RecordingEntry }): ReactNode {
  const { recording: text } = useText();
  const [watch, isSeen] = useSeen();
  return (
    <article className="recording" aria-label={entry.label} ref={watch}>
      <h3>
        {entry.label} <span className="quiet">· {text.takenNames[entry.taken]}</span>
      </h3>
      <div className="chart-place">
        {isSeen && (
          <Suspense fallback={<p className="quiet">{text.loading}</p>}>
            <RecordingChart entry={entry} />
          </Suspense>
        )}
      </div>
    </article>
  );
}

function SharedFinding({ job }: { readonly job: Job }): ReactNode {
  const text = useText();
  const words = text.shop.shared;
  const made = job.findings.at(-1);
  if (made === undefined) return <p className="quiet">{words.noFinding}</p>;
  return (
    <div className="finding">
      {made.outdated && <p className="warn">{words.outdated}</p>}
      <Suspense fallback={<p className="quiet">{text.common.loading}</p>}>
        <FindingSheet made={made} isGuest />
      </Suspense>
    </div>
  );
}
