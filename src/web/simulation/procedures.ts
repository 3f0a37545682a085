/** The procedures that can be played on a layout, with surroundings that suit each. */

import type { Procedure } from '../../simulation/procedure.ts';
import { engineOff } from '../../simulation/procedures/engine-off.ts';
import { diurnalSeries, overnightSoak } from '../../simulation/procedures/overnight-soak.ts';
import { pumpRun } from '../../simulation/procedures/pump-run.ts';
import { boostDrive, purgeDrive } from '../../simulation/procedures/purge-drive.ts';
import { refuelling } from '../../simulation/procedures/refuelling.ts';
import { sealedHold } from '../../simulation/procedures/sealed-hold.ts';
import { vacuumDraw } from '../../simulation/procedures/vacuum-draw.ts';
import type { Conditions } from '../../simulation/scenario.ts';
import { IDLE_MANIFOLD_PA, MILD_DAY } from '../../simulation/typical-scenarios.ts';
import type { LayoutId } from '../../system/car.ts';

export const PLAYABLE = [
  'vacuum-draw',
  'engine-off',
  'pump-run',
  'sealed-hold',
  'purge-drive',
  'refuelling',
  'soak',
] as const;
export type Playable = (typeof PLAYABLE)[number];

/** Procedures of a layout, its own self-test first. */
export function playableOn(layout: LayoutId): readonly Playable[] {
  switch (layout) {
    case 'pump-reference':
      return ['pump-run', 'purge-drive', 'refuelling', 'soak'];
    case 'sealed-tank':
      return ['sealed-hold', 'purge-drive', 'refuelling', 'soak'];
    case 'engine-off':
      return ['engine-off', 'vacuum-draw', 'purge-drive', 'refuelling', 'soak'];
    case 'two-path-purge':
      return ['purge-drive', 'vacuum-draw', 'engine-off', 'refuelling', 'soak'];
    default:
      return ['vacuum-draw', 'engine-off', 'purge-drive', 'refuelling', 'soak'];
  }
}

/** 35 L/min, common practice, no source. */
export const FILL_FLOW_M3_PER_S = 35e-3 / 60;
/** More than fits: the nozzle's own shut-off is what should be seen. Judgement. */
const FILL_WANTED_M3 = 0.06;
const FILL_START_FRACTION = 0.3;
const SOAK_HOURS = 24;
/** A summer's day and night, judgement. */
const SOAK_LOWEST_K = 288;
const SOAK_HIGHEST_K = 303;
/** What a warm sealed tank stands at, judgement. */
const SEALED_START_GAUGE_PA = 8_000;

/** Warm from the drive: for some minutes the exhaust still heats the fuel, W. Judgement. */
export const AFTER_DRIVE_HEAT_W = { timeS: [0, 600, 900], value: [250, 250, 0] } as const;

export interface Plan {
  readonly procedure: Procedure;
  readonly conditions: Conditions;
  /** How full the tank is at the start; absent = the car's own. */
  readonly fillFraction?: number;
}

export interface PlanChoice {
  readonly layout: LayoutId;
  readonly procedure: Playable;
  readonly hasRecovery: boolean;
}

const sealedStart = (layout: LayoutId): number | undefined =>
  layout === 'sealed-tank' ? SEALED_START_GAUGE_PA : undefined;

/** Procedure and surroundings of a choice. Conditions are judgement: a mild day at sea level. */
export function planOf({ layout, procedure, hasRecovery }: PlanChoice): Plan {
  const tankGaugePa = sealedStart(layout);
  const start = { ...MILD_DAY.start, ...(tankGaugePa === undefined ? {} : { tankGaugePa }) };
  const running: Conditions = { ...MILD_DAY, start, manifoldAbsPa: IDLE_MANIFOLD_PA };
  switch (procedure) {
    case 'vacuum-draw':
      return { procedure: vacuumDraw(), conditions: running };
    case 'engine-off':
      return {
        procedure: engineOff(),
        conditions: {
          ...MILD_DAY,
          fuelHeatW: AFTER_DRIVE_HEAT_W,
          start: { fuelTemperatureK: 303 },
        },
      };
    case 'pump-run':
      return { procedure: pumpRun(), conditions: MILD_DAY };
    case 'sealed-hold':
      return { procedure: sealedHold(), conditions: running };
    case 'purge-drive':
      if (layout !== 'two-path-purge') return { procedure: purgeDrive(), conditions: running };
      return {
        procedure: boostDrive(30, 30, 30, 0.5),
        conditions: {
          ...running,
          manifoldAbsPa: { timeS: [0, 30, 33, 90, 92], value: [45_000, 45_000, 160_000, 160_000, 45_000] },
        },
      };
    case 'refuelling':
      return {
        procedure: refuelling({ volumeM3: FILL_WANTED_M3, sealedFiller: hasRecovery }),
        conditions: { ...MILD_DAY, start, fillFlowM3PerS: FILL_FLOW_M3_PER_S },
        fillFraction: FILL_START_FRACTION,
      };
    case 'soak':
      return {
        procedure: overnightSoak(SOAK_HOURS, false),
        conditions: {
          ...MILD_DAY,
          start: { fuelTemperatureK: SOAK_LOWEST_K },
          ambientTemperatureK: diurnalSeries(SOAK_HOURS, 0, SOAK_LOWEST_K, SOAK_HIGHEST_K),
        },
      };
  }
}
