import { describe, expect, it } from 'vitest';
import { checkValveArea } from '../../src/physics/check-valve.ts';
import { effectiveAreaFromDiameter } from '../../src/physics/equivalent-diameter.ts';
import { orificeMassFlow, smoothOrificeMassFlow } from '../../src/physics/orifice.ts';
import { displacedGasFlow } from '../../src/physics/refuelling.ts';
import { reliefValveArea } from '../../src/physics/relief-valve.ts';
import { ratiometricVoltage } from '../../src/physics/sensor.ts';
import { decayedDifference, decayRate, isothermalPressureRate } from '../../src/physics/vacuum-decay.ts';
import { R_AIR } from './printed.ts';

const ATM = 101325;
const T = 293.15;

/** Gauge pressure after a time in a rigid space with a steady draw and a hole, by small explicit steps. */
function drawnGauge(drawKgPerS: number, holeMm: number, volumeM3: number, seconds: number): number {
  const area = effectiveAreaFromDiameter(holeMm * 1e-3);
  const step = 1e-3;
  let gauge = 0;
  for (let t = 0; t < seconds; t += step) {
    const flow = smoothOrificeMassFlow(area, ATM, ATM + gauge, T, R_AIR, 1.4) - drawKgPerS;
    gauge += step * isothermalPressureRate(flow, volumeM3, T, R_AIR);
  }
  return gauge;
}

describe('facts of the trade that physics alone shows (common practice, no source)', () => {
  it('a sensor fed with 5 V is linear and its voltage falls under vacuum (common practice, no source)', () => {
    const volts = [-3000, -2000, -1000, 0].map((gauge) => ratiometricVoltage(gauge, -3750, 1250, 5));
    const steps = volts.slice(1).map((v, i) => v - (volts[i] as number));
    for (const step of steps) {
      expect(step).toBeGreaterThan(0);
      expect(step).toBeCloseTo(steps[0] as number, 12);
    }
    expect(Math.min(...volts)).toBeGreaterThan(0);
    expect(Math.max(...volts)).toBeLessThan(5);
  });

  it('the cap holds test pressure and relieves above it (common practice, no source)', () => {
    const flowAt = (gauge: number): number =>
      orificeMassFlow(reliefValveArea(gauge, 6000, 3000, 1500, 3e-5, 0), ATM + gauge, ATM, T, R_AIR, 1.4);
    const testPressurePa = 14 * 249.082;
    expect(flowAt(testPressurePa)).toBe(0);
    expect(flowAt(7500)).toBeGreaterThan(1e-3);
  });

  it('a missing cap or a hose that is off cannot be drawn down (common practice, no source)', () => {
    // Purge of 15 L/min from 40 L; the filler opening is some 30 mm wide, a hose 8 mm.
    const draw = (15 / 60e3) * 1.204;
    expect(drawnGauge(draw, 0, 0.04, 5)).toBeLessThan(-2000);
    expect(drawnGauge(draw, 30, 0.04, 5)).toBeGreaterThan(-10);
    expect(drawnGauge(draw, 8, 0.04, 5)).toBeGreaterThan(-100);
  });

  it('a small leak can be drawn down and shows as lost vacuum after sealing (common practice, no source)', () => {
    const draw = (15 / 60e3) * 1.204;
    expect(drawnGauge(draw, 0.5, 0.04, 5)).toBeLessThan(-1900);
    const lost = (mm: number): number =>
      2000 - decayedDifference(2000, 30, decayRate(effectiveAreaFromDiameter(mm * 1e-3), 0.04, T, ATM, R_AIR));
    expect(lost(0)).toBeCloseTo(0, 9);
    expect(lost(0.5)).toBeGreaterThan(300);
    expect(lost(1)).toBeGreaterThan(lost(0.5));
  });

  it('vacuum through a hole is lost fast at first and ever more slowly (common practice, no source)', () => {
    const rate = decayRate(effectiveAreaFromDiameter(0.8e-3), 0.04, T, ATM, R_AIR);
    const left = [0, 10, 20, 30].map((t) => decayedDifference(2000, t, rate));
    const losses = left.slice(1).map((p, i) => (left[i] as number) - p);
    expect(losses[0]).toBeGreaterThan(losses[1] as number);
    expect(losses[1]).toBeGreaterThan(losses[2] as number);
  });

  it('opening the vent relieves the vacuum within seconds, which proves the valve (common practice, no source)', () => {
    const step = 1e-3;
    let gauge = -2000;
    for (let t = 0; t < 3; t += step) {
      const flow = smoothOrificeMassFlow(effectiveAreaFromDiameter(8e-3), ATM, ATM + gauge, T, R_AIR, 1.4);
      gauge += step * isothermalPressureRate(flow, 0.04, T, R_AIR);
    }
    expect(gauge).toBeGreaterThan(-20);
  });

  it('a plugged vent path stops a fill: the tank must rise above the nozzle shut-off to pass the gas (common practice, no source)', () => {
    // 38 L/min must leave. An open path of 12 mm needs little; one choked to 2 mm needs more than any tank stands.
    const out = displacedGasFlow(38e-3 / 60, 0) * 1.204;
    const passes = (mm: number, gauge: number): number =>
      orificeMassFlow(effectiveAreaFromDiameter(mm * 1e-3), ATM + gauge, ATM, T, R_AIR, 1.4);
    expect(passes(12, 1000)).toBeGreaterThan(out);
    expect(passes(2, 10000)).toBeLessThan(out);
  });

  it('a purge check valve passes purge and holds against boost (common practice, no source)', () => {
    expect(checkValveArea(3000, 300, 1000, 2e-5, 0)).toBe(2e-5);
    expect(checkValveArea(-80000, 300, 1000, 2e-5, 0)).toBe(0);
  });
});
