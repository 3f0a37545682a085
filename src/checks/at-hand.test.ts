/** What cannot be done for want of equipment, lift or fuel level. Levels: below 70 % to fill, 15 to 85 % for a test of the module (the trade's figures; judgement). */
import { expect, test } from 'vitest';
import { type AtHand, cannotNow, FUEL_LEVEL_IDS } from './at-hand.ts';
import { CHECKS, checkById } from './catalogue/all.ts';

const ALL: AtHand = { missing: [], hasNoLift: false, fuelLevel: 'unknown' };

test('with everything at hand every check can be done, and not knowing the level leaves nothing out', () => {
  for (const check of CHECKS) expect(cannotNow(check, ALL)).toBeUndefined();
});

test('a smoke machine that is missing takes smoke out and leaves soap in', () => {
  const missing = checkById('T23').equipment.filter((name) => name.includes('smoke'));
  expect(missing).toHaveLength(1);
  expect(cannotNow(checkById('T23'), { ...ALL, missing })).toBe('equipment');
  expect(cannotNow(checkById('T28'), { ...ALL, missing })).toBeUndefined();
});

test('without a lift nothing is done under the car', () => {
  const left = CHECKS.filter((check) => cannotNow(check, { ...ALL, hasNoLift: true }) === 'lift').map(({ id }) => id);
  expect(left).toEqual(expect.arrayContaining(['T06', 'T16', 'T21', 'T23', 'T28']));
  for (const id of ['T03', 'T04', 'T07', 'T12', 'T20']) expect(left).not.toContain(id);
});

test('filling needs room, a test of the module a level that it accepts', () => {
  const at = (id: string) =>
    FUEL_LEVEL_IDS.filter((fuelLevel) => cannotNow(checkById(id), { ...ALL, fuelLevel }) === 'level');
  expect(at('T17')).toEqual(['high', 'full']);
  expect(at('T31')).toEqual(['low', 'full']);
  expect(at('T12')).toEqual([]);
});
