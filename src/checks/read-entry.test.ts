/** Results as typed: taken with any unit of the quantity, refused with field, found and expected. */
import { describe, expect, test } from 'vitest';
import { readEntry } from './read-entry.ts';

const numbers = (check: string, values: Record<string, string>) => readEntry(check, { numbers: values });
const problems = (check: string, values: Record<string, string>): string => {
  const read = numbers(check, values);
  return read.ok ? '' : read.problems.map(({ text }) => text).join('\n');
};
const meaning = (check: string, values: Record<string, string>) => {
  const read = numbers(check, values);
  if (!read.ok || !read.meaning) throw new Error(read.ok ? 'no meaning' : read.problems.map((p) => p.text).join());
  return read.meaning;
};
const odds = (check: string, values: Record<string, string>, outcome = 1): number => {
  const { byOutcome } = meaning(check, values);
  return byOutcome[outcome]! / byOutcome[0]!;
};

describe('refused', () => {
  test.each([
    ['T20', { flow: '0.46', pressure: '10 inH2O' }, 'flow: "0.46" has no unit'],
    ['T20', { flow: '0.46 kPa', pressure: '10 inH2O' }, 'flow:'],
    ['T20', { flow: '0.46 L/min', pressure: '-10 inH2O' }, 'is the sign right?'],
    ['T20', { flow: '0.46 L/min', pressure: '10 kPa' }, 'is the unit right?'],
    ['T20', { flow: '0.46 L/min' }, 'pressure: nothing entered'],
    ['T20', { flow: '0.1 L/min', pressure: '10 inH2O', 'blank flow': '0.5 L/min' }, 'are the two swapped?'],
    ['T20', { flow: '0.46 L/min', pressure: '10 inH2O', colour: '3 mm' }, '"colour" is not asked for'],
    ['T12', { start: '12 inHg', 'after 30 s': '-11 inHg' }, 'is the sign right?'],
    ['T12', { start: '-5 inHg', 'after 30 s': '-11 inHg' }, 'are the two swapped?'],
    [
      'T08',
      {
        'first applied': '5 inH2O',
        'first reading': '5 inH2O',
        'second applied': '5.2 inH2O',
        'second reading': '5 inH2O',
      },
      'too near the first',
    ],
    ['T19', { start: '10 inH2O', end: '-3 inH2O', time: '60 s', 'vapour volume': '30 L' }, 'opposite signs'],
    ['T29', { weight: '900 g', 'dry weight': '1.4 kg' }, 'below the dry weight'],
  ] as const)('%s %j', (check, values, words) => {
    expect(problems(check, values)).toContain(words);
  });

  test('an outcome that the check does not have', () => {
    expect(readEntry('T12', { outcome: 'leaks' })).toMatchObject({
      ok: false,
      problems: [{ text: 'T12: found outcome "leaks", expected one of holds, falls' }],
    });
  });

  test('numbers for a check that asks for a choice', () => {
    expect(problems('T03', { a: '1 mm' })).toContain('takes one of: clean');
  });
});

test('an open coil is entered as the meter shows it', () => {
  const open = { 'purge coil': 'OL', 'vent coil': '25 ohm', 'coil temperature': '20 °C' };
  expect(odds('T10', open)).toBeGreaterThan(20);
  expect(odds('T10', { ...open, 'purge coil': '∞' })).toBe(odds('T10', open));
  // nothing else overflows
  expect(problems('T20', { flow: 'OL', pressure: '10 inH2O' })).toContain('does not start with a number');
});

test('units do not matter', () => {
  const a = meaning('T20', { flow: '0.55 L/min', pressure: '10 inH2O' });
  const b = meaning('T20', { flow: '550 cm3/min', pressure: '2.49082 kPa' });
  expect(b.diametersMm?.whole?.median).toBeCloseTo(a.diametersMm!.whole!.median, 6);
});

