import { expect, test } from 'vitest';
import { LastOwner, NameTaken, NotTheFirst } from '../../../src/jobs/accounts/users.ts';
import type { GetServer } from '../contract.ts';
import { ANNA, BERT, MOMENT, sha256Of } from '../samples.ts';

const FAR = new Date('2099-01-01T00:00:00Z');
const HASH = '$argon2id$invented';

export function accountsContract(get: GetServer): void {
  test('the first account is the owner, and there is one first only', async () => {
    const { users } = await get().freshStore();
    expect(await users.count()).toBe(0);
    const tries = await Promise.allSettled(
      ['Olga', 'Otto', 'Ossi'].map((name) => users.createFirst({ name, passwordHash: HASH })),
    );
    expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    for (const each of tries) if (each.status === 'rejected') expect(each.reason).toBeInstanceOf(NotTheFirst);
    expect(await users.list()).toMatchObject([{ role: 'owner', isActive: true }]);
  });

  test('names are one whatever their case; a disabled account cannot be found for signing in', async () => {
    const { users } = await get().freshStore();
    const user = await users.create({ name: ' Änne ', role: 'technician', passwordHash: HASH });
    expect(user.name).toBe('Änne');
    await expect(users.create({ name: 'äNNE', role: 'reader', passwordHash: HASH })).rejects.toBeInstanceOf(NameTaken);
    expect(await users.findByName('ÄNNE')).toEqual({ user, passwordHash: HASH });
    expect(await users.read(user.id)).toEqual(user);
    expect(await users.findByName('nobody')).toBeUndefined();
    await users.change(user.id, { isActive: false });
    expect(await users.findByName('Änne')).toBeUndefined();
    await users.change(user.id, { isActive: true, role: 'reader' });
    expect((await users.findByName('Änne'))?.user.role).toBe('reader');
    expect(await users.change('00000000-0000-4000-8000-000000000000', { role: 'owner' })).toBeUndefined();
  });

  test('an owner always remains, even when two end each other at once', async () => {
    const { users } = await get().freshStore();
    const one = await users.createFirst({ name: 'One', passwordHash: HASH });
    await expect(users.change(one.id, { role: 'reader' })).rejects.toBeInstanceOf(LastOwner);
    await expect(users.change(one.id, { isActive: false })).rejects.toBeInstanceOf(LastOwner);
    const two = await users.create({ name: 'Two', role: 'owner', passwordHash: HASH });
    const tries = await Promise.allSettled([
      users.change(one.id, { isActive: false }),
      users.change(two.id, { role: 'reader' }),
    ]);
    expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect((await users.list()).filter(({ role, isActive }) => role === 'owner' && isActive)).toHaveLength(1);
  });

  test('a login is found until it ends, runs out, or the account changes', async () => {
    let now = Date.parse(MOMENT);
    const { users, logins, sql } = await get().freshStore({ now: () => new Date(now) });
    const owner = await users.createFirst({ name: 'Olga', passwordHash: HASH });
    const user = await users.create({ name: 'Anna', role: 'technician', passwordHash: HASH });
    const start = (word: string, expiresAt = FAR) => logins.start(user.id, sha256Of(word), expiresAt);
    await start('one');
    expect(await logins.find(sha256Of('one'))).toEqual({ user, createdAt: MOMENT, expiresAt: FAR.toISOString() });
    expect(await logins.find(sha256Of('another'))).toBeUndefined();
    await logins.end(sha256Of('one'));
    expect(await logins.find(sha256Of('one'))).toBeUndefined();

    await start('short', new Date(now + 120_000));
    now += 119_000;
    expect(await logins.find(sha256Of('short'))).toBeDefined();
    now += 2_000;
    expect(await logins.find(sha256Of('short'))).toBeUndefined();
    await logins.sweep();
    expect(await sql.selectFrom('sessions').selectAll().execute()).toEqual([]);

    await start('two');
    await users.change(user.id, { role: 'reader' });
    expect((await logins.find(sha256Of('two')))?.user.role).toBe('reader');
    await users.change(user.id, { passwordHash: `${HASH}2` });
    expect(await logins.find(sha256Of('two'))).toBeUndefined();
    await start('three');
    await start('four');
    await logins.endAll(user.id);
    expect(await logins.find(sha256Of('four'))).toBeUndefined();
    await start('five');
    await users.change(user.id, { isActive: false });
    await users.change(user.id, { isActive: true });
    expect(await logins.find(sha256Of('five'))).toBeUndefined();
    expect(owner.role).toBe('owner');
  });

  test('a link opens one job until it is revoked or runs out', async () => {
    let now = Date.parse(MOMENT);
    const { jobs, shares } = await get().freshStore({ now: () => new Date(now) });
    const job = await jobs.create(ANNA, { sections: {} });
    const other = await jobs.create(ANNA, { sections: {} });
    const share = await shares.make(ANNA, { jobId: job.id, tokenSha256: sha256Of('a'), label: 'the owner' });
    expect(share).toMatchObject({
      jobId: job.id,
      label: 'the owner',
      madeBy: 'Anna',
      createdAt: MOMENT,
      expiresAt: null,
      revokedAt: null,
    });
    expect(await shares.open(sha256Of('a'))).toEqual(share);
    expect(await shares.open(sha256Of('b'))).toBeUndefined();
    expect(await shares.revoke(BERT, other.id, share.id)).toBe(false);
    expect(await shares.open(sha256Of('a'))).toBeDefined();
    expect(await shares.revoke(BERT, job.id, share.id)).toBe(true);
    expect(await shares.open(sha256Of('a'))).toBeUndefined();
    expect((await shares.list(job.id))[0]?.revokedAt).toBe(MOMENT);

    await shares.make(ANNA, { jobId: job.id, tokenSha256: sha256Of('c'), label: '', expiresAt: new Date(now + 1000) });
    expect(await shares.open(sha256Of('c'))).toBeDefined();
    now += 1000;
    expect(await shares.open(sha256Of('c'))).toBeUndefined();
    expect(await shares.list(other.id)).toEqual([]);
    expect(await shares.list(job.id)).toHaveLength(2);
  });

  test('the security log is read newest first, in pages', async () => {
    const { securityLog } = await get().freshStore();
    for (let n = 0; n < 5; n++)
      await securityLog.write({ kind: `k${n}`, actor: 'Anna', address: '127.0.0.1', detail: { n } });
    await securityLog.write({ kind: 'plain' });
    const page = await securityLog.read({ limit: 2 });
    expect(page).toMatchObject([
      { kind: 'plain' },
      { kind: 'k4', actor: 'Anna', address: '127.0.0.1', detail: { n: 4 } },
    ]);
    const rest = await securityLog.read({ before: page[1]!.id });
    expect(rest.map(({ kind }) => kind)).toEqual(['k3', 'k2', 'k1', 'k0']);
  });
}
