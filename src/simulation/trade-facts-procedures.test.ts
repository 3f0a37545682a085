/** Facts of the trade, other layouts and procedures: `common practice, no source`. */
import { describe, expect, it } from 'vitest';
import type { Fault } from '../system/faults/fault.ts';
import { purgeDrive } from './procedures/purge-drive.ts';
import { refuelling } from './procedures/refuelling.ts';
import type { Scenario } from './scenario.ts';
import { type Simulation, simulate } from './simulate.ts';
import { IDLE_MANIFOLD_PA, MILD_DAY, typicalScenario } from './typical-scenarios.ts';

const INCH = 249; // Pa

describe('pump with reference orifice', () => {
  function pump(faults: readonly Fault[]) {
    // Little vapour: a canister that takes up vapour draws by itself and moves the plateau by a tenth and more.
    const scenario = typicalScenario('pump-reference', faults, (p) => {
      p.fuel.vapourPressureFactor = 0.1;
    });
    const run = simulate(scenario, { trace: ['pumpModule.gaugePa'] });
    expect(run.failure).toBeUndefined();
    const endOf = (k: number) => run.traces[0]!.value[Math.floor(run.steps[k]!.toS * 10) - 2]!;
    return { p1: endOf(1), p2: endOf(2), p3: endOf(3), p4: endOf(4) };
  }
  const sound = pump([]);

  it('sound: reference of 1 to 4 kPa; the tank passes it; purge collapses it; the reference repeats within 10 %', () => {
    expect(sound.p1).toBeLessThan(-1000);
    expect(sound.p1).toBeGreaterThan(-4000);
    expect(sound.p2).toBeLessThan(1.1 * sound.p1);
    expect(Math.abs(sound.p3)).toBeLessThan(0.2 * Math.abs(sound.p2));
    expect(Math.abs(sound.p4 / sound.p1 - 1)).toBeLessThan(0.1);
  });

  it.each<[string, Fault, (r: ReturnType<typeof pump>) => boolean]>([
    [
      'a leak like the orifice ends at the reference',
      { kind: 'leak', place: 'cap', size: 0.5e-3 },
      (r) => Math.abs(r.p2 / r.p1 - 1) < 0.12,
    ],
    ['a large leak stays under a fifth of it', { kind: 'cap-missing' }, (r) => r.p2 / r.p1 < 0.2],
    ['purge shut: no collapse', { kind: 'purge-stuck-shut' }, (r) => r.p3 / r.p2 > 0.8],
    ['purge open: never builds', { kind: 'purge-stuck-open', size: 0.7 }, (r) => r.p2 / r.p1 < 0.2],
    [
      'a weak pump is low everywhere, the ratio passes',
      { kind: 'pump-weak', size: 0.6 },
      (r) => r.p1 / sound.p1 < 0.8 && r.p2 / r.p1 > 1,
    ],
    [
      'a sticking change-over valve repeats the reference',
      { kind: 'changeover-sticks' },
      (r) => Math.abs(r.p2 / r.p1 - 1) < 0.02,
    ],
  ])('%s', (_, fault, holds) => {
    const result = pump([fault]);
    expect(holds(result), JSON.stringify(result)).toBe(true);
  });

  it('a dirty orifice gives a high reference: a harmless leak that passed now fails', () => {
    const harmless: Fault = { kind: 'leak', place: 'cap', size: 0.3e-3 };
    const clean = pump([harmless]);
    const dirty = pump([harmless, { kind: 'orifice-dirty', size: 0.2e-3 }]);
    expect(clean.p2 / clean.p1).toBeGreaterThan(1.2);
    expect(dirty.p1 / clean.p1).toBeGreaterThan(1.2);
    expect(dirty.p2 / dirty.p1).toBeLessThan(1);
  });
});

describe('sealed tank', () => {
  function sealed(faults: readonly Fault[]) {
    const run = simulate(typicalScenario('sealed-tank', faults), { trace: ['tank.gaugePa', 'head.gaugePa'] });
    expect(run.failure).toBeUndefined();
    const tankAt = (k: number, s: number, trace: number) =>
      run.traces[trace]!.value[Math.floor((run.steps[k]!.fromS + s) * 10)]!;
    return { start: tankAt(0, 1, 0), held: tankAt(0, 58, 0), released: tankAt(1, 29, 0), run };
  }

  it('holds its static pressure and lets it go within 20 s when released', () => {
    const sound = sealed([]);
    expect(sound.held).toBeGreaterThan(0.8 * sound.start);
    expect(Math.abs(sound.released)).toBeLessThan(1000);
  });

  it('a tank-side leak and a leaking isolation valve lose it; a stuck one never lets it go', () => {
    expect(sealed([{ kind: 'leak', place: 'tankTop', size: 2e-3 }]).held).toBeLessThan(500);
    const leaks = sealed([{ kind: 'isolation-leaks', size: 2e-3 }]);
    expect(leaks.held).toBeLessThan(0.5 * leaks.start);
    const stuck = sealed([{ kind: 'isolation-stuck-shut' }]);
    expect(stuck.released).toBeGreaterThan(0.8 * stuck.start);
  });
});

