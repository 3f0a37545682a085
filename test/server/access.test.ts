/** Who gets in, and what keeps everybody else out. */
import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { HistoryEntry, Job } from '../../src/jobs/record/job.ts';
import { INSPECTION_RULES } from '../../src/readiness/inspection-rules.ts';
import type { Account, Role, Session, Share } from '../../src/server/contract/accounts.ts';
import type { ErrorBody } from '../../src/server/contract/error.ts';
import { API, TOKEN_HEADER } from '../../src/server/contract/paths.ts';
import type { Preview } from '../../src/server/contract/recordings.ts';
import { FIRST_SETTINGS } from '../../src/server/contract/settings.ts';
import { type TestServer, testServer } from '../store/test-server.ts';
import { BEYOND, type Bench, CAR, type Client, LEAK_CSV, openBench } from './bench.ts';

let server: TestServer;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server?.leave());

const PASSWORD = 'correct horse 7 battery';

describe('on this machine, without accounts', () => {
  let bench: Bench;
  beforeAll(async () => {
    bench = await openBench(server);
  });
  afterAll(() => bench?.close());
  afterEach(() => expect(bench.faults).toEqual([]));

  test('everybody here may do everything, and nobody signs in', async () => {
    expect(await bench.client().session()).toMatchObject({
      user: null,
      role: 'owner',
      needsLogin: false,
      needsFirst: false,
    });
  });

  test.each(['evil.example', 'localhost.evil.example:4870', '192.0.2.1:4870', 'a b'])(
    'a name that was made to point here gets nothing, not even a page: "%s"',
    async (host) => {
      const page = bench.client(host);
      for (const path of ['/jobs', '/session', '/!/', '/!/settings', '/!/assets/a.js', '/openapi.json']) {
        const { status, body, headers } = await page.raw<ErrorBody>('GET', path);
        expect([path, status]).toEqual([path, 403]);
        expect(body.error.code).toBe('wrong-origin');
        expect(headers['set-cookie']).toBeUndefined();
      }
    },
  );

  test.each([
    { origin: 'http://evil.example' },
    { origin: 'http://localhost:9999' },
    { origin: 'null' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ])('another page in the same browser neither reads nor writes: %j', async (headers) => {
    const page = bench.client();
    await page.session();
    const read = await page.ask<ErrorBody>('GET', '/jobs', { headers });
    const write = await page.ask<ErrorBody>('POST', '/jobs', { json: {}, headers });
    for (const { status, body } of [read, write]) expect([status, body.error.code]).toEqual([403, 'wrong-origin']);
  });

  test('a change needs the token of its own session', async () => {
    const page = bench.client();
    const other = bench.client();
    const { csrf } = await page.session();
    await other.session();
    const post = (token: string | undefined) =>
      page.raw<ErrorBody>('POST', '/jobs', { json: {}, headers: token === undefined ? {} : { [TOKEN_HEADER]: token } });
    for (const wrong of [undefined, '', 'x', csrf.slice(1), String(other.token)]) {
      const { status, body } = await post(wrong);
      expect([wrong, status, body.error.code]).toEqual([wrong, 403, 'stale-page']);
    }
    expect((await post(csrf)).status).toBe(201);
    const bare = bench.client();
    const withoutCookie = await bare.raw('POST', '/jobs', { json: {}, headers: { [TOKEN_HEADER]: csrf } });
    expect(withoutCookie.status).toBe(403);
  });

  test('the cookie is out of reach of scripts and other sites; nothing says that we may be framed or sniffed', async () => {
    const { headers } = await bench.client().raw('GET', '/session');
    expect(headers['set-cookie']).toMatch(/HttpOnly/);
    expect(headers['set-cookie']).toMatch(/SameSite=Strict/);
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['cache-control']).toBe('no-store');
    expect(headers['access-control-allow-origin']).toBeUndefined();
  });

  test('the first account is an owner’s; from then on everybody signs in', async () => {
    const page = bench.client();
    const reader = await page.ask<ErrorBody>('POST', '/accounts', {
      json: { name: 'Kim', role: 'reader', password: PASSWORD },
    });
    expect([reader.status, reader.body.error.code]).toEqual([409, 'not-possible']);
    const weak = await page.ask('POST', '/accounts', { json: { name: 'Kim', role: 'owner', password: 'short' } });
    expect(weak.status).toBe(400);
    const owner = await page.ask<Account>('POST', '/accounts', {
      json: { name: 'Kim', role: 'owner', password: PASSWORD },
    });
    expect([owner.status, owner.body.role]).toEqual([201, 'owner']);
    expect((await page.ask('GET', '/jobs')).status).toBe(401);
    expect((await bench.client().session()).needsLogin).toBe(true);
  });
});

