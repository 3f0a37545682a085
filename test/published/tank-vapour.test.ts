import { describe, expect, it } from 'vitest';
import {
  BREAKTHROUGH_COEFFICIENTS,
  bedVolumes,
  purgeDuration,
  ventedMass,
  workingCapacity,
} from '../../src/physics/canister.ts';
import { adsorptionPotential, dubininAstakhovUptake } from '../../src/physics/carbon.ts';
import { permeationRatio } from '../../src/physics/permeation.ts';
import {
  DISPENSING_RATE_CAP_M3_PER_S,
  dispensedTemperature,
  displacedVapour,
  displacedVapourAp42,
  RECOVERED_REFUELLING_LOSS,
  REFUELLING_SPILLAGE,
  tankOverDispensed,
} from '../../src/physics/refuelling.ts';
import {
  vapourGeneration,
  vapourGenerationAtBarometer,
  vapourGenerationAtEthanol,
  WADE_REDDY_COEFFICIENTS as WADE_REDDY,
} from '../../src/physics/wade-reddy.ts';
import { expectPrinted, fahrenheit, GALLON, PSI } from './printed.ts';

/** Kilograms per cubic metre as grams per gallon. */
const gramsPerGallon = (kgPerM3: number): number => kgPerM3 * GALLON * 1e3;

/** Conventional inch of mercury, Pa. Source: NIST SP 811 B.8. */
const INHG = 3386.389;

describe('Wade-Reddy vapour generation (structure C, MOVES5; coefficients EPA-420-R-24-014 from memory; values K)', () => {
  const cases = [
    ['e0SeaLevel', ['2.1617', '1.3232', '2.5105', '1.1373']],
    ['e0Denver', ['3.1429', '1.8075', '3.5242', '1.5523']],
    ['e10SeaLevel', ['2.2237', '1.3274', '2.7682', '0.9645']],
    ['e10Denver', ['3.1770', '1.7988', '3.8991', '1.2675']],
  ] as const;
  const conditions = [
    [9, 72, 96],
    [9, 60, 84],
    [7, 65, 105],
    [13, 40, 60],
  ] as const;
  for (const [name, printed] of cases) {
    it(`${name}: four warm-ups in g/gal (from memory)`, () => {
      conditions.forEach(([rvp, from, to], i) => {
        const made = vapourGeneration(WADE_REDDY[name], rvp * PSI, fahrenheit(from), fahrenheit(to));
        expectPrinted(gramsPerGallon(made), printed[i] as string);
      });
    });
  }

  const at = (name: keyof typeof WADE_REDDY): number =>
    vapourGeneration(WADE_REDDY[name], 9 * PSI, fahrenheit(72), fahrenheit(96));

  it('no vapour when the temperature does not rise (C)', () => {
    expect(vapourGeneration(WADE_REDDY.e10SeaLevel, 9 * PSI, fahrenheit(90), fahrenheit(90))).toBe(0);
    expect(vapourGeneration(WADE_REDDY.e10SeaLevel, 9 * PSI, fahrenheit(90), fahrenheit(80))).toBe(0);
  });

  it('E10 at 26.5 inHg: 2.7153 g/gal (altitude rule C2)', () => {
    expectPrinted(
      gramsPerGallon(vapourGenerationAtBarometer(at('e10SeaLevel'), at('e10Denver'), 26.5 * INHG)),
      '2.7153',
    );
  });

  it('E5 at sea level: 2.1927 g/gal (ethanol rule C2)', () => {
    expectPrinted(gramsPerGallon(vapourGenerationAtEthanol(at('e0SeaLevel'), at('e10SeaLevel'), 0.05)), '2.1927');
  });

  it('15 gal tank, 40 % full, E10: 20.014 g (K)', () => {
    expectPrinted(at('e10SeaLevel') * 15 * GALLON * (1 - 0.4) * 1e3, '20.014');
  });
});

