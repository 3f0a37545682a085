import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPhases, PHASES_OF } from './phases.ts';
import { findProcedure } from './procedure.ts';
import { CHANNELS, type ChannelName, PHASES, type Phase, PROCEDURES, type Recording } from './recording.ts';

type Sample = Partial<Record<ChannelName, number>>;

/** A recording at 2 Hz from a function of time. */
function record(durationS: number, sample: (t: number) => Sample, notes?: Recording['notes']): Recording {
  const n = 2 * durationS + 1;
  const timeS = Float64Array.from({ length: n }, (_, i) => i / 2);
  const names = Object.keys(sample(0)) as ChannelName[];
  const channels = Object.fromEntries(names.map((name) => [name, timeS.map((t) => sample(t)[name]!)]));
  return { timeS, channels, label: 'made', ...(notes ? { notes } : {}) };
}

const shown = (phases: readonly Phase[]): string =>
  phases.map(({ kind, fromS, toS }) => `${kind} ${fromS}-${toS}`).join(', ');

/** Gauge pressure of a draw that starts at `start`, ends 10 s later, is held 40 s and let go. */
function drawPressure(t: number, start: number, depth = 2000, leakS = 200): number {
  if (t < start) return 0;
  if (t < start + 10) return (-depth * (t - start)) / 10;
  const held = -depth * Math.exp(-(Math.min(t, start + 50) - start - 10) / leakS);
  return t < start + 50 ? held : held * Math.exp(-(t - start - 50) / 0.8);
}

