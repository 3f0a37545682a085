import { describe, expect, it } from 'vitest';
import { areaFromSonicConductance, iso6358MassFlow, sonicConductanceFromArea } from '../../src/physics/iso6358.ts';
import {
  chokedFlowFactor,
  criticalPressureRatio,
  orificeMassFlow,
  orificePressureDropFromMassFlow,
  smoothOrificeMassFlow,
} from '../../src/physics/orifice.ts';
import { area, expectPrinted, gramsPerMinute, litresPerMinute, R_AIR } from './printed.ts';

const ATM = 101325;
const T = 293.15;
const M_AIR = 0.0289647;

/** d mm, pressure difference kPa, then g/min and L/min at 0.61, the same at 0.65, g/min at 1.00. */
const TABLE = [
  ['0.500', -2.0, '0.49344', '0.40980', '0.52579', '0.43667', '0.80891'],
  ['0.500', -2.5, '0.55019', '0.45693', '0.58626', '0.48689', '0.90194'],
  ['0.500', 3.0, '0.61018', '0.50675', '0.65019', '0.53998', '1.00029'],
  ['0.508', -2.0, '0.50935', '0.42302', '0.54275', '0.45075', '0.83500'],
  ['0.508', -2.5, '0.56793', '0.47167', '0.60517', '0.50260', '0.93104'],
  ['0.508', 3.0, '0.62986', '0.52310', '0.67116', '0.55740', '1.03256'],
  ['1.000', -2.0, '1.97374', '1.63919', '2.10317', '1.74668', '3.23564'],
  ['1.000', -2.5, '2.20074', '1.82771', '2.34505', '1.94756', '3.60777'],
  ['1.000', 3.0, '2.44072', '2.02701', '2.60077', '2.15993', '4.00118'],
  ['1.016', -2.0, '2.03741', '1.69206', '2.17101', '1.80302', '3.34001'],
  ['1.016', -2.5, '2.27173', '1.88667', '2.42070', '2.01038', '3.72415'],
  ['1.016', 3.0, '2.51945', '2.09239', '2.68466', '2.22960', '4.13024'],
] as const;

describe('isentropic orifice, air at 20 degC (computed from the textbook law, K)', () => {
  for (const [d, kPa, g61, l61, g65, l65, g100] of TABLE) {
    it(`${d} mm at ${kPa} kPa: g/min and L/min by three coefficients (K)`, () => {
      const upstream = kPa > 0 ? ATM + kPa * 1000 : ATM;
      const downstream = kPa > 0 ? ATM : ATM + kPa * 1000;
      const flow = (coefficient: number): number =>
        orificeMassFlow(area(Number(d), coefficient), upstream, downstream, T, R_AIR, 1.4);
      expectPrinted(gramsPerMinute(flow(0.61)), g61);
      expectPrinted(litresPerMinute(flow(0.61), M_AIR), l61);
      expectPrinted(gramsPerMinute(flow(0.65)), g65);
      expectPrinted(litresPerMinute(flow(0.65), M_AIR), l65);
      expectPrinted(gramsPerMinute(flow(1)), g100);
      // The form for integrators is the same law at these pressures.
      const signed = smoothOrificeMassFlow(area(Number(d), 0.61), ATM, ATM + kPa * 1000, T, R_AIR, 1.4);
      expectPrinted(gramsPerMinute(kPa > 0 ? -signed : signed), g61);
    });
  }

  it('critical pressure ratio and choked factor of air (textbook, K)', () => {
    expectPrinted(criticalPressureRatio(1.4), '0.528282');
    expectPrinted(chokedFlowFactor(1.4), '0.684731');
  });

  for (const [d, g61, g100] of [
    [0.5, '1.7188', '2.8177'],
    [1.0, '6.8751', '11.2707'],
  ] as const) {
    it(`choked flow of ${d} mm from one atmosphere, at and below 53.528 kPa (K)`, () => {
      for (const downstream of [53528, 40000, 0]) {
        expectPrinted(gramsPerMinute(orificeMassFlow(area(d, 0.61), ATM, downstream, T, R_AIR, 1.4)), g61);
        expectPrinted(gramsPerMinute(orificeMassFlow(area(d, 1), ATM, downstream, T, R_AIR, 1.4)), g100);
      }
    });
  }

  for (const [upstream, downstream, printed] of [
    [ATM, ATM - 2000, '0.98937'],
    [ATM, ATM - 2500, '0.98669'],
    [ATM + 3000, ATM, '0.98447'],
  ] as const) {
    it(`deviation from C A sqrt(2 rho dp) is ${printed} at ${upstream - downstream} Pa (K)`, () => {
      const simple = Math.sqrt((2 * upstream * (upstream - downstream)) / (R_AIR * T));
      expectPrinted(orificeMassFlow(1, upstream, downstream, T, R_AIR, 1.4) / simple, printed);
    });
  }

  it('the drop is not unique once choked: the result says so and names the maximum flow (textbook)', () => {
    const maximum = orificeMassFlow(area(1, 0.61), ATM, 30000, T, R_AIR, 1.4);
    const atMaximum = orificePressureDropFromMassFlow(maximum, area(1, 0.61), ATM, T, R_AIR, 1.4);
    expect(atMaximum.kind).toBe('not unique');
    if (atMaximum.kind === 'not unique') expectPrinted(gramsPerMinute(atMaximum.maximumMassFlowKgPerS), '6.8751');
    if (atMaximum.kind === 'not unique') expectPrinted(ATM - atMaximum.smallestPressureDropPa, '53528');
    const above = orificePressureDropFromMassFlow(1.01 * maximum, area(1, 0.61), ATM, T, R_AIR, 1.4);
    expect(above.kind).toBe('impossible');
  });
});

describe('ISO 6358 (formula confirmed from vendor documentation of the standard, C; values K)', () => {
  it('C 1.0e-8, b 0.5, one atmosphere at 20 degC, to 60 and 40 kPa (K)', () => {
    expectPrinted(gramsPerMinute(iso6358MassFlow(1e-8, 0.5, ATM, 60000, T)), '70.808');
    expectPrinted(gramsPerMinute(iso6358MassFlow(1e-8, 0.5, ATM, 40000, T)), '72.042');
  });

  it('sonic conductance of 0.5 and 1.0 mm holes at 0.61 (K)', () => {
    expectPrinted(sonicConductanceFromArea(area(0.5, 0.61), R_AIR, 1.4), '2.3858e-10');
    expectPrinted(sonicConductanceFromArea(area(1, 0.61), R_AIR, 1.4), '9.5432e-10');
    expectPrinted(areaFromSonicConductance(9.5432e-10, R_AIR, 1.4) / area(1, 0.61), '1.0000');
  });

  it('ellipse against isentropic at -2 kPa, b 0.5283: 0.49200 against 0.49344 g/min (K)', () => {
    const conductance = sonicConductanceFromArea(area(0.5, 0.61), R_AIR, 1.4);
    expectPrinted(gramsPerMinute(iso6358MassFlow(conductance, 0.5283, ATM, ATM - 2000, T)), '0.49200', 1);
  });
});
