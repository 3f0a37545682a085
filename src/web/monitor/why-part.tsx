/** Why the monitor has not run: every recording of a drive or a soak against the conditions, attempt by attempt. */
import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { conditionsOfJob } from '../../jobs/record/monitor-of-job.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { ConditionsEditor } from './conditions-editor.tsx';
import { MonitorClient } from './monitor-client.ts';
import { type Looked, RecordingAttempts } from './recording-attempts.tsx';
import { useGaps } from './use-gaps.ts';

export function useMonitorClient(): MonitorClient {
  const client = useMemo(() => new MonitorClient(), []);
  useEffect(() => () => client.close(), [client]);
  return client;
}

export function WhyPart({ client }: { readonly client: MonitorClient }): ReactNode {
  const { monitor: text } = useText();
  const { job } = useSheet();
  const gaps = useGaps();
  const [looked, setLooked] = useState<Readonly<Record<string, Looked>>>({});
  const conditions = conditionsOfJob(job);
  const states = job.recordings.map(({ id }) => looked[id] ?? 'looking');
  return (
    <div className="stack">
      {conditions === undefined ? (
        <p className="quiet">{gaps.needsLayout}</p>
      ) : (
        <>
          {job.recordings.length === 0 && <p className="quiet">{gaps.noRecording}</p>}
          {states.includes('looking') && (
            <p className="quiet" role="status">
              {text.why.loading}
            </p>
          )}
          {states.length > 0 && states.every((state) => state === 'no-start') && (
            <p className="quiet">{text.why.noStart}</p>
          )}
          {job.recordings.map((entry) => (
            <RecordingAttempts
              key={entry.id}
              entry={entry}
              conditions={conditions}
              client={client}
              onLooked={(state) =>
                setLooked((before) => (before[entry.id] === state ? before : { ...before, [entry.id]: state }))
              }
            />
          ))}
          <ConditionsEditor conditions={conditions} />
        </>
      )}
    </div>
  );
}
