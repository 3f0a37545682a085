import { expect, test } from 'vitest';
import { carSchema } from '../system/car.ts';
import { knownNames } from './known-names.ts';

test('a name with a letter wrong is answered with the right one', () => {
  expect(knownNames(carSchema, [], 'tankVolumM3')).toMatch(/^tankVolumeM3 /);
  expect(knownNames(carSchema, ['pressureSensor'], 'minGaugePA')).toMatch(/^minGaugePa /);
});

test('a name like no other is answered with all names of its place', () => {
  const words = knownNames(carSchema, ['monitor'], 'colour');
  expect(words).toMatch(/^one of drawTargetGaugePa, /);
  expect(words).not.toContain('tankVolumeM3');
});
