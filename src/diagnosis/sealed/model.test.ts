/** The reduced model of a sealed tank against closed forms and facts of the trade. */
import { describe, expect, it } from 'vitest';
import type { Recording } from '../../recording/recording.ts';
import { findConditions } from '../priors/conditions.ts';
import { setQuantities } from '../single-run/prior.ts';
import { layOutSealedRun } from './drive.ts';
import { runSealed } from './model.ts';
import { sealedBase, sealedPriors } from './priors.ts';
import { S } from './quantities.ts';

const CAR = { schema: 'vaporwright-car-1', label: 'car', layout: 'sealed-tank', tankVolumeM3: 0.045 } as const;
const area = (mm: number) => 0.61 * 0.25 * Math.PI * (mm * 1e-3) ** 2;

interface Plan {
  readonly endS: number;
  readonly everyS: number;
  readonly isolationOpen?: (t: number) => boolean;
  readonly fuelTemperatureK?: (t: number) => number;
}

function play(plan: Plan, change: (q: Float64Array) => void) {
  const timeS = Float64Array.from({ length: Math.round(plan.endS / plan.everyS) + 1 }, (_, i) => i * plan.everyS);
  const fuel = timeS.map(plan.fuelTemperatureK ?? (() => 293.15));
  const recording: Recording = {
    label: 'hold',
    timeS,
    channels: {
      tankPressureGaugePa: timeS.map((t) => Math.sin(t)),
      canisterPressureGaugePa: timeS.map((t) => Math.cos(t)),
      isolationOpen: timeS.map((t) => (plan.isolationOpen?.(t) ? 1 : 0)),
      barometricPa: timeS.map(() => 101325),
      ambientTemperatureK: fuel,
      fuelTemperatureK: fuel,
      fuelLevel: timeS.map(() => 0.5),
    },
  };
  const conditions = findConditions(CAR, recording);
  const run = layOutSealedRun(recording, [], conditions)!;
  const priors = sealedPriors(CAR, conditions, run.drive, 0);
  const q = new Float64Array(sealedBase().length);
  setQuantities(priors, new Float64Array(priors.length), sealedBase(), q);
  change(q);
  const out = run.channels.map((c) => new Float64Array(c.observations.timeS.length));
  runSealed(q, run.drive, out);
  const at = (channel: number) => (t: number) => {
    const times = run.channels[channel]!.observations.timeS;
    let k = 0;
    while (k + 1 < times.length && times[k + 1]! <= t) k++;
    return { timeS: times[k]!, gaugePa: out[channel]![k]! };
  };
  return { tank: at(0), canister: at(1), volumeM3: conditions.gasVolumeM3 };
}
const dry = (q: Float64Array) => {
  q[S.vapourPressure] = 1;
  q[S.follow] = 1;
  q[S.wallHeat] = 1000;
};
const RELEASE: Plan = { endS: 120, everyS: 0.2, isolationOpen: (t) => t >= 60 };

describe('the reduced model of a sealed tank', () => {
  it('keeps the ideal gas law over a swing of 10 K in a tight, dry tank', () => {
    const { tank } = play({ endS: 7200, everyS: 10, fuelTemperatureK: (t) => 293.15 + (10 * t) / 7200 }, (q) => {
      dry(q);
      q[S.tankHole] = 1e-15;
      q[S.isolationShutArea] = 1e-15;
    });
    const end = tank(7200);
    // p / T constant
    const expected = 101325 * ((293.15 + (10 * end.timeS) / 7200) / 293.15 - 1);
    expect(Math.abs(end.gaugePa / expected - 1)).toBeLessThan(0.03);
  });

  it('lets pressure out through a hole along the square root', () => {
    const { tank, volumeM3 } = play({ endS: 60, everyS: 0.5 }, (q) => {
      dry(q);
      q[S.tankHole] = area(1);
      q[S.isolationShutArea] = 1e-15;
      q[S.initialReading] = 2000;
    });
    const at = tank(15);
    // small pressures: d sqrt(p) / dt = -A sqrt(2 / rho) p_atm / (2 V), isothermal
    const rho = 102325 / (287.05 * 293.15);
    const root = Math.sqrt(2000) - (area(1) * Math.sqrt(2 / rho) * 102000 * (at.timeS + 0.5)) / (2 * volumeM3);
    expect(Math.abs(at.gaugePa / root ** 2 - 1)).toBeLessThan(0.08);
  });
});

// common practice, no source: static pressure, release and canister side under each fault
describe('facts of the trade about sealed tanks', () => {
  it('a sound tank moves by kilopascals through a day of 10 K, a leaking one stays at ambient', () => {
    const day: Plan = { endS: 43200, everyS: 60, fuelTemperatureK: (t) => 288 + 10 * Math.sin((Math.PI * t) / 43200) };
    const sound = play(day, () => {});
    const leaking = play(day, (q) => {
      q[S.tankHole] = area(0.5);
    });
    expect(sound.tank(21600).gaugePa).toBeGreaterThan(2000);
    expect(Math.abs(leaking.tank(21600).gaugePa)).toBeLessThan(300);
  });

  it('a sound tank lets go within 5 to 20 s', () => {
    const { tank } = play(RELEASE, (q) => {
      q[S.initialReading] = 20e3;
    });
    expect(tank(58).gaugePa).toBeGreaterThan(19e3);
    expect(tank(61).gaugePa).toBeGreaterThan(2000);
    expect(Math.abs(tank(80).gaugePa)).toBeLessThan(200);
  });

  it('an isolation valve stuck shut holds the pressure: no decay', () => {
    const { tank } = play(RELEASE, (q) => {
      q[S.initialReading] = 20e3;
      q[S.stuckShut] = 1;
    });
    expect(tank(119).gaugePa).toBeGreaterThan(18e3);
  });

  it('an isolation valve that leaks empties the tank into the canister', () => {
    const { tank } = play({ endS: 1200, everyS: 1 }, (q) => {
      q[S.initialReading] = 10e3;
      q[S.isolationShutArea] = area(0.8);
    });
    expect(tank(1190).gaugePa).toBeLessThan(1000);
  });

  it('a choked vent path makes the release slow and lifts the canister', () => {
    const choked = play(RELEASE, (q) => {
      q[S.initialReading] = 20e3;
      q[S.ventOpenArea] = area(1.3);
    });
    expect(choked.tank(70).gaugePa).toBeGreaterThan(3000);
    expect(choked.canister(65).gaugePa).toBeGreaterThan(3000);
  });
});
