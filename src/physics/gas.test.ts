import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { uniform } from '../../test/published/uniform.ts';
import { GAMMA_AIR, HEAT_CAPACITY_CV_AIR, SPECIFIC_GAS_CONSTANT_AIR } from './constants.ts';
import {
  gasDensity,
  massConcentration,
  mixtureGamma,
  mixtureHeatCapacityCp,
  mixtureHeatCapacityCv,
  mixtureMolarMass,
  mixturePressure,
  mixtureSpecificGasConstant,
  partialPressure,
  specificGasConstant,
  standardVolumeFlow,
  vapourMassFraction,
  vapourMoleFraction,
} from './gas.ts';
import { gasTemperatureRate, wallHeatFlow, wallTimeConstant } from './wall-heat.ts';

const fraction = uniform(0, 1);
const molarMass = uniform(0.05, 0.08);

describe('air and petrol vapour', () => {
  it('mass and mole fractions invert each other', () => {
    fc.assert(
      fc.property(fraction, molarMass, (y, m) => {
        expect(vapourMassFraction(vapourMoleFraction(y, m), m)).toBeCloseTo(y, 12);
      }),
    );
  });

  it('the molar mass is the mole-weighted mean', () => {
    fc.assert(
      fc.property(fraction, molarMass, (y, m) => {
        const x = vapourMoleFraction(y, m);
        expect(mixtureMolarMass(y, m)).toBeCloseTo(x * m + (1 - x) * 0.0289647, 12);
      }),
    );
  });

  it('pressure is the sum of the partial pressures, and density agrees with it', () => {
    const mass = uniform(1e-4, 0.1);
    fc.assert(
      fc.property(mass, mass, molarMass, (air, vapour, m) => {
        const rv = specificGasConstant(m);
        const whole = mixturePressure(air, vapour, 300, 0.03, rv);
        const parts =
          partialPressure(air, 300, 0.03, SPECIFIC_GAS_CONSTANT_AIR) + partialPressure(vapour, 300, 0.03, rv);
        expect(Math.abs(whole / parts - 1)).toBeLessThan(1e-12);
        const mixture = mixtureSpecificGasConstant(vapour / (air + vapour), m);
        expect(Math.abs((gasDensity(whole, 300, mixture) * 0.03) / (air + vapour) - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('air alone keeps its own constants; pure vapour is near 1.08', () => {
    expect(mixtureGamma(0, 0.066)).toBeCloseTo(GAMMA_AIR, 12);
    expect(mixtureHeatCapacityCv(0, 0.066)).toBeCloseTo(HEAT_CAPACITY_CV_AIR, 9);
    expect(mixtureHeatCapacityCp(0) - mixtureHeatCapacityCv(0, 0.066)).toBeCloseTo(SPECIFIC_GAS_CONSTANT_AIR, 9);
    expect(mixtureGamma(1, 0.066)).toBeGreaterThan(1.07);
    expect(mixtureGamma(1, 0.066)).toBeLessThan(1.1);
  });

  it('a standard flow is the mass flow over the density at the reference', () => {
    expect(standardVolumeFlow(1, 101325, 293.15, 287.055) * gasDensity(101325, 293.15, 287.055)).toBeCloseTo(1, 12);
    expect(massConcentration(1, 101325, 293.15, 0.0289647)).toBeCloseTo(gasDensity(101325, 293.15, 287.055), 5);
  });
});

describe('heat between gas and wall', () => {
  it('brings the gas to the wall with its time constant, and not past it', () => {
    const [mass, cv, h, area] = [0.05, 718, 5, 0.6];
    const tau = wallTimeConstant(mass, cv, h, area);
    expect(tau).toBeCloseTo((0.05 * 718) / 3, 9);
    let t = 280;
    const step = tau / 2000;
    for (let i = 0; i < 2000; i++)
      t += step * gasTemperatureRate(mass, t, cv, 287, 0, 0, 0, wallHeatFlow(h, area, 300, t));
    expect((300 - t) / 20).toBeCloseTo(Math.exp(-1), 3);
  });

  it('a draw without heat follows the adiabat', () => {
    // dT/dm = (g - 1) T/m for gas leaving a space: T goes as m^(g-1).
    let [t, mass] = [293.15, 0.05];
    const dm = 1e-7;
    for (let i = 0; i < 5000; i++) {
      t += gasTemperatureRate(mass, t, HEAT_CAPACITY_CV_AIR, SPECIFIC_GAS_CONSTANT_AIR, 0, 0, 1, 0) * dm;
      mass -= dm;
    }
    expect(t).toBeCloseTo(293.15 * (mass / 0.05) ** 0.4, 3);
  });

  it('gas that enters at the temperature of the space heats it by its flow work', () => {
    const rate = gasTemperatureRate(0.05, 293, 718, 287, 1e-3, 293, 0, 0);
    expect(rate).toBeCloseTo((1e-3 * 287 * 293) / (0.05 * 718), 9);
  });
});
