import { expect, test } from 'vitest';
import { allUnbroken, unbroken } from './unbroken.ts';

const _ = '\u00a0';

test.each([
  ['smaller than 0.40 mm with 95 % probability', `smaller than 0.40${_}mm with 95${_}% probability`],
  ['from 1 min to 20 min', `from 1${_}min to 20${_}min`],
  ['0.020 in.', `0.020${_}in.`],
  ['3 in a row, 5 gallons, 7 minutes, 2 small holes', '3 in a row, 5 gallons, 7 minutes, 2 small holes'],
  ['0,5 mm (0,4 bis 0,6) bei 20 °C', `0,5${_}mm (0,4 bis 0,6) bei 20${_}°C`],
])('%s', (words, expected) => {
  expect(unbroken(words)).toBe(expected);
});

test('reaches what a catalogue holds and what its functions say, and leaves the rest as it is', () => {
  const made = allUnbroken({
    a: { b: ['5 s', 7] as const },
    say: (n: string) => `${n} %`,
    pick: (n: number) => [n] as const,
  });
  expect(made.a.b).toEqual([`5${_}s`, 7]);
  expect(made.say('40')).toBe(`40${_}%`);
  expect(made.pick(3)).toEqual([3]);
});
