import { describe, expect, it } from 'vitest';
import { altitudeFromPressure, standardPressure } from '../../src/physics/atmosphere.ts';
import { coilResistance, coilTemperature } from '../../src/physics/coil.ts';
import { MOLAR_GAS_CONSTANT, MOLAR_MASS_AIR, P_ATM, SPECIFIC_GAS_CONSTANT_AIR } from '../../src/physics/constants.ts';
import { gasDensity } from '../../src/physics/gas.ts';
import { ratiometricPressure, ratiometricVoltage } from '../../src/physics/sensor.ts';
import { waterSaturationPressure } from '../../src/physics/water-vapour.ts';
import { celsius, expectPrinted } from './printed.ts';

describe('gas constants (SI 2019; dry air)', () => {
  it('R, air molar mass, air gas constant, atmosphere, density at 20 degC', () => {
    expectPrinted(MOLAR_GAS_CONSTANT, '8.314462618');
    expectPrinted(MOLAR_MASS_AIR * 1e3, '28.9647');
    expectPrinted(SPECIFIC_GAS_CONSTANT_AIR, '287.055');
    expect(P_ATM).toBe(101325);
    expectPrinted(gasDensity(101325, 293.15, SPECIFIC_GAS_CONSTANT_AIR), '1.20410');
  });
});

describe('standard atmosphere (US Standard Atmosphere 1976 by an open library, K)', () => {
  for (const [metres, kilopascal] of [
    [0, '101.325'],
    [500, '95.4613'],
    [1000, '89.8763'],
    // The reference prints 1609.3; its value is that of the mile.
    [1609.344, '83.4318'],
    [2000, '79.5014'],
    [2438.4, '75.2712'],
    [3000, '70.1212'],
  ] as const) {
    it(`${metres} m: ${kilopascal} kPa`, () => {
      expectPrinted(standardPressure(metres) / 1e3, kilopascal, 1);
      expect(altitudeFromPressure(standardPressure(metres))).toBeCloseTo(metres, 6);
    });
  }

  it('absolute pressure falls by about 25 % at 8000 ft (K)', () => {
    // The trap says 25 %; the table itself gives 25.7 %.
    expectPrinted((1 - standardPressure(2438.4) / 101325) * 100, '25.7');
  });
});

describe('saturated water (Magnus, WMO CIMO form from memory; K)', () => {
  for (const [degrees, pascal] of [
    [0, '611.2'],
    [10, '1226'],
    [20, '2332.6'],
    [25, '3160'],
    [30, '4233.7'],
  ] as const) {
    it(`${degrees} degC: ${pascal} Pa`, () => {
      expectPrinted(waterSaturationPressure(celsius(degrees)), pascal);
    });
  }
});

describe('copper winding (IEC 60028; coefficient from memory)', () => {
  it('26.0 ohm at 20 degC is 32.13 ohm at 80 degC (K)', () => {
    expectPrinted(coilResistance(26, celsius(80)), '32.13');
    expect(coilTemperature(26, coilResistance(26, celsius(80)))).toBeCloseTo(celsius(80), 9);
  });

  it('factors 0.9214 at 0, 1.2358 at 80, 1.3144 at 100 degC (K)', () => {
    expectPrinted(coilResistance(1, celsius(0)), '0.9214');
    expectPrinted(coilResistance(1, celsius(80)), '1.2358');
    expectPrinted(coilResistance(1, celsius(100)), '1.3144');
  });

  it('the alternative (234.5 + T)/254.5 agrees within 0.1 % (K)', () => {
    for (const t of [0, 40, 80, 100]) {
      expect(Math.abs(coilResistance(1, celsius(t)) / ((234.5 + t) / 254.5) - 1)).toBeLessThan(1e-3);
    }
  });
});

describe('ratiometric sensor 0.5 to 4.5 V for -3.75 to +1.25 kPa (industry convention, from memory)', () => {
  for (const [volts, kilopascal] of [
    [0.5, '-3.75'],
    [2.5, '-1.25'],
    [3.5, '0.00'],
    [4.5, '1.25'],
  ] as const) {
    it(`${volts} V is ${kilopascal} kPa (K)`, () => {
      expectPrinted(ratiometricPressure(volts, -3750, 1250, 5) / 1e3, kilopascal);
      expect(ratiometricVoltage(Number(kilopascal) * 1e3, -3750, 1250, 5)).toBeCloseTo(volts, 9);
    });
  }

  it('a supply of 4.9 V makes 3.5 V read +0.0893 kPa (K)', () => {
    expectPrinted(ratiometricPressure(3.5, -3750, 1250, 4.9) / 1e3, '0.0893');
  });
});
