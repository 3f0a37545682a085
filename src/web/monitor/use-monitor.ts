import { useRef } from 'react';
import type { Monitor } from '../../jobs/record/monitor.ts';
import { monitorOf } from '../../jobs/record/monitor-of-job.ts';
import { useSheet } from '../sheet/sheet-context.ts';

/** What the job says of the monitor, and how it is changed. */
export function useMonitor(): {
  readonly monitor: Monitor;
  readonly isReadOnly: boolean;
  change(next: (monitor: Monitor) => Monitor): void;
} {
  const { job, save, isReadOnly } = useSheet();
  const monitor = monitorOf(job);
  const latest = useRef(monitor);
  latest.current = monitor;
  return {
    monitor,
    isReadOnly,
    change: (next) => {
      latest.current = next(latest.current);
      save('monitor', latest.current);
    },
  };
}
