import { expect, test } from 'vitest';
import { Tries } from './tries.ts';

test('eight failures, then waiting, then again; however the name is written', () => {
  let now = 1_000_000;
  const tries = new Tries(() => now);
  for (let i = 0; i < 8; i++) {
    tries.check('Robin');
    tries.failed(i % 2 === 0 ? ' ROBIN' : 'robin');
  }
  expect(() => tries.check('Robin')).toThrow(/Too many/);
  expect(() => tries.check('Kim')).not.toThrow();
  now += 14 * 60_000;
  expect(() => tries.check('robin ')).toThrow(/Too many/);
  now += 61_000;
  expect(() => tries.check('Robin')).not.toThrow();
});

test('success forgets the failures before it', () => {
  const tries = new Tries(() => 0);
  for (let i = 0; i < 7; i++) tries.failed('Robin');
  tries.succeeded('Robin');
  for (let i = 0; i < 7; i++) tries.failed('Robin');
  expect(() => tries.check('Robin')).not.toThrow();
});

test('names of nobody do not fill the memory', () => {
  const tries = new Tries(() => 0);
  for (let i = 0; i < 8; i++) tries.failed('first');
  for (let i = 0; i < 10_000; i++) tries.failed(`nobody ${i}`);
  expect(() => tries.check('first')).not.toThrow();
  for (let i = 0; i < 7; i++) tries.failed('nobody 9999');
  expect(() => tries.check('nobody 9999')).toThrow();
});
