import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { column } from './chart/source.ts';
import { rangeOfSamples } from './figures.ts';

test.prop([
  fc.array(fc.float({ noDefaultInfinity: true }), { minLength: 1, maxLength: 400 }),
  fc.nat(399),
  fc.nat(400),
])('extremes of any stretch are those of its samples', (list, a, b) => {
  const values = Float32Array.from(list);
  const from = Math.min(a, b, values.length);
  const to = Math.min(values.length, Math.max(a, b));
  const present = [...values.subarray(from, to)].filter((value) => !Number.isNaN(value));
  expect(rangeOfSamples(column(values), from, to)).toEqual(
    present.length === 0 ? null : [Math.min(...present), Math.max(...present)],
  );
});
