import type { ReactNode } from 'react';
import { attachmentAddress } from '../../api/jobs.ts';
import { Button } from '../../kit/button.tsx';
import { FileButton, TextField } from '../../kit/fields.tsx';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useSheet } from '../sheet-context.ts';

export function FilesSection(): ReactNode {
  const { job, save, takeIn, isReadOnly } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const words = text.job.files;
  const files = job.attachments;
  return (
    <>
      {files.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <ul className="files">
          {files.map((file) => (
            <li key={file.id} className="stack">
              <a
                href={attachmentAddress(job.id, file.id)}
                target="_blank"
                rel="noreferrer"
                aria-label={words.open(file.fileName)}
              >
                {file.mediaType.startsWith('image/') ? (
                  <img
                    className="photo"
                    src={attachmentAddress(job.id, file.id)}
                    alt={file.caption || file.fileName}
                    loading="lazy"
                  />
                ) : (
                  <span className="button bare">{file.fileName}</span>
                )}
              </a>
              <p className="small quiet">
                {file.fileName} · {numbers.bytes(file.bytes)} · {numbers.date(file.at)}
              </p>
              <TextField
                label={words.caption(file.fileName)}
                value={file.caption}
                maxLength={1000}
                readOnly={isReadOnly}
                onChange={(caption) =>
                  save(
                    'attachments',
                    files.map((f) => (f.id === file.id ? { ...f, caption } : f)),
                  )
                }
              />
              {!isReadOnly && (
                <Button
                  kind="bare"
                  aria-label={words.removeFile(file.fileName)}
                  onClick={() =>
                    save(
                      'attachments',
                      files.filter((f) => f.id !== file.id),
                    )
                  }
                >
                  {text.common.remove}
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
      {!isReadOnly && (
        <div className="buttons">
          <FileButton
            label={words.add}
            accept="image/*,.pdf,.doc,.docx,.odt,video/*"
            multiple
            onFiles={(chosen) => void takeIn(chosen)}
          />
        </div>
      )}
    </>
  );
}
