import { describe, expect, test } from 'vitest';
import { type Job, SECTIONS } from './job.ts';
import { type SaidCodes, takenCodes } from './taken-codes.ts';

const SAID: SaidCodes = {
  codes: [
    { code: 'P0456', status: 'confirmed', unit: '7E8' },
    { code: 'P0456', status: 'confirmed', unit: '7EA' },
    { code: 'P0456', status: 'permanent', unit: '7E8' },
  ],
  codesRead: ['confirmed', 'permanent'],
  freezeFrames: [
    {
      unit: '7E8',
      number: 0,
      code: 'P0456',
      items: [
        { id: 0x05, name: 'coolant temperature', value: 363.15, unit: 'K' },
        { id: 0x2f, name: 'fuel level', value: 0.6, unit: '1' },
        { id: 0x0d, name: 'vehicle speed', value: 10, unit: 'm/s' },
        { id: 0x32, name: 'tank pressure, gauge', value: -124.5, unit: 'Pa' },
      ],
    },
  ],
};
const names = (codes: readonly Job['codes'][number][]) => codes.map(({ code, status }) => `${code} ${status}`);

describe('codes of a capture', () => {
  test('a code that two units name is one; its freeze frame reads as on a scan', () => {
    const { next, removed } = takenCodes([], SAID, 'before-repair');
    expect(names(next)).toEqual(['P0456 stored', 'P0456 permanent']);
    // 363.15 K = 90 °C, 10 m/s = 36 km/h
    expect(next[0]?.freezeFrame).toEqual([
      { name: 'coolant temperature', value: '90', unit: '°C' },
      { name: 'fuel level', value: '60', unit: '%' },
      { name: 'vehicle speed', value: '36', unit: 'km/h' },
      { name: 'tank pressure, gauge', value: '-124.5', unit: 'Pa' },
    ]);
    expect(removed).toEqual([]);
    expect(SECTIONS.codes.safeParse(next).success).toBe(true);
  });

  test('before the repair what was written stays, after it the lists that were read take its place', () => {
    const written: Job['codes'] = [
      { code: 'P0442', status: 'stored' },
      { code: 'P0441', status: 'pending' },
    ];
    expect(names(takenCodes(written, SAID, 'before-repair').next)).toEqual([
      'P0442 stored',
      'P0441 pending',
      'P0456 stored',
      'P0456 permanent',
    ]);
    const after = takenCodes(written, SAID, 'after-repair');
    // The pending list was not read, so nothing is said of it.
    expect(names(after.next)).toEqual(['P0441 pending', 'P0456 stored', 'P0456 permanent']);
    expect(names(after.removed)).toEqual(['P0442 stored']);
  });

  test('a second time nothing changes, and the list is the same', () => {
    const { next } = takenCodes([], SAID, 'before-repair');
    expect(takenCodes(next, SAID, 'before-repair').next).toBe(next);
  });

  test('a code that was written without its freeze frame gets it; one that has one keeps its own', () => {
    const bare: Job['codes'] = [{ code: 'P0456', status: 'stored' }];
    expect(takenCodes(bare, SAID, 'before-repair').next[0]?.freezeFrame).toHaveLength(4);
    const own: Job['codes'] = [{ code: 'P0456', status: 'stored', freezeFrame: [{ name: 'x', value: '1' }] }];
    expect(takenCodes(own, SAID, 'before-repair').next[0]).toBe(own[0]);
  });
});