describe('a vacuum draw', () => {
  const once = (t: number): Sample => ({
    tankPressureGaugePa: drawPressure(t, 10),
    purgeDuty: t >= 10 && t < 20 ? 0.2 : 0,
    ventClosed: t >= 10 && t < 60 ? 1 : 0,
    engineSpeedRpm: 700,
  });

  it('is told by its commands', () => {
    const recording = record(90, once);
    expect(findProcedure(recording).kind).toBe('vacuum-draw');
    expect(shown(findPhases(recording))).toBe(
      'baseline 0-10, draw 10-20, settle 20-22, hold 22-60, release 60-75.5, rest 75.5-90',
    );
  });

  it('may be tried twice, with a vapour check between', () => {
    const recording = record(200, (t) => {
      const second = t >= 120 ? once(t - 110) : undefined;
      const check = t >= 80 && t < 100;
      return { ...(second ?? once(t)), ...(check ? { ventClosed: 1, tankPressureGaugePa: 3 * (t - 80) } : {}) };
    });
    expect(findPhases(recording).map(({ kind }) => kind)).toEqual([
      'baseline',
      'draw',
      'settle',
      'hold',
      'release',
      'baseline',
      'sealed',
      'release',
      'baseline',
      'draw',
      'settle',
      'hold',
      'release',
      'rest',
    ]);
  });

  it('is told from the pressure alone', () => {
    const recording = record(90, (t) => ({ tankPressureGaugePa: drawPressure(t, 10) + 15 * Math.sin(7 * t) }));
    expect(findProcedure(recording).kind).toBe('vacuum-draw');
    const phases = findPhases(recording);
    expect(phases.map(({ kind }) => kind)).toEqual(['baseline', 'draw', 'settle', 'hold', 'release', 'rest']);
    const at = (kind: string): number => phases.find((phase) => phase.kind === kind)!.fromS;
    expect(Math.abs(at('draw') - 10)).toBeLessThan(2);
    expect(Math.abs(at('settle') - 20)).toBeLessThan(2);
    expect(Math.abs(at('release') - 60)).toBeLessThan(2);
  });

  it('without its vent command is told by purge and pressure, without its purge command by vent and pressure', () => {
    for (const missing of ['ventClosed', 'purgeDuty'] as const) {
      const recording = record(90, (t) => {
        const { [missing]: _, ...rest } = once(t);
        return rest;
      });
      expect(findProcedure(recording).kind, missing).toBe('vacuum-draw');
      // The pull begins to show a moment after the vent shut.
      const phases = findPhases(recording).filter(({ kind }) => kind !== 'sealed');
      expect(phases.map(({ kind }) => kind)).toEqual(['baseline', 'draw', 'settle', 'hold', 'release', 'rest']);
      const at = (kind: string): number => phases.find((phase) => phase.kind === kind)!.fromS;
      expect(Math.abs(at('draw') - 10)).toBeLessThan(2);
      expect(Math.abs(at('settle') - 20)).toBeLessThan(2);
      expect(Math.abs(at('release') - 60)).toBeLessThan(2);
    }
  });

  it('is not seen in a drive whose plugged vent path lets the purge pull a vacuum', () => {
    // Purged for minutes at a changing duty, off now and then; the pressure follows within seconds.
    const duty = (t: number): number => (t % 100 < 70 ? 0.2 + 0.1 * Math.sin(t / 15) : 0);
    const pressure = (t: number): number => -9000 * duty(t) + 30 * Math.sin(3 * t);
    for (const sample of [
      (t: number): Sample => ({ tankPressureGaugePa: pressure(t) }),
      (t: number): Sample => ({ tankPressureGaugePa: pressure(t), purgeDuty: duty(t) }),
    ])
      expect(findProcedure(record(600, sample)).kind).not.toBe('vacuum-draw');
    const moving = (t: number): Sample => ({
      tankPressureGaugePa: pressure(t),
      purgeDuty: duty(t),
      vehicleSpeedMPerS: 15,
    });
    expect(findProcedure(record(600, moving)).kind).toBe('purge-drive');
  });

  it('that failed and a purge with the vent open look alike without the vent command', () => {
    const recording = record(60, (t) => ({
      tankPressureGaugePa: 10 * Math.sin(t),
      purgeDuty: t > 10 && t < 40 ? 0.2 : 0,
      engineSpeedRpm: 700,
    }));
    expect(findProcedure(recording)).toMatchObject({
      kind: 'unknown',
      reasons: expect.arrayContaining([expect.stringContaining('look alike')]),
    });
  });

  it('a vacuum that is let go is no fuel going in', () => {
    const recording = record(120, (t) => ({
      tankPressureGaugePa: t < 80 ? -10 * t : -800 * Math.exp(-(t - 80)),
      engineSpeedRpm: 0,
    }));
    expect(findProcedure(recording).kind).toBe('unknown');
  });

  it('is not seen where a filled tank lets its pressure go', () => {
    const recording = record(90, (t) => ({ tankPressureGaugePa: t < 30 ? 900 : 0 }));
    expect(findProcedure(recording).kind).toBe('unknown');
    expect(shown(findPhases(recording))).toBe('rest 0-90');
  });

  it('with a stuck sensor still has its phases from the commands; the release never ends', () => {
    const recording = record(90, (t) => ({ ...once(t), tankPressureGaugePa: 12 }));
    expect(findPhases(recording).map(({ kind }) => kind)).toEqual(['baseline', 'draw', 'settle', 'hold', 'release']);
  });
});

