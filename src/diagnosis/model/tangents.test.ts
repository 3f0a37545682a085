import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveAreaFromDiameter } from '../../physics/equivalent-diameter.ts';
import { buildDrive } from './build-drive.ts';
import { type CommandChange, commandChanges } from './command-changes.ts';
import type { Drive } from './drive.ts';
import { Q, QUANTITY_COUNT, type QuantityName } from './quantities.ts';
import { tangents } from './tangents.ts';
import { AMBIENT_K, AMBIENT_PA, quantities, recordingOf } from './test-drive.ts';
import { runTwoSpace, TRACE_STRIDE } from './two-space.ts';

const area = (mm: number) => effectiveAreaFromDiameter(mm * 1e-3);
const NAMES = Object.keys(Q) as QuantityName[];
const SLOTS = NAMES.map((name) => Q[name]);

/** A drive in which every quantity has a say: purge and vent commands, a draw that drifts, a filling with a full tank. */
function driveWith(movable: (changes: readonly CommandChange[]) => readonly CommandChange[], filled: boolean): Drive {
  const recording = recordingOf({
    lengthS: 80,
    rateHz: 1,
    vent: (t) => (t > 10 && t < 60 ? 1 : 0),
    duty: (t) => (!filled && t > 12 && t < 25 ? 0.4 : 0),
  });
  const changes: CommandChange[] = commandChanges(recording);
  if (filled) changes.push({ kind: 'fill-on', timeS: 66.3, gapS: 0.4 }, { kind: 'fill-off', timeS: 74.1, gapS: 0.1 });
  return buildDrive(recording, AMBIENT_PA, {
    observationTimesS: recording.timeS,
    changes,
    movable: movable(changes),
    longestStepS: (since) => (since < 2 ? 0.1 : 0.5),
    warmKnots: 3,
    ...(!filled && { draw: { fromS: 12, toS: 25 } }),
    ambientAbsPa: AMBIENT_PA,
    ambientTemperatureK: AMBIENT_K,
    tankTemperatureK: AMBIENT_K + 4,
    vapourSensitivityPerK: 0.035,
    clipLowGaugePa: -60e3,
    clipHighGaugePa: 60e3,
    ...(filled && { fillM3PerS: (t: number) => (t > 66.3 && t < 74.1 ? 6e-4 : 0), full: (t: number) => t > 71 }),
  });
}

const LIVELY: Partial<Record<QuantityName, number>> = {
  leakArea: area(0.6),
  ventShutArea: area(0.2),
  seepArea: area(0.1),
  vapourPressure: 30e3,
  evaporation: 5e-5,
  deficit: 1500,
  slowVolume: 3e-4,
  initialGauge: 30,
  offset: 12,
  gain: 1.01,
  lag: 0.3,
  warm0: 1e-3,
  warm1: -5e-4,
  warm2: 4e-4,
  drift1: 0.1,
  drift2: -0.1,
  ambientRate: 2,
  reliefVacuum: 3e3,
  fullPipeArea: 5e-6,
};
/** A step that differences resolve, in each quantity's own unit: a small share of it, or of its usual size. */
const stepOf = (name: QuantityName, q: Float64Array): number => {
  const zero: Partial<Record<QuantityName, number>> = { deficit: 10, initialGauge: 1, offset: 1, ambientRate: 0.01 };
  if (name in zero) return zero[name]!;
  if (name.startsWith('shift')) return 2e-4;
  if (name.startsWith('warm')) return 1e-5;
  if (name.startsWith('drift')) return 1e-3;
  return 1e-4 * Math.max(q[Q[name]]!, 1e-9);
};

/** Lengths of difference tried, in usual steps. */
const LENGTHS = [30, 10, 3, 1, 0.3, 0.1, 0.01, 0.001];

function compare(q: Float64Array, drive: Drive): { name: string; off: number }[] {
  const n = drive.observationCount;
  const trace = new Float64Array(drive.stepCount * TRACE_STRIDE);
  runTwoSpace(q, drive, new Float64Array(n), undefined, trace);
  const out = new Float64Array(n * SLOTS.length);
  tangents(
    q,
    drive,
    trace,
    SLOTS,
    out,
    SLOTS.map((_, j) => j * n),
  );
  return NAMES.map((name, j) => {
    const difference = (step: number) => {
      const run = (by: number) => {
        const moved = q.slice();
        moved[Q[name]]! += by;
        const p = new Float64Array(n);
        runTwoSpace(moved, drive, p);
        return p;
      };
      const up = run(step);
      const down = run(-step);
      let worst = 0;
      let largest = 0;
      for (let o = 0; o < n; o++) {
        const half = (up[o]! - down[o]!) / 2;
        worst = Math.max(worst, Math.abs(out[j * n + o]! * step - half));
        largest = Math.max(largest, Math.abs(half));
      }
      return { worst, largest };
    };
    // Newton stops at a count that may differ between the two runs: a jump of up to a hundredth of a pascal, which drowns in a
    // longer difference and which a much shorter one does not reach. A wrong derivative is wrong at each.
    const offs = LENGTHS.map((share) => {
      const { worst, largest } = difference(stepOf(name, q) * share);
      return worst / (largest + 0.1 * share);
    });
    return { name, off: Math.min(...offs) };
  });
}

describe('exact derivatives of the two-space model', () => {
  const moved = (changes: readonly CommandChange[]) => changes.slice(0, 4);
  const afar = (changes: readonly CommandChange[]) => changes.slice(-4);

  it.each([
    ['a draw and a hold', driveWith(moved, false)],
    ['a filling', driveWith(afar, true)],
  ])('are those of central differences: %s', (_, drive) => {
    const worst = compare(quantities(LIVELY), drive).filter((c) => !(c.off < 0.005));
    expect(worst).toEqual([]);
  });

  it('hold for quantities up to twice the usual either way', () => {
    const drive = driveWith(moved, false);
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.5, max: 2, noNaN: true }), { minLength: 12, maxLength: 12 }), (f) => {
        const q = quantities(LIVELY);
        for (let slot = 0; slot < 12; slot++) q[slot]! *= f[slot]!;
        // the cap's valve snaps: at the very pressure where it opens differences straddle two laws
        q[Q.reliefVacuum] = 9e4;
        expect(compare(q, drive).filter((c) => !(c.off < 0.01))).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('are zero where the sensor is at its limit', () => {
    const drive = { ...driveWith(moved, false), clipLowGaugePa: -200 };
    const q = quantities(LIVELY);
    const n = drive.observationCount;
    const p = new Float64Array(n);
    const trace = new Float64Array(drive.stepCount * TRACE_STRIDE);
    runTwoSpace(q, drive, p, undefined, trace);
    const out = new Float64Array(n);
    tangents(q, drive, trace, [Q.leakArea], out, [0]);
    const atLimit = p.map((x, o) => (x <= -200 ? Math.abs(out[o]!) : 0));
    expect(p.filter((x) => x <= -200).length).toBeGreaterThan(5);
    expect(Math.max(...atLimit)).toBe(0);
  });

  it('knows every quantity of the model', () => {
    expect(Math.max(...SLOTS)).toBe(QUANTITY_COUNT - 1);
  });
});
