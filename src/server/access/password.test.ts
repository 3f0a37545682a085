import { expect, test } from 'vitest';
import { hashPassword, isPassword } from './password.ts';

test('the right password, a wrong one, nobody', async () => {
  const kept = await hashPassword('a long enough phrase');
  expect(kept).toMatch(/^\$argon2id\$/);
  expect(kept).not.toContain('phrase');
  expect(await isPassword(kept, 'a long enough phrase')).toBe(true);
  expect(await isPassword(kept, 'a long enough phrasf')).toBe(false);
  expect(await isPassword(undefined, 'nobody has this password')).toBe(false);
  expect(await isPassword('not a hash', 'x')).toBe(false);
});

test('the same password twice gives two hashes; letters typed in two ways are one password', async () => {
  expect(await hashPassword('pässwörter')).not.toBe(await hashPassword('pässwörter'));
  expect(await isPassword(await hashPassword('pa\u0308sswort lang'), 'p\u00e4sswort lang')).toBe(true);
});
