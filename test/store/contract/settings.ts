import { expect, test } from 'vitest';
import { z } from 'zod';
import type { GetServer } from '../contract.ts';
import { ANNA, BERT } from '../samples.ts';

const shop = z.object({ name: z.string() });

export function settingsContract(get: GetServer): void {
  test('are read as they were set last, and absent until then', async () => {
    const { settings } = await get().freshStore();
    expect(await settings.read('shop', shop)).toBeUndefined();
    await settings.write(ANNA, 'shop', { name: 'Corner garage' });
    await settings.write(BERT, 'shop', { name: 'Corner garage \0 & son' });
    expect(await settings.read('shop', shop)).toEqual({ name: 'Corner garage \0 & son' });
    await settings.remove('shop');
    expect(await settings.read('shop', shop)).toBeUndefined();
  });

  test('of another form are refused by name', async () => {
    const { settings } = await get().freshStore();
    await settings.write(ANNA, 'shop', 7);
    await expect(settings.read('shop', shop)).rejects.toMatchObject({ code: 'corrupt', where: 'shop' });
  });
}
