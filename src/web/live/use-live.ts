/** Listens to a live recording: what there is at once, then what comes; joins on after a broken line. */
import { useEffect, useReducer, useRef } from 'react';
import type { LiveEvents, LiveFollow, LiveOver, LiveStatus } from '../../server/contract/live.ts';
import { liveEventsAddress, readLive } from '../api/live.ts';
import { LiveData } from './live-data.ts';

const AGAIN_MS = 1500;

export interface LiveView {
  readonly status: LiveStatus;
  readonly data: LiveData;
  readonly follow: LiveFollow | null;
  readonly over: LiveOver | null;
  /** The line to the server is broken; what is shown may be old. */
  readonly isLost: boolean;
  /** Goes up with every change, for what is worked out of the rows. */
  readonly turn: number;
}

export function useLive(first: LiveStatus): [LiveView, (status: LiveStatus) => void] {
  const { jobId, id } = first;
  const view = useRef<LiveView>({
    status: first,
    data: new LiveData(),
    follow: null,
    over: null,
    isLost: false,
    turn: 0,
  });
  const [, redraw] = useReducer((n: number) => n + 1, 0);
  const change = useRef((next: Partial<LiveView>): void => {
    view.current = { ...view.current, ...next, turn: view.current.turn + 1 };
    redraw();
  }).current;
  useEffect(() => {
    let source: EventSource | null = null;
    let timer: ReturnType<typeof setTimeout> | null = null;
    let isGone = false;
    const again = (): void => {
      source?.close();
      if (!isGone) timer ??= setTimeout(open, AGAIN_MS);
    };
    const open = (): void => {
      timer = null;
      source = new EventSource(liveEventsAddress(jobId, view.current.data.rows));
      const on = <Name extends keyof LiveEvents>(name: Name, take: (data: LiveEvents[Name]) => void): void =>
        source?.addEventListener(name, (event) => take(JSON.parse((event as MessageEvent<string>).data)));
      source.addEventListener('open', () => change({ isLost: false }));
      source.addEventListener('error', () => {
        if (view.current.over !== null) return;
        change({ isLost: true });
        // Broken, or refused as there is nothing to listen to any more.
        readLive(jobId).then(
          ({ live }) => {
            if (live?.id === id) again();
            else change({ over: { how: 'left', recordingId: null }, isLost: false });
          },
          () => again(),
        );
        source?.close();
      });
      on('status', (status) => change({ status }));
      on('rows', (rows) => {
        if (view.current.data.add(rows)) change({});
        else again();
      });
      on('follow', (follow) => change({ follow }));
      on('over', (over) => {
        change({ over, isLost: false });
        source?.close();
      });
    };
    open();
    return () => {
      isGone = true;
      source?.close();
      if (timer !== null) clearTimeout(timer);
    };
  }, [jobId, id, change]);
  return [view.current, (status) => change({ status })];
}
