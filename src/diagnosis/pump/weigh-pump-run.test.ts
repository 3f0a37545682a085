import { describe, expect, it } from 'vitest';
import { pumpRun } from '../../simulation/procedures/pump-run.ts';
import { CLEAN_SAMPLING } from '../../simulation/scenario.ts';
import { simulate } from '../../simulation/simulate.ts';
import { assembleCar } from '../../system/assemble.ts';
import type { Car } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { SizeMixture } from '../size.ts';
import { PUMP_ALIKE, type PumpCauseId } from './causes.ts';
import { pumpLimits } from './limits.ts';
import { weighPumpRun } from './weigh-pump-run.ts';

const CAR: Car = {
  schema: 'vaporwright-car-1',
  label: 'invented car with a pump module',
  layout: 'pump-reference',
  tankVolumeM3: 0.06,
  fillerNeckVolumeM3: 0.0015,
  canisterFreeVolumeM3: 0.0019,
};

function run(faults: readonly Fault[], seed: number, fill = 0.5) {
  const simulation = simulate({
    label: 'pump run',
    network: assembleCar(CAR, faults, (p) => {
      p.tank.fillFraction = fill;
    }),
    procedure: pumpRun(),
    conditions: { ambientAbsPa: 101325, ambientTemperatureK: 293.15, start: { fuelTemperatureK: 294 } },
    sampling: { ...CLEAN_SAMPLING, rateHz: 5, seed },
  });
  expect(simulation.failure).toBeUndefined();
  return simulation;
}

function weigh(faults: readonly Fault[], seed: number, fill?: number) {
  const { recording, phases } = run(faults, seed, fill);
  const sorted = weighPumpRun(CAR, recording, phases).sort((a, b) => b.logEvidence - a.logEvidence);
  const best = sorted[0]!;
  return { best, interval: best.size && new SizeMixture([{ weight: 1, posterior: best.size }]).interval() };
}

/** The cause or one that a pump run cannot part from it. */
const alike = (id: PumpCauseId) => PUMP_ALIKE.find((group) => group.includes(id)) ?? [id];

const CASES: [string, readonly Fault[], PumpCauseId][] = [
  ['a sound car', [], 'none'],
  ['a hole of 0.5 mm in the tank top', [{ kind: 'leak', place: 'tankTop', size: 0.5e-3 }], 'leak'],
  ['a hole of 0.5 mm in the canister', [{ kind: 'leak', place: 'canister', size: 0.5e-3 }], 'leak'],
  ['a seeping purge valve of 0.6 mm', [{ kind: 'purge-seeping', size: 0.6e-3 }], 'purge_leak'],
  ['a cap that is off', [{ kind: 'cap-missing' }], 'gross_leak'],
  ['a purge valve stuck shut', [{ kind: 'purge-stuck-shut' }], 'purge_stuck_closed'],
  ['a filter choked to 1 mm', [{ kind: 'vent-choked', size: 1e-3 }], 'vent_restricted'],
  ['a pump at half strength', [{ kind: 'pump-weak', size: 0.5 }], 'pump_weak'],
  ['a dead pump', [{ kind: 'pump-dead' }], 'pump_dead'],
  ['an orifice dirty down to 0.3 mm', [{ kind: 'orifice-dirty', size: 0.3e-3 }], 'orifice_dirty'],
  ['a change-over valve that sticks', [{ kind: 'changeover-sticks' }], 'changeover_stuck'],
  ['a change-over valve that passes', [{ kind: 'changeover-leaks', size: 0.4e-3 }], 'changeover_leak'],
];

describe('a pump run by the full simulation', () => {
  it.each(CASES)('weighs %s first', (_, faults, id) => {
    const { best } = weigh(faults, 7);
    expect(alike(id)).toContain(best.id);
  });

  it('covers most sizes with the 90 % interval of the right cause, at other levels too', () => {
    const holes = [
      [0.3, 0.5],
      [0.4, 0.3],
      [0.5, 0.7],
      [0.7, 0.5],
      [1, 0.4],
    ] as const;
    let covered = 0;
    for (const [mm, fill] of holes) {
      const { recording, phases } = run([{ kind: 'leak', place: 'tankTop', size: mm * 1e-3 }], 41, fill);
      const { size } = weighPumpRun(CAR, recording, phases).find((w) => w.id === 'leak')!;
      const { lo90, hi90, median } = new SizeMixture([{ weight: 1, posterior: size! }]).interval();
      if (lo90 <= mm && mm <= hi90) covered++;
      expect(Math.abs(Math.log(median / mm))).toBeLessThan(0.2);
    }
    expect(covered).toBeGreaterThanOrEqual(4);
  });

  it('keeps a sound car below 0.25 mm', () => {
    const { interval } = weigh([], 3);
    expect(interval!.hi90).toBeLessThan(0.25);
  });
});

describe('what a pump run cannot tell', () => {
  const { recording } = run([], 1);
  it('is nothing when every phase is there', () => {
    expect(pumpLimits(recording)).toEqual([]);
  });
  it('is the pump without a reference, and the purge valve without its opening', () => {
    const always = new Float64Array(recording.timeS.length).fill(1);
    const never = new Float64Array(recording.timeS.length);
    const cut = { ...recording, channels: { ...recording.channels, changeoverToTank: always, purgeDuty: never } };
    expect(pumpLimits(cut).map((l) => l.kind)).toEqual(['no-reference', 'purge-untested']);
  });
  it('weighs nothing without a pressure', () => {
    expect(weighPumpRun(CAR, { ...recording, channels: {} }, [])).toEqual([]);
  });
});
