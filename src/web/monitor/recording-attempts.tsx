/** The attempts of one recording, each with the condition that blocked first. */
import { type ReactNode, useEffect } from 'react';
import type { Job, RecordingEntry } from '../../jobs/record/job.ts';
import { codesWhen } from '../../jobs/record/monitor-of-job.ts';
import type { MonitorConditions } from '../../readiness/conditions.ts';
import type { AttemptResult } from '../../readiness/evaluate.ts';
import type { ChannelName } from '../../recording/recording.ts';
import type { Preview } from '../../server/contract/recordings.ts';
import { NumberField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { withKey } from '../kit/with-key.ts';
import { fetchSamples } from '../recording/load-recording.ts';
import { useReadingKey } from '../recording/use-entry.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { AttemptLine } from './attempt-line.tsx';
import { ConditionResults } from './condition-results.tsx';
import type { MonitorClient } from './monitor-client.ts';
import type { Tasks } from './monitor-worker.ts';
import { useAnswer } from './use-answer.ts';
import { useMonitor } from './use-monitor.ts';
import { onClock, useReadiness } from './use-readiness.ts';

/** What is known of a recording before and after it was looked at. */
export type Looked = 'looking' | 'no-start' | 'failed' | 'attempts';

interface Props {
  readonly entry: RecordingEntry;
  readonly conditions: MonitorConditions;
  readonly client: MonitorClient;
  readonly onLooked: (state: Looked) => void;
}

/** Either tells whether the engine runs. */
const ENGINE: readonly ChannelName[] = ['engineSpeedRpm', 'vehicleSpeedMPerS'];
const showsEngine = ({ mapping, report }: Preview): boolean =>
  report !== null && (mapping?.columns.some(({ channel }) => channel !== null && ENGINE.includes(channel)) ?? false);

export function RecordingAttempts(props: Props): ReactNode {
  const { entry, onLooked } = props;
  const { readPreview } = useSheet();
  const key = useReadingKey(entry);
  const [preview] = useLoaded(key, () => readPreview(entry.id));
  const state =
    preview.state === 'failed'
      ? 'failed'
      : preview.state === 'there' && !showsEngine(preview.value)
        ? 'no-start'
        : null;
  useEffect(() => {
    if (state !== null) onLooked(state);
  });
  if (state === 'failed') return <Failed entry={entry} />;
  return preview.state === 'there' && state === null ? <Evaluated {...props} readingKey={key} /> : null;
}

function Failed({ entry }: Pick<Props, 'entry'>): ReactNode {
  const { monitor: text } = useText();
  return <p className="quiet">{text.why.failed(entry.label)}</p>;
}

/** Codes and the time parked before, as the job knows them. */
function optionsOf(job: Job, parkedBeforeS: number | undefined, entry: RecordingEntry) {
  const codes = codesWhen(job, entry.taken);
  return {
    ...(parkedBeforeS === undefined ? {} : { parkedBeforeS }),
    ...(codes === undefined ? {} : { codes }),
  };
}

function Evaluated({
  entry,
  conditions,
  client,
  onLooked,
  readingKey,
}: Props & { readonly readingKey: string }): ReactNode {
  const { job, readSamples } = useSheet();
  const { monitor } = useMonitor();
  const kept = useAnswer(readingKey, async () => {
    const { timeS, channels } = await fetchSamples(readingKey, () => readSamples(entry.id));
    return client.ask('keep', { key: readingKey, label: entry.label, timeS, channels });
  });
  const task: Tasks['evaluate']['task'] = {
    key: readingKey,
    conditions,
    options: optionsOf(job, monitor.parkedBeforeS[entry.id], entry),
  };
  const found = useAnswer(kept.state === 'there' ? JSON.stringify(task) : null, () => client.ask('evaluate', task));
  const state: Looked =
    kept.state === 'failed' || found.state === 'failed'
      ? 'failed'
      : found.state === 'loading'
        ? 'looking'
        : found.value.attempts.length === 0
          ? 'no-start'
          : 'attempts';
  useEffect(() => onLooked(state));
  if (state === 'failed') return <Failed entry={entry} />;
  if (found.state !== 'there' || found.value.attempts.length === 0) return null;
  return (
    <article className="stack attempts" aria-label={entry.label}>
      <h4>{entry.label}</h4>
      <ol className="rows">
        {found.value.attempts.map((attempt, at) => (
          <Attempt key={attempt.attempt.startS} number={at + 1} result={attempt} spanS={found.value.endS} />
        ))}
      </ol>
      <ParkedBefore entry={entry} />
    </article>
  );
}

interface AttemptProps {
  readonly number: number;
  readonly result: AttemptResult;
  readonly spanS: number;
}

function Attempt({ number, result, spanS }: AttemptProps): ReactNode {
  const { monitor: text } = useText();
  const { words, figures } = useReadiness();
  const { attempt, verdict, blocker, results } = result;
  const name = attempt.startUnseen ? text.why.startUnseen(number) : text.why.attempt(number, onClock(attempt.startS));
  const count = (outcome: 'met' | 'blocked' | 'unknown'): number =>
    results.filter((each) => each.outcome === outcome).length;
  return (
    <li className="stack">
      <h5>{name}</h5>
      <AttemptLine name={name} result={result} spanS={spanS} />
      {blocker === undefined ? (
        <p>{verdict === 'conditions-met' ? text.why.met : text.why.unknown}</p>
      ) : (
        <p>
          {text.why.blocked(words.condition(blocker.condition.id), onClock(blocker.atS ?? attempt.startS))}{' '}
          <strong>{words.found(blocker, figures)}</strong>.
        </p>
      )}
      <Fold
        label={text.why.all}
        act={text.show}
        words={text.why.more(count('met'), count('blocked'), count('unknown'))}
      >
        <ConditionResults results={results} first={blocker} />
      </Fold>
    </li>
  );
}

function ParkedBefore({ entry }: Pick<Props, 'entry'>): ReactNode {
  const { monitor: text, job: jobText } = useText();
  const { monitor, change, isReadOnly } = useMonitor();
  const seconds = monitor.parkedBeforeS[entry.id];
  if (isReadOnly && seconds === undefined) return null;
  return (
    <div className="fields no-print">
      <NumberField
        label={text.why.parked(entry.label)}
        hint={text.why.parkedHint}
        unit="h"
        decimals={2}
        value={seconds === undefined ? undefined : seconds / 3600}
        readOnly={isReadOnly}
        notNumber={jobText.car.notNumber}
        check={(value) => (value >= 0 ? undefined : jobText.car.notPositive)}
        onChange={(hours) =>
          change((before) => ({
            ...before,
            parkedBeforeS: withKey(before.parkedBeforeS, entry.id, hours === undefined ? undefined : hours * 3600),
          }))
        }
      />
    </div>
  );
}
