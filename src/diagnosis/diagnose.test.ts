/** Whole findings on recordings that the finding's own model makes: what it was given it must find again. */
import { describe, expect, it } from 'vitest';
import type { Recording } from '../recording/recording.ts';
import { randomStream } from '../simulation/random.ts';
import { diagnose } from './diagnose.ts';
import { CAUSES, type CauseId, type Finding } from './finding.ts';
import { drawAndHold, simulateRecording, TEST_CAR } from './growing/simulated-recording.ts';

const draw = (form: string, seed: number, leakDiameterMm?: number, noisePa = 6): Recording =>
  simulateRecording(
    {
      procedure: 'vacuum-draw',
      commands: drawAndHold(60, 15),
      lengthS: 95,
      rateHz: 5,
      form,
      ...(leakDiameterMm !== undefined && { leakDiameterMm }),
      noisePa,
      spread: 0.4,
      engineRuns: true,
    },
    randomStream(seed),
  );
const find = (recording: Recording, more: Partial<Parameters<typeof diagnose>[0]> = {}) =>
  diagnose({ car: TEST_CAR, recordings: [recording], ...more });
const probability = (f: Finding, id: CauseId) => f.causes.find((c) => c.id === id)?.probability ?? 0;

let soundFinding: Finding | undefined;
/** The finding on one sound car, made once. */
const soundCar = (): Finding => {
  soundFinding ??= find(draw('none', 8));
  return soundFinding;
};

/** What holds of every finding that says something. */
function sane(f: Finding): void {
  expect(f.causes.map((c) => c.id).sort()).toEqual([...CAUSES].sort());
  expect(f.causes.reduce((s, c) => s + c.probability, 0)).toBeCloseTo(1, 6);
  for (let i = 1; i < f.causes.length; i++)
    expect(f.causes[i]!.probability).toBeLessThanOrEqual(f.causes[i - 1]!.probability);
  const pairShare = f.pairs.reduce((s, p) => s + p.probability, 0);
  for (const c of f.causes) {
    const places = c.places.reduce((s, p) => s + p.probability, 0);
    if (c.places.length > 0) {
      // a pair's share belongs to no place of its own, and pairs of next to no probability are not listed
      expect(places).toBeLessThanOrEqual(c.probability + 1e-9);
      expect(places).toBeGreaterThanOrEqual(c.probability - pairShare - 0.03);
    }
  }
  if (f.diameterMm) {
    expect(f.diameterMm.lo90).toBeLessThanOrEqual(f.diameterMm.median);
    expect(f.diameterMm.median).toBeLessThanOrEqual(f.diameterMm.hi90);
    expect(f.exceeds.mm0_5!).toBeGreaterThanOrEqual(f.exceeds.mm1_0!);
  }
  expect(f.reasons.length).toBeGreaterThan(0);
}

describe('a fault that the recording shows comes first', () => {
  for (const [form, first, seed] of [
    ['purge_stuck_closed', 'purge_stuck_closed', 1],
    ['purge_stuck_open', 'purge_stuck_open', 12],
    ['vent_stuck_closed', 'vent_stuck_closed', 3],
    ['gross_leak', 'gross_leak', 4],
    ['purge_leak', 'purge_leak', 15],
  ] as const) {
    it(form, () => {
      const f = find(draw(form, seed));
      sane(f);
      expect(f.causes[0]!.id).toBe(first);
      expect(f.verdict).toBe('fault');
      expect(f.procedures).toEqual(['vacuum-draw']);
    });
  }

  it('a leak, with its size inside the interval and the right side of the limits', () => {
    const f = find(draw('leak', 6, 1.3));
    sane(f);
    // a vent valve that does not seal looks the same to pressure
    expect(probability(f, 'leak') + probability(f, 'vent_leak')).toBeGreaterThan(0.7);
    expect(f.verdict).toBe('fault');
    expect(Math.abs(Math.log(f.diameterMm!.median / 1.3))).toBeLessThan(0.2);
    expect(f.exceeds.mm0_5).toBeGreaterThan(0.95);
    expect(f.exceeds.mm1_0).toBeGreaterThan(0.8);
    expect(f.overlays.length).toBeGreaterThan(0);
    const overlay = f.overlays[0]!;
    expect(overlay.modelledGaugePa.length).toBe(overlay.timeS.length);
  });

  it('complaint and code move what the recording leaves open, but not what it shows', () => {
    const recording = draw('purge_stuck_closed', 1);
    expect(find(recording, { codes: ['P0455'] }).causes[0]!.id).toBe('purge_stuck_closed');
    const sound = draw('none', 8);
    expect(probability(find(sound, { codes: ['P0441'] }), 'none')).not.toBeCloseTo(probability(soundCar(), 'none'), 3);
  });
});

