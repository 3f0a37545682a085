import { describe, expect, it } from 'vitest';
import { findPhases } from '../../recording/phases.ts';
import { randomStream } from '../../simulation/random.ts';
import { runTwoSpace } from '../model/two-space.ts';
import { gridOf, prepare } from '../prepare.ts';
import { History, MOST_BINS } from './history.ts';
import { drawAndHold, simulateRecording, sliceRecording, TEST_CAR } from './simulated-recording.ts';
import { Coarseness, MOST_STEPS, outline, snapshot } from './snapshot.ts';

function grow(lengthS: number, releaseS: number, batch: number) {
  const recording = simulateRecording(
    {
      procedure: 'vacuum-draw',
      commands: drawAndHold(lengthS - 20 - releaseS, releaseS),
      lengthS,
      rateHz: 10,
      form: 'leak',
      leakDiameterMm: 0.25,
      noisePa: 8,
      spread: 0.4,
      engineRuns: true,
    },
    randomStream(5),
  );
  const history = new History(TEST_CAR, recording.notes);
  for (let i = 0; i < recording.timeS.length; i += batch) {
    history.add(sliceRecording(recording, i, i + batch), gridOf('vacuum-draw').width);
    outline(history, 'x');
    history.coarsen();
  }
  return { recording, history, prepared: snapshot(TEST_CAR, history, outline(history, 'x'), new Coarseness()) };
}

describe('the history of a growing recording', () => {
  it('is bounded, and the model runs through it as through the whole recording', () => {
    const { recording, history, prepared } = grow(420, 30, 50);
    const whole = prepare(TEST_CAR, recording, 'vacuum-draw', findPhases(recording));
    expect(history.bins.length).toBeLessThanOrEqual(MOST_BINS);
    expect(prepared.drive.stepCount).toBeLessThanOrEqual(MOST_STEPS);
    expect(whole.observations.timeS.length).toBeGreaterThan(2 * MOST_BINS);
    const modelled = (p: typeof whole) => {
      const out = new Float64Array(p.observations.timeS.length);
      runTwoSpace(p.base, p.drive, out);
      return out;
    };
    const fine = modelled(whole);
    const coarse = modelled(prepared);
    const depth = Math.max(...fine.map(Math.abs));
    const at = (t: number) => {
      const { timeS } = whole.observations;
      const k = Math.min(timeS.length - 2, Math.max(0, timeS.findIndex((x) => x > t) - 1));
      const u = (t - timeS[k]!) / (timeS[k + 1]! - timeS[k]!);
      return fine[k]! + u * (fine[k + 1]! - fine[k]!);
    };
    prepared.observations.timeS.forEach((t, k) => {
      // in the run of the draw and the release the bins are not the same, so the line between them differs
      if (prepared.observations.phase[k] !== 'hold') return;
      expect(Math.abs(coarse[k]! - at(t)), `at ${t} s`).toBeLessThan(0.004 * depth);
    });
    expect(prepared.phases.map((p) => p.kind)).toEqual(whole.phases.map((p) => p.kind));
    prepared.phases.forEach((p, i) => {
      expect(Math.abs(p.fromS - whole.phases[i]!.fromS)).toBeLessThan(0.51);
    });
    expect(prepared.drive.ventShut.filter((v) => v === 1).length).toBeGreaterThan(50);
  });

  it('keeps command changes exactly and does not care how the samples were dealt', () => {
    const one = grow(60, 10, 1);
    const many = grow(60, 10, 97);
    expect(one.history.changes).toEqual(many.history.changes);
    expect(one.history.changes.map((c) => c.kind)).toEqual(['vent-shut', 'purge-on', 'purge-off', 'vent-open']);
    expect(one.history.changes[0]!.timeS).toBeCloseTo(7.95, 6);
    expect(one.prepared.observations.gaugePa.length).toBe(many.prepared.observations.gaugePa.length);
    one.prepared.observations.gaugePa.forEach((p, k) => {
      expect(p).toBeCloseTo(many.prepared.observations.gaugePa[k]!, 6);
    });
  });

  it('takes single spikes out and counts samples that come again', () => {
    const { recording } = grow(40, 0, 400);
    const p = Float64Array.from(recording.channels.tankPressureGaugePa!);
    const clean = new History(TEST_CAR, recording.notes);
    clean.add(recording, () => 1);
    for (const i of [60, 300]) p[i] = p[i]! + 3000;
    const spiky = new History(TEST_CAR, recording.notes);
    const r = { ...recording, channels: { ...recording.channels, tankPressureGaugePa: p } };
    spiky.add(r, () => 1);
    spiky.add(sliceRecording(r, 100, 150), () => 1);
    expect(spiky.left).toBe(50);
    expect(spiky.samples).toBe(recording.timeS.length);
    const readings = (h: History) => h.bins.reduce((s, b) => s + b.pressures[0]!.count, 0);
    expect(readings(clean) - readings(spiky)).toBe(2);
  });
});
