/** Facts of the trade about traces: `common practice, no source`. Figures of pressure in inH2O as the trade reads them. */
import { describe, expect, it } from 'vitest';
import type { Fault } from '../system/faults/fault.ts';
import { purgeDrive } from './procedures/purge-drive.ts';
import { refuelling } from './procedures/refuelling.ts';
import type { Scenario } from './scenario.ts';
import { type Simulation, simulate } from './simulate.ts';
import { IDLE_MANIFOLD_PA, MILD_DAY, typicalScenario } from './typical-scenarios.ts';

const INCH = 249; // Pa

/** Features of a vacuum draw, from the true tank pressure and from what the module reads. */
function draw(faults: readonly Fault[]) {
  const run = simulate(typicalScenario('engine-vacuum', faults), { trace: ['tank.gaugePa'] });
  expect(run.failure).toBeUndefined();
  const step = (phase: string) => run.steps.find((s) => s.phase === phase)!;
  const at = (t: number) => run.traces[0]!.value[Math.min(Math.floor(t * 10), run.traces[0]!.value.length - 1)]!;
  const read = (t: number) => run.recording.channels.tankPressureGaugePa![Math.floor(t * 10)]!;
  const hold = step('hold');
  return {
    reached: step('draw').outcome !== undefined,
    drawS: step('draw').toS - step('draw').fromS,
    drawEnd: at(step('draw').toS),
    holdStart: at(hold.fromS + 0.1),
    holdEnd: at(hold.toS - 0.1),
    lostShare: 1 - at(hold.toS - 0.1) / at(hold.fromS + 0.1),
    release2s: at(hold.toS + 2),
    baseRead: read(5),
    drawRead: read(step('draw').toS - 0.1),
    run,
  };
}

