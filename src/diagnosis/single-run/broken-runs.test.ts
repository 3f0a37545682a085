/** Pump runs and sealed holds of the full simulation with faults that other faults, or no fault, were taken for. */
import { describe, expect, it } from 'vitest';
import { pumpRun } from '../../simulation/procedures/pump-run.ts';
import { sealedHold } from '../../simulation/procedures/sealed-hold.ts';
import { simulate } from '../../simulation/simulate.ts';
import { assembleCar } from '../../system/assemble.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { diagnose } from '../diagnose.ts';
import type { CauseId } from '../finding.ts';
import { carOf } from '../growing/simulated-run.ts';

interface Day {
  readonly fill: number;
  readonly ambientK: number;
  readonly fuelK: number;
  readonly ambientAbsPa: number;
  readonly rateHz: number;
  readonly stepPa: number;
}
const MILD: Day = { fill: 0.6, ambientK: 290, fuelK: 294, ambientAbsPa: 100_300, rateHz: 10, stepPa: 2 };
const COARSE: Day = { fill: 0.45, ambientK: 284, fuelK: 293, ambientAbsPa: 101_800, rateHz: 2, stepPa: 12 };
const HIGH_AND_HOT: Day = { fill: 0.7, ambientK: 304, fuelK: 310, ambientAbsPa: 86_000, rateHz: 10, stepPa: 2 };

type Layout = 'pump-reference' | 'sealed-tank';

function find(layout: Layout, faults: readonly Fault[], day: Day, seed: number) {
  const car = carOf(layout);
  const simulation = simulate({
    label: 'run',
    network: assembleCar(car, faults, (p) => {
      p.tank.fillFraction = day.fill;
    }),
    procedure: layout === 'pump-reference' ? pumpRun() : sealedHold(),
    conditions: {
      ambientAbsPa: day.ambientAbsPa,
      ambientTemperatureK: day.ambientK,
      manifoldAbsPa: 38_000,
      start: {
        fuelTemperatureK: day.fuelK,
        lineShare: 0.3,
        ...(layout === 'sealed-tank' && { tankGaugePa: 7_500 }),
      },
    },
    sampling: { rateHz: day.rateHz, jitter: 0.1, pressureStepPa: day.stepPa, noisePa: 4, seed },
  });
  expect(simulation.failure).toBeUndefined();
  return diagnose({ car, recordings: [simulation.recording] });
}

interface Case {
  readonly name: string;
  readonly layout: Layout;
  readonly faults: readonly Fault[];
  /** Causes that are right, or that such a run cannot part from it. */
  readonly right: readonly CauseId[];
  readonly day?: Day;
}

