/** Closed forms and exact decay times: a network of rigid isothermal volumes is the textbook case. */
import { describe, expect, it } from 'vitest';
import type { Condition, Procedure } from '../../src/simulation/procedure.ts';
import { CLEAN_SAMPLING, type Conditions } from '../../src/simulation/scenario.ts';
import { simulate } from '../../src/simulation/simulate.ts';
import type { Network, Passage, Space } from '../../src/system/network.ts';

const T = 293.15;
const P0 = 101325;

/** The tank that every network must have, standing aside: no passage touches it, its fuel gives nothing off. */
const IDLE_TANK: Space = {
  kind: 'tank',
  id: 'idle',
  part: 'tankShell',
  shellVolumeM3: 0.05,
  neckVolumeM3: 0,
  fillFraction: 0.5,
  fuel: {
    reidVapourPressurePa: 62000,
    ethanolVolumeFraction: 0,
    densityKgPerM3: 700,
    heatCapacityJPerKgK: 2200,
    vapourMolarMassKgPerMol: 0.066,
    vapourPressureFactor: 1,
  },
  surfaceAreaM2: 0,
  massTransferMPerS: 0,
  massTransferFillingMPerS: 0,
  gasToWallWPerK: 0,
  gasToFuelWPerK: 0,
  fuelToAmbientWPerK: 0,
  shellHeatCapacityJPerK: 1000,
};

const gas = (id: string, volumeM3: number): Space => ({ kind: 'gas', id, part: 'canister', volumeM3 });

function network(spaces: Space[], passages: Passage[]): Network {
  return {
    layout: 'engine-vacuum',
    spaces: [IDLE_TANK, ...spaces],
    passages,
    weirs: [],
    transferPumps: [],
    fillSpace: 'idle',
    drawSpace: 'idle',
    airEntrainment: 0,
    fillLimit: { shutFraction: 0.95, openFraction: 0.94 },
    nozzleShutOffPa: 3000,
    ejectorSuctionPerBoost: 0,
    sensors: [],
    readings: { levelGain: 1, levelOffset: 0, fuelTemperatureOffsetK: 0, ambientTemperatureOffsetK: 0 },
  };
}

const open = (id: string, from: string, to: string, areaM2: number): Passage => ({
  kind: 'orifice',
  id,
  part: 'canister',
  from,
  to,
  openAreaM2: areaM2,
  shutAreaM2: areaM2,
});

/** A step that first charges or draws a volume to a pressure, then lets the hole act until half is left. */
function decayTime(volumeM3: number, diameterM: number, startPa: number): number {
  const area = 0.61 * 0.25 * Math.PI * diameterM ** 2;
  // The start state has all spaces at ambient; a wide valve to a "manifold" at the start pressure sets the volume.
  const charge: Passage = {
    kind: 'orifice',
    id: 'charge',
    part: 'purgeValve',
    from: 'v',
    to: 'manifold',
    openAreaM2: 1e-4,
    shutAreaM2: 0,
    actuation: { command: 'purgeDuty', opens: true },
  };
  const half: Condition = {
    what: { kind: 'gaugePa', space: 'v' },
    is: startPa < 0 ? 'above' : 'below',
    value: startPa / 2,
    outcome: 'half',
  };
  const begun: Condition = {
    what: { kind: 'gaugePa', space: 'v' },
    is: startPa < 0 ? 'above' : 'below',
    value: startPa * (1 + 1e-12),
    outcome: 'begun',
  };
  const procedure: Procedure = {
    kind: 'sealed-hold',
    words: 'decay',
    steps: [
      { phase: 'draw', engineRunning: true, longestS: 30, commands: { purgeDuty: 1 } },
      // Charged a little beyond, the hole itself brings it to the exact start.
      { phase: 'settle', engineRunning: true, longestS: 300, commands: { purgeDuty: 0 }, endsWhen: [begun] },
      { phase: 'hold', engineRunning: true, longestS: 1000, endsWhen: [half] },
    ],
  };
  const conditions: Conditions = {
    ambientAbsPa: P0,
    ambientTemperatureK: T,
    manifoldAbsPa: P0 + startPa * 1.02,
    start: { fuelTemperatureK: T },
  };
  const run = simulate({
    label: 'decay',
    network: network([gas('v', volumeM3)], [charge, open('hole', 'v', 'ambient', area)]),
    procedure,
    conditions,
    sampling: { ...CLEAN_SAMPLING, rateHz: 1 },
    relativeTolerance: 1e-9,
  });
  expect(run.failure).toBeUndefined();
  expect(run.steps[2]?.outcome).toBe('half');
  return run.steps[2]!.toS - run.steps[2]!.fromS;
}

