/** A server on a store of its own, and a client that behaves like a page: keeps its cookie, sends its token. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Job } from '../../src/jobs/record/job.ts';
import { buildApp } from '../../src/server/app.ts';
import type { Session } from '../../src/server/contract/accounts.ts';
import { API, TOKEN_HEADER } from '../../src/server/contract/paths.ts';
import type { Work } from '../../src/server/contract/work.ts';
import type { HostRules } from '../../src/server/guards/host-guard.ts';
import { type OpenParts, openParts } from '../../src/server/open-parts.ts';
import type { App } from '../../src/server/parts.ts';
import type { TestServer } from '../store/test-server.ts';

export const PROGRAM = 'vaporwright 0.0.0-test';
export const LOOPBACK: HostRules = { isLoopback: true, names: [] };
export const BEYOND: HostRules = { isLoopback: false, names: ['bench-two'] };

export interface Route {
  readonly method: string | readonly string[];
  readonly url: string;
  readonly needs: unknown;
}

export interface Bench {
  readonly app: App;
  readonly parts: OpenParts;
  readonly routes: readonly Route[];
  /** Faults of the program itself; a test that expects none looks here. */
  readonly faults: readonly unknown[];
  client(host?: string): Client;
  close(): Promise<void>;
}

/** Where a server keeps its data: a second one may be opened there after the first. */
export interface Place {
  readonly dataFolder: string;
  readonly databaseUrl: string;
}

export interface BenchOptions {
  readonly place?: Place;
  readonly hosts?: HostRules;
  readonly pagesFolder?: string;
}

export async function openBench(server: TestServer, options: BenchOptions = {}): Promise<Bench> {
  const { hosts = LOOPBACK, pagesFolder = '/nowhere' } = options;
  const place = options.place ?? { dataFolder: server.folder(), databaseUrl: await server.freshDatabase() };
  const parts = await openParts({
    ...place,
    program: PROGRAM,
    hosts,
    publicAddress: () => 'http://localhost:4870',
    threads: 1,
  });
  const faults: unknown[] = [];
  const routes: Route[] = [];
  const app = await buildApp(parts, {
    pagesFolder,
    version: '0.0.0-test',
    checksAnswers: true,
    onFault: (error) => faults.push(error),
    onRoute: (route) => routes.push(route),
  });
  await app.ready();
  return {
    app,
    parts,
    routes,
    faults,
    client: (host) => new Client(app, host),
    close: async () => {
      await parts.board.close();
      await app.close();
      await parts.close();
    },
  };
}

export interface Answer<T = unknown> {
  readonly status: number;
  readonly body: T;
  readonly bytes: Buffer;
  readonly headers: Readonly<Record<string, string | string[] | number | undefined>>;
}

type Method = 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE';

export interface Sent {
  readonly json?: unknown;
  readonly form?: { readonly fields?: Readonly<Record<string, string>>; readonly file?: SentFile };
  readonly headers?: Readonly<Record<string, string>>;
}

export interface SentFile {
  readonly name: string;
  readonly content: Uint8Array | string;
}

const BOUNDARY = 'a-border-that-is-in-no-file';

export function formBody({ fields = {}, file }: NonNullable<Sent['form']>): Buffer {
  const parts: (string | Uint8Array)[] = Object.entries(fields).map(
    ([name, value]) => `--${BOUNDARY}\r\ncontent-disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
  );
  if (file !== undefined) {
    parts.push(
      `--${BOUNDARY}\r\ncontent-disposition: form-data; name="file"; filename="${file.name}"\r\ncontent-type: text/csv\r\n\r\n`,
      file.content,
      '\r\n',
    );
  }
  parts.push(`--${BOUNDARY}--\r\n`);
  return Buffer.concat(parts.map((part) => Buffer.from(part)));
}

export const FORM_TYPE = `multipart/form-data; boundary=${BOUNDARY}`;

export class Client {
  readonly #app: App;
  readonly #host: string;
  cookie: string | undefined;
  token: string | undefined;

  constructor(app: App, host = 'localhost:4870') {
    this.#app = app;
    this.#host = host;
  }

  /** As a page does: asks for its session first, then sends its token. */
  async ask<T = never>(method: Method, path: string, sent: Sent = {}): Promise<Answer<T>> {
    if (method !== 'GET' && this.token === undefined) await this.session();
    return this.raw(method, path, {
      ...sent,
      headers: { ...(this.token === undefined ? {} : { [TOKEN_HEADER]: this.token }), ...sent.headers },
    });
  }

  async raw<T = never>(method: Method, path: string, { json, form, headers = {} }: Sent = {}): Promise<Answer<T>> {
    const payload = form === undefined ? (json === undefined ? undefined : JSON.stringify(json)) : formBody(form);
    const type = form === undefined ? (json === undefined ? undefined : 'application/json') : FORM_TYPE;
    const answer = await this.#app.inject({
      method,
      url: path.startsWith('/!') ? path.slice(2) : `${API}${path}`,
      headers: {
        host: this.#host,
        ...(this.cookie === undefined ? {} : { cookie: this.cookie }),
        ...(type === undefined ? {} : { 'content-type': type }),
        ...headers,
      },
      ...(payload === undefined ? {} : { payload }),
    });
    const given = answer.cookies.find(({ name }) => name === 'vaporwright');
    if (given !== undefined) this.cookie = given.value === '' ? undefined : `vaporwright=${given.value}`;
    const isJson = String(answer.headers['content-type']).startsWith('application/json');
    return {
      status: answer.statusCode,
      body: (isJson && answer.body !== '' ? JSON.parse(answer.body) : answer.body) as T,
      bytes: answer.rawPayload,
      headers: answer.headers,
    };
  }

  async session(): Promise<Session> {
    const { body } = await this.raw<Session>('GET', '/session');
    this.token = body.csrf;
    return body;
  }

  async newJob(sections: object = {}): Promise<Job> {
    return (await this.ask<Job>('POST', '/jobs', { json: { sections } })).body;
  }

  send(id: string, file: SentFile, fields: Readonly<Record<string, string>> = {}): Promise<Answer> {
    return this.ask('POST', `/jobs/${id}/recordings`, { form: { fields, file } });
  }

  async untilOver(workId: string): Promise<Work> {
    for (;;) {
      const { work } = (await this.ask<{ work: Work }>('GET', `/work/${workId}`)).body;
      if (work.state !== 'waiting' && work.state !== 'running') return work;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }
}

const example = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)), 'utf8');
export const LEAK_CSV = example('leak-self-test.csv');
export const CAR: unknown = JSON.parse(example('invented-estate.car.json'));
