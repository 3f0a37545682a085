/** One recording on the sheet: its chart first, then how it was read, what is known of it, what it counts for. */
import { lazy, type ReactNode, Suspense, useEffect, useRef, useState } from 'react';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { rawAddress } from '../api/jobs.ts';
import { Button } from '../kit/button.tsx';
import { Check, Choice } from '../kit/choice.tsx';
import { TextField } from '../kit/fields.tsx';
import { Message } from '../kit/message.tsx';
import { useSeen } from '../kit/use-seen.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { FactsEditor } from './facts-editor.tsx';
import { RecordingMapping } from './recording-mapping.tsx';
import { useEntry } from './use-entry.ts';

// The chart and its library are fetched when a recording comes into sight.
const RecordingChart = lazy(async () => ({ default: (await import('./recording-chart.tsx')).RecordingChart }));

export function RecordingPart({ entry }: { readonly entry: RecordingEntry }): ReactNode {
  const { job } = useSheet();
  const { recording: text } = useText();
  const { bytes, dateTime } = useNumbers();
  const [watch, isSeen] = useSeen();
  return (
    <article className="recording" aria-label={entry.label} ref={watch}>
      <h3>
        {entry.label}
        <span className="quiet">
          {' · '}
          {text.takenNames[entry.taken]}
          {entry.useInFinding ? '' : ` · ${text.notUsed}`}
        </span>
      </h3>
      <div className="chart-place">
        {isSeen && (
          <Suspense fallback={<p className="quiet">{text.loading}</p>}>
            <RecordingChart entry={entry} />
          </Suspense>
        )}
      </div>
      {isSeen && <RecordingMapping entry={entry} />}
      <details>
        <summary>{text.facts.title}</summary>
        <FactsEditor entry={entry} />
      </details>
      <Standing entry={entry} />
      <p className="small quiet">
        {text.received(dateTime(entry.receivedAt), bytes(entry.bytes))}
        {' · '}
        <a className="no-print" href={rawAddress(job.id, entry.id)} download={entry.fileName}>
          {text.raw}
        </a>
      </p>
    </article>
  );
}

/** What it counts for, when it was made, its name, and its removal. */
function Standing({ entry }: { readonly entry: RecordingEntry }): ReactNode {
  const { recording: text, common } = useText();
  const { isReadOnly, change, remove } = useEntry(entry.id);
  const [isAsking, setAsking] = useState(false);
  const yes = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isAsking) yes.current?.querySelector('button')?.focus();
  }, [isAsking]);
  return (
    <div className="standing no-print">
      <Check
        label={text.use}
        checked={entry.useInFinding}
        disabled={isReadOnly}
        onChange={(useInFinding) => change((before) => ({ ...before, useInFinding }))}
      />
      <Choice
        label={text.taken}
        value={entry.taken}
        disabled={isReadOnly}
        options={(['before-repair', 'after-repair'] as const).map((value) => ({ value, name: text.takenNames[value] }))}
        onChange={(taken) => change((before) => ({ ...before, taken }))}
      />
      <TextField
        label={text.label}
        value={entry.label}
        readOnly={isReadOnly}
        maxLength={200}
        onChange={(label) => change((before) => ({ ...before, label }))}
      />
      {!isReadOnly && !isAsking && (
        <Button kind="bare" onClick={() => setAsking(true)}>
          {text.remove(entry.label)}
        </Button>
      )}
      {isAsking && (
        <Message>
          <p>{text.removeAsk(entry.label)}</p>
          <div className="buttons" ref={yes}>
            <Button onClick={remove}>{text.removeYes}</Button>
            <Button onClick={() => setAsking(false)}>{common.cancel}</Button>
          </div>
        </Message>
      )}
    </div>
  );
}