describe('decay of one hole, exact ODE (air 20 degC, 101.325 kPa, cd 0.61; computed with the isentropic law)', () => {
  // Published-formula table of half times, computed independently of this project.
  const rows: readonly (readonly [
    number,
    readonly [number, number],
    readonly [number, number],
    readonly [number, number],
  ])[] = [
    [20, [33.762, 8.4404], [37.822, 9.4555], [41.059, 10.265]],
    [40, [67.524, 16.881], [75.644, 18.911], [82.118, 20.529]],
    [60, [101.287, 25.322], [113.466, 28.367], [123.177, 30.794]],
  ];
  for (const [litres, low, deep, pressure] of rows) {
    for (const [startPa, times] of [
      [-2000, low],
      [-2500, deep],
      [3000, pressure],
    ] as const) {
      it(`${litres} L from ${startPa} Pa`, () => {
        for (const [k, mm] of [0.5, 1.0].entries()) {
          const time = decayTime(litres * 1e-3, mm * 1e-3, startPa);
          // The table is rounded to five figures; the smooth law differs from the exact one below 5 Pa only.
          expect(Math.abs(time / times[k]! - 1)).toBeLessThan(3e-5);
        }
      });
    }
  }
});

describe('two volumes', () => {
  it('equalise through a linear bed by the exponential of their series capacity', () => {
    // dp decays with rate (RT/r)(1/V1 + 1/V2) for a bed of resistance r [Pa s/kg], isothermal.
    const r = 5e7;
    const v1 = 0.01;
    const v2 = 0.03;
    const bed: Passage = {
      kind: 'bed',
      id: 'bed',
      part: 'carbonBed',
      from: 'a',
      to: 'b',
      linearPaSPerKg: r,
      quadraticPaS2PerKg2: 0,
    };
    const charge: Passage = {
      kind: 'orifice',
      id: 'charge',
      part: 'purgeValve',
      from: 'a',
      to: 'manifold',
      openAreaM2: 1e-4,
      shutAreaM2: 0,
      actuation: { command: 'purgeDuty', opens: true },
    };
    const run = simulate(
      {
        label: 'equalise',
        network: network([gas('a', v1), gas('b', v2)], [bed, charge]),
        procedure: {
          kind: 'sealed-hold',
          words: 'equalise',
          steps: [
            { phase: 'draw', engineRunning: true, longestS: 0.5, commands: { purgeDuty: 1 } },
            { phase: 'hold', engineRunning: true, longestS: 20, commands: { purgeDuty: 0 } },
          ],
        },
        conditions: {
          ambientAbsPa: P0,
          ambientTemperatureK: T,
          manifoldAbsPa: P0 - 4000,
          start: { fuelTemperatureK: T },
        },
        sampling: { ...CLEAN_SAMPLING, rateHz: 50 },
        relativeTolerance: 1e-10,
      },
      { trace: ['a.absPa', 'b.absPa'] },
    );
    const [a, b] = run.traces.map((t) => t.value) as [Float64Array, Float64Array];
    const t = run.recording.timeS;
    const from = t.findIndex((s) => s >= 0.6);
    const rate = ((8.31446261815324 / 0.0289647) * T * (1 / v1 + 1 / v2)) / r;
    const start = b[from]! - a[from]!;
    for (let i = from; i < t.length; i += 25) {
      const expected = start * Math.exp(-rate * (t[i]! - t[from]!));
      expect(Math.abs(b[i]! - a[i]! - expected)).toBeLessThan(1e-3);
    }
    // What one loses the other gains: the weighted mean stays.
    const mean = (i: number) => (a[i]! * v1 + b[i]! * v2) / (v1 + v2);
    expect(Math.abs(mean(t.length - 1) - mean(from))).toBeLessThan(1e-7);
  });

  it('blow down choked by a pure exponential (isothermal, into a low manifold)', () => {
    // Choked: m = A p sqrt(1/RT) 0.684731, so p' = -p A 0.684731 sqrt(RT)/V.
    const area = 2e-6;
    const volume = 0.02;
    const rt = (8.31446261815324 / 0.0289647) * T;
    const run = simulate(
      {
        label: 'blow-down',
        network: network([gas('a', volume)], [open('hole', 'a', 'manifold', area)]),
        procedure: {
          kind: 'sealed-hold',
          words: 'blow-down',
          steps: [{ phase: 'draw', engineRunning: true, longestS: 10 }],
        },
        conditions: { ambientAbsPa: P0, ambientTemperatureK: T, manifoldAbsPa: 20000, start: { fuelTemperatureK: T } },
        sampling: CLEAN_SAMPLING,
        relativeTolerance: 1e-10,
      },
      { trace: ['a.absPa'] },
    );
    const rate = (area * 0.684731 * Math.sqrt(rt)) / volume;
    run.recording.timeS.forEach((t, i) => {
      expect(Math.abs(run.traces[0]!.value[i]! / (P0 * Math.exp(-rate * t)) - 1)).toBeLessThan(3e-6);
    });
  });
});
