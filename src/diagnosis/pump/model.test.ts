/** The reduced model against closed forms and facts of the trade. */
import { describe, expect, it } from 'vitest';
import type { Recording } from '../../recording/recording.ts';
import { findConditions } from '../priors/conditions.ts';
import { setQuantities } from '../single-run/prior.ts';
import { layOutPumpRun } from './drive.ts';
import { runPump } from './model.ts';
import { pumpBase, pumpPriors } from './priors.ts';
import { P } from './quantities.ts';

const CAR = { schema: 'vaporwright-car-1', label: 'car', layout: 'pump-reference' } as const;
const area = (mm: number) => 0.61 * 0.25 * Math.PI * (mm * 1e-3) ** 2;

/** Rest 10 s, reference to 70 s, tank to 670 s, purge open to 690 s, reference to 750 s. */
function emptyRecording(): Recording {
  const timeS = Float64Array.from({ length: 750 }, (_, i) => i);
  const when = (on: (t: number) => boolean) => timeS.map((t) => (on(t) ? 1 : 0));
  return {
    label: 'run',
    timeS,
    channels: {
      pumpPressureGaugePa: timeS.map((t) => Math.sin(t)),
      tankPressureGaugePa: timeS.map((t) => Math.cos(t)),
      pumpOn: when((t) => t >= 10),
      changeoverToTank: when((t) => t >= 70 && t < 690),
      purgeDuty: when((t) => t >= 670 && t < 690),
      barometricPa: timeS.map(() => 101325),
      ambientTemperatureK: timeS.map(() => 293.15),
      fuelTemperatureK: timeS.map(() => 293.15),
      fuelLevel: timeS.map(() => 0.5),
    },
  };
}

const RECORDING = emptyRecording();
const CONDITIONS = findConditions(CAR, RECORDING);
const RUN = layOutPumpRun(RECORDING, [], CONDITIONS)!;

function play(change: (q: Float64Array) => void) {
  const priors = pumpPriors(CAR, CONDITIONS);
  const q = new Float64Array(pumpBase().length);
  setQuantities(priors, new Float64Array(priors.length), pumpBase(), q);
  change(q);
  const out = RUN.channels.map((c) => new Float64Array(c.observations.timeS.length));
  runPump(q, RUN.drive, out);
  const at = (channel: number) => (t: number) => {
    const times = RUN.channels[channel]!.observations.timeS;
    let k = 0;
    while (k + 1 < times.length && times[k + 1]! <= t) k++;
    return out[channel]![k]!;
  };
  return { module: at(0), tank: at(1) };
}
/** No vapour, no carbon, no drop: the bare laws of pump and orifice. */
const dry = (q: Float64Array) => {
  q[P.vapourPressure] = 1;
  q[P.slip] = 0;
  q[P.bed] = 0;
  q[P.leakArea] = 1e-14;
  q[P.purgeEndArea] = 1e-14;
  q[P.ventEndArea] = 1e-14;
};

describe('the reduced model of a pump run', () => {
  it('holds the reference where orifice and pump pass the same', () => {
    const free = 1.5e-5;
    const stall = 3600;
    // incompressible orifice against the pump's line, solved by bisection
    const rho = 101325 / (287.05 * 293.15);
    let low = 1;
    let high = stall;
    for (let i = 0; i < 60; i++) {
      const p = 0.5 * (low + high);
      if (area(0.503) * Math.sqrt((2 * p) / rho) < free * (1 - p / stall)) low = p;
      else high = p;
    }
    const { module, tank } = play((q) => {
      dry(q);
      q[P.freeFlow] = free;
      q[P.stall] = stall;
    });
    expect(module(65) / -low).toBeGreaterThan(0.97);
    expect(module(65) / -low).toBeLessThan(1.01);
    // common practice, no source: flat by 60 s, and the vent keeps the tank at ambient
    expect(Math.abs(module(65) - module(40))).toBeLessThan(2);
    expect(Math.abs(tank(65))).toBeLessThan(3);
  });

  it('draws a tight, dry tank along the exponential of its volume and ends at stall', () => {
    const free = 1.5e-5;
    const stall = 3600;
    const { tank } = play((q) => {
      dry(q);
      q[P.freeFlow] = free;
      q[P.stall] = stall;
      q[P.wallHeat] = 1000;
    });
    const volume = CONDITIONS.gasVolumeM3 + 2 * CONDITIONS.canisterVolumeM3;
    // dp/dt = -p Q0 (1 - x) / V with p near 1 atm
    const tau = (volume * stall) / (free * 100e3);
    const expected = -stall * (1 - Math.exp(-100 / tau));
    expect(Math.abs(tank(170) / expected - 1)).toBeLessThan(0.03);
    expect(Math.abs(tank(665) / -stall - 1)).toBeLessThan(0.02);
  });

  it('mirrors itself for a module that pushes', () => {
    const q = new Float64Array(pumpBase().length);
    const priors = pumpPriors(CAR, CONDITIONS);
    setQuantities(priors, new Float64Array(priors.length), pumpBase(), q);
    dry(q);
    const make = () => RUN.channels.map((c) => new Float64Array(c.observations.timeS.length));
    const pull = make();
    const push = make();
    runPump(q, RUN.drive, pull);
    runPump(q, { ...RUN.drive, direction: -1 }, push);
    const k = RUN.channels[0]!.observations.timeS.findIndex((t) => t > 60);
    expect(push[0]![k]! / -pull[0]![k]!).toBeGreaterThan(0.95);
    expect(push[0]![k]! / -pull[0]![k]!).toBeLessThan(1.05);
  });
});

