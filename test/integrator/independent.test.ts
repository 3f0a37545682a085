/** The project's integrator against an independent one (scipy) on the same network equations, written a second time. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/simulation/simulate.ts';
import { GOLDEN_SCENARIOS, type GoldenScenario } from './scenarios.ts';

interface Golden {
  readonly madeBy: string;
  readonly tolerance: {
    readonly gaugePa: number;
    readonly temperatureK: number;
    readonly vapourMassFraction: number;
    readonly stepEndS: number;
  };
  readonly stepEnds: readonly { readonly phase: string; readonly toS: number; readonly outcome?: string }[];
  readonly timesS: readonly number[];
  readonly gaugePa: Readonly<Record<string, readonly number[]>>;
  readonly temperatureK: Readonly<Record<string, readonly number[]>>;
}

const folder = new URL('./goldens/', import.meta.url);
const read = <T>(name: string): T => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as T;

it('has a golden for every scenario and no others', () => {
  const expected = GOLDEN_SCENARIOS.flatMap((s) => [`${s.label}.golden.json`, `${s.label}.scenario.json`]).sort();
  expect(readdirSync(folder).sort()).toEqual(expected);
});

describe.each(GOLDEN_SCENARIOS.map((s) => s.label))('%s', (label) => {
  // The committed scenario, not the present defaults: the golden belongs to these numbers.
  const scenario = read<GoldenScenario>(`${label}.scenario.json`);
  const golden = read<Golden>(`${label}.golden.json`);
  const { spaces } = scenario.golden;
  const trace = spaces.flatMap((s) => [`${s}.gaugePa`, `${s}.temperatureK`]);
  // Samples at the golden's times: they are evenly spaced, half a step in.
  const stepS = golden.timesS[1]! - golden.timesS[0]!;
  const run = simulate(
    { ...scenario, relativeTolerance: 1e-8, sampling: { ...scenario.sampling, rateHz: 2 / stepS } },
    { trace },
  );

  it('runs to the end', () => {
    expect(run.failure).toBeUndefined();
  });

  it('ends its steps at the same times for the same reasons', () => {
    expect(run.steps.map((s) => [s.phase, s.outcome])).toEqual(golden.stepEnds.map((s) => [s.phase, s.outcome]));
    run.steps.forEach((s, i) => {
      expect(Math.abs(s.toS - golden.stepEnds[i]!.toS), s.phase).toBeLessThan(golden.tolerance.stepEndS);
    });
  });

  it('gives the same pressures and temperatures', () => {
    expect(golden.timesS.length).toBeGreaterThan(20);
    golden.timesS.forEach((t, i) => {
      const k = Math.round((t / stepS) * 2);
      expect(Math.abs(run.recording.timeS[k]! - t)).toBeLessThan(1e-9);
      spaces.forEach((space, s) => {
        const pressure = run.traces[2 * s]!.value[k]!;
        const temperature = run.traces[2 * s + 1]!.value[k]!;
        const where = `${space} at ${t} s`;
        expect(Math.abs(pressure - golden.gaugePa[space]![i]!), where).toBeLessThan(golden.tolerance.gaugePa);
        expect(Math.abs(temperature - golden.temperatureK[space]![i]!), where).toBeLessThan(
          golden.tolerance.temperatureK,
        );
      });
    });
  });
});
