/** Scenarios that an independent integrator solves as well. Written to JSON by tools/write-integrator-scenarios.ts. */

import { pumpRun } from '../../src/simulation/procedures/pump-run.ts';
import { boostDrive } from '../../src/simulation/procedures/purge-drive.ts';
import { refuelling } from '../../src/simulation/procedures/refuelling.ts';
import { sealedHold } from '../../src/simulation/procedures/sealed-hold.ts';
import { vacuumDraw } from '../../src/simulation/procedures/vacuum-draw.ts';
import { CLEAN_SAMPLING, type Scenario } from '../../src/simulation/scenario.ts';
import { assemble } from '../../src/system/assemble.ts';
import type { LayoutId } from '../../src/system/car.ts';
import { defaultParameters } from '../../src/system/defaults.ts';
import type { Fault } from '../../src/system/faults/fault.ts';
import type { SystemParameters } from '../../src/system/parameters.ts';

export interface GoldenScenario extends Scenario {
  readonly golden: { readonly timesS: readonly number[]; readonly spaces: readonly string[] };
}

function network(layout: LayoutId, faults: readonly Fault[], change: (p: SystemParameters) => void = () => {}) {
  const p = defaultParameters();
  change(p);
  return assemble(p, layout, faults);
}

const every = (stepS: number, endS: number) =>
  Array.from({ length: Math.floor(endS / stepS) }, (_, i) => Number(((i + 0.5) * stepS).toFixed(6)));

const common = { ambientAbsPa: 99_500, ambientTemperatureK: 294.15 };

export const GOLDEN_SCENARIOS: readonly GoldenScenario[] = [
  {
    label: 'vacuum-draw',
    network: network('engine-vacuum', [
      { kind: 'leak', place: 'cap', size: 0.5e-3 },
      { kind: 'vapour-line-blocked', size: 2e-3 },
    ]),
    procedure: vacuumDraw(),
    conditions: {
      ...common,
      manifoldAbsPa: 34_000,
      fuelDrawM3PerS: 3e-7,
      start: { fuelTemperatureK: 300, vapourDeficitPa: -400, lineShare: 0.5 },
    },
    sampling: CLEAN_SAMPLING,
    golden: { timesS: every(1, 90), spaces: ['tank', 'head', 'bed1', 'bed3', 'ventSide'] },
  },
  {
    label: 'pump-run',
    network: network('pump-reference', [{ kind: 'leak', place: 'canister', size: 0.3e-3 }], (p) => {
      p.tank.fillFraction = 0.8;
    }),
    procedure: pumpRun({ tankS: 120, referenceS: 20, referenceAgainS: 20 }),
    conditions: { ...common, start: { fuelTemperatureK: 294.15 } },
    sampling: CLEAN_SAMPLING,
    golden: { timesS: every(2, 190), spaces: ['pumpModule', 'tank', 'bed2'] },
  },
  {
    label: 'saddle-boosted',
    // A saddle tank drawn down while its jet pump lifts fuel and the passive lobe spills over the weir.
    network: network('saddle-tank', [{ kind: 'leak', place: 'purgeLine', size: 0.7e-3 }], (p) => {
      p.tank.fillFraction = 0.4;
      p.saddle.passiveFillFraction = 0.58;
      p.saddle.crossoverDiameterM = 1.5e-3;
    }),
    procedure: {
      ...vacuumDraw({ drawDuty: 0.4, holdS: 40 }),
      steps: vacuumDraw({ drawDuty: 0.4, holdS: 40 }).steps.map((s) => ({
        ...s,
        commands: { ...s.commands, enginePumpOn: 1 },
      })),
    },
    conditions: { ...common, manifoldAbsPa: 40_000, fuelHeatW: 60, start: { fuelTemperatureK: 306 } },
    sampling: CLEAN_SAMPLING,
    golden: { timesS: every(1, 70), spaces: ['tank', 'passiveLobe', 'head'] },
  },
  {
    label: 'two-path-boost',
    network: network('two-path-purge', [{ kind: 'manifold-check-leaks', size: 1e-3 }]),
    procedure: boostDrive(15, 20, 15, 0.6),
    conditions: {
      ...common,
      manifoldAbsPa: { timeS: [0, 15, 20, 60], value: [45_000, 45_000, 150_000, 160_000] },
      start: { fuelTemperatureK: 297 },
    },
    sampling: CLEAN_SAMPLING,
    golden: { timesS: every(1, 60), spaces: ['tank', 'tee', 'head'] },
  },
  {
    label: 'sealed-hold',
    network: network('sealed-tank', [{ kind: 'isolation-leaks', size: 0.3e-3 }]),
    procedure: sealedHold({ holdS: 30, canisterTestS: 20, commonS: 20 }),
    conditions: {
      ambientAbsPa: 101_325,
      ambientTemperatureK: { timeS: [0, 150], value: [293, 294] },
      manifoldAbsPa: 35_000,
      start: { fuelTemperatureK: 303, tankGaugePa: 12_000 },
    },
    sampling: CLEAN_SAMPLING,
    golden: { timesS: every(1, 115), spaces: ['tank', 'head', 'bed1'] },
  },
  {
    label: 'refuelling',
    network: network('engine-vacuum', [{ kind: 'vent-choked', size: 6e-3 }], (p) => {
      p.tank.fillFraction = 0.7;
    }),
    procedure: refuelling({ volumeM3: 1, tries: 2, longestFillS: 60 }),
    conditions: {
      ...common,
      fillFlowM3PerS: 5e-4,
      fillTemperatureK: 289,
      start: { fuelTemperatureK: 294 },
    },
    sampling: CLEAN_SAMPLING,
    golden: { timesS: every(0.5, 45), spaces: ['tank', 'head', 'bed1', 'ventSide'] },
  },
];
