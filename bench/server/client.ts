/** A page as the server sees it: one kept connection, its cookie, its token. Light, so that the server is what is measured. */
import { Agent, request } from 'node:http';
import { API, TOKEN_HEADER } from '../../src/server/contract/paths.ts';

export interface Answer {
  readonly status: number;
  readonly body: Buffer;
  /** From sending to the last byte. */
  readonly ms: number;
}

export class Page {
  readonly #agent = new Agent({ keepAlive: true, maxSockets: 1 });
  readonly #address: URL;
  #cookie = '';
  #token = '';

  private constructor(address: string) {
    this.#address = new URL(address);
  }

  static async open(address: string): Promise<Page> {
    const page = new Page(address);
    const { body } = await page.ask('GET', '/session');
    page.#token = (JSON.parse(body.toString()) as { csrf: string }).csrf;
    return page;
  }

  ask(method: string, path: string, content?: unknown): Promise<Answer> {
    const payload =
      content === undefined || content instanceof FormBody ? undefined : Buffer.from(JSON.stringify(content));
    const body = content instanceof FormBody ? content.bytes : payload;
    const type = content instanceof FormBody ? FormBody.type : 'application/json';
    return new Promise((resolve, reject) => {
      const from = performance.now();
      const sent = request(
        {
          host: '127.0.0.1',
          port: this.#address.port,
          path: API + path,
          method,
          agent: this.#agent,
          headers: {
            host: this.#address.host,
            cookie: this.#cookie,
            [TOKEN_HEADER]: this.#token,
            ...(body === undefined ? {} : { 'content-type': type, 'content-length': body.length }),
          },
        },
        (answer) => {
          const given = answer.headers['set-cookie']?.[0];
          if (given !== undefined) this.#cookie = given.split(';')[0] ?? '';
          const pieces: Buffer[] = [];
          answer.on('data', (piece: Buffer) => pieces.push(piece));
          answer.on('end', () =>
            resolve({ status: answer.statusCode ?? 0, body: Buffer.concat(pieces), ms: performance.now() - from }),
          );
          answer.on('error', reject);
        },
      );
      sent.on('error', reject);
      sent.end(body);
    });
  }

  async json<T>(method: string, path: string, content?: unknown): Promise<T> {
    const { status, body } = await this.ask(method, path, content);
    if (status >= 300) throw new Error(`${method} ${path}: ${status} ${body.toString().slice(0, 300)}`);
    return JSON.parse(body.toString()) as T;
  }

  close(): void {
    this.#agent.destroy();
  }
}

/** A form with one file. */
export class FormBody {
  static readonly #border = 'a-border-that-is-in-no-recording';
  static readonly type = `multipart/form-data; boundary=${FormBody.#border}`;
  readonly bytes: Buffer;

  constructor(fileName: string, content: Uint8Array) {
    const head = `--${FormBody.#border}\r\ncontent-disposition: form-data; name="file"; filename="${fileName}"\r\n\r\n`;
    this.bytes = Buffer.concat([Buffer.from(head), content, Buffer.from(`\r\n--${FormBody.#border}--\r\n`)]);
  }
}
