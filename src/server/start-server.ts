/** A server that listens, from its options to its end. */

import { isIP } from 'node:net';
import { hostname } from 'node:os';
import { addDemoShopOnFirstStart } from '../jobs/demo/demo-shop.ts';
import { buildApp } from './app.ts';
import type { HostRules } from './guards/host-guard.ts';
import { type OpenParts, openParts } from './open-parts.ts';
import { writeRunning } from './running-file.ts';

/** Fixed, so that a page that was installed finds its server again; another one where it is taken. */
export const USUAL_PORT = 4870;
export const USUAL_HOST = '127.0.0.1';

export interface ServerOptions {
  readonly dataFolder?: string;
  readonly databaseUrl?: string;
  readonly host?: string;
  /** Absent: the usual one, or a free one where that is taken. */
  readonly port?: number;
  /** Where people reach the server when a proxy stands in front of it. */
  readonly publicUrl?: string;
  readonly pagesFolder: string;
  readonly program: string;
  readonly version: string;
  readonly onFault?: (error: unknown, where: string) => void;
  /** Where the demo shop's files lie; put into a store that has never had a job. Absent: none. */
  readonly demoFolder?: string;
}

export interface RunningServer {
  readonly address: string;
  readonly dataFolder: string;
  /** Secret of the link for the first account; undefined where none is needed. */
  readonly firstAccountUrl: string | undefined;
  readonly needsLogin: boolean;
  /** Raw files of jobs that are not in this data folder. */
  readonly missingFiles: number;
  readonly parts: OpenParts;
  close(): Promise<void>;
}

const isLoopbackHost = (host: string): boolean =>
  host === 'localhost' || host === '::1' || (isIP(host) === 4 && host.startsWith('127.'));

function hostRules(host: string, publicUrl: string | undefined): HostRules {
  const own = hostname().toLowerCase();
  const isLoopback = isLoopbackHost(host);
  return {
    // Behind a proxy the machine is reached from elsewhere, whatever the socket is bound to.
    isLoopback: isLoopback && publicUrl === undefined,
    names: [
      ...(isLoopback ? [] : [own, `${own}.local`]),
      ...(publicUrl === undefined ? [] : [new URL(publicUrl).hostname.toLowerCase()]),
    ],
  };
}

const isTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES');

export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const { host = USUAL_HOST, port, publicUrl, pagesFolder, program, version, onFault, demoFolder } = options;
  let address = '';
  const parts = await openParts({
    program,
    hosts: hostRules(host, publicUrl),
    isSecure: publicUrl?.startsWith('https:') === true,
    publicAddress: () => address,
    ...(options.dataFolder === undefined ? {} : { dataFolder: options.dataFolder }),
    ...(options.databaseUrl === undefined ? {} : { databaseUrl: options.databaseUrl }),
  });
  try {
    if (demoFolder !== undefined) await addDemoShopOnFirstStart(parts.store, demoFolder);
    const app = await buildApp(parts, { pagesFolder, version, ...(onFault === undefined ? {} : { onFault }) });
    try {
      await app.listen({ host, port: port ?? USUAL_PORT });
    } catch (error) {
      if (port !== undefined || !isTaken(error)) throw error;
      await app.listen({ host, port: 0 });
    }
    const bound = app.server.address();
    const boundPort = typeof bound === 'object' && bound !== null ? bound.port : (port ?? USUAL_PORT);
    const shown = host === '0.0.0.0' || host === '::' ? hostname() : isIP(host) === 6 ? `[${host}]` : host;
    const local = `http://${shown === USUAL_HOST ? 'localhost' : shown}:${boundPort}`;
    address = publicUrl?.replace(/\/$/, '') ?? local;
    const forget = writeRunning(
      parts.store.dataFolder,
      `http://${isLoopbackHost(host) ? '127.0.0.1' : shown}:${boundPort}`,
    );
    const { needsLogin } = parts.doorkeeper;
    // After '#': a browser keeps it to itself, so that it is in no log and in no header.
    const firstAccountUrl =
      needsLogin && !parts.people.hasAccounts
        ? `${address}/sign-in#first=${parts.people.offerFirstAccount()}`
        : undefined;
    return {
      address,
      dataFolder: parts.store.dataFolder,
      firstAccountUrl,
      needsLogin,
      missingFiles: await parts.store.countMissingFiles(),
      parts,
      close: async () => {
        forget();
        // Work first: an answer that waits for it would hold up the end.
        await parts.board.close();
        // What was recorded stays on the disk and is offered at the next start.
        await parts.live.close();
        await app.close();
        await parts.close();
      },
    };
  } catch (error) {
    await parts.close();
    throw error;
  }
}
