/** The content of the section "Recordings": files in, charts out. */
import { type DragEvent, type ReactNode, useState } from 'react';
import { announce } from '../kit/announce.tsx';
import { FileButton } from '../kit/fields.tsx';
import { LiveHere, LiveLink } from '../live/live-entry.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import type { RecordingSectionProps } from '../sheet/slots.ts';
import { useText } from '../text/language.ts';
import './recording.css';
import { RecordingPart } from './recording-part.tsx';
import { RefusedUpload, UploadList } from './upload-list.tsx';
import { useUploads } from './use-uploads.ts';

const ACCEPTED = '.csv,.txt,.tsv,.gz,text/csv,text/plain,application/gzip';

export function RecordingSection({ refused, dismissRefused }: RecordingSectionProps): ReactNode {
  const { job, isReadOnly } = useSheet();
  const { recording: text, job: jobText } = useText();
  const uploads = useUploads(() => announce(jobText.uploaded('')));
  const [isOver, setOver] = useState(false);
  const hasRepair = job.repairs.length > 0;
  const drag = (event: DragEvent): void => {
    if (isReadOnly || !event.dataTransfer.types.includes('Files')) return;
    event.preventDefault();
    event.stopPropagation();
    setOver(event.type !== 'dragleave');
  };
  const drop = (event: DragEvent): void => {
    if (isReadOnly || event.dataTransfer.files.length === 0) return;
    event.preventDefault();
    event.stopPropagation();
    setOver(false);
    uploads.add([...event.dataTransfer.files], hasRepair ? 'after-repair' : 'before-repair');
  };
  return (
    <div className="recordings">
      {job.recordings.map((entry) => (
        <RecordingPart key={entry.id} entry={entry} />
      ))}
      {job.recordings.length === 0 && <p>{text.none}</p>}
      {!isReadOnly && <LiveHere />}
      {refused !== null && (
        <RefusedUpload
          file={refused.file}
          error={refused.error}
          onDismiss={dismissRefused}
          onSend={(mapping) => {
            dismissRefused();
            uploads.add([refused.file], refused.taken, mapping);
          }}
        />
      )}
      <UploadList uploads={uploads} />
      {!isReadOnly && (
        // biome-ignore lint/a11y/noStaticElementInteractions: the button inside does the same
        <div
          className={isOver ? 'drop-place dropping no-print' : 'drop-place no-print'}
          onDragEnter={drag}
          onDragOver={drag}
          onDragLeave={drag}
          onDrop={drop}
        >
          <p>{text.drop}</p>
          <div className="buttons">
            <FileButton
              label={text.choose}
              kind={job.recordings.length === 0 ? 'primary' : 'plain'}
              accept={ACCEPTED}
              multiple
              onFiles={(files) => uploads.add(files, 'before-repair')}
            />
            {hasRepair && (
              <FileButton
                label={text.chooseAfter}
                accept={ACCEPTED}
                multiple
                onFiles={(files) => uploads.add(files, 'after-repair')}
              />
            )}
            <LiveLink />
          </div>
        </div>
      )}
    </div>
  );
}