describe('what numbers mean', () => {
  test('a flow of 0.55 L/min at 10 inH2O is a hole of some 0.020 in (published table for Cd 0.7; here 0.61)', () => {
    // Q goes with Cd d^2: the same flow with 0.61 instead of 0.7 is a diameter sqrt(0.7 / 0.61) larger
    const expected = 0.508 * Math.sqrt(0.7 / 0.61);
    const { whole } = meaning('T20', { flow: '0.55 L/min', pressure: '10 inH2O' }).diametersMm!;
    expect(Math.abs(whole!.median / expected - 1)).toBeLessThan(0.03);
    expect(whole!.lo90).toBeLessThan(expected);
    expect(whole!.hi90).toBeGreaterThan(expected);
    expect(odds('T20', { flow: '0.55 L/min', pressure: '10 inH2O' })).toBeGreaterThan(20);
    expect(odds('T20', { flow: '0.00 L/min', pressure: '10 inH2O' })).toBeLessThan(0.2);
  });

  test('a blank that flows speaks for the adapter, one that does not against it', () => {
    const leaking = meaning('T20', { flow: '0.5 L/min', pressure: '10 inH2O', 'blank flow': '0.3 L/min' });
    const sound = meaning('T20', { flow: '0.5 L/min', pressure: '10 inH2O', 'blank flow': '0 L/min' });
    expect(leaking.bySetupFault?.['adaptor leaks']).toBeGreaterThan(1);
    expect(sound.bySetupFault?.['adaptor leaks']).toBeLessThan(1);
  });

  test('a hold that falls from 7 to 3.5 inH2O in 15 s in 30 L leaks, one that stays does not', () => {
    expect(odds('T19', { start: '7 inH2O', end: '3.5 inH2O', time: '15 s', 'vapour volume': '30 L' })).toBeGreaterThan(
      5,
    );
    expect(odds('T19', { start: '10 inH2O', end: '9.9 inH2O', time: '120 s', 'vapour volume': '30 L' })).toBeLessThan(
      0.5,
    );
  });

  test('sections add by area; more than the whole tells on the clamps', () => {
    const good = meaning('T21', {
      'purge side': '0.05 mm',
      'canister and vent': '0.6 mm',
      'tank and neck': '0.8 mm',
      'whole system': '1.0 mm',
    });
    expect(good.derived?.['sum by area']).toBeCloseTo(Math.hypot(0.05, 0.6, 0.8) * 1e-3, 9);
    expect(good.bySetupFault?.['clamp leaks']).toBeLessThan(1);
    const bad = meaning('T21', {
      'purge side': '0.7 mm',
      'canister and vent': '0.7 mm',
      'tank and neck': '0.8 mm',
      'whole system': '0.8 mm',
    });
    expect(bad.bySetupFault?.['clamp leaks']).toBeGreaterThan(3);
  });

  test('a coil is judged at its temperature', () => {
    const hot = meaning('T10', { 'purge coil': '26.3 ohm', 'vent coil': '30 ohm', 'coil temperature': '100 °C' });
    expect(hot.derived?.['purge coil at 20 °C']).toBeCloseTo(26.3 / (1 + 0.00393 * 80), 6);
    expect(odds('T10', { 'purge coil': '26 ohm', 'vent coil': '30 ohm', 'coil temperature': '20 °C' })).toBeLessThan(
      0.2,
    );
    expect(
      odds('T10', { 'purge coil': '900 kohm', 'vent coil': '30 ohm', 'coil temperature': '20 °C' }),
    ).toBeGreaterThan(20);
    expect(
      odds('T10', { 'purge coil': '30 ohm', 'vent coil': '0.2 ohm', 'coil temperature': '20 °C' }, 2),
    ).toBeGreaterThan(20);
  });

  test('two readings give offset and gain', () => {
    const { derived, byOutcome } = meaning('T08', {
      'first applied': '1000 Pa',
      'first reading': '1000 Pa',
      'second applied': '2000 Pa',
      'second reading': '1700 Pa',
    });
    expect(derived?.gain).toBeCloseTo(0.7, 9);
    expect(derived?.offset).toBeCloseTo(300, 6);
    expect(byOutcome[1]! / byOutcome[0]!).toBeGreaterThan(10);
    expect(
      odds('T08', {
        'first applied': '1000 Pa',
        'first reading': '1010 Pa',
        'second applied': '2500 Pa',
        'second reading': '2510 Pa',
      }),
    ).toBeLessThan(0.3);
  });

  test('weight over dry weight gives the loading', () => {
    const { derived } = meaning('T29', { weight: '1550 g', 'dry weight': '1400 g', 'working capacity': '150 g' });
    expect(derived?.loading).toBeCloseTo(1, 9);
    expect(odds('T29', { weight: '1600 g', 'dry weight': '1400 g' })).toBeGreaterThan(5);
    expect(odds('T29', { weight: '1430 g', 'dry weight': '1400 g' })).toBeLessThan(0.3);
  });

  test.each([
    ['T07', { reading: '10 Pa' }, { reading: '2 inH2O' }],
    ['T18', { flow: '10 L/min', drop: '0.3 inH2O' }, { flow: '10 L/min', drop: '9 inH2O' }],
    ['T12', { start: '-12 inHg', 'after 30 s': '-11.9 inHg' }, { start: '-12 inHg', 'after 30 s': '-6 inHg' }],
    [
      'T33',
      { 'reference before': '-2 kPa', tank: '-2.8 kPa', 'reference after': '-2.05 kPa' },
      { 'reference before': '-2 kPa', tank: '-2 kPa', 'reference after': '-1.2 kPa' },
    ],
    ['T05', { before: '0.8 mm', after: '0.8 mm' }, { before: '0.8 mm', after: '0.1 mm' }],
  ] as const)(
    '%s: a sound reading speaks for the clean outcome, a faulty one for the other',
    (check, sound, faulty) => {
      expect(odds(check, sound)).toBeLessThan(0.5);
      expect(odds(check, faulty)).toBeGreaterThan(2);
    },
  );
});
