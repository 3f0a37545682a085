import { describe, expect, it } from 'vitest';
import { LAYOUTS } from '../../system/car.ts';
import { play } from './play.ts';
import { playableOn } from './procedures.ts';

const system = (layout: (typeof LAYOUTS)[number]) => ({ layout, closure: 'capped', hasRecovery: true }) as const;

describe('what the worker plays', () => {
  for (const layout of LAYOUTS) {
    it(`${layout}: every procedure that is offered runs to its end`, () => {
      for (const procedure of playableOn(layout)) {
        const run = play({ system: system(layout), faults: [], procedure, isCoarse: true }, () => 0);
        expect(run.failure, procedure).toBeUndefined();
        expect(run.timeS.length, procedure).toBeGreaterThan(30);
        for (const [name, values] of Object.entries(run.traces)) {
          expect(values.length, name).toBe(run.timeS.length);
          expect(values.every(Number.isFinite), `${procedure}: ${name}`).toBe(true);
        }
      }
    });
  }

  it('keeps account of the gas that went through a passage', () => {
    const run = play(
      { system: system('engine-vacuum'), faults: [], procedure: 'purge-drive', isCoarse: false },
      () => 0,
    );
    const flow = run.traces['purge.flowKgPerS']!;
    const passed = run.passedKg.purge!;
    expect(passed[0]).toBe(0);
    const last = passed.at(-1)!;
    const mean = flow.reduce((sum, v) => sum + v, 0) / flow.length;
    expect(last).toBeGreaterThan(0);
    expect(Math.abs(last - mean * run.durationS) / last).toBeLessThan(0.02);
  });

  it('a coarse run shows what the fine one shows, to 1 % of the vacuum', () => {
    const faults = [{ kind: 'leak', place: 'cap', size: 0.6e-3 }] as const;
    const [fine, coarse] = [false, true].map((isCoarse) =>
      play({ system: system('engine-vacuum'), faults, procedure: 'vacuum-draw', isCoarse }, () => 0),
    );
    const at = (run: typeof fine, timeS: number) => {
      const k = run!.timeS.findIndex((t) => t >= timeS);
      return run!.traces['tank.gaugePa']![k]!;
    };
    expect(Math.abs(at(fine, 40) - at(coarse, 40))).toBeLessThan(20);
  });

  it('notes when the fill-limit valve floats shut', () => {
    const run = play(
      { system: system('engine-vacuum'), faults: [], procedure: 'refuelling', isCoarse: false },
      () => 0,
    );
    const shut = run.commands.findIndex((c) => c.fillLimitShut > 0);
    expect(shut).toBeGreaterThan(0);
    const k = run.timeS.findIndex((t) => t >= run.commandTimesS[shut]!);
    expect(run.traces['tank.fillFraction']![k]!).toBeCloseTo(0.95, 2);
  });
});
