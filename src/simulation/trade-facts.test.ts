/** Facts of the trade about traces: `common practice, no source`. Figures of pressure in inH2O as the trade reads them. */
import { describe, expect, it } from 'vitest';
import type { Fault } from '../system/faults/fault.ts';
import { simulate } from './simulate.ts';
import { MILD_DAY, typicalScenario } from './typical-scenarios.ts';

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
