/** Files on their way, and those that were refused, with what to do about it. */
import type { ReactNode } from 'react';
import { MAX_RECORDING_BYTES } from '../../server/contract/paths.ts';
import type { Unreadable } from '../../server/contract/recordings.ts';
import { ApiError } from '../api/client.ts';
import { Button } from '../kit/button.tsx';
import { Message } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { MappingEditor } from './mapping-editor.tsx';
import { RefusalWords } from './refusal-words.tsx';
import type { Uploads } from './use-uploads.ts';

export function UploadList({ uploads }: { readonly uploads: Uploads }): ReactNode {
  const { recording: text, common } = useText();
  const { percent } = useNumbers();
  return uploads.list.map((upload) => {
    if (upload.state === 'refused')
      return (
        <RefusedUpload
          key={upload.id}
          file={upload.file}
          error={upload.error}
          onDismiss={() => uploads.dismiss(upload.id)}
          onSend={(mapping) => {
            uploads.dismiss(upload.id);
            uploads.add([upload.file], upload.taken, mapping);
          }}
        />
      );
    if (upload.state === 'cancelled')
      return (
        <Message key={upload.id}>
          <p>{text.cancelled(upload.file.name)}</p>
          <Button kind="bare" onClick={() => uploads.dismiss(upload.id)}>
            {text.dismiss}
          </Button>
        </Message>
      );
    const words =
      upload.state === 'waiting'
        ? `${upload.file.name}: ${text.waiting}`
        : upload.share >= 1
          ? text.reading(upload.file.name)
          : text.uploading(upload.file.name, percent(upload.share));
    return (
      <div key={upload.id} className="upload">
        <p role="status">{words}</p>
        <progress
          aria-label={words}
          max={1}
          {...(upload.share >= 1 || upload.state === 'waiting' ? {} : { value: upload.share })}
        />
        <Button aria-label={text.cancelUpload(upload.file.name)} onClick={() => uploads.cancel(upload.id)}>
          {common.cancel}
        </Button>
      </div>
    );
  });
}

interface RefusedUploadProps {
  readonly file: File;
  readonly error: unknown;
  readonly onDismiss: () => void;
  /** Sends the file anew, read as said. */
  readonly onSend: (mapping: string) => void;
}

const headOf = (error: unknown): Partial<Unreadable> | null =>
  error instanceof ApiError && error.status === 422 ? ((error.body ?? null) as Partial<Unreadable> | null) : null;

export function RefusedUpload({ file, error, onDismiss, onSend }: RefusedUploadProps): ReactNode {
  const { recording: text } = useText();
  const { bytes } = useNumbers();
  const unreadable = headOf(error);
  const status = error instanceof ApiError ? error.status : 0;
  return (
    <Message isBad isLoud name={text.refused(file.name)}>
      <RefusalWords error={error} fileName={file.name} />
      {status === 413 && <p>{text.tooLarge(bytes(MAX_RECORDING_BYTES))}</p>}
      {status === 415 && error instanceof ApiError && error.facts.advice === undefined && <p>{text.notARecording}</p>}
      {unreadable?.head !== undefined && (
        <details>
          <summary>{text.readAnyway}</summary>
          <MappingEditor
            header={unreadable.head.header}
            rows={unreadable.head.rows}
            mapping={unreadable.guessed ?? null}
            guessed={unreadable.guessed ?? null}
            isGiven={false}
            applyName={text.sendAgain}
            onApply={(mapping) => onSend(JSON.stringify(mapping))}
          />
        </details>
      )}
      <div className="buttons">
        <Button onClick={onDismiss}>{text.dismiss}</Button>
      </div>
    </Message>
  );
}
