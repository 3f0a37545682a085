import { useCallback, useEffect, useRef, useState } from 'react';
import type { PlayedRun, PlayRequest } from './played-run.ts';
import { PlayerClient, type WorkerLike } from './player-client.ts';

export interface Player {
  readonly error: string | undefined;
  /** Plays a request coarsely and at once, while what is wished for still changes. */
  readonly sketch: (request: PlayRequest) => void;
}

const makeWorker = (): WorkerLike =>
  new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }) as unknown as WorkerLike;

/**
 * Plays requests in a worker.
 * @param request what is wished for; played finely as soon as it is another one
 * @param key tells one request from another
 * @param onRun gets every run that comes back, sketches too; not by way of React, so that it may come at every frame
 */
export function usePlayed(request: PlayRequest | undefined, key: string, onRun: (run: PlayedRun) => void): Player {
  const [error, setError] = useState<string>();
  const client = useRef<PlayerClient | undefined>(undefined);
  const take = useRef(onRun);
  take.current = onRun;

  useEffect(() => {
    const made = new PlayerClient(
      makeWorker,
      (run) => {
        setError(undefined);
        take.current(run);
      },
      setError,
    );
    client.current = made;
    return () => {
      made.close();
      client.current = undefined;
    };
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the request
  useEffect(() => {
    if (request !== undefined) client.current?.ask({ ...request, isCoarse: false });
  }, [key]);

  const sketch = useCallback((wished: PlayRequest) => client.current?.ask({ ...wished, isCoarse: true }), []);
  return { error, sketch };
}
