import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { LAYOUTS } from '../system/car.ts';
import { faultKindsOf } from '../system/faults/catalogue.ts';
import type { Fault } from '../system/faults/fault.ts';
import { diurnalSeries, overnightSoak } from './procedures/overnight-soak.ts';
import { purgeDrive } from './procedures/purge-drive.ts';
import { refuelling } from './procedures/refuelling.ts';
import type { Scenario } from './scenario.ts';
import { simulate } from './simulate.ts';
import { IDLE_MANIFOLD_PA, MILD_DAY, typicalScenario } from './typical-scenarios.ts';

const CLOSURE = 1e-9;
/** A double keeps 16 digits (2.2e-16); the roundings of some 300 steps add up like a random walk, by about 17 of them. */
const ROUNDING = 4e-15;

function expectClosed(scenario: Scenario) {
  const { ledger, failure } = simulate({ ...scenario, sampling: { ...scenario.sampling, rateHz: 0.2 } });
  expect(failure, scenario.label).toBeUndefined();
  expect(ledger.airThroughputKg).toBeGreaterThan(0);
  // Rounding of the store itself is allowed for: where both ways out are shut, next to nothing passes; and of
  // fuel the tank holds kilograms while grams move.
  const airBound = CLOSURE * ledger.airThroughputKg + ROUNDING * ledger.airStoredKg.start;
  expect(Math.abs(ledger.airErrorKg), scenario.label).toBeLessThan(airBound);
  const stored = ledger.fuel.liquidKg.start;
  const bound = CLOSURE * ledger.fuelThroughputKg + ROUNDING * stored;
  expect(Math.abs(ledger.fuelErrorKg), scenario.label).toBeLessThan(bound);
}

describe.each(LAYOUTS)('the ledger of air and fuel closes to 1e-9 of what passed, layout %s', (layout) => {
  it('sound', () => {
    expectClosed(typicalScenario(layout));
  });

  it.each(faultKindsOf(layout).map((k) => k.kind))('%s', (kind) => {
    expectClosed(typicalScenario(layout, [{ kind }]));
  });
});

const fault = fc.constantFrom(...LAYOUTS).chain((layout) =>
  fc.record({
    layout: fc.constant(layout),
    faults: fc.array(
      fc.constantFrom(...faultKindsOf(layout)).chain((kind) =>
        fc.record({
          kind: fc.constant(kind.kind),
          share: fc.double({ min: 0, max: 1, noNaN: true }),
          place: fc.constantFrom(...(kind.places ?? [undefined])),
        }),
      ),
      { minLength: 1, maxLength: 2 },
    ),
    fill: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    fuelK: fc.double({ min: 278, max: 313, noNaN: true }),
    ambientPa: fc.double({ min: 75_000, max: 103_000, noNaN: true }),
  }),
);

describe('and for any two faults of any size', () => {
  test.prop([fault], { numRuns: 60 })('at any fill, fuel temperature and altitude', ({ layout, faults, ...c }) => {
    const sized = faults.map(({ kind, share, place }): Fault => {
      const size = faultKindsOf(layout).find((k) => k.kind === kind)!.size;
      return {
        kind,
        ...(place === undefined ? {} : { place }),
        ...(size === undefined ? {} : { size: size.low + share * (size.high - size.low) }),
      };
    });
    const scenario = typicalScenario(layout, sized, (p) => {
      p.tank.fillFraction = c.fill;
    });
    const { start } = scenario.conditions;
    expectClosed({
      ...scenario,
      conditions: { ...scenario.conditions, ambientAbsPa: c.ambientPa, start: { ...start, fuelTemperatureK: c.fuelK } },
    });
  });
});

describe('and in the other procedures', () => {
  const base = typicalScenario('engine-vacuum');
  it('purge drive', () => {
    expectClosed({
      ...base,
      procedure: purgeDrive(),
      conditions: { ...MILD_DAY, manifoldAbsPa: IDLE_MANIFOLD_PA, fuelDrawM3PerS: 1e-6 },
    });
  });
  it('refuelling', () => {
    expectClosed({ ...base, procedure: refuelling(), conditions: { ...MILD_DAY, fillFlowM3PerS: 6.3e-4 } });
  });
  it('overnight soak on the diurnal profile', () => {
    expectClosed({
      ...base,
      procedure: overnightSoak(24, false),
      conditions: { ...MILD_DAY, ambientTemperatureK: diurnalSeries(24, 0, 295, 309) },
    });
  });
});
