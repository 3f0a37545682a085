/** `postmaster.pid`: what a running server writes about itself into its folder. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { programName } from './process-identity.ts';

export interface Postmaster {
  readonly pid: number;
  readonly port: number;
}

export const postmasterPath = (cluster: string) => join(cluster, 'postmaster.pid');

/** The server that wrote the file, when there is one and its process may be alive and a PostgreSQL. */
export function readPostmaster(cluster: string): Postmaster | undefined {
  let lines: string[];
  try {
    lines = readFileSync(postmasterPath(cluster), 'utf8').split('\n');
  } catch {
    return undefined;
  }
  const [pid, port] = [Number(lines[0]), Number(lines[3])];
  if (!Number.isInteger(pid) || pid <= 0 || !Number.isInteger(port) || port <= 0) return undefined;
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return undefined;
  }
  const name = programName(pid);
  // After a restart of the machine the number may belong to anything.
  return name === undefined || name.startsWith('postgres') ? { pid, port } : undefined;
}
