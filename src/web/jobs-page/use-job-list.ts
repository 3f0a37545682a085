import { useCallback, useEffect, useState } from 'react';
import type { JobSummary } from '../../jobs/record/job.ts';
import { listJobs } from '../api/jobs.ts';
import { askServer } from '../offline/connection.ts';

interface Query {
  readonly words: string;
  readonly waitsFor: JobSummary['waitsFor'] | '';
  readonly closed: boolean;
}

interface JobList {
  readonly jobs: readonly JobSummary[];
  readonly isLoading: boolean;
  readonly hasMore: boolean;
  readonly error: unknown;
  again(): void;
  more(): void;
}

const PAGE = 50;

/** One page of jobs after another; a newer question makes the answer to an older one void. */
export function useJobList({ words, waitsFor, closed }: Query): JobList {
  const [jobs, setJobs] = useState<readonly JobSummary[]>([]);
  const [isLoading, setIsLoading] = useState(true);
  const [hasMore, setHasMore] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const [turn, setTurn] = useState(0);

  const ask = useCallback(
    (before: string | undefined, signal?: AbortSignal) =>
      listJobs(
        {
          limit: PAGE,
          ...(words === '' ? {} : { words }),
          ...(waitsFor === '' ? {} : { waitsFor }),
          ...(closed ? {} : { closed: 'false' as const }),
          ...(before === undefined ? {} : { before }),
        },
        signal,
      ),
    [words, waitsFor, closed],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: `turn` asks the same question again.
  useEffect(() => {
    const abort = new AbortController();
    setIsLoading(true);
    ask(undefined, abort.signal).then(
      (found) => {
        setJobs(found);
        setHasMore(found.length === PAGE);
        setError(null);
        setIsLoading(false);
        void askServer();
      },
      (problem: unknown) => {
        if (abort.signal.aborted) return;
        setError(problem);
        setIsLoading(false);
      },
    );
    return () => abort.abort();
  }, [ask, turn]);

  return {
    jobs,
    isLoading,
    hasMore,
    error,
    again: () => setTurn((n) => n + 1),
    more: () => {
      ask(jobs.at(-1)?.changedAt).then((found) => {
        setJobs((shown) => [...shown, ...found.filter((job) => !shown.some((s) => s.id === job.id))]);
        setHasMore(found.length === PAGE);
      }, setError);
    },
  };
}