describe('engine-vacuum draw', () => {
  const sound = draw([]);

  it('a sound car reaches its target, holds it, and is at zero soon after the vent opens', () => {
    expect(sound.reached).toBe(true);
    expect(sound.drawS).toBeLessThan(25);
    expect(sound.lostShare).toBeLessThan(0.25);
    expect(Math.abs(sound.release2s)).toBeLessThan(0.5 * INCH);
  });

  it.each<[string, Fault]>([
    ['cap missing', { kind: 'cap-missing' }],
    ['filler hose off', { kind: 'hose-off', place: 'fillerHose' }],
    ['vapour line off', { kind: 'hose-off', place: 'vapourLine' }],
  ])('%s: cannot be drawn down, counts as a large leak', (_, fault) => {
    const gross = draw([fault]);
    expect(gross.reached).toBe(false);
    expect(gross.drawEnd).toBeGreaterThan(-2 * INCH);
  });

  it('a small hose leak is drawn down but loses its vacuum after sealing; the larger the faster', () => {
    const small = draw([{ kind: 'leak', place: 'fillerHose', size: 0.508e-3 }]);
    const larger = draw([{ kind: 'leak', place: 'fillerHose', size: 1.016e-3 }]);
    expect(small.reached).toBe(true);
    expect(larger.reached).toBe(true);
    expect(small.lostShare).toBeGreaterThan(sound.lostShare + 0.2);
    expect(larger.lostShare).toBeGreaterThan(small.lostShare + 0.2);
    expect(larger.drawS).toBeGreaterThan(small.drawS);
  });

  it('places beyond a sound bed look alike: cap, tank top and sender seal give one trace', () => {
    const cap = draw([{ kind: 'leak', place: 'cap', size: 0.6e-3 }]);
    const seal = draw([{ kind: 'leak', place: 'senderSeal', size: 0.6e-3 }]);
    expect(Math.abs(cap.holdEnd - seal.holdEnd)).toBeLessThan(0.1);
  });

  it('purge seep: more vacuum after the purge valve is commanded shut', () => {
    const seep = draw([{ kind: 'purge-seeping', size: 0.5e-3 }]);
    expect(seep.holdEnd).toBeLessThan(seep.holdStart - 0.3 * INCH);
  });

  it('purge stuck open: continues down during the hold, and pulls before the draw with the vent open', () => {
    const open = draw([{ kind: 'purge-stuck-open', size: 0.5 }]);
    expect(open.holdEnd).toBeLessThan(-2 * sound.drawEnd * -1);
    expect(open.run.traces[0]!.value[80]!).toBeLessThan(-10);
  });

  it('no purge: stays at zero, looks like a gross leak', () => {
    const none = draw([{ kind: 'purge-stuck-shut' }]);
    expect(none.reached).toBe(false);
    expect(none.drawEnd).toBeGreaterThan(-0.3 * INCH);
  });

  it('vent does not seal: sags or decays like a leak', () => {
    const vent = draw([{ kind: 'vent-not-sealing', size: 1.5e-3 }]);
    expect(vent.lostShare).toBeGreaterThan(0.9);
    expect(draw([{ kind: 'vent-circuit-open' }]).reached).toBe(false);
  });

  it('opening the vent valve relieves the vacuum, which proves the valve; a blocked one returns slowly', () => {
    const blocked = draw([{ kind: 'vent-choked', size: 1e-3 }]);
    expect(sound.release2s / sound.holdEnd).toBeLessThan(0.05);
    expect(blocked.release2s / blocked.holdEnd).toBeGreaterThan(0.5);
    expect(blocked.lostShare).toBeLessThan(0.25);
  });

  it('vapour line blocked: the tank answers late and slowly', () => {
    const line = draw([{ kind: 'vapour-line-blocked', size: 0.3e-3 }]);
    expect(line.reached).toBe(false);
    expect(Math.abs(line.release2s - line.holdEnd)).toBeLessThan(0.2 * Math.abs(line.holdEnd) + 20);
  });

  it('sensor: an offset stands at base, a wrong gain moves the end of the draw, a stuck one stays flat', () => {
    expect(draw([{ kind: 'sensor-offset', size: 400 }]).baseRead).toBeGreaterThan(350);
    const weak = draw([{ kind: 'sensor-gain', size: 0.6 }]);
    expect(weak.drawEnd).toBeLessThan(1.4 * sound.drawEnd);
    const stuck = draw([{ kind: 'sensor-stuck' }]);
    expect(stuck.reached).toBe(false);
    const values = stuck.run.recording.channels.tankPressureGaugePa!;
    expect(Math.max(...values) - Math.min(...values)).toBe(0);
  });

  it('a slow sensor lags: the draw goes deeper than the module sees', () => {
    const slow = draw([{ kind: 'sensor-slow', size: 5 }]);
    expect(slow.drawEnd).toBeLessThan(sound.drawEnd - INCH);
  });
});

describe('unpowered states', () => {
  it('the vent valve is open and the purge valve shut unless energised', () => {
    const scenario = typicalScenario('engine-vacuum');
    const rest = { ...scenario, procedure: { ...scenario.procedure, steps: [scenario.procedure.steps[0]!] } };
    const run = simulate(rest, { trace: ['purge.flowKgPerS', 'tank.gaugePa'] });
    expect(Math.max(...run.traces[0]!.value)).toBeLessThan(1e-6);
    expect(Math.max(...run.traces[1]!.value.map(Math.abs))).toBeLessThan(0.5 * INCH);
  });

  it('the cap holds test pressure and relieves above it', () => {
    const base = typicalScenario('engine-vacuum');
    const at = (tankGaugePa: number) => {
      const conditions = { ...MILD_DAY, start: { ...MILD_DAY.start, tankGaugePa } };
      const line = [{ kind: 'vapour-line-blocked', size: 1e-6 }];
      const network = typicalScenario('engine-vacuum', line).network;
      const steps = [{ phase: 'sealed', engineRunning: false, longestS: 30, commands: { ventClosed: 1 } }] as const;
      return simulate(
        { ...base, network, conditions, procedure: { ...base.procedure, steps } },
        { trace: ['relief.flowKgPerS'] },
      ).traces[0]!.value[0]!;
    };
    expect(at(14 * INCH)).toBe(0);
    expect(at(16_000)).toBeGreaterThan(0);
  });
});

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
