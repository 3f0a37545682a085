import { describe, expect, it } from 'vitest';
import { diurnalSeries, overnightSoak } from './procedures/overnight-soak.ts';
import { simulate } from './simulate.ts';
import { MILD_DAY, typicalScenario } from './typical-scenarios.ts';

const scenario = typicalScenario('engine-vacuum', [{ kind: 'leak', place: 'neck', size: 0.6e-3 }]);

describe('a simulation', () => {
  it('repeats itself to the last bit, and another seed changes the noise only', () => {
    const one = simulate(scenario, { trace: ['tank.gaugePa'] });
    const two = simulate(scenario, { trace: ['tank.gaugePa'] });
    const other = simulate({ ...scenario, sampling: { ...scenario.sampling, seed: 2 } }, { trace: ['tank.gaugePa'] });
    expect(two).toEqual(one);
    expect(other.traces).toEqual(one.traces);
    expect(other.recording.channels.tankPressureGaugePa).not.toEqual(one.recording.channels.tankPressureGaugePa);
  });

  it('lands on valve commands exactly and ends the draw where the module reads the target', () => {
    const run = simulate(scenario, { trace: ['tank.gaugePa'] });
    expect(run.steps[0]!.toS).toBe(10);
    expect(run.steps[2]!.toS - run.steps[2]!.fromS).toBeCloseTo(2, 12);
    const tight = simulate({ ...scenario, relativeTolerance: 1e-8 });
    expect(Math.abs(run.steps[1]!.toS - tight.steps[1]!.toS)).toBeLessThan(1e-3);
    expect(run.recording.notes?.drawTargetGaugePa).toBe(-2000);
  });

  it('changes little with the tolerance: 1e-5 is within 0.5 Pa of 1e-8 all the way', () => {
    const coarse = simulate(scenario, { trace: ['tank.gaugePa'] }).traces[0]!.value;
    const tight = simulate({ ...scenario, relativeTolerance: 1e-8 }, { trace: ['tank.gaugePa'] }).traces[0]!.value;
    expect(coarse.length).toBe(tight.length);
    coarse.forEach((v, i) => {
      expect(Math.abs(v - tight[i]!)).toBeLessThan(0.5);
    });
  });

  it('samples with jitter, steps and noise as asked', () => {
    const sampling = { rateHz: 10, jitter: 0.1, pressureStepPa: 49, noisePa: 20, seed: 3 };
    const { timeS, channels } = simulate({ ...scenario, sampling }).recording;
    for (let i = 1; i < timeS.length; i++) expect(timeS[i]!).toBeGreaterThan(timeS[i - 1]!);
    const spacing = Array.from(timeS.subarray(1), (t, i) => t - timeS[i]!);
    expect(Math.max(...spacing) - Math.min(...spacing)).toBeGreaterThan(0.01);
    for (const p of channels.tankPressureGaugePa!) expect(Math.abs(p / 49 - Math.round(p / 49))).toBeLessThan(1e-9);
    for (const values of Object.values(channels)) expect(values.length).toBe(timeS.length);
  });

  it('stops at two commands a microsecond apart without stumbling', () => {
    const steps = scenario.procedure.steps.map((s) =>
      s.phase === 'draw'
        ? {
            ...s,
            commands: {
              ventClosed: 1,
              purgeDuty: [1, 1 + 5e-7, 1 + 9e-7].map((atS, i) => ({ atS, value: 0.1 * (i + 1) })),
            },
          }
        : s,
    );
    const run = simulate({ ...scenario, procedure: { ...scenario.procedure, steps } });
    expect(run.failure).toBeUndefined();
    expect(run.work.accepted).toBeLessThan(300);
  });

  it('breathes through a night in under two thousand steps, loading the canister by day', () => {
    const night = {
      ...typicalScenario('engine-vacuum'),
      procedure: overnightSoak(24, false),
      conditions: {
        ...MILD_DAY,
        ambientTemperatureK: diurnalSeries(24, 0, 295, 309),
        start: { fuelTemperatureK: 295 },
      },
    };
    const run = simulate(
      { ...night, sampling: { ...night.sampling, rateHz: 0.01 } },
      { trace: ['tank.gaugePa', 'bed1.loading'] },
    );
    expect(run.failure).toBeUndefined();
    expect(run.work.accepted).toBeLessThan(2000);
    const loading = run.traces[1]!.value;
    expect(Math.max(...loading)).toBeGreaterThan(loading[0]! + 0.01);
    expect(Math.max(...run.traces[0]!.value.map(Math.abs))).toBeLessThan(50);
  });
});