describe('two-path purge', () => {
  function boost(faults: readonly Fault[]) {
    const run = simulate(typicalScenario('two-path-purge', faults), { trace: ['tank.gaugePa', 'purge.flowKgPerS'] });
    expect(run.failure).toBeUndefined();
    const at = (t: number, k = 0) => run.traces[k]!.value[Math.floor(t * 10)]!;
    return { idleFlow: at(25, 1), boostFlow: at(55, 1), sealed: at(85) - at(60) };
  }
  const sound = boost([]);

  it('purges at low load through the manifold, under boost through the ejector; sealed under boost the tank falls', () => {
    expect(sound.idleFlow).toBeGreaterThan(1e-5);
    expect(sound.boostFlow).toBeGreaterThan(1e-5);
    expect(sound.sealed).toBeLessThan(-100);
  });

  it('a leaking manifold check valve makes the tank rise under boost, never fall', () => {
    expect(boost([{ kind: 'manifold-check-leaks', size: 4e-3 }]).sealed).toBeGreaterThan(INCH);
  });

  it('a stuck ejector check valve or a cracked nozzle gives no purge under boost', () => {
    for (const kind of ['ejector-check-stuck-shut', 'ejector-weak']) {
      const faulty = boost([{ kind }]);
      expect(faulty.boostFlow).toBeLessThan(0.1 * sound.boostFlow);
      expect(faulty.idleFlow).toBeGreaterThan(0.8 * sound.idleFlow);
    }
  });
});

describe('purge while driving', () => {
  const engine = { displacementM3: 2e-3, speedRpm: 2000, trimLagS: 2, trimLimit: 0.3, trimNoise: 0 };
  const drive = (faults: readonly Fault[]): Simulation => {
    // Loaded by the last filling.
    const base: Scenario = typicalScenario('engine-vacuum', faults, (p) => {
      p.canister.loadingTankEnd = 0.75;
    });
    const conditions = { ...MILD_DAY, manifoldAbsPa: 1.3 * IDLE_MANIFOLD_PA, engine };
    return simulate({ ...base, procedure: purgeDrive(), conditions }, { trace: ['tank.gaugePa'] });
  };
  const least = (values: Float64Array) => Math.min(...values);

  it('sound: tank between 0 and -2 inH2O; trim moves; no purge: trim stays; blocked vent: deep vacuum', () => {
    const sound = drive([]);
    expect(least(sound.traces[0]!.value)).toBeGreaterThan(-2 * INCH);
    expect(least(sound.recording.channels.shortTrim!)).toBeLessThan(-0.02);
    const none = drive([{ kind: 'purge-stuck-shut', size: 0.05e-3 }]);
    expect(Math.abs(least(none.recording.channels.shortTrim!))).toBeLessThan(0.005);
    expect(least(drive([{ kind: 'vent-stuck-shut' }]).traces[0]!.value)).toBeLessThan(-10 * INCH);
  });

  it('a saturated canister takes more fuel away than a purged one', () => {
    const saturated = least(drive([{ kind: 'canister-saturated', size: 0.9 }]).recording.channels.shortTrim!);
    expect(saturated).toBeLessThan(1.5 * least(drive([]).recording.channels.shortTrim!));
  });
});

describe('refuelling', () => {
  const fill = (faults: readonly Fault[], volumeM3 = 0.015): Simulation => {
    const base = typicalScenario('engine-vacuum', faults, (p) => {
      p.tank.fillFraction = 0.3;
      p.tankVent.fillLimitDiameterM = 12e-3;
      p.tankVent.lineDiameterM = 12e-3;
    });
    const conditions = { ...MILD_DAY, fillFlowM3PerS: 5.8e-4 };
    return simulate({ ...base, procedure: refuelling({ volumeM3 }), conditions }, { trace: ['tank.gaugePa'] });
  };
  const outcomes = (s: Simulation) => s.steps.filter((x) => x.phase === 'filling').map((x) => x.outcome);

  it('sound: +2 to +8 inH2O steady, and the wanted volume goes in at the first try', () => {
    const sound = fill([]);
    expect(outcomes(sound)).toEqual(['wanted volume is in']);
    const middle = sound.traces[0]!.value[150]!;
    expect(middle).toBeGreaterThan(1 * INCH);
    expect(middle).toBeLessThan(8 * INCH);
  });

  it('filled to the top, the fill-limit valve floats shut and the nozzle shuts off once by back-pressure', () => {
    const full = fill([], 0.06);
    expect(outcomes(full)[0]).toMatch(/shut off/);
    const first = full.steps.find((s) => s.phase === 'filling')!;
    expect(first.toS - first.fromS).toBeGreaterThan(30);
  });

  it.each<[string, Fault]>([
    ['a vent path plugged by insects or dust', { kind: 'vent-choked', size: 2e-3 }],
    ['a vent valve stuck shut', { kind: 'vent-stuck-shut' }],
    ['a fill-limit valve stuck shut', { kind: 'fill-limit-stuck-shut' }],
  ])('%s makes the nozzle click off early', (_, fault) => {
    const blocked = fill([fault]);
    const first = blocked.steps.find((s) => s.phase === 'filling')!;
    expect(first.outcome).toBe('nozzle shut off by back-pressure');
    expect(first.toS - first.fromS).toBeLessThan(10);
    expect(outcomes(blocked).length).toBeGreaterThan(1);
  });
});

describe('saddle tank', () => {
  it('lifts fuel from the passive lobe and lets it run over the weir, keeping what cannot be used', () => {
    const base = typicalScenario('saddle-tank', [], (p) => {
      p.tank.fillFraction = 0.3;
      p.saddle.passiveFillFraction = 0.1;
    });
    const steps = [{ phase: 'idle', engineRunning: true, longestS: 1200, commands: { enginePumpOn: 1 } }] as const;
    const run = simulate(
      { ...base, procedure: { ...base.procedure, steps }, sampling: { ...base.sampling, rateHz: 0.1 } },
      { trace: ['passiveLobe.fillFraction', 'tank.fillFraction'] },
    );
    expect(run.traces[0]!.value.at(-1)!).toBeLessThan(0.04);
    expect(run.traces[0]!.value.at(-1)!).toBeGreaterThan(0.015);
    expect(run.traces[1]!.value.at(-1)!).toBeGreaterThan(0.35);
  });
});
