import { describe, expect, it } from 'vitest';
import type { FitProblem } from '../fit/problem.ts';
import { addedMisfit } from './expected-gain.ts';
import { profile } from './profile.ts';
import { hessianOf, Track } from './track.ts';

/** r = y - A z with a prior of one: everything about it is known in closed form. */
function linear(y: readonly number[], a: readonly (readonly number[])[]): FitProblem {
  const size = a[0]!.length;
  const model = {
    size,
    rows: y.length,
    runs: 0,
    parameters: Array.from({ length: size }, (_, i) => ({
      name: i === 0 ? 'leak' : `p${i}`,
      slot: 0,
      kind: 'linear',
      centre: 0,
      sd: 1,
      recording: -1,
    })),
    recordings: [],
    residuals(z: ArrayLike<number>, out: Float64Array) {
      y.forEach((v, k) => {
        out[k] = v - a[k]!.reduce((s, x, j) => s + x * z[j]!, 0);
      });
    },
    jacobian(_: ArrayLike<number>, out: Float64Array) {
      for (let j = 0; j < size; j++)
        y.forEach((_v, k) => {
          out[j * y.length + k] = a[k]![j]!;
        });
    },
  };
  return model as unknown as FitProblem;
}
const A = [
  [1, 0.4, 0],
  [0.3, 2, 0.5],
  [0, 0.7, 1.5],
  [1.1, 0, 0.2],
];
const Y = [0.8, -0.4, 1.2, 0.3];

describe('a track on a linear problem', () => {
  it('arrives at the normal equations in two steps and has the exact evidence', () => {
    const track = new Track(linear(Y, A), new Float64Array(3));
    track.evaluate();
    for (let i = 0; i < 4; i++) track.step(i);
    const h = hessianOf(track.jacobian!, 3, 4);
    // (A'A + 1) z = A'y
    for (let i = 0; i < 3; i++) {
      const left = [0, 1, 2].reduce((s, j) => s + h[i * 3 + j]! * track.z[j]!, 0);
      const right = Y.reduce((s, y, k) => s + A[k]![i]! * y, 0);
      expect(left).toBeCloseTo(right, 3);
    }
    expect(track.arrived).toBe(true);
    // evidence of y ~ N(0, 1 + A A'), its 2 pi left out: by hand for this A and Y with numpy
    expect(track.logEvidence).toBeCloseTo(-2.5425, 3);
    const found = profile(track, 0)!;
    expect(found.logEvidence).toBeCloseTo(track.logEvidence, 1);
  });
});

describe('what two causes will part by', () => {
  const columns = Float64Array.from({ length: 12 }, (_, i) => A[i % 4]![Math.floor(i / 4)]!);
  const y = [0.8, -0.4, 2, -1];
  const residualsAt = (z: readonly number[]) =>
    Float64Array.from(y, (v, k) => v - A[k]!.reduce((s, x, j) => s + x * z[j]!, 0));

  it('is the rise of the least cost, wherever the rival stands', () => {
    // least cost with all four rows minus that with the first two, each y'(1 + A A')^-1 y / 2, worked out with numpy
    for (const z of [
      [0, 0, 0],
      [0.4, -0.2, 0.6],
    ]) {
      expect(addedMisfit(columns, residualsAt(z), Float64Array.from(z), 2)).toBeCloseTo(1.6349537, 6);
    }
  });

  it('is nothing where the rival foretells the same', () => {
    const z = [0.4, -0.2, 0.6];
    const residuals = residualsAt(z);
    residuals.fill(0);
    expect(addedMisfit(columns, residuals, new Float64Array(3), 2)).toBe(0);
  });
});
