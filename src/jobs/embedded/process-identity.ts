/** Which process wrote a file, so that a number used again by another process is not taken for it. */
import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';

export interface ProcessIdentity {
  readonly pid: number;
  readonly host: string;
  /** Start time as the kernel counts it; absent where it cannot be told. */
  readonly started?: string;
}

/** Field 22 of /proc/PID/stat, counted after the name in brackets, which may hold spaces. */
function startOf(pid: number): string | undefined {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
  } catch {
    return undefined;
  }
}

export function ownIdentity(): ProcessIdentity {
  const started = startOf(process.pid);
  return { pid: process.pid, host: hostname(), ...(started === undefined ? {} : { started }) };
}

/** True unless it is certain that the process has ended. */
export function mayBeAlive(who: ProcessIdentity): boolean {
  if (who.host !== hostname()) return true;
  try {
    process.kill(who.pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
  const started = startOf(who.pid);
  return who.started === undefined || started === undefined || started === who.started;
}

/** Name of a running program; undefined where the system does not tell. */
export function programName(pid: number): string | undefined {
  try {
    return readFileSync(`/proc/${pid}/comm`, 'utf8').trim();
  } catch {
    return undefined;
  }
}

export function parseIdentity(text: string): ProcessIdentity | undefined {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== 'object' || value === null || !('pid' in value) || !('host' in value)) return undefined;
    if (typeof value.pid !== 'number' || typeof value.host !== 'string') return undefined;
    const started = 'started' in value && typeof value.started === 'string' ? { started: value.started } : {};
    return { pid: value.pid, host: value.host, ...started };
  } catch {
    return undefined;
  }
}
