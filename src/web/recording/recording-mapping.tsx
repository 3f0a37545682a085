/** The mapping and the account of one recording that lies at the server. */
import type { ReactNode } from 'react';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { CaptureOffer } from '../monitor/capture-offer.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { MappingEditor } from './mapping-editor.tsx';
import { QualityWords } from './quality-words.tsx';
import { FactWords } from './refusal-words.tsx';
import { useEntry, useReadingKey, without } from './use-entry.ts';

export function RecordingMapping({ entry }: { readonly entry: RecordingEntry }): ReactNode {
  const { readPreview } = useSheet();
  const { common, recording } = useText();
  const editor = useEntry(entry.id);
  const key = useReadingKey(entry);
  const [loaded, again] = useLoaded(key, () => readPreview(entry.id));
  if (loaded.state === 'loading') return <p className="quiet">{common.loading}</p>;
  if (loaded.state === 'failed') return <ErrorMessage error={loaded.error} onRetry={again} />;
  const { header, rows, mapping, guessed, isGiven, report, problem, capture } = loaded.value;
  if (capture !== undefined && report === null)
    return <CaptureOffer entry={entry} capture={capture} hasSamples={false} />;
  return (
    <div className="stack">
      {problem !== null && (
        <Message isBad name={recording.mapping.unreadable}>
          <FactWords facts={problem} fileName={entry.fileName} />
        </Message>
      )}
      {capture !== undefined && <CaptureOffer entry={entry} capture={capture} hasSamples />}
      {report !== null && <QualityWords report={report} />}
      <details open={problem !== null}>
        <summary>{recording.mapping.title}</summary>
        <MappingEditor
          key={key}
          header={header}
          rows={rows}
          mapping={mapping}
          guessed={guessed}
          isGiven={isGiven}
          isReadOnly={editor.isReadOnly}
          onApply={(next) => {
            editor.change((before) => ({ ...before, mapping: next }));
            void editor.flush();
          }}
          onReset={() => {
            editor.change((before) => without(before, 'mapping'));
            void editor.flush();
          }}
        />
      </details>
    </div>
  );
}
