import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildDrive } from './build-drive.ts';
import { commandChanges } from './command-changes.ts';
import { type Commands, driveOf, recordingOf } from './test-drive.ts';

const DRAW: Commands = {
  lengthS: 40,
  rateHz: 2,
  vent: (t) => (t > 5 && t < 30 ? 1 : 0),
  duty: (t) => (t > 7 && t < 15 ? 0.2 : 0),
};

describe('command changes', () => {
  it('lie in the middle of the gap between two samples', () => {
    expect(commandChanges(recordingOf(DRAW))).toEqual([
      { kind: 'vent-shut', timeS: 5.25, gapS: 0.5 },
      { kind: 'purge-on', timeS: 7.25, gapS: 0.5 },
      { kind: 'purge-off', timeS: 14.75, gapS: 0.5 },
      { kind: 'vent-open', timeS: 29.75, gapS: 0.5 },
    ]);
  });
});

describe('the steps of a drive', () => {
  it('cover the recording, keep to their length and end on every observation', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.double({ min: 0.03, max: 2, noNaN: true }),
        fc.integer({ min: 4, max: 20 }),
        (rateHz, longestStepS, shutS) => {
          const c: Commands = { ...DRAW, rateHz, longestStepS, vent: (t) => (t > shutS ? 1 : 0) };
          const d = driveOf(c);
          const { timeS } = recordingOf(c);
          expect(d.observationCount).toBe(timeS.length);
          // the run-in before the first sample counts back from the end
          const total = d.dtS.reduce((s, x) => s + x, 0);
          let t = timeS[timeS.length - 1]! - total;
          const seen: number[] = [];
          for (let i = 0; i < d.stepCount; i++) {
            expect(d.dtS[i]!).toBeGreaterThan(0);
            expect(d.dtS[i]!).toBeLessThanOrEqual(Math.max(longestStepS, 0.5 / rateHz) + 1e-9);
            t += d.dtS[i]!;
            if (d.observation[i]! >= 0) {
              expect(t).toBeCloseTo(timeS[d.observation[i]!]!, 6);
              seen.push(d.observation[i]!);
            }
          }
          expect(seen).toEqual(Array.from(timeS, (_, i) => i));
          // a movable change: one step ends on it and the next begins
          expect(d.shift.filter((s) => s > 0).length).toBe(d.shift.filter((s) => s < 0).length);
          expect(d.shift.some((s) => s > 0)).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('have the commands of their middle and nothing in between', () => {
    const d = driveOf(DRAW);
    let t = 40 - d.dtS.reduce((s, x) => s + x, 0);
    for (let i = 0; i < d.stepCount; i++) {
      const mid = t + 0.5 * d.dtS[i]!;
      t += d.dtS[i]!;
      expect(d.ventShut[i]).toBe(mid > 5.25 && mid < 29.75 ? 1 : 0);
      expect(d.duty[i]).toBe(mid > 7.25 && mid < 14.75 ? 0.2 : 0);
      expect(d.manifoldAbsPa[i]).toBe(35e3);
    }
  });

  it('take a standing engine to have ambient in its manifold, and the given value where nothing is recorded', () => {
    const recording = recordingOf(DRAW);
    const settings = {
      observationTimesS: recording.timeS,
      changes: [],
      movable: [],
      longestStepS: () => 1,
      warmKnots: 1,
      ambientAbsPa: 99e3,
      ambientTemperatureK: 293,
      tankTemperatureK: 293,
      vapourSensitivityPerK: 0.03,
      clipLowGaugePa: -4000,
      clipHighGaugePa: 4000,
    };
    const standing = { ...recording, channels: { ...recording.channels, engineSpeedRpm: new Float64Array(81) } };
    expect([...new Set(buildDrive(standing, 30e3, settings).manifoldAbsPa)]).toEqual([99e3]);
    const { manifoldAbsPa: _, ...without } = recording.channels;
    expect([...new Set(buildDrive({ ...recording, channels: without }, 30e3, settings).manifoldAbsPa)]).toEqual([30e3]);
  });
});