describe('canister breakthrough (MOVES default data, movesdb 20241112, C2; values K)', () => {
  for (const [name, y100, y150, y200] of [
    ['t0', '50.317', '97.386', '146.140'],
    ['t1', '5.247', '28.762', '73.727'],
    ['t2', '27.993', '64.670', '103.163'],
  ] as const) {
    it(`${name}: vented at 100, 150 and 200 g`, () => {
      expectPrinted(ventedMass(BREAKTHROUGH_COEFFICIENTS[name], 0.1) * 1e3, y100);
      expectPrinted(ventedMass(BREAKTHROUGH_COEFFICIENTS[name], 0.15) * 1e3, y150);
      expectPrinted(ventedMass(BREAKTHROUGH_COEFFICIENTS[name], 0.2) * 1e3, y200);
    });
  }
});

describe('canister figures (K)', () => {
  it('2.0 L, 300 bed volumes at 22.7 L/min take 26.4 min (40 CFR 86.132-96 from memory; K)', () => {
    expectPrinted(purgeDuration(300, 22.7e-3 / 60, 2e-3) / 60, '26.4');
  });

  it('10 min at 15 L/min through 2.0 L are 75 bed volumes (K)', () => {
    expectPrinted(bedVolumes(15e-3 / 60, 600, 2e-3), '75');
  });

  it('2.0 L at 11 g/100 mL hold 220 g (class from memory; K)', () => {
    expectPrinted(workingCapacity(2e-3, 110) * 1e3, '220');
  });

  it('Dubinin-Astakhov, n-butane 25 degC: 67.43 kJ/kg and 0.649 kg/kg at 50 kPa, 0.469 at 5.066 kPa (Saha 2008; parameters from memory, low confidence)', () => {
    const potential = adsorptionPotential(298.15, 50e3, 243e3, 0.0581222);
    expectPrinted(potential / 1e3, '67.43');
    expectPrinted(dubininAstakhovUptake(potential, 0.8, 300e3, 1.05), '0.649');
    const low = adsorptionPotential(298.15, 5066, 243e3, 0.0581222);
    expectPrinted(dubininAstakhovUptake(low, 0.8, 300e3, 1.05), '0.469');
  });
});

describe('permeation (structure C, MOVES5; exponent from memory)', () => {
  it('doubles per 18 degF and grows by 1.714 from 72 to 86 degF (from memory)', () => {
    expectPrinted(permeationRatio(fahrenheit(90), fahrenheit(72)), '2.00');
    expectPrinted(permeationRatio(fahrenheit(86), fahrenheit(72)), '1.714');
  });
});

describe('refuelling (MOVES5: structure C, coefficients C2; values K)', () => {
  for (const [ambient, rvp, dispensed, difference, rate] of [
    [59.5, 8.0, '68.495', '12.031', '3.01529'],
    [59.5, 7.7, '68.495', '12.031', '2.89866'],
    [75, 9.0, '81.050', '17.279', '4.32472'],
    [86, 7.0, '89.960', '20', '3.93098'],
    [86, 9.0, '89.960', '20', '5.11352'],
  ] as const) {
    it(`ambient ${ambient} degF, RVP ${rvp} psi: ${rate} g/gal`, () => {
      const fuel = dispensedTemperature(fahrenheit(ambient));
      const over = tankOverDispensed(fuel);
      expectPrinted(fuel * 1.8 - 459.67, dispensed);
      expectPrinted(over * 1.8, difference);
      expectPrinted(gramsPerGallon(displacedVapour(fuel, over, rvp * PSI)), rate);
    });
  }

  for (const [fuel, over, milligrams, grams] of [
    [70, 5, '1101.6', '4.170'],
    [80, 10, '1209.8', '4.579'],
  ] as const) {
    it(`AP-42 5.2 at ${fuel} degF, ${over} degF over, RVP 9: ${milligrams} mg/L (from memory)`, () => {
      const displaced = displacedVapourAp42(fahrenheit(fuel), over / 1.8, 9 * PSI);
      expectPrinted(displaced * 1e3, milligrams);
      expectPrinted(gramsPerGallon(displaced), grams);
    });
  }

  it('losses with recovery 0.0361 and spillage 0.31 g/gal (MOVES5, C2)', () => {
    expectPrinted(gramsPerGallon(RECOVERED_REFUELLING_LOSS), '0.0361');
    expectPrinted(gramsPerGallon(REFUELLING_SPILLAGE), '0.31');
  });

  it('dispensing cap 10 gal/min is 37.9 L/min (40 CFR 80.22(j), C)', () => {
    expectPrinted(DISPENSING_RATE_CAP_M3_PER_S * 60e3, '37.9');
  });
});
