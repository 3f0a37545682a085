import { expect, it } from 'vitest';
import { simulate } from './simulate.ts';
import { typicalScenario } from './typical-scenarios.ts';

it('says what failed, when, at which part and what to try, and keeps what was recorded', () => {
  const run = simulate({ ...typicalScenario('engine-vacuum'), maxSteps: 20 });
  expect(run.failure?.reason).toBe('too-many-steps');
  expect(run.failure!.timeS).toBeGreaterThan(0);
  expect(run.failure!.stepS).toBeGreaterThan(0);
  expect(run.failure!.words).toMatch(/at \d+\.\d+ s, .* of .*: /);
  expect(run.failure!.part).not.toBe('ledger');
  expect(run.failure!.tryThis).toMatch(/steps/);
  expect(run.recording.timeS.length).toBeGreaterThan(10);
});

it('answers a tank with no gas room by a failure, not by an exception or an endless run', () => {
  const scenario = typicalScenario('engine-vacuum', [], (p) => {
    p.tank.fillFraction = 1.2;
  });
  const run = simulate({ ...scenario, maxSteps: 2000 });
  expect(run.failure).toBeDefined();
});

it('throws for a mistake of the caller, listing what there is', () => {
  expect(() => simulate(typicalScenario('engine-vacuum'), { trace: ['tank.colour'] })).toThrow(/gaugePa/);
  expect(() => simulate(typicalScenario('engine-vacuum'), { trace: ['boiler.gaugePa'] })).toThrow(/ventSide/);
  expect(() => simulate(typicalScenario('engine-vacuum'), { trace: ['drain.flowKgPerS'] })).toThrow(/fillLimitValve/);
  expect(() => simulate(typicalScenario('engine-vacuum'), { trace: ['head.loading'] })).toThrow(/no loading/);
});
