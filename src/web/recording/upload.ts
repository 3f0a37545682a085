/** Sends a recording with progress, which fetch does not tell; refusals come as `ApiError` like all others. */

import type { ErrorFacts } from '../../server/contract/error.ts';
import { API, TOKEN_HEADER } from '../../server/contract/paths.ts';
import type { Uploaded } from '../../server/contract/recordings.ts';
import { ApiError, readSession, Unreachable } from '../api/client.ts';

export interface UploadRequest {
  readonly jobId: string;
  readonly file: File;
  readonly taken: 'before-repair' | 'after-repair';
  /** JSON of a mapping, where the guess failed. */
  readonly mapping?: string;
  readonly signal: AbortSignal;
  /** Share of the bytes that left; 1 while the server reads. */
  readonly onProgress: (share: number) => void;
}

function factsOf(request: XMLHttpRequest): { readonly facts: ErrorFacts; readonly body: unknown } {
  try {
    const body = JSON.parse(request.responseText) as { error?: ErrorFacts };
    if (body.error !== undefined) return { facts: body.error, body };
  } catch {
    // Not one of ours: said with its number below.
  }
  return { facts: { code: 'internal', message: `HTTP ${request.status} ${request.statusText}` }, body: null };
}

export async function uploadWithProgress(upload: UploadRequest): Promise<Uploaded> {
  const { csrf } = await readSession();
  const form = new FormData();
  form.append('taken', upload.taken);
  if (upload.mapping !== undefined) form.append('mapping', upload.mapping);
  form.append('file', upload.file);
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    const stop = (): void => request.abort();
    request.open('POST', `${API}/jobs/${encodeURIComponent(upload.jobId)}/recordings`);
    request.setRequestHeader(TOKEN_HEADER, csrf);
    request.upload.onprogress = ({ loaded, total }) => upload.onProgress(total > 0 ? loaded / total : 0);
    request.upload.onload = () => upload.onProgress(1);
    request.onload = () => {
      if (request.status >= 200 && request.status < 300) {
        resolve(JSON.parse(request.responseText) as Uploaded);
        return;
      }
      const { facts, body } = factsOf(request);
      reject(new ApiError(request.status, facts, body));
    };
    request.onerror = () => reject(new Unreachable());
    request.onabort = () => reject(new DOMException('Stopped', 'AbortError'));
    request.onloadend = () => upload.signal.removeEventListener('abort', stop);
    upload.signal.addEventListener('abort', stop);
    if (upload.signal.aborted) reject(new DOMException('Stopped', 'AbortError'));
    else request.send(form);
  });
}
