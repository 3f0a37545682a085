import { momentOf, nextDay, type WallTime, wallTime, weekday } from './local-time.ts';

/** A drive that the owner makes anyway. */
export interface RoutineDrive {
  /** Wall-clock time of leaving. */
  readonly hour: number;
  readonly minute: number;
  readonly lengthS: number;
  /** 0 = Sunday; absent = every day. */
  readonly weekdays?: readonly number[];
}

export interface OwnDrive {
  readonly startMs: number;
  readonly endMs: number;
}

type Day = Pick<WallTime, 'year' | 'month' | 'day'>;

export function ownDrivesOf(day: Day, routine: readonly RoutineDrive[], zone: string): OwnDrive[] {
  const ofDay = weekday({ ...day, hour: 0, minute: 0 });
  return routine
    .filter(({ weekdays }) => weekdays === undefined || weekdays.includes(ofDay))
    .map(({ hour, minute, lengthS }) => {
      const startMs = momentOf({ ...day, hour, minute }, zone);
      return { startMs, endMs: startMs + lengthS * 1000 };
    });
}

/** The owner's drives that begin between two moments, the first first. */
export function ownDrives(
  routine: readonly RoutineDrive[],
  zone: string,
  fromMs: number,
  toMs: number,
): readonly OwnDrive[] {
  if (routine.length === 0) return [];
  const drives: OwnDrive[] = [];
  let day: Day = wallTime(fromMs, zone);
  while (momentOf({ ...day, hour: 0, minute: 0 }, zone) <= toMs) {
    drives.push(...ownDrivesOf(day, routine, zone));
    day = nextDay({ ...day, hour: 0, minute: 0 });
  }
  return drives
    .filter(({ startMs }) => startMs >= fromMs && startMs <= toMs)
    .sort((one, other) => one.startMs - other.startMs);
}
