import { describe, expect, it } from 'vitest';
import { findPhases } from '../../recording/phases.ts';
import { randomStream } from '../../simulation/random.ts';
import { applyCause, CATALOGUE, formOf } from '../causes/catalogue.ts';
import { levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { FitProblem } from '../fit/problem.ts';
import { drawAndHold, simulateRecording, TEST_CAR } from '../growing/simulated-recording.ts';
import { FIRST_NOISE } from '../likelihood/noise.ts';
import { prepare } from '../prepare.ts';
import { weighCauses } from '../weigh-causes.ts';
import { parametersOf } from './parameters-of.ts';
import { recentred } from './recentred.ts';
import { withNoise } from './with-noise.ts';

/** A hole of 1.2 mm, a draw and 70 s of hold. */
function drawn(seed: number) {
  const recording = simulateRecording(
    {
      procedure: 'vacuum-draw',
      commands: drawAndHold(70, 0),
      lengthS: 90,
      rateHz: 10,
      form: 'leak',
      leakDiameterMm: 1.2,
      noisePa: 8,
      spread: 0.6,
      engineRuns: true,
    },
    randomStream(seed),
  );
  const kind = 'vacuum-draw';
  return [prepare(TEST_CAR, recording, kind, findPhases(recording, undefined, { kind, reasons: [] }))];
}
const LEAK = CATALOGUE.find((c) => formOf(c) === 'leak')!;

describe('a fit that puts the car or the day far outside the usual', () => {
  const prepared = drawn(4);
  const parameters = applyCause(parametersOf(TEST_CAR, prepared), [LEAK], ['vacuum-draw']);
  const problem = new FitProblem(parameters, withNoise(prepared, [FIRST_NOISE]));
  const settings = { mostIterations: 40, enough: 0.02 };
  const heat = parameters.findIndex((p) => p.name === 'wallHeat');
  const warm = Float64Array.from(parameters, (_, i) => (i === heat ? 6 : 0));
  const strayed = { problem, fit: levenbergMarquardt(problem, warm, settings) };
  const after = recentred(strayed, LEAK);

  it('begins again there, and keeps the better of the two', () => {
    // a valley where the gas is always as warm as the wall, and a fit does not leave it by itself
    expect(Math.abs(strayed.fit.z[heat]!)).toBeGreaterThan(3);
    expect(Math.abs(after.fit.z[heat]!)).toBeLessThan(3);
    expect(after.fit.cost).toBeLessThan(strayed.fit.cost - 5);
  });

  it('is left alone where nothing is far out, or where the cause asks for it', () => {
    expect(recentred(after, LEAK)).toBe(after);
    const size = Float64Array.from(after.fit.z);
    size[parameters.findIndex((p) => p.name === 'leak')] = -4;
    const tight = { problem, fit: levenbergMarquardt(problem, size, { mostIterations: 0, enough: 0 }) };
    expect(recentred(tight, LEAK)).toBe(tight);
  });

  it('the best cause of a plain draw does not end with the gas six deviations from the usual', () => {
    const { weighed } = weighCauses(TEST_CAR, prepared);
    const best = weighed.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a));
    const at = best.problem.parameters.findIndex((p) => p.name === 'wallHeat');
    expect(Math.abs(best.fit.z[at]!)).toBeLessThan(3);
  });
});
