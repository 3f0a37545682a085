import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeNonText, detectEncoding } from './text-encoding.ts';

const utf16 = (text: string, littleEndian: boolean): Uint8Array => {
  const view = new DataView(new ArrayBuffer(2 * text.length));
  for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), littleEndian);
  return new Uint8Array(view.buffer);
};

describe('detectEncoding', () => {
  it('takes any text in UTF-8 for UTF-8, wherever the sample is cut', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1 }), fc.nat(), (text, cut) => {
        const bytes = new TextEncoder().encode(`time_s;${text}`);
        fc.pre(!text.includes('\u0000'));
        expect(detectEncoding(bytes.subarray(0, 7 + (cut % (bytes.length - 6))))).toBe('utf-8');
      }),
    );
  });
  it('tells UTF-16 with and without a byte-order mark', () => {
    for (const mark of ['', '\ufeff']) {
      expect(detectEncoding(utf16(`${mark}time_s;map_kpa`, true))).toBe('utf-16le');
      expect(detectEncoding(utf16(`${mark}time_s;map_kpa`, false))).toBe('utf-16be');
    }
  });
  it('takes bytes that are no UTF-8 for the Western one-byte set', () => {
    expect(detectEncoding(Uint8Array.of(116, 0xb0, 67, 59))).toBe('windows-1252');
  });
});

describe('describeNonText', () => {
  it('lets a recording pass', () => {
    expect(describeNonText('time_s,tank_pressure_pa\r\n0,1\r\n')).toBeUndefined();
    expect(describeNonText('Zeit;Druck (°C)\t|')).toBeUndefined();
  });
});