describe('beyond this machine', () => {
  let bench: Bench;
  let secret: string;
  let owner: Client;
  beforeAll(async () => {
    bench = await openBench(server, { hosts: BEYOND });
    secret = bench.parts.people.offerFirstAccount();
    owner = bench.client('bench-two:4870');
  });
  afterAll(() => bench?.close());
  afterEach(() => expect(bench.faults).toEqual([]));

  const signIn = async (name: string, password = PASSWORD): Promise<Client> => {
    const client = bench.client('192.0.2.7:4870');
    await client.session();
    const { status, body } = await client.ask<Session>('POST', '/session', { json: { name, password } });
    expect(status).toBe(200);
    client.token = body.csrf;
    return client;
  };

  test('before anybody signs in nothing answers but the door', async () => {
    const stranger = bench.client('192.0.2.7:4870');
    expect(await stranger.session()).toMatchObject({ user: null, role: null, needsLogin: true, needsFirst: true });
    const closed = bench.routes.filter(({ url, needs }) => url.startsWith(API) && needs !== 'anybody');
    expect(closed.length).toBeGreaterThan(25);
    for (const { method, url } of closed) {
      for (const verb of [method].flat()) {
        const path = url.slice(API.length).replace(/:\w+/g, randomUUID());
        const { status, body } = await stranger.ask<ErrorBody>(verb as 'GET', path);
        expect([verb, path, status, body.error.code]).toEqual([verb, path, 401, 'sign-in']);
      }
    }
  });

  test('the printed link makes the owner, once', async () => {
    await owner.session();
    const take = (token: string) =>
      owner.ask<Session & ErrorBody>('POST', '/accounts/first', { json: { token, name: 'Robin', password: PASSWORD } });
    expect((await take('no such secret at all')).status).toBe(403);
    const cookieBefore = owner.cookie;
    const taken = await take(secret);
    expect([taken.status, taken.body.user?.role]).toEqual([201, 'owner']);
    expect(owner.cookie).not.toBe(cookieBefore);
    owner.token = taken.body.csrf;
    expect((await take(secret)).status).toBe(403);
    expect((await owner.ask('GET', '/jobs')).status).toBe(200);
  });

  test('a new session at each sign-in: one that was planted before is worth nothing', async () => {
    const client = bench.client('192.0.2.7:4870');
    await client.session();
    const planted = client.cookie;
    await client.ask('POST', '/session', { json: { name: 'Robin', password: PASSWORD } });
    expect(client.cookie).not.toBe(planted);
    const attacker = bench.client('192.0.2.7:4870');
    attacker.cookie = planted;
    expect((await attacker.raw('GET', '/jobs')).status).toBe(401);
  });

  test('the store holds neither password nor cookie', async () => {
    const client = await signIn('Robin');
    const { sql } = bench.parts.store;
    const rows = JSON.stringify([
      await sql.selectFrom('users').selectAll().execute(),
      await sql.selectFrom('sessions').selectAll().execute(),
    ]);
    expect(rows).not.toContain(PASSWORD);
    expect(rows).not.toContain(String(client.cookie).split('=')[1]);
    expect(rows).toContain('$argon2id$');
  });

  test('roles: a reader reads, a technician works, an owner rules', async () => {
    for (const [name, role] of [
      ['Tech', 'technician'],
      ['Read', 'reader'],
    ] as const) {
      const made = await owner.ask<Account>('POST', '/accounts', { json: { name, role, password: PASSWORD } });
      expect(made.status).toBe(201);
    }
    const twice = await owner.ask<ErrorBody>('POST', '/accounts', {
      json: { name: 'TECH', role: 'reader', password: PASSWORD },
    });
    expect(twice.status).toBe(409);
    const byRole: Readonly<Record<Role, Client>> = {
      owner,
      technician: await signIn('tech'),
      reader: await signIn('Read'),
    };
    const order: readonly Role[] = ['owner', 'technician', 'reader'];
    for (const { method, url, needs } of bench.routes.filter(({ url }) => url.startsWith(API))) {
      if (needs === 'anybody') continue;
      for (const role of order) {
        const path = url.slice(API.length).replace(/:\w+/g, randomUUID());
        // What the body says does not matter to the door: it is looked at after.
        const { status, body } = await byRole[role].ask<ErrorBody>([method].flat()[0] as 'GET', path, {
          ...(path === '/backup' ? { headers: { [TOKEN_HEADER]: 'x' } } : {}),
        });
        const isRefused = status === 403 && body.error.code === 'not-allowed';
        const isAllowed = order.indexOf(role) <= order.indexOf(needs as Role);
        expect([role, method, path, isRefused]).toEqual([role, method, path, !isAllowed]);
      }
    }
    const job = await byRole.technician.newJob();
    const { history } = (await byRole.reader.ask<{ history: HistoryEntry[] }>('GET', `/jobs/${job.id}/history`)).body;
    expect(history[0]?.by).toBe('Tech');
  });

  test('an account that ends, and a new password, end its sessions at once; the last owner stays', async () => {
    const { accounts } = (await owner.ask<{ accounts: Account[] }>('GET', '/accounts')).body;
    const id = (name: string) => accounts.find((account) => account.name === name)?.id;
    const tech = await signIn('Tech');
    const other = 'another 12 horse battery';
    await owner.ask('PATCH', `/accounts/${id('Tech')}`, { json: { password: other } });
    expect((await tech.ask('GET', '/jobs')).status).toBe(401);
    const again = await signIn('Tech', other);
    await owner.ask('PATCH', `/accounts/${id('Tech')}`, { json: { isActive: false } });
    expect((await again.ask('GET', '/jobs')).status).toBe(401);
    const last = await owner.ask<ErrorBody>('PATCH', `/accounts/${id('Robin')}`, { json: { role: 'reader' } });
    expect([last.status, last.body.error.code]).toEqual([409, 'not-possible']);
    expect((await owner.ask('PATCH', `/accounts/${randomUUID()}`, { json: {} })).status).toBe(404);
  });

  test('signing out ends the session, not only the cookie', async () => {
    const client = await signIn('Robin');
    const kept = client.cookie;
    expect((await client.ask('DELETE', '/session')).status).toBe(204);
    expect(client.cookie).toBeUndefined();
    client.cookie = kept;
    expect((await client.raw('GET', '/jobs')).status).toBe(401);
  });

  test('a link shows one job for reading, and can be revoked', async () => {
    const job = await owner.newJob({ car: CAR });
    const other = await owner.newJob();
    await owner.send(job.id, { name: 'leak.csv', content: LEAK_CSV });
    const made = await owner.ask<{ share: Share; url: string }>('POST', `/jobs/${job.id}/shares`, {
      json: { label: 'owner', days: 2 },
    });
    expect(made.status).toBe(201);
    const token = made.body.url.split('/shared/')[1];
    const guest = bench.client('bench-two');
    const seen = await guest.raw<Job>('GET', `/shared/${token}`);
    expect([seen.status, seen.body.id]).toEqual([200, job.id]);
    const rid = seen.body.recordings[0]?.id;
    expect((await guest.raw('GET', `/shared/${token}/recordings/${rid}/samples`)).status).toBe(200);
    expect((await guest.raw('GET', `/shared/${token}/recordings/${randomUUID()}/samples`)).status).toBe(404);
    const preview = await guest.raw<Preview>('GET', `/shared/${token}/recordings/${rid}/preview`);
    expect([preview.status, preview.body.problem]).toEqual([200, null]);
    const rule = { ...INSPECTION_RULES[0]!, id: 'our-place', name: 'Our place' };
    const settings = { ...FIRST_SETTINGS, inspectionRules: [rule], inspectionRule: rule.id };
    expect((await owner.ask('PUT', '/settings', { json: settings })).status).toBe(200);
    expect((await guest.raw('GET', `/shared/${token}/inspection-rule`)).body).toEqual(rule);
    expect((await guest.raw('GET', '/settings')).status).toBe(401);
    for (const path of [`/jobs/${job.id}`, `/jobs/${other.id}`, `/jobs/${job.id}/recordings/${rid}/raw`]) {
      expect((await guest.raw('GET', path)).status).toBe(401);
    }
    const listed = (await owner.ask<{ shares: Share[] }>('GET', `/jobs/${job.id}/shares`)).body.shares;
    expect(listed).toEqual([made.body.share]);
    expect(JSON.stringify(listed)).not.toContain(token);
    const wrongJob = await owner.ask('DELETE', `/jobs/${other.id}/shares/${made.body.share.id}`);
    expect(wrongJob.status).toBe(404);
    expect((await owner.ask('DELETE', `/jobs/${job.id}/shares/${made.body.share.id}`)).status).toBe(204);
    expect((await guest.raw('GET', `/shared/${token}`)).status).toBe(404);
    for (const rest of [`recordings/${rid}/samples`, `recordings/${rid}/preview`, 'inspection-rule']) {
      expect((await guest.raw('GET', `/shared/${token}/${rest}`)).status).toBe(404);
    }
    expect((await owner.ask<{ shares: Share[] }>('GET', `/jobs/${job.id}/shares`)).body.shares).toEqual([]);
  });

  test('who guesses passwords has to wait, for a name also from everywhere; the right one does not help then', async () => {
    const guess = async (name: string, password: string) => {
      const client = bench.client('192.0.2.7:4870');
      return (await client.ask<ErrorBody>('POST', '/session', { json: { name, password } })).status;
    };
    const seen: number[] = [];
    for (let i = 0; i < 12; i++) seen.push(await guess(i % 2 === 0 ? 'Read' : ' READ ', `wrong ${i}`));
    expect(seen.filter((status) => status === 401)).toHaveLength(8);
    expect(seen.slice(8).every((status) => status === 429)).toBe(true);
    expect(await guess('Read', PASSWORD)).toBe(429);
  });

  test('all of it stands in the security log, for the owner', async () => {
    const { events } = (await owner.ask<{ events: { what: string; who: string | null }[] }>('GET', '/security-log'))
      .body;
    const kinds = new Set(events.map(({ what }) => what));
    for (const kind of [
      'first-account-refused',
      'first-account',
      'signed-in',
      'sign-in-refused',
      'signed-out',
      'account-added',
      'account-changed',
      'link-made',
      'link-revoked',
    ]) {
      expect([...kinds]).toContain(kind);
    }
    expect(JSON.stringify(events)).not.toContain(PASSWORD);
  });
});
