/** Draws a car, a day, a procedure and a sampling, and records them with the whole network. */
import type { Recording } from '../../src/recording/recording.ts';
import type { Procedure } from '../../src/simulation/procedure.ts';
import { engineOff } from '../../src/simulation/procedures/engine-off.ts';
import { pumpRun } from '../../src/simulation/procedures/pump-run.ts';
import { purgeDrive } from '../../src/simulation/procedures/purge-drive.ts';
import { refuelling } from '../../src/simulation/procedures/refuelling.ts';
import { sealedHold } from '../../src/simulation/procedures/sealed-hold.ts';
import { vacuumDraw } from '../../src/simulation/procedures/vacuum-draw.ts';
import { randomStream } from '../../src/simulation/random.ts';
import type { Conditions } from '../../src/simulation/scenario.ts';
import { simulate } from '../../src/simulation/simulate.ts';
import { assembleCar } from '../../src/system/assemble.ts';
import type { Car, LayoutId } from '../../src/system/car.ts';
import { FAULT_KINDS } from '../../src/system/faults/catalogue.ts';
import type { Fault, FaultKind } from '../../src/system/faults/fault.ts';
import { HIDDEN, RIGHT } from './expected.ts';

export interface Made {
  readonly car: Car;
  readonly recording: Recording;
}

/** One kind of fault (absent: sound) on one layout in one procedure. */
export interface Kind {
  readonly layout: LayoutId;
  readonly procedure: Procedure['kind'];
  readonly fault?: FaultKind;
}

type Draw = (low: number, high: number) => number;

const TESTS: readonly (readonly [LayoutId, (u: Draw) => Procedure])[] = [
  ['engine-vacuum', (u) => vacuumDraw({ targetGaugePa: -u(1500, 2600), holdS: u(50, 120) })],
  ['saddle-tank', () => vacuumDraw()],
  ['two-path-purge', () => vacuumDraw()],
  ['engine-off', () => engineOff()],
  ['engine-vacuum', (u) => purgeDrive({ duty: u(0.3, 0.8) })],
  ['engine-vacuum', (u) => refuelling({ volumeM3: u(0.015, 0.03) })],
  ['pump-reference', () => pumpRun()],
  ['sealed-tank', () => sealedHold()],
];

/** Sizes that a shop meets, in the fault's own unit; other faults have their typical size. Judgement. */
const SIZES: Readonly<Record<string, readonly [number, number]>> = {
  leak: [0.4e-3, 3e-3],
  'canister-cracked': [0.5e-3, 3e-3],
  'purge-seeping': [0.3e-3, 1.2e-3],
  'purge-stuck-open': [0.4, 1],
  'vent-not-sealing': [0.6e-3, 5e-3],
  'vent-choked': [0.7e-3, 2e-3],
  'vapour-line-blocked': [0.1e-3, 0.5e-3],
  'sensor-offset': [200, 900],
  'sensor-gain': [0.5, 0.75],
  'sensor-noisy': [60, 250],
  'orifice-dirty': [0.25e-3, 0.36e-3],
  'pump-weak': [0.3, 0.6],
  'changeover-leaks': [0.4e-3, 1e-3],
  'isolation-leaks': [0.5e-3, 1.5e-3],
};

/** Every fault that a layout can have and its procedure can show, and the sound car. */
export const KINDS: readonly Kind[] = TESTS.flatMap(([layout, make]) => {
  const procedure = make((low) => low).kind;
  const faults = FAULT_KINDS.filter(
    (f) =>
      f.kind in RIGHT &&
      (f.layouts === undefined || f.layouts.includes(layout)) &&
      !HIDDEN[procedure]!.includes(f.kind),
  );
  return [{ layout, procedure }, ...faults.map((fault) => ({ layout, procedure, fault }))];
});

const SEED = 20261128;
const PUMP_FLOW_M3_PER_S = 37.9e-3 / 60;

/** @param index number of the case: kinds in turn, round by round */
export function makeCase(index: number): Made {
  const { layout, procedure: wanted, fault: kind } = KINDS[index % KINDS.length]!;
  const random = randomStream(SEED, index);
  const u: Draw = (low, high) => low + (high - low) * random.uniform();
  const procedure = TESTS.find(([l, make]) => l === layout && make((low) => low).kind === wanted)![1](u);
  const refuels = procedure.kind === 'refuelling';
  const fill = refuels ? u(0.15, 0.4) : u(0.2, 0.8);
  const ambientTemperatureK = u(275, 308);
  const ambientAbsPa = random.uniform() < 0.25 ? u(80e3, 95e3) : u(98e3, 103e3);
  const car: Car = {
    schema: 'vaporwright-car-1',
    label: `made car ${index}`,
    layout,
    tankVolumeM3: u(0.04, 0.07),
    fillerNeckVolumeM3: 0.0015,
    canisterFreeVolumeM3: 0.002,
  };
  const conditions: Conditions = {
    ambientAbsPa,
    ambientTemperatureK,
    start: {
      fuelTemperatureK: ambientTemperatureK + u(0, 12),
      lineShare: 0.3,
      ...(procedure.kind === 'sealed-hold' && { tankGaugePa: u(4000, 12000) }),
    },
    manifoldAbsPa: u(30e3, 45e3),
    ...(refuels && { fillFlowM3PerS: PUMP_FLOW_M3_PER_S }),
    // a drive warms the fuel for some minutes more
    ...(procedure.kind === 'engine-off' && { fuelHeatW: { timeS: [0, 600, 900], value: [250, 250, 0] } }),
    ...(procedure.kind === 'purge-drive' && {
      engine: { displacementM3: 0.002, speedRpm: 1800, trimLagS: 2, trimLimit: 0.25, trimNoise: 0.01 },
    }),
  };
  const { recording, failure } = simulate({
    label: car.label,
    network: assembleCar(car, kind ? [faultOf(kind, u)] : [], (p) => {
      p.tank.fillFraction = fill;
    }),
    procedure,
    conditions,
    sampling: {
      rateHz: random.uniform() < 0.3 ? 2 : 10,
      jitter: 0.1,
      pressureStepPa: random.uniform() < 0.3 ? 12 : 2,
      noisePa: 4,
      seed: index,
    },
  });
  if (failure) throw new Error(`the simulation failed: ${failure.reason}`);
  return { car, recording };
}

function faultOf({ kind, size, places }: FaultKind, u: Draw): Fault {
  const range = SIZES[kind];
  const drawn = range ? range[0] * (range[1] / range[0]) ** u(0, 1) : size?.typical;
  return {
    kind,
    ...(drawn !== undefined && { size: drawn }),
    ...(places && { place: places[Math.floor(u(0, places.length)) % places.length]! }),
  };
}
