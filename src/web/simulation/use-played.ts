import { useEffect, useRef, useState } from 'react';
import type { PlayedRun, PlayRequest } from './played-run.ts';
import { PlayerClient, type WorkerLike } from './player-client.ts';

export interface Played {
  /** The newest run there is; stays while the next one is computed. */
  readonly run: PlayedRun | undefined;
  readonly isWaiting: boolean;
  readonly error: string | undefined;
}

const makeWorker = (): WorkerLike =>
  new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }) as unknown as WorkerLike;

/** How long a slider must rest before the coarse run is replaced by a fine one. */
const REST_MS = 160;

/** The run of a request, computed in a worker: coarse at once, fine when the request rests. */
export function usePlayed(request: PlayRequest | undefined, isDragging: boolean): Played {
  const [run, setRun] = useState<PlayedRun>();
  const [isWaiting, setWaiting] = useState(false);
  const [error, setError] = useState<string>();
  const client = useRef<PlayerClient | undefined>(undefined);

  useEffect(() => {
    const made = new PlayerClient(
      makeWorker,
      (next, isNewest) => {
        setRun(next);
        setError(undefined);
        if (isNewest) setWaiting(false);
      },
      (words) => {
        setError(words);
        setWaiting(false);
      },
    );
    client.current = made;
    return () => {
      made.close();
      client.current = undefined;
    };
  }, []);

  const key = JSON.stringify(request);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the request
  useEffect(() => {
    if (request === undefined) return undefined;
    setWaiting(true);
    if (isDragging) {
      client.current?.ask({ ...request, isCoarse: true });
      const timer = setTimeout(() => client.current?.ask({ ...request, isCoarse: false }), REST_MS);
      return () => clearTimeout(timer);
    }
    client.current?.ask({ ...request, isCoarse: false });
    return undefined;
  }, [key, isDragging]);

  return { run, isWaiting, error };
}