// common practice, no source: how the four phases look under each fault
describe('facts of the trade about pump runs', () => {
  const sound = play(() => {});
  it('healthy: the tank passes the reference, collapses when purge opens, and the reference repeats', () => {
    expect(sound.tank(665)).toBeLessThan(sound.module(65) - 300);
    expect(Math.abs(sound.tank(688))).toBeLessThan(0.1 * Math.abs(sound.tank(665)));
    expect(Math.abs(sound.module(745) / sound.module(65) - 1)).toBeLessThan(0.05);
  });
  it('a hole of the orifice size ends at the reference', () => {
    const p = play((q) => {
      dry(q);
      q[P.leakArea] = area(0.503);
    });
    expect(Math.abs(p.tank(665) / p.module(65) - 1)).toBeLessThan(0.04);
  });
  it('a smaller hole ends between reference and the healthy end', () => {
    const p = play((q) => {
      q[P.leakArea] = area(0.25);
    });
    expect(p.tank(665)).toBeLessThan(p.module(65));
    expect(p.tank(665)).toBeGreaterThan(sound.tank(665) + 100);
  });
  it('a large leak stays below a fifth of the reference, purge open or not', () => {
    const p = play((q) => {
      q[P.leakArea] = area(2.3);
    });
    expect(p.tank(665) / p.module(65)).toBeLessThan(0.2);
    expect(Math.abs(p.tank(688) - p.tank(665))).toBeLessThan(30);
  });
  it('a purge valve that stays shut lets nothing collapse', () => {
    const p = play((q) => {
      q[P.purgeArea] = 1e-12;
    });
    expect(p.tank(688) / p.tank(665)).toBeGreaterThan(0.95);
  });
  it('a weak pump is low in both and passes the ratio', () => {
    const p = play((q) => {
      q[P.strength] = 0.5;
    });
    expect(p.module(65) / sound.module(65)).toBeLessThan(0.6);
    expect(p.tank(665)).toBeLessThan(p.module(65));
  });
  it('a dirty orifice reads high and so fails a sound tank', () => {
    const p = play((q) => {
      q[P.orificeArea] = area(0.25);
    });
    expect(p.module(65)).toBeLessThan(1.3 * sound.module(65));
    expect(Math.abs(p.tank(665) - sound.tank(665))).toBeLessThan(5);
  });
  it('a change-over valve that sticks shows the same curve in both', () => {
    const p = play((q) => {
      q[P.stuck] = 1;
    });
    expect(Math.abs(p.module(665) - p.module(65))).toBeLessThan(5);
    expect(Math.abs(p.tank(665))).toBeLessThan(5);
  });
  it('a choked filter lags: the tank is drawn during the reference and comes back slowly', () => {
    const p = play((q) => {
      q[P.ventOpenArea] = area(0.5);
      q[P.purgeArea] = 1e-12;
    });
    expect(p.tank(65)).toBeLessThan(-100);
    expect(p.tank(700)).toBeLessThan(0.8 * p.tank(685));
  });
});
