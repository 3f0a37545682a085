/** Pump runs, sealed holds and refuellings of the full simulation, followed as they grow and weighed as a whole. */
import { describe, expect, it } from 'vitest';
import type { Recording } from '../../recording/recording.ts';
import { pumpRun } from '../../simulation/procedures/pump-run.ts';
import { refuelling } from '../../simulation/procedures/refuelling.ts';
import { sealedHold } from '../../simulation/procedures/sealed-hold.ts';
import type { Car } from '../../system/car.ts';
import { diagnose } from '../diagnose.ts';
import type { CauseId } from '../finding.ts';
import { GrowingFinding, type GrowingUpdate } from './growing-finding.ts';
import { sliceRecording } from './simulated-recording.ts';
import { carOf, recordRun, type SimulatedRun } from './simulated-run.ts';

interface Case extends SimulatedRun {
  /** Causes that the run cannot part from the first: they count together. */
  readonly alike: readonly CauseId[];
  readonly sized: boolean;
}

const HALF_FULL = 0.5;
/** A simulation that fails fails the test by what it throws. */
const record = (run: SimulatedRun, rateHz: number): Recording => recordRun(run, rateHz, HALF_FULL);

function follow(recording: Recording, car: Car, rateHz: number) {
  const finding = new GrowingFinding(car, { ...(recording.notes && { notes: recording.notes }) });
  const updates: GrowingUpdate[] = [];
  for (let i = 0; i < recording.timeS.length; i += rateHz) {
    updates.push(finding.add(sliceRecording(recording, i, i + rateHz)));
  }
  return { updates, end: finding.finish() };
}

/** Steps of the model that a second may take: what is allowed and saved up, and the fit that was begun before. */
const MOST_STEPS = 90_000;
/** Probabilities agree to this, ln diameters to this or half the whole finding's interval. */
const PROBABILITY = 0.2;
const LN_DIAMETER = 0.1;

/** Shorter than usual, so that many of them can be followed. */
const PUMP_RUN = pumpRun({ tankS: 120, referenceS: 25, purgeOpenS: 8, referenceAgainS: 10 });
const SEALED_HOLD = sealedHold({ holdS: 25, releaseS: 15, canisterTestS: 30, commonS: 25 });

const HOLES: readonly CauseId[] = ['leak', 'vent_leak', 'purge_leak'];
const CASES: readonly Case[] = [
  {
    name: 'a pump run with a hole of 0.5 mm',
    layout: 'pump-reference',
    procedure: PUMP_RUN,
    faults: [{ kind: 'leak', place: 'tankTop', size: 0.5e-3 }],
    alike: HOLES,
    sized: true,
  },
  {
    name: 'a pump run of a sound car',
    layout: 'pump-reference',
    procedure: PUMP_RUN,
    faults: [],
    alike: ['none'],
    sized: false,
  },
  {
    name: 'a sealed hold of a sound car',
    layout: 'sealed-tank',
    procedure: SEALED_HOLD,
    faults: [],
    tankGaugePa: 12000,
    alike: ['none'],
    sized: false,
  },
  {
    name: 'a sealed hold with a hole of 1 mm at the cap',
    layout: 'sealed-tank',
    procedure: SEALED_HOLD,
    faults: [{ kind: 'leak', place: 'cap', size: 1e-3 }],
    tankGaugePa: 0,
    alike: ['leak'],
    sized: true,
  },
  {
    name: 'a sealed hold with a hole of 0.5 mm in the canister',
    layout: 'sealed-tank',
    procedure: SEALED_HOLD,
    faults: [{ kind: 'leak', place: 'canister', size: 0.5e-3 }],
    tankGaugePa: 12000,
    alike: ['leak', 'vent_leak'],
    sized: false,
  },
  {
    name: 'a refuelling with the vent valve stuck shut',
    layout: 'engine-vacuum',
    procedure: refuelling({ volumeM3: 0.015 }),
    faults: [{ kind: 'vent-stuck-shut' }],
    alike: ['vent_stuck_closed', 'path_blocked'],
    sized: false,
  },
  {
    name: 'a refuelling of a sound car',
    layout: 'engine-vacuum',
    procedure: refuelling({ volumeM3: 0.012 }),
    faults: [],
    alike: ['none'],
    sized: false,
  },
];

