/** Files on their way to the server, one after the other. */
import { useCallback, useRef, useState } from 'react';
import { useSheet } from '../sheet/sheet-context.ts';
import { uploadWithProgress } from './upload.ts';

export type UploadState = 'waiting' | 'sending' | 'refused' | 'cancelled';

export interface Upload {
  readonly id: number;
  readonly file: File;
  readonly taken: 'before-repair' | 'after-repair';
  readonly state: UploadState;
  readonly share: number;
  readonly error: unknown;
}

export interface Uploads {
  readonly list: readonly Upload[];
  add(files: readonly File[], taken: Upload['taken'], mapping?: string): void;
  cancel(id: number): void;
  dismiss(id: number): void;
}

let nextId = 1;

export function useUploads(onTaken: (recordingId: string) => void): Uploads {
  const { job, adopt } = useSheet();
  const [list, setList] = useState<readonly Upload[]>([]);
  const stops = useRef(new Map<number, AbortController>());
  const queue = useRef<Promise<void>>(Promise.resolve());
  const change = useCallback((id: number, what: Partial<Upload>): void => {
    setList((before) => before.map((upload) => (upload.id === id ? { ...upload, ...what } : upload)));
  }, []);
  const dismiss = useCallback((id: number): void => {
    setList((before) => before.filter((upload) => upload.id !== id));
  }, []);

  const send = async (upload: Upload, mapping: string | undefined): Promise<void> => {
    const stop = stops.current.get(upload.id);
    if (stop === undefined || stop.signal.aborted) return;
    change(upload.id, { state: 'sending' });
    try {
      const { job: newer, recordingId } = await uploadWithProgress({
        jobId: job.id,
        file: upload.file,
        taken: upload.taken,
        ...(mapping === undefined ? {} : { mapping }),
        signal: stop.signal,
        onProgress: (share) => change(upload.id, { share }),
      });
      adopt(newer);
      dismiss(upload.id);
      onTaken(recordingId);
    } catch (error) {
      const isCancelled = error instanceof DOMException && error.name === 'AbortError';
      change(upload.id, { state: isCancelled ? 'cancelled' : 'refused', error });
    } finally {
      stops.current.delete(upload.id);
    }
  };

  return {
    list,
    dismiss,
    add: (files, taken, mapping) => {
      const added = files.map(
        (file): Upload => ({ id: nextId++, file, taken, state: 'waiting', share: 0, error: null }),
      );
      setList((before) => [...before, ...added]);
      for (const upload of added) {
        stops.current.set(upload.id, new AbortController());
        queue.current = queue.current.then(() => send(upload, mapping));
      }
    },
    cancel: (id) => {
      stops.current.get(id)?.abort();
      change(id, { state: 'cancelled' });
    },
  };
}
