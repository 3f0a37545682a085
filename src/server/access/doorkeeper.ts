/** At the door of every request: is it for us, from our own page, who asks, and may they? */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { TOKEN_HEADER } from '../contract/paths.ts';
import { type HostRules, isOwnHost, isOwnOrigin } from '../guards/host-guard.ts';
import { isPageToken, pageToken } from '../guards/page-token.ts';
import { Refusal } from '../refusal.ts';
import type { People } from './people.ts';
import { newSecret } from './secret.ts';
import { type Needs, requireRole, type Who } from './who.ts';

export const COOKIE = 'vaporwright';
const COOKIE_FORM = z.string().regex(/^[A-Za-z0-9_-]{43}$/);
const NOBODY: Who = { user: null, role: null, actor: { name: 'nobody' }, sessionToken: null };
const READING = ['GET', 'HEAD', 'OPTIONS'];

export interface DoorkeeperOptions {
  readonly people: People;
  readonly tokenKey: Buffer;
  readonly hosts: HostRules;
  /** The name that goes into the history where nobody signs in. */
  readonly localName: () => Promise<string>;
  /** A proxy in front speaks https: the cookie travels over nothing else. */
  readonly isSecure: boolean;
}

export class Doorkeeper {
  readonly #options: DoorkeeperOptions;

  constructor(options: DoorkeeperOptions) {
    this.#options = options;
  }

  /** Beyond loopback always; on loopback from the first account on. */
  get needsLogin(): boolean {
    return !this.#options.hosts.isLoopback || this.#options.people.hasAccounts;
  }

  checkHost(request: FastifyRequest): void {
    if (isOwnHost(request.headers.host, this.#options.hosts)) return;
    throw new Refusal('wrong-origin', 'This request names another host than this server.', {
      found: request.headers.host ?? 'no Host header',
      expected: 'localhost or the address that the server printed',
      advice: 'Open the address that the server printed when it started.',
    });
  }

  checkOrigin(request: FastifyRequest): void {
    if (isOwnOrigin(request.headers)) return;
    throw new Refusal('wrong-origin', 'This request comes from the page of another program or site.', {
      ...(request.headers.origin === undefined ? {} : { found: request.headers.origin }),
      expected: 'a page of this server',
    });
  }

  async whoIs(request: FastifyRequest): Promise<Who> {
    const { people, localName } = this.#options;
    const cookie = COOKIE_FORM.safeParse(request.cookies[COOKIE]);
    const sessionToken = cookie.success ? cookie.data : null;
    if (!this.needsLogin) {
      return { user: null, role: 'owner', actor: { name: await localName() }, sessionToken };
    }
    const user = sessionToken === null ? undefined : await people.userOf(sessionToken);
    if (user === undefined) return { ...NOBODY, sessionToken };
    return { user, role: user.role, actor: { name: user.name, userId: user.id }, sessionToken };
  }

  admit(request: FastifyRequest, needs: Needs): void {
    const { who } = request;
    requireRole(who, needs);
    if (READING.includes(request.method)) return;
    const token = request.headers[TOKEN_HEADER];
    if (who.sessionToken !== null && isPageToken(this.#options.tokenKey, who.sessionToken, token)) return;
    throw new Refusal('stale-page', 'This page is older than its session.', {
      expected: `the token of GET /session in the header ${TOKEN_HEADER}`,
      advice: 'Load the page again.',
    });
  }

  /** Makes sure of a cookie and gives the token that goes with it. */
  tokenFor(request: FastifyRequest, reply: FastifyReply): string {
    const sessionToken = request.who.sessionToken ?? this.giveCookie(reply, newSecret());
    return pageToken(this.#options.tokenKey, sessionToken);
  }

  giveCookie(reply: FastifyReply, secret: string): string {
    reply.setCookie(COOKIE, secret, {
      httpOnly: true,
      sameSite: 'strict',
      path: '/',
      secure: this.#options.isSecure,
    });
    return secret;
  }

  pageTokenOf(secret: string): string {
    return pageToken(this.#options.tokenKey, secret);
  }

  takeCookie(reply: FastifyReply): void {
    reply.clearCookie(COOKIE, { path: '/', httpOnly: true, sameSite: 'strict', secure: this.#options.isSecure });
  }
}
