import { describe, expect, test } from 'vitest';
import { hostOf, isOwnHost, isOwnOrigin } from './host-guard.ts';

const LOOPBACK = { isLoopback: true, names: [] };
const BEYOND = { isLoopback: false, names: ['bench-two', 'bench-two.local'] };

describe('the host that is named', () => {
  test.each([
    ['localhost:4870', 'localhost'],
    ['127.0.0.1', '127.0.0.1'],
    ['[::1]:80', '[::1]'],
    ['Bench-Two.local:1', 'bench-two.local'],
  ])('%s', (header, host) => expect(hostOf(header)).toBe(host));
  test.each([undefined, '', 'a b', 'evil.example/', 'localhost:99999999', 'user@localhost'])('%s is none', (header) =>
    expect(hostOf(header)).toBeUndefined(),
  );
});

describe('on loopback', () => {
  test.each(['localhost', 'localhost:4870', '127.0.0.1:4870', '127.1.2.3', '[::1]:4870'])('%s is own', (host) =>
    expect(isOwnHost(host, LOOPBACK)).toBe(true),
  );
  test.each(['evil.example', 'localhost.evil.example', '127.0.0.1.evil.example', '192.0.2.7', '', undefined])(
    '%s is not',
    (host) => expect(isOwnHost(host, LOOPBACK)).toBe(false),
  );
});

describe('beyond loopback', () => {
  test.each(['192.0.2.7:4870', '[2001:db8::7]:4870', 'bench-two:4870', 'BENCH-TWO.local', 'localhost'])(
    '%s is own',
    (host) => expect(isOwnHost(host, BEYOND)).toBe(true),
  );
  test.each(['evil.example', 'bench-two.evil.example', '1.2.3.4.evil.example'])('%s is not', (host) =>
    expect(isOwnHost(host, BEYOND)).toBe(false),
  );
});

describe('the page that asks', () => {
  const host = 'localhost:4870';
  test('our own page, and programs that are no browser', () => {
    expect(isOwnOrigin({ host, origin: 'http://localhost:4870', 'sec-fetch-site': 'same-origin' })).toBe(true);
    expect(isOwnOrigin({ host })).toBe(true);
    expect(isOwnOrigin({ host, 'sec-fetch-site': 'none' })).toBe(true);
  });
  test.each([
    { host, origin: 'http://evil.example' },
    { host, origin: 'http://localhost:9999' },
    { host, origin: 'null' },
    { host, 'sec-fetch-site': 'cross-site' },
    { host, 'sec-fetch-site': 'same-site' },
  ])('another page: %j', (headers) => expect(isOwnOrigin(headers)).toBe(false));
});
