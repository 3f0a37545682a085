/** What a page does with a live recording, over a real socket: requests with its token, and the stream of what comes. */
import type { Job } from '../../src/jobs/record/job.ts';
import type { LiveEvents, LiveOfJob, LiveStatus } from '../../src/server/contract/live.ts';
import { API, TOKEN_HEADER } from '../../src/server/contract/paths.ts';

export interface Answer<T> {
  readonly status: number;
  readonly body: T;
}

type Heard = {
  readonly [Name in keyof LiveEvents]: { readonly event: Name; readonly data: LiveEvents[Name] };
}[keyof LiveEvents];

export class LivePage {
  readonly #address: string;
  #cookie = '';
  #token = '';

  constructor(address: string) {
    this.#address = address;
  }

  async open(): Promise<this> {
    const answer = await fetch(`${this.#address}${API}/session`);
    this.#cookie = String(answer.headers.get('set-cookie')).split(';')[0] ?? '';
    this.#token = ((await answer.json()) as { csrf: string }).csrf;
    return this;
  }

  async ask<T = never>(method: string, path: string, json?: unknown): Promise<Answer<T>> {
    const answer = await fetch(`${this.#address}${API}${path}`, {
      method,
      headers: {
        cookie: this.#cookie,
        [TOKEN_HEADER]: this.#token,
        ...(json === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(json === undefined ? {} : { body: JSON.stringify(json) }),
    });
    const text = await answer.text();
    const isJson = answer.headers.get('content-type')?.startsWith('application/json') === true && text !== '';
    return { status: answer.status, body: (isJson ? JSON.parse(text) : text) as T };
  }

  async newJob(sections: object = {}): Promise<Job> {
    return (await this.ask<Job>('POST', '/jobs', { sections })).body;
  }

  async live(jobId: string): Promise<LiveOfJob> {
    return (await this.ask<LiveOfJob>('GET', `/jobs/${jobId}/live`)).body;
  }

  /** Waits until the recording that runs is as wanted. */
  async until(jobId: string, holds: (status: LiveStatus) => boolean): Promise<LiveStatus> {
    for (;;) {
      const { live } = await this.live(jobId);
      if (live !== null && holds(live)) return live;
      await new Promise((resolve) => void setTimeout(resolve, 50));
    }
  }

  /** The stream, until `isEnough` or its end; what was heard, and the id of the last event that had one. */
  async hear(
    jobId: string,
    isEnough: (heard: Heard) => boolean,
    headers: Readonly<Record<string, string>> = {},
  ): Promise<{ readonly heard: readonly Heard[]; readonly lastId: string | undefined }> {
    const stop = new AbortController();
    const answer = await fetch(`${this.#address}${API}/jobs/${jobId}/live/events`, {
      headers: { cookie: this.#cookie, ...headers },
      signal: stop.signal,
    });
    const heard: Heard[] = [];
    let lastId: string | undefined;
    let text = '';
    try {
      for await (const piece of answer.body!.pipeThrough(new TextDecoderStream())) {
        text += piece;
        for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
          const lines = text.slice(0, end).split('\n');
          text = text.slice(end + 2);
          const field = (name: string): string | undefined =>
            lines.find((line) => line.startsWith(`${name}: `))?.slice(name.length + 2);
          const [event, data] = [field('event'), field('data')];
          if (event === undefined || data === undefined) continue;
          lastId = field('id') ?? lastId;
          const one = { event, data: JSON.parse(data) } as Heard;
          heard.push(one);
          if (isEnough(one)) return { heard, lastId };
        }
      }
      return { heard, lastId };
    } finally {
      stop.abort();
    }
  }
}
