import { useEffect } from 'react';
import type { JobEvent, Work } from '../../server/contract/work.ts';
import { ApiError, connection } from '../api/client.ts';
import { eventsAddress, readOneWork, readWork } from '../api/jobs.ts';
import type { JobSaver } from './job-saver.ts';

const AGAIN_MS = 4000;

export interface WorkList {
  /** Ids of what was under way when the page last heard of it. */
  open(): readonly string[];
  follow(work: Work): void;
  /** Nobody knows of it any more. */
  forget(workId: string): void;
}

/** Listens to what happens to the job elsewhere; the same line tells whether the server is there. */
export function useJobEvents(id: string, saver: JobSaver, list: WorkList): void {
  useEffect(() => {
    let source: EventSource | null = null;
    let timer: ReturnType<typeof setTimeout> | null = null;
    let wasAway = false;
    const readRunning = (): void => {
      readWork(id).then(
        (all) => {
          all.forEach(list.follow);
          // What has ended while nobody listened.
          for (const open of list.open().filter((known) => !all.some((work) => work.id === known))) {
            readOneWork(open).then(list.follow, (error: unknown) => {
              if (error instanceof ApiError && error.status === 404) list.forget(open);
            });
          }
        },
        () => undefined,
      );
    };
    const open = (): void => {
      timer = null;
      source = new EventSource(eventsAddress(id));
      source.addEventListener('open', () => {
        connection.tell(true);
        readRunning();
        if (wasAway) void saver.lookAgain();
        wasAway = false;
      });
      source.addEventListener('error', () => {
        wasAway = true;
        // A refusal closes the line for good; a lost one is opened again by the browser, but not by every one in time.
        source?.close();
        timer ??= setTimeout(open, AGAIN_MS);
        void fetch('/api/v1/session?alive', { cache: 'no-store' }).then(
          (answer) => connection.tell(answer.status < 500),
          () => connection.tell(false),
        );
      });
      source.addEventListener('job', (event) => {
        saver.heard((JSON.parse(event.data) as JobEvent).version);
      });
      source.addEventListener('work', (event) => {
        list.follow(JSON.parse(event.data) as Work);
      });
    };
    open();
    return () => {
      source?.close();
      if (timer !== null) clearTimeout(timer);
    };
  }, [id, saver, list]);
}
