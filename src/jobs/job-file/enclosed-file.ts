/** A raw file inside a job file: as text where it is text, so that a person can read it, else in base64. */
import { createHash } from 'node:crypto';
import type { EnclosedFile } from '../record/job-file.ts';
import { StoreProblem } from '../store-problem.ts';

/** The text when its UTF-8 form is these very bytes. */
function asText(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

export function enclose(sha256: string, bytes: Uint8Array): EnclosedFile {
  const text = asText(bytes);
  return {
    sha256,
    bytes: bytes.byteLength,
    ...(text === undefined
      ? { encoding: 'base64', content: Buffer.from(bytes).toString('base64') }
      : { encoding: 'utf-8', content: text }),
  };
}

/** @throws StoreProblem when the content is not the one that was hashed */
export function disclose(file: EnclosedFile): Uint8Array {
  const bytes = Buffer.from(file.content, file.encoding === 'base64' ? 'base64' : 'utf8');
  const found = createHash('sha256').update(bytes).digest('hex');
  if (found === file.sha256 && bytes.byteLength === file.bytes) return bytes;
  throw new StoreProblem(
    'bad-file',
    `A raw file in the job file has changed: expected SHA-256 ${file.sha256} of ${file.bytes} bytes, found ${found} of ${bytes.byteLength}.`,
    { where: file.sha256, advice: 'Export the job again; a job file is not to be edited by hand where raw files are.' },
  );
}
