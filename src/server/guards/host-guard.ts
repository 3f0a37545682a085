/**
 * Against pages of other origins and DNS rebinding: a request must name this server by a name that only this server
 * has, and one that changes something must come from this server's own page.
 */
import { isIP } from 'node:net';

export interface HostRules {
  /** Loopback only: no other name is right. */
  readonly isLoopback: boolean;
  /** Names of this machine and of a proxy in front of it, lower case, without port. */
  readonly names: readonly string[];
}

const LOOPBACK_NAMES = ['localhost', '[::1]'];

/** The host of a Host header without its port; undefined when it is none. */
export function hostOf(header: string | undefined): string | undefined {
  const match = /^(\[[0-9a-f:.]+\]|[a-z0-9._-]+)(?::\d{1,5})?$/i.exec(header ?? '');
  return match?.[1]?.toLowerCase();
}

const isLoopbackAddress = (host: string): boolean => isIP(host) === 4 && host.startsWith('127.');

/**
 * A name in the Host header that is not ours means that some other name was made to point here. An address in digits
 * cannot be rebound, so beyond loopback every one is right.
 */
export function isOwnHost(header: string | undefined, rules: HostRules): boolean {
  const host = hostOf(header);
  if (host === undefined) return false;
  if (LOOPBACK_NAMES.includes(host) || isLoopbackAddress(host)) return true;
  if (rules.names.includes(host)) return true;
  return !rules.isLoopback && (isIP(host) === 4 || isIP(host.replace(/^\[|\]$/g, '')) === 6);
}

export interface OriginHeaders {
  readonly host?: string | undefined;
  readonly origin?: string | undefined;
  readonly 'sec-fetch-site'?: string | string[] | undefined;
}

/** True when the request is from our own page, or from a program that is no browser. */
export function isOwnOrigin(headers: OriginHeaders): boolean {
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return false;
  if (headers.origin === undefined) return true;
  return headers.origin === `http://${headers.host}` || headers.origin === `https://${headers.host}`;
}