const SEALED: Layout = 'sealed-tank';
const PUMP: Layout = 'pump-reference';
const CASES: readonly Case[] = [
  // a zero error was found where the sensor's waking fell into one long first bin
  { name: 'a sound sealed tank', layout: SEALED, faults: [], right: ['none'] },
  { name: 'a sound sealed tank on a hot mountain', layout: SEALED, faults: [], right: ['none'], day: HIGH_AND_HOT },
  { name: 'aged carbon', layout: SEALED, faults: [{ kind: 'canister-aged', size: 0.4 }], right: ['none'] },
  {
    name: 'a vent valve whose circuit is open',
    layout: SEALED,
    faults: [{ kind: 'vent-circuit-open' }],
    right: ['vent_leak', 'leak'],
  },
  {
    name: 'a canister that is cracked',
    layout: SEALED,
    faults: [{ kind: 'canister-cracked', size: 1.2e-3 }],
    right: ['leak', 'vent_leak'],
  },
  // these drive the canister's sensor to the end of its range
  {
    name: 'a vent valve stuck shut, read coarsely',
    layout: SEALED,
    faults: [{ kind: 'vent-stuck-shut', size: 1e-4 }],
    right: ['vent_stuck_closed'],
    day: COARSE,
  },
  {
    name: 'a choked vent path',
    layout: SEALED,
    faults: [{ kind: 'vent-choked', size: 1.3e-3 }],
    right: ['vent_restricted'],
  },
  {
    name: 'a purge valve stuck open',
    layout: SEALED,
    faults: [{ kind: 'purge-stuck-open', size: 0.7 }],
    right: ['purge_stuck_open', 'purge_leak'],
  },
  {
    name: 'an isolation valve stuck open',
    layout: SEALED,
    faults: [{ kind: 'isolation-stuck-open' }],
    right: ['isolation_leak'],
  },
  {
    name: 'a pinched vapour line of a sealed tank',
    layout: SEALED,
    faults: [{ kind: 'vapour-line-blocked', size: 0.3e-3 }],
    right: ['path_blocked', 'isolation_stuck_shut'],
  },
  {
    name: 'a flooded canister of a sealed tank',
    layout: SEALED,
    faults: [{ kind: 'canister-flooded', size: 0.7 }],
    right: ['canister_saturated', 'vent_restricted', 'none'],
  },
  {
    name: 'sensors of a sealed tank that are stuck',
    layout: SEALED,
    faults: [{ kind: 'sensor-stuck', size: 0 }],
    right: ['sensor_stuck'],
  },
  {
    name: 'noisy sensors of a sealed tank',
    layout: SEALED,
    faults: [{ kind: 'sensor-noisy', size: 90 }],
    right: ['sensor_noisy'],
  },
  {
    name: 'slow sensors of a sealed tank',
    layout: SEALED,
    faults: [{ kind: 'sensor-slow', size: 10 }],
    right: ['none'],
  },
  {
    name: 'a pump run with the vent stuck shut',
    layout: PUMP,
    faults: [{ kind: 'vent-stuck-shut', size: 1e-4 }],
    right: ['vent_stuck_closed'],
  },
  {
    name: 'a pump run with a pinched vapour line',
    layout: PUMP,
    faults: [{ kind: 'vapour-line-blocked', size: 0.25e-3 }],
    right: ['path_blocked'],
    day: COARSE,
  },
  {
    name: 'a pump run with a saturated canister',
    layout: PUMP,
    faults: [{ kind: 'canister-saturated', size: 0.95 }],
    right: ['canister_saturated', 'none'],
  },
  {
    name: 'a pump run with a flooded canister',
    layout: PUMP,
    faults: [{ kind: 'canister-flooded', size: 0.7 }],
    right: ['canister_saturated', 'vent_restricted', 'none'],
  },
  {
    name: 'a pump run with stuck sensors',
    layout: PUMP,
    faults: [{ kind: 'sensor-stuck', size: 0 }],
    right: ['sensor_stuck', 'pump_dead'],
  },
  {
    name: 'a pump run with noisy sensors',
    layout: PUMP,
    faults: [{ kind: 'sensor-noisy', size: 110 }],
    right: ['sensor_noisy'],
  },
  { name: 'a pump run with slow sensors', layout: PUMP, faults: [{ kind: 'sensor-slow', size: 10 }], right: ['none'] },
  {
    name: 'a pump run whose sensors show too little',
    layout: PUMP,
    faults: [{ kind: 'sensor-gain', size: 0.4 }],
    right: ['sensor_gain', 'pump_weak'],
  },
];

/** No wrong cause is more probable than this, and the right ones together more than that. */
const MOST_WRONG = 0.5;
const LEAST_RIGHT = 0.4;

describe('a run with a fault that others were taken for', () => {
  it.each(CASES.map((c, i) => ({ ...c, i })))('$name', ({ layout, faults, right, day, i }) => {
    const { causes } = find(layout, faults, day ?? MILD, 100 + i);
    const wrong = causes.filter((c) => !right.includes(c.id));
    expect(right).toContain(causes[0]!.id);
    expect(Math.max(...wrong.map((c) => c.probability))).toBeLessThan(MOST_WRONG);
    expect(causes.reduce((s, c) => s + (right.includes(c.id) ? c.probability : 0), 0)).toBeGreaterThan(LEAST_RIGHT);
  });
});