describe('a sound car', () => {
  const faults = (f: Finding) => f.causes.filter((c) => c.id !== 'none').map((c) => c.probability);

  it('shows no fault, and no hole of half a millimetre', () => {
    const f = soundCar();
    sane(f);
    expect(f.verdict).toBe('no-fault-seen');
    expect(f.causes[0]!.id).toBe('none');
    expect(f.exceeds.mm0_5).toBeLessThan(0.05);
  });

  it('with hot, lively fuel is given no fault with more than a half', () => {
    const calm = draw('none', 9);
    // 0.5 Pa/s of vapour on top of what the model makes, over the whole recording: a hot day
    const hot = calm.channels.tankPressureGaugePa!.map(
      (p, i) => p + (calm.channels.ventClosed![i] ? 0.5 : 0) * Math.max(0, calm.timeS[i]! - 20),
    );
    const f = find({
      ...calm,
      channels: { ...calm.channels, tankPressureGaugePa: hot, fuelTemperatureK: calm.timeS.map(() => 313) },
    });
    sane(f);
    expect(Math.max(...faults(f))).toBeLessThan(0.5);
  });

  it('with sloshing fuel is given no fault with more than a half', () => {
    const calm = draw('none', 10);
    const random = randomStream(77);
    let slosh = 0;
    const p = calm.channels.tankPressureGaugePa!.map((x) => {
      slosh = 0.9 * slosh + Math.sqrt(1 - 0.81) * 35 * random.normal();
      return x + slosh;
    });
    const f = find({ ...calm, channels: { ...calm.channels, tankPressureGaugePa: p } });
    sane(f);
    expect(Math.max(...faults(f))).toBeLessThan(0.5);
  });
});

describe('what is missing is said', () => {
  it('channels that the car or day needs become warnings, and the finding still stands', () => {
    const {
      barometricPa: _b,
      ambientTemperatureK: _a,
      fuelTemperatureK: _f,
      fuelLevel: _l,
      ...bare
    } = draw('gross_leak', 4).channels;
    const recording = { ...draw('gross_leak', 4), channels: bare };
    const { tankVolumeM3: _, ...car } = TEST_CAR;
    const f = diagnose({ car, recordings: [recording] });
    sane(f);
    for (const what of ['barometric pressure', 'ambient temperature', 'fuel level', 'tank volume'])
      expect(
        f.warnings.some((w) => w.includes(what)),
        what,
      ).toBe(true);
    expect(f.causes[0]!.id).toBe('gross_leak');
  });

  it('no pressure, too few readings or no recording at all: cannot tell, and why', () => {
    const recording = draw('none', 8);
    const { tankPressureGaugePa: p, ...without } = recording.channels;
    const few = {
      ...recording,
      channels: { ...recording.channels, tankPressureGaugePa: p!.map((x, i) => (i < 8 ? x : Number.NaN)) },
    };
    for (const [bad, why] of [
      [{ ...recording, channels: without }, /no tank pressure/],
      [few, /fewer than 20 pressure readings/],
    ] as const) {
      const f = find(bad);
      expect(f.verdict).toBe('cannot-tell');
      expect(f.causes.every((c) => c.probability === 0)).toBe(true);
      expect(f.diameterMm).toBeNull();
      expect(f.exceeds).toEqual({ mm0_5: null, mm1_0: null });
      expect(f.warnings.some((w) => why.test(w))).toBe(true);
      expect(f.reasons.some((r) => r.kind === 'next-recording')).toBe(true);
    }
    expect(diagnose({ car: TEST_CAR, recordings: [] }).verdict).toBe('cannot-tell');
  });

  it('an unusable recording beside a good one takes no part; progress runs from 0 to 1, never backwards', () => {
    const seen: number[] = [];
    const good = draw('gross_leak', 4);
    const f = diagnose(
      { car: TEST_CAR, recordings: [{ ...good, channels: {} }, good] },
      { onProgress: (x) => seen.push(x) },
    );
    expect(f.causes[0]!.id).toBe('gross_leak');
    expect(f.overlays.every((o) => o.recording === 1)).toBe(true);
    expect(f.warnings.some((w) => /takes no part/.test(w))).toBe(true);
    expect(seen.at(-1)).toBe(1);
    for (let i = 1; i < seen.length; i++) expect(seen[i]!).toBeGreaterThanOrEqual(seen[i - 1]!);
  });
});

describe('checks by hand', () => {
  const recording = draw('leak', 4, 0.7);

  it('multiply the odds of the causes that they speak of, and nothing else', () => {
    const before = find(recording);
    const after = find(recording, { handChecks: [{ cause: 'vent_leak', logLikelihood: Math.log(5) }] });
    const odds = (f: Finding, a: CauseId, b: CauseId) => probability(f, a) / probability(f, b);
    // Bayes: the odds against a cause that the check says nothing of grow by the likelihood ratio
    expect(odds(after, 'vent_leak', 'leak') / odds(before, 'vent_leak', 'leak')).toBeGreaterThan(4.4);
    expect(odds(after, 'vent_leak', 'leak') / odds(before, 'vent_leak', 'leak')).toBeLessThan(5.6);
    sane(after);
  });
});
