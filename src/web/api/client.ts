/** Requests to the server. A refusal comes as `ApiError` with words for the reader. */
import type { Job } from '../../jobs/record/job.ts';
import type { Session } from '../../server/contract/accounts.ts';
import type { ErrorBody, ErrorFacts } from '../../server/contract/error.ts';
import { API, TOKEN_HEADER } from '../../server/contract/paths.ts';

/** The server cannot be reached; what was loaded can still be read. */
export class Unreachable extends Error {
  constructor() {
    super('The server cannot be reached.');
    this.name = 'Unreachable';
  }
}

export class ApiError extends Error {
  readonly status: number;
  readonly facts: ErrorFacts;
  readonly body: unknown;
  constructor(status: number, facts: ErrorFacts, body: unknown) {
    super(facts.message);
    this.name = 'ApiError';
    this.status = status;
    this.facts = facts;
    this.body = body;
  }
}

/** Somebody else changed the job in the meantime; `current` is what stands. */
export class Conflict extends ApiError {
  readonly current: Job;
  constructor(facts: ErrorFacts, current: Job) {
    super(409, facts, { current });
    this.name = 'Conflict';
    this.current = current;
  }
}

const listeners = new Set<() => void>();
let isReachable = true;
export const connection = {
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  isReachable: (): boolean => isReachable,
  tell(reachable: boolean): void {
    if (reachable === isReachable) return;
    isReachable = reachable;
    for (const listener of listeners) listener();
  },
};

let session: Promise<Session> | null = null;
/** Who is asking; asked once, and anew after signing in or out. */
export function readSession(isFresh = false): Promise<Session> {
  if (session === null || isFresh) {
    session = fetchJson<Session>('GET', '/session');
    session.catch(() => {
      session = null;
    });
  }
  return session;
}

interface Sent {
  readonly json?: unknown;
  readonly form?: FormData;
  readonly signal?: AbortSignal;
  /** The page is being left: let the request outlive it. */
  readonly keepalive?: boolean;
}

type Method = 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE';

export async function fetchAnswer(method: Method, path: string, sent: Sent = {}, isRetry = false): Promise<Response> {
  const headers: Record<string, string> = {};
  if (method !== 'GET') headers[TOKEN_HEADER] = (await readSession(isRetry)).csrf;
  if (sent.json !== undefined) headers['content-type'] = 'application/json';
  const body = sent.form ?? (sent.json === undefined ? undefined : JSON.stringify(sent.json));
  let answer: Response;
  try {
    answer = await fetch(API + path, {
      method,
      headers,
      credentials: 'same-origin',
      ...(body === undefined ? {} : { body }),
      ...(sent.signal === undefined ? {} : { signal: sent.signal }),
      ...(sent.keepalive === undefined ? {} : { keepalive: sent.keepalive }),
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error;
    connection.tell(false);
    throw new Unreachable();
  }
  // A service worker answers reads from its store when the server is away; only a change proves that it is there.
  if (method !== 'GET' || navigator.serviceWorker?.controller == null) connection.tell(true);
  if (answer.ok) return answer;
  const refusal = await refusalOf(answer);
  if (refusal.facts.code === 'stale-page' && !isRetry) return fetchAnswer(method, path, sent, true);
  throw refusal;
}

async function refusalOf(answer: Response): Promise<ApiError> {
  let body: (Partial<ErrorBody> & { current?: Job }) | null = null;
  try {
    body = await answer.json();
  } catch {
    // Not one of ours (a proxy, a crash): said with its number below.
  }
  const facts: ErrorFacts = body?.error ?? { code: 'internal', message: `HTTP ${answer.status} ${answer.statusText}` };
  if (answer.status === 409 && body?.current !== undefined) return new Conflict(facts, body.current);
  return new ApiError(answer.status, facts, body);
}

export async function fetchJson<T>(method: Method, path: string, sent: Sent = {}): Promise<T> {
  const answer = await fetchAnswer(method, path, sent);
  return answer.status === 204 ? (undefined as T) : ((await answer.json()) as T);
}