describe('other procedures', () => {
  it('engine off: sealed, vented half way, sealed', () => {
    const recording = record(300, (t) => ({
      tankPressureGaugePa: 0,
      purgeDuty: 0,
      ventClosed: (t >= 60 && t < 150) || (t >= 180 && t < 280) ? 1 : 0,
      engineSpeedRpm: 0,
    }));
    expect(findProcedure(recording).kind).toBe('engine-off');
    expect(shown(findPhases(recording))).toBe(
      'vented 0-60, sealed 60-150, vented 150-180, sealed 180-280, vented 280-300',
    );
  });

  it('purge drive: purge and idle', () => {
    const recording = record(100, (t) => ({
      purgeDuty: t >= 20 && t < 70 ? 0.3 : 0,
      ventClosed: 0,
      engineSpeedRpm: 2000,
    }));
    expect(findProcedure(recording).kind).toBe('purge-drive');
    expect(shown(findPhases(recording))).toBe('idle 0-20, purge 20-70, idle 70-100');
  });

  it('refuelling: from level and pressure', () => {
    const recording = record(120, (t) => ({
      fuelLevel: 0.1 + 0.008 * Math.min(Math.max(t - 23, 0), 70),
      tankPressureGaugePa: t >= 20 && t < 90 ? 700 : 0,
      ventClosed: 0,
      purgeDuty: 0,
      engineSpeedRpm: 0,
    }));
    expect(findProcedure(recording).kind).toBe('refuelling');
    expect(shown(findPhases(recording))).toBe('baseline 0-20, filling 20-90, filled 90-120');
  });

  it('refuelling that clicks off: from the noted times, and known without them by the push', () => {
    const tries = [10, 20, 30];
    const pressure = (t: number): number => {
      const start = tries.filter((each) => each <= t).at(-1);
      return start === undefined ? 0 : t < start + 2 ? 1000 * (t - start) : 2000 * Math.exp(-(t - start - 2) / 3);
    };
    const sample = (t: number): Sample => ({
      fuelLevel: 0.3,
      tankPressureGaugePa: pressure(t),
      ventClosed: 0,
      purgeDuty: 0,
      engineSpeedRpm: 0,
    });
    const noted = record(60, sample, { shutOffTimesS: [12, 22, 32] });
    const phases = findPhases(noted);
    expect(phases.map(({ kind }) => kind)).toEqual([
      'baseline',
      'filling',
      'filled',
      'filling',
      'filled',
      'filling',
      'filled',
    ]);
    phases
      .filter(({ kind }) => kind === 'filling')
      .forEach(({ fromS, toS }, k) => {
        expect(Math.abs(fromS - tries[k]!)).toBeLessThan(2);
        expect(toS).toBeCloseTo(tries[k]! + 2.5, 9);
      });
    expect(findProcedure(record(60, sample)).kind).toBe('refuelling');
  });

  it('refuelling that clicks off keeps its tries apart where nobody noted the shut-offs', () => {
    const starts = [10, 22, 34];
    const pressure = (t: number): number => {
      const start = starts.filter((each) => each <= t).at(-1);
      return start === undefined ? 0 : t < start + 4 ? 500 * (t - start) : 2000 * Math.exp(-(t - start - 4) / 4);
    };
    const recording = record(60, (t) => ({
      fuelLevel: 0.3 + 0.004 * Math.min(Math.max(t - 10, 0), 30),
      tankPressureGaugePa: pressure(t) + 20 * Math.sin(9 * t),
      ventClosed: 0,
      engineSpeedRpm: 0,
    }));
    expect(findProcedure(recording).kind).toBe('refuelling');
    const filling = findPhases(recording).filter(({ kind }) => kind === 'filling');
    expect(filling).toHaveLength(starts.length);
    filling.forEach(({ fromS, toS }, k) => {
      expect(Math.abs(fromS - starts[k]!)).toBeLessThan(1.5);
      expect(Math.abs(toS - starts[k]! - 4)).toBeLessThan(1.5);
    });
  });

  it('pump run: reference, tank, purge opened, reference again', () => {
    const recording = record(100, (t) => ({
      pumpOn: t >= 10 && t < 90 ? 1 : 0,
      changeoverToTank: t >= 30 && t < 80 ? 1 : 0,
      purgeDuty: t >= 70 && t < 80 ? 1 : 0,
    }));
    expect(shown(findPhases(recording))).toBe(
      'baseline 0-10, reference 10-30, tank-pump 30-70, release 70-80, reference 80-90, rest 90-100',
    );
  });

  it('sealed tank: hold and release', () => {
    const recording = record(60, (t) => ({ tankPressureGaugePa: t < 30 ? 9000 : 0, isolationOpen: t >= 30 ? 1 : 0 }));
    expect(findProcedure(recording).kind).toBe('sealed-hold');
    expect(shown(findPhases(recording))).toBe('hold 0-30, release 30-60');
  });

  it('sealed tank: a draw of the canister side alone is part of it, one through the open isolation valve is not', () => {
    const drawn = (isolationOpen: number) =>
      record(60, (t) => ({
        tankPressureGaugePa: t < 20 ? 9000 : 0,
        isolationOpen: t >= 20 && t < 30 ? 1 : t >= 30 && t < 40 ? isolationOpen : 0,
        ventClosed: t >= 30 && t < 50 ? 1 : 0,
        purgeDuty: t >= 30 && t < 40 ? 0.2 : 0,
      }));
    expect(findProcedure(drawn(0)).kind).toBe('sealed-hold');
    expect(shown(findPhases(drawn(0)))).toBe('hold 0-20, release 20-30, hold 30-60');
    expect(findProcedure(drawn(1)).kind).toBe('vacuum-draw');
  });

  it('that the notes name are believed', () => {
    const recording = record(10, () => ({ tankPressureGaugePa: 0 }), { procedure: 'purge-drive' });
    expect(findProcedure(recording)).toEqual({ kind: 'purge-drive', reasons: ['the notes say so'] });
  });
});

