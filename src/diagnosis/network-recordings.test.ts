/**
 * Findings on recordings that the whole network makes, which has more in it than the model the finding fits: cars of which little is
 * noted, with faults that once were called by another name with near certainty.
 */
import { describe, expect, it } from 'vitest';
import type { Procedure } from '../simulation/procedure.ts';
import { engineOff } from '../simulation/procedures/engine-off.ts';
import { purgeDrive } from '../simulation/procedures/purge-drive.ts';
import { vacuumDraw } from '../simulation/procedures/vacuum-draw.ts';
import { CLEAN_SAMPLING, type Conditions } from '../simulation/scenario.ts';
import { simulate } from '../simulation/simulate.ts';
import { assembleCar } from '../system/assemble.ts';
import type { Car, LayoutId } from '../system/car.ts';
import type { Fault } from '../system/faults/fault.ts';
import { diagnose } from './diagnose.ts';
import type { CauseId, Finding } from './finding.ts';

const NOISE_PA = 4;
const IDLE_MANIFOLD_PA = 38e3;
const DAY: Conditions = {
  ambientAbsPa: 100.5e3,
  ambientTemperatureK: 293,
  start: { fuelTemperatureK: 298, lineShare: 0.3 },
};

interface Made {
  readonly layout: LayoutId;
  readonly procedure: Procedure;
  readonly faults: readonly Fault[];
  readonly conditions?: Partial<Conditions>;
  readonly stepPa?: number;
  readonly seed?: number;
}

/** The finding on a car of which no sensor range is noted. */
function findingOn({ layout, procedure, faults, conditions, stepPa = 2, seed = 1 }: Made): Finding {
  const car: Car = {
    schema: 'vaporwright-car-1',
    label: 'made up',
    layout,
    tankVolumeM3: 0.055,
    fillerNeckVolumeM3: 0.0015,
    canisterFreeVolumeM3: 0.002,
  };
  const { recording, failure } = simulate({
    label: 'made up',
    network: assembleCar(car, faults, (p) => {
      p.tank.fillFraction = 0.5;
    }),
    procedure,
    conditions: { ...DAY, manifoldAbsPa: IDLE_MANIFOLD_PA, ...conditions },
    sampling: { ...CLEAN_SAMPLING, jitter: 0.1, pressureStepPa: stepPa, noisePa: NOISE_PA, seed },
  });
  expect(failure).toBeUndefined();
  return diagnose({ car, recordings: [recording] });
}
const probability = (f: Finding, ...ids: readonly CauseId[]) =>
  f.causes.filter((c) => ids.includes(c.id)).reduce((sum, c) => sum + c.probability, 0);

describe('a purge valve that stays open draws the sensor to its rail, wherever that is', () => {
  for (const [layout, size] of [
    ['engine-vacuum', 0.9],
    ['saddle-tank', 0.6],
    ['two-path-purge', 0.8],
  ] as const) {
    it(layout, () => {
      const f = findingOn({ layout, procedure: vacuumDraw(), faults: [{ kind: 'purge-stuck-open', size }] });
      expect(f.causes[0]!.id).toBe('purge_stuck_open');
      expect(probability(f, 'sensor_bias', 'vent_restricted')).toBeLessThan(0.1);
    });
  }
});

describe('engine off, a pressure that stands still under its own noise is not a sensor that stands still', () => {
  for (const faults of [
    [{ kind: 'cap-missing' }],
    [{ kind: 'hose-off', place: 'fillerHose' }],
    [{ kind: 'vent-circuit-open' }],
  ] as const) {
    it(faults[0].kind, () => {
      const f = findingOn({ layout: 'engine-off', procedure: engineOff(), faults });
      expect(probability(f, 'leak', 'gross_leak', 'vent_leak')).toBeGreaterThan(0.6);
      expect(probability(f, 'sensor_stuck')).toBeLessThan(0.25);
    });
  }
});

describe('purging against a flooded canister', () => {
  it('is a choked path, whose drop grows with the flow and not with its square, and no purge valve that stays open', () => {
    const f = findingOn({
      layout: 'engine-vacuum',
      procedure: purgeDrive(),
      faults: [{ kind: 'canister-flooded', size: 0.7 }],
    });
    expect(f.causes[0]!.id).toBe('vent_restricted');
    expect(f.causes[0]!.places[0]!.group).toContain('canister');
    expect(probability(f, 'purge_stuck_open')).toBeLessThan(0.1);
  });
});

describe('a sensor that follows ten seconds late', () => {
  for (const [name, procedure] of [
    ['draw', vacuumDraw()],
    ['drive', purgeDrive()],
  ] as const) {
    it(`is no fault of what it measures, in a ${name}, and is named`, () => {
      const f = findingOn({ layout: 'engine-vacuum', procedure, faults: [{ kind: 'sensor-slow', size: 10 }] });
      expect(f.causes[0]!.id).toBe('none');
      expect(f.causes[0]!.probability).toBeGreaterThan(0.7);
      expect(f.reasons.some(({ text }) => /follows about (9|10|11) s late/.test(text))).toBe(true);
    });
  }
});

describe('a cap that is missing on a drive', () => {
  it('gives probabilities, whatever size of hole is tried', () => {
    for (const seed of [1, 2, 3]) {
      const f = findingOn({
        layout: 'engine-vacuum',
        procedure: purgeDrive({ duty: 0.7 }),
        faults: [{ kind: 'cap-missing' }],
        conditions: { ambientTemperatureK: 306, start: { fuelTemperatureK: 312, lineShare: 0.3 } },
        seed,
      });
      expect(f.causes.reduce((sum, c) => sum + c.probability, 0)).toBeCloseTo(1, 6);
    }
  });
});
