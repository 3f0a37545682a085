import { expect, test } from 'vitest';
import { crc32 } from './small-png.ts';

test('CRC-32 of the digits 1 to 9, the check value that the catalogues of CRCs print', () => {
  expect(crc32(Buffer.from('123456789')).toString(16)).toBe('cbf43926');
});

test('CRC of an empty IEND chunk, as it ends every PNG (ISO/IEC 15948)', () => {
  expect(crc32(Buffer.from('IEND')).toString(16)).toBe('ae426082');
});