describe('a growing run ends where the whole one does', () => {
  it.each(CASES)('$name', (which) => {
    const rateHz = 5;
    const car = carOf(which.layout);
    const recording = record(which, rateHz);
    const whole = diagnose({ car, recordings: [recording] });
    const { updates, end } = follow(recording, car, rateHz);
    expect(end.settled).toBe(true);
    const together = (causes: readonly { readonly id: CauseId; readonly probability: number }[]) =>
      causes.reduce((s, c) => s + (which.alike.includes(c.id) ? c.probability : 0), 0);
    expect(which.alike).toContain(whole.causes[0]!.id);
    expect(which.alike).toContain(end.causes[0]!.id);
    expect(Math.abs(together(end.causes) - together(whole.causes))).toBeLessThan(PROBABILITY);
    for (const u of [...updates, end]) {
      if (u.causes.length > 0) expect(u.causes.reduce((s, c) => s + c.probability, 0)).toBeCloseTo(1, 9);
    }
    for (const u of updates) expect(u.modelSteps).toBeLessThan(MOST_STEPS);
    expect(end.diameterMm === null).toBe(whole.diameterMm === null);
    if (!which.sized) return;
    const half = Math.log(whole.diameterMm!.hi90 / whole.diameterMm!.lo90) / 2;
    const apart = Math.log(end.diameterMm!.median / whole.diameterMm!.median);
    expect(Math.abs(apart)).toBeLessThan(Math.max(LN_DIAMETER, half));
    expect(Math.abs(end.exceeds.mm0_5! - whole.exceeds.mm0_5!)).toBeLessThan(PROBABILITY);
    expect(Math.abs(end.exceeds.mm1_0! - whole.exceeds.mm1_0!)).toBeLessThan(PROBABILITY);
  });
});

describe('a growing run says what it has not tested', () => {
  const which = CASES[0]!;
  it('no size before the pump was turned to the tank, and the limit with it', () => {
    const { updates } = follow(record(which, 5), carOf(which.layout), 5);
    const reference = updates.filter((u) => u.phase === 'reference' && u.uptoS! > 20 && u.uptoS! < 40);
    expect(reference.length).toBeGreaterThan(10);
    for (const u of reference) {
      expect(u.limits.join(' ')).toContain('never turned to the tank');
      if (u.causes[0]?.id === 'none' || u.causes[0]?.id === 'leak') expect(u.diameterMm).toBeNull();
    }
  });
});

describe('waiting longer for a pump on the tank', () => {
  it('is worth it in the first seconds and adds nothing once the size of a hole is known', () => {
    const which: Case = {
      ...CASES[0]!,
      procedure: pumpRun({ tankS: 200, referenceS: 25, purgeOpenS: 1, referenceAgainS: 1 }),
      faults: [{ kind: 'leak', place: 'tankTop', size: 0.8e-3 }],
    };
    const { updates } = follow(record(which, 2), carOf(which.layout), 2);
    const turn = updates.filter((u) => u.phase === 'tank-pump' && u.holdingLonger !== undefined);
    expect(turn.length).toBeGreaterThan(150);
    const early = turn.filter((u) => u.phaseSinceS! < 9);
    for (const u of early) expect(u.holdingLonger!.verdict).toBe('worth it');
    for (const { holdingLonger: h } of turn) {
      expect(h!.sdLnDiameter.after60S).toBeLessThanOrEqual(h!.sdLnDiameter.after30S + 1e-9);
      expect(h!.sdLnDiameter.after30S).toBeLessThanOrEqual(h!.sdLnDiameter.now + 1e-9);
    }
    const late = turn.filter((u) => u.phaseSinceS! > 130);
    expect(late.filter((u) => u.holdingLonger!.verdict === 'adds nothing').length).toBeGreaterThan(0.5 * late.length);
  });
});