describe('phases given by hand', () => {
  it('stand where they are given, and the found ones elsewhere', () => {
    const recording = record(60, () => ({ tankPressureGaugePa: 0, ventClosed: 0, purgeDuty: 0, engineSpeedRpm: 0 }));
    const phases = findPhases(recording, [
      { kind: 'hold', fromS: 10, toS: 20 },
      { kind: 'release', fromS: 50, toS: 60 },
    ]);
    expect(shown(phases)).toBe('rest 0-10, hold 10-20, rest 20-50, release 50-60');
  });
});

describe('any recording', () => {
  const cell = fc.oneof(fc.constantFrom(0, 1, 0.3, Number.NaN), fc.double({ min: -5000, max: 5000, noNaN: true }));
  const anyRecording: fc.Arbitrary<Recording> = fc
    .tuple(
      fc.subarray(Object.keys(CHANNELS) as ChannelName[]),
      fc.integer({ min: 1, max: 40 }),
      fc.constantFrom(undefined, ...PROCEDURES),
    )
    .chain(([names, n, procedure]) =>
      fc.tuple(...names.map(() => fc.array(cell, { minLength: n, maxLength: n }))).map((columns) => ({
        timeS: Float64Array.from({ length: n }, (_, i) => i * 0.7),
        label: 'any',
        channels: Object.fromEntries(names.map((name, k) => [name, Float64Array.from(columns[k]!)])),
        ...(procedure ? { notes: { procedure, shutOffTimesS: [3, 9] } } : {}),
      })),
    );

  it('is covered by its phases without gap or overlap, each of a kind that its procedure has', () => {
    fc.assert(
      fc.property(anyRecording, (recording) => {
        const { kind, reasons } = findProcedure(recording);
        expect(reasons.length).toBeGreaterThan(0);
        const phases = findPhases(recording);
        const last = recording.timeS.at(-1)!;
        expect(phases[0]!.fromS).toBe(0);
        expect(phases.at(-1)!.toS).toBe(last);
        for (let k = 1; k < phases.length; k++) {
          expect(phases[k]!.fromS).toBe(phases[k - 1]!.toS);
          expect(phases[k]!.kind).not.toBe(phases[k - 1]!.kind);
        }
        const allowed = kind === 'unknown' ? ['rest'] : PHASES_OF[kind];
        for (const phase of phases) expect(allowed).toContain(phase.kind);
      }),
      { numRuns: 400 },
    );
  });

  it('has a phase list for every procedure, of known phases only', () => {
    for (const procedure of PROCEDURES) for (const kind of PHASES_OF[procedure]) expect(PHASES).toContain(kind);
  });
});
