import { assemble } from '../system/assemble.ts';
import type { LayoutId } from '../system/car.ts';
import { defaultParameters } from '../system/defaults.ts';
import type { Fault } from '../system/faults/fault.ts';
import type { SystemParameters } from '../system/parameters.ts';
import type { Procedure } from './procedure.ts';
import { engineOff } from './procedures/engine-off.ts';
import { pumpRun } from './procedures/pump-run.ts';
import { boostDrive } from './procedures/purge-drive.ts';
import { sealedHold } from './procedures/sealed-hold.ts';
import { vacuumDraw } from './procedures/vacuum-draw.ts';
import { CLEAN_SAMPLING, type Conditions, type Scenario } from './scenario.ts';

/** Conditions of a mild day at sea level. Source: judgement. */
export const MILD_DAY = {
  ambientAbsPa: 101_325,
  ambientTemperatureK: 293.15,
  start: { fuelTemperatureK: 297 },
} as const satisfies Conditions;

/** Manifold pressure of a warm engine at idle [Pa]. Source: common practice, no source. */
export const IDLE_MANIFOLD_PA = 35_000;

/** The self-test that a layout is known for, on a mild day, with the surroundings it needs. */
const TYPICAL: Readonly<Record<LayoutId, { procedure: () => Procedure; conditions: Conditions }>> = {
  'engine-vacuum': {
    procedure: () => vacuumDraw(),
    conditions: { ...MILD_DAY, manifoldAbsPa: IDLE_MANIFOLD_PA },
  },
  'saddle-tank': {
    procedure: () => vacuumDraw(),
    conditions: { ...MILD_DAY, manifoldAbsPa: IDLE_MANIFOLD_PA },
  },
  'engine-off': {
    procedure: () => engineOff(),
    // Warm from the drive: the fuel cools towards ambient, while for some minutes the exhaust still heats it.
    conditions: {
      ...MILD_DAY,
      fuelHeatW: { timeS: [0, 600, 900], value: [250, 250, 0] },
      start: { fuelTemperatureK: 303 },
    },
  },
  'pump-reference': { procedure: () => pumpRun(), conditions: MILD_DAY },
  'sealed-tank': {
    procedure: () => sealedHold(),
    conditions: {
      ...MILD_DAY,
      manifoldAbsPa: IDLE_MANIFOLD_PA,
      start: { fuelTemperatureK: 297, tankGaugePa: 8_000 },
    },
  },
  'two-path-purge': {
    procedure: () => boostDrive(30, 30, 30, 0.5),
    conditions: {
      ...MILD_DAY,
      manifoldAbsPa: { timeS: [0, 30, 33, 90, 92], value: [45_000, 45_000, 160_000, 160_000, 45_000] },
    },
  },
};

/**
 * The typical self-test of a layout with faults, ready to simulate.
 *
 * Valid: faults that the layout can have.
 * Source: procedures of this room; conditions are judgement.
 * @param layout the layout
 * @param faults what is wrong
 * @param change what else differs from the defaults
 * @returns a scenario
 */
export function typicalScenario(
  layout: LayoutId,
  faults: readonly Fault[] = [],
  change: (p: SystemParameters) => void = () => {},
): Scenario {
  const p = defaultParameters();
  change(p);
  const { procedure, conditions } = TYPICAL[layout];
  const words = faults.length === 0 ? 'sound' : faults.map((f) => f.kind).join(' and ');
  return {
    label: `${layout}, ${words}`,
    network: assemble(p, layout, faults),
    procedure: procedure(),
    conditions,
    sampling: CLEAN_SAMPLING,
  };
}
