import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { assemble } from '../system/assemble.ts';
import { LAYOUTS, type LayoutId } from '../system/car.ts';
import { defaultParameters } from '../system/defaults.ts';
import { COMMANDS, INPUTS } from '../system/network.ts';
import { initialState } from './initial-state.ts';
import { NetworkEquations } from './network-equations.ts';

const INPUT_VALUES: Record<(typeof INPUTS)[number], number> = {
  ambientAbsPa: 98_000,
  ambientTemperatureK: 295,
  manifoldAbsPa: 36_000,
  ejectorAbsPa: 94_000,
  fillFlowM3PerS: 6e-4,
  fillTemperatureK: 289,
  fuelDrawM3PerS: 3e-7,
  fuelHeatW: 40,
};

/** A state in the middle of things: every store moved at random from the start, by a few parts in a hundred. */
const state = fc.record({
  layout: fc.constantFrom(...LAYOUTS),
  commands: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
    minLength: COMMANDS.length,
    maxLength: COMMANDS.length,
  }),
  nudges: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 80, maxLength: 80 }),
  moving: fc.boolean(),
});

function equationsAt(layout: LayoutId, commands: number[], nudges: number[], moving: boolean) {
  const p = defaultParameters();
  p.vent.valveShutDiameterM = 0.3e-3;
  p.pump.changeoverShutDiameterM = 0.2e-3;
  p.isolation.shutDiameterM = 0.3e-3;
  p.boost.manifoldCheckShutDiameterM = 1e-3;
  p.saddle.passiveFillFraction = 0.56;
  p.leakDiametersM.cap = 0.5e-3;
  p.leakDiametersM.purgeLine = 0.4e-3;
  const equations = new NetworkEquations(assemble(p, layout));
  const inputs = INPUTS.map((id) => INPUT_VALUES[id]);
  equations.inputs.setStretch(0, 10, inputs, moving ? inputs.map((v) => v * 1.01) : inputs);
  commands.forEach((c, i) => {
    equations.commands[i] = c;
  });
  equations.commandsChanged();
  const x = initialState(equations, { fuelTemperatureK: 301, lineShare: 0.5 });
  for (let i = 0; i < equations.dynamicSize; i++) {
    const sensor = equations.layout.names[i]!.startsWith('sensor');
    // Never all equal: at exactly equal pressures the upstream side switches and slopes have two values.
    const nudge = 0.7 * nudges[i]! + 0.3 * Math.sin(7 * i + 1);
    x[i] = sensor ? 500 * nudge : x[i]! * (1 + 0.03 * nudge);
  }
  return { equations, x };
}

describe('the equations of a network', () => {
  test.prop([state], { numRuns: 60 })('lose nothing: air and fuel of all stores and boundaries keep their sum', (s) => {
    const { equations, x } = equationsAt(s.layout, s.commands, s.nudges, s.moving);
    const dx = new Float64Array(equations.size);
    equations.derivative(1, x, dx);
    let air = 0;
    let fuel = 0;
    let size = 0;
    equations.layout.names.forEach((name, i) => {
      if (name.startsWith('air')) air += dx[i]!;
      else if (/^(vapour|fuel mass|fuel dispensed|fuel burnt|adsorbed)/.test(name)) fuel += dx[i]!;
      else return;
      size += Math.abs(dx[i]!);
    });
    expect(size).toBeGreaterThan(0);
    expect(Math.abs(air)).toBeLessThan(1e-14 * size);
    expect(Math.abs(fuel)).toBeLessThan(1e-14 * size);
  });

  test.prop([state], { numRuns: 60 })('have the Jacobian that differences show, inside the stated pattern', (s) => {
    const { equations, x } = equationsAt(s.layout, s.commands, s.nudges, s.moving);
    const n = equations.size;
    const jacobian = new Float64Array(n * n);
    equations.jacobian(1, x, jacobian);
    const plus = new Float64Array(n);
    const minus = new Float64Array(n);
    for (let j = 0; j < equations.dynamicSize; j++) {
      const h = 1e-6 * Math.max(Math.abs(x[j]!), 1e-4);
      const at = x[j]!;
      x[j] = at + h;
      equations.derivative(1, x, plus);
      x[j] = at - h;
      equations.derivative(1, x, minus);
      x[j] = at;
      for (let i = 0; i < n; i++) {
        const quotient = (plus[i]! - minus[i]!) / (2 * h);
        const analytic = jacobian[i * n + j]!;
        const rounding = (1e-13 * (Math.abs(plus[i]!) + 1e-9)) / h;
        const bound = 2e-4 * Math.abs(analytic) + 50 * rounding + 1e-12;
        const where = `d(${equations.layout.names[i]})/d(${equations.layout.names[j]}) in ${s.layout}`;
        expect(Math.abs(quotient - analytic), `${where}: ${quotient} ${analytic}`).toBeLessThan(bound);
        if (analytic !== 0) expect(equations.pattern[i * n + j], where).toBe(1);
      }
    }
  });

  test.prop([state], { numRuns: 20 })('have a time derivative only while an input moves', (s) => {
    const { equations, x } = equationsAt(s.layout, s.commands, s.nudges, s.moving);
    const dfdt = new Float64Array(equations.size);
    expect(equations.timeDerivative(1, x, dfdt)).toBe(s.moving);
    if (s.moving) expect(dfdt.some((v) => v !== 0)).toBe(true);
  });
});
