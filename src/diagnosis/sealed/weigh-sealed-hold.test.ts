import { describe, expect, it } from 'vitest';
import { sealedHold } from '../../simulation/procedures/sealed-hold.ts';
import { CLEAN_SAMPLING } from '../../simulation/scenario.ts';
import { simulate } from '../../simulation/simulate.ts';
import { assembleCar } from '../../system/assemble.ts';
import type { Car } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { SizeMixture } from '../size.ts';
import { SEALED_ALIKE, type SealedCauseId } from './causes.ts';
import { sealedLimits } from './limits.ts';
import { weighSealedHold } from './weigh-sealed-hold.ts';

const CAR: Car = {
  schema: 'vaporwright-car-1',
  label: 'invented car with a sealed tank',
  layout: 'sealed-tank',
  tankVolumeM3: 0.045,
  fillerNeckVolumeM3: 0.0015,
  canisterFreeVolumeM3: 0.0025,
};

function run(faults: readonly Fault[], tankGaugePa: number, seed = 5) {
  const simulation = simulate({
    label: 'sealed hold',
    network: assembleCar(CAR, faults, (p) => {
      p.tank.fillFraction = 0.5;
    }),
    procedure: sealedHold(),
    conditions: {
      ambientAbsPa: 101325,
      ambientTemperatureK: 295.15,
      manifoldAbsPa: 40000,
      start: { fuelTemperatureK: 298, tankGaugePa },
    },
    sampling: { ...CLEAN_SAMPLING, rateHz: 5, seed },
  });
  expect(simulation.failure).toBeUndefined();
  return simulation;
}

const alike = (id: SealedCauseId) => SEALED_ALIKE.find((group) => group.includes(id)) ?? [id];

const CASES: [string, readonly Fault[], number, SealedCauseId][] = [
  ['a sound tank at +12 kPa', [], 12000, 'none'],
  ['a sound tank at -4 kPa', [], -4000, 'none'],
  ['a hole of 0.5 mm in a tank just shut', [{ kind: 'leak', place: 'tankTop', size: 0.5e-3 }], 3000, 'leak'],
  ['a hole of 1 mm at the cap', [{ kind: 'leak', place: 'cap', size: 1e-3 }], 0, 'leak'],
  ['a cap that is off', [{ kind: 'cap-missing' }], 0, 'gross_leak'],
  ['a hole of 0.5 mm in the canister', [{ kind: 'leak', place: 'canister', size: 0.5e-3 }], 12000, 'canister_leak'],
  ['a seeping purge valve', [{ kind: 'purge-seeping', size: 0.5e-3 }], 12000, 'purge_leak'],
  ['a purge valve stuck shut', [{ kind: 'purge-stuck-shut' }], 12000, 'purge_stuck_closed'],
  ['an isolation valve that leaks 0.3 mm', [{ kind: 'isolation-leaks', size: 0.3e-3 }], 8000, 'isolation_leak'],
  ['an isolation valve stuck shut', [{ kind: 'isolation-stuck-shut' }], 12000, 'isolation_stuck_shut'],
  ['a vent path choked to 1.3 mm', [{ kind: 'vent-choked', size: 1.3e-3 }], 12000, 'vent_restricted'],
  ['a vent valve stuck shut', [{ kind: 'vent-stuck-shut' }], 12000, 'vent_stuck_closed'],
  ['a vent valve that does not seal', [{ kind: 'vent-not-sealing', size: 1.5e-3 }], 12000, 'vent_leak'],
];

describe('a sealed hold by the full simulation', () => {
  it.each(CASES)('weighs %s first', (_, faults, tankGaugePa, id) => {
    const { recording, phases } = run(faults, tankGaugePa);
    const best = weighSealedHold(CAR, recording, phases).sort((a, b) => b.logEvidence - a.logEvidence)[0]!;
    expect(alike(id)).toContain(best.id);
  });

  it('covers most sizes with the 90 % interval of the right cause', () => {
    const holes: [SealedCauseId, 'tankTop' | 'canister', number, number][] = [
      ['leak', 'tankTop', 0.3, 0],
      ['leak', 'tankTop', 0.5, 0],
      ['leak', 'tankTop', 1, 0],
      ['canister_leak', 'canister', 0.5, 12000],
      ['canister_leak', 'canister', 1, 12000],
    ];
    let covered = 0;
    for (const [id, place, mm, tankGaugePa] of holes) {
      const { recording, phases } = run([{ kind: 'leak', place, size: mm * 1e-3 }], tankGaugePa, 31);
      const { size } = weighSealedHold(CAR, recording, phases).find((w) => w.id === id)!;
      const { lo90, hi90, median } = new SizeMixture([{ weight: 1, posterior: size! }]).interval();
      if (lo90 <= mm && mm <= hi90) covered++;
      expect(Math.abs(Math.log(median / mm))).toBeLessThan(0.2);
    }
    expect(covered).toBeGreaterThanOrEqual(4);
  });
});

describe('what a sealed hold cannot tell', () => {
  const whole = run([], 0).recording;
  /** The first seconds only: the static tank, before anything is opened. */
  const head = (seconds: number, swingK: number) => {
    const n = whole.timeS.findIndex((t) => t >= seconds);
    const channels = Object.fromEntries(Object.entries(whole.channels).map(([name, x]) => [name, x.slice(0, n)]));
    const fuelTemperatureK = whole.timeS.slice(0, n).map((_, i) => 295 + (swingK * i) / n);
    return { ...whole, timeS: whole.timeS.slice(0, n), channels: { ...channels, fuelTemperatureK } };
  };

  it('is nothing when tank and canister side were both drawn', () => {
    expect(sealedLimits(whole)).toEqual([]);
  });

  it('is a tank at ambient without a temperature swing (common practice, no source)', () => {
    const recording = head(50, 0);
    expect(sealedLimits(recording).map((l) => l.kind)).toContain('tank-side-untested');
    const weighed = weighSealedHold(CAR, recording, []);
    const log = (id: SealedCauseId) => weighed.find((w) => w.id === id)!.logEvidence;
    // such a recording must not decide between sound and leaking: odds below five to one
    expect(Math.abs(log('leak') - log('none'))).toBeLessThan(Math.log(5));
  });

  it('is not the tank side when the fuel swung by 10 K (common practice, no source)', () => {
    expect(sealedLimits(head(50, 10)).map((l) => l.kind)).not.toContain('tank-side-untested');
  });

  it('is not the tank side when it stands under pressure (common practice, no source)', () => {
    const { recording } = run([], 12000);
    const n = recording.timeS.findIndex((t) => t >= 50);
    const channels = Object.fromEntries(Object.entries(recording.channels).map(([k, x]) => [k, x.slice(0, n)]));
    const limits = sealedLimits({ ...recording, timeS: recording.timeS.slice(0, n), channels });
    expect(limits.map((l) => l.kind)).toEqual(['canister-side-untested', 'isolation-untested']);
  });
});
