import { describe, expect, test } from 'vitest';
import { reasonsFor, runReasons } from '../../../diagnosis/explain/reasons.ts';
import { limitText } from '../../../diagnosis/explain/run-limits.ts';
import { CAUSES, type CauseId, type CauseProbability } from '../../../diagnosis/finding.ts';
import type { Quality } from '../../../recording/quality.ts';
import { PHASES } from '../../../recording/recording.ts';
import { qualityInWords } from '../../quality-words.ts';
import { machineTextInGerman, UNTRANSLATED } from './machine-de.ts';

/** Words that stand in English sentences of the program and in no German one. */
const ENGLISH = /\b(the|and|of|with|valve|fits|from|leak|pressure|samples?|recorded|sensor that)\b/i;

function expectGerman(texts: readonly string[]): void {
  expect(texts.length).toBeGreaterThan(0);
  for (const text of texts) {
    const german = machineTextInGerman(text);
    expect(german, text).not.toContain(UNTRANSLATED);
    expect(german, text).not.toMatch(ENGLISH);
  }
}

const cause = (id: CauseId, probability: number, logEvidence: number): CauseProbability => ({
  id,
  probability,
  places: [],
  relativeLogEvidence: 0,
  byPhase: PHASES.map((phase, i) => ({ recording: 0, phase, logEvidence: logEvidence - i })),
});

test.each(CAUSES)('reasons that name %s', (id) => {
  const rival = id === 'none' ? 'leak' : 'none';
  const causes = [cause(id, 0.6, 9), cause(rival, 0.3, -9), cause('sensor_noisy', 0.1, 0)];
  expectGerman(runReasons({ verdict: 'fault', causes, exceeds: { mm0_5: null, mm1_0: null } }).map(({ text }) => text));
});

test.each(PHASES)('reasons that name the phase %s', (phase) => {
  const causes = [
    { ...cause('leak', 0.9, 0), byPhase: [{ recording: 0, phase, logEvidence: 3 }] },
    cause('none', 0.1, 0),
  ];
  expectGerman(runReasons({ verdict: 'fault', causes, exceeds: { mm0_5: null, mm1_0: null } }).map(({ text }) => text));
});

/** A fit whose sensor lags so much [s]. */
const lateBy = (lagS: number) => ({
  problem: { parameters: [{ name: 'lag', slot: 0, kind: 'log', centre: 1, sd: 1, recording: -1 }] },
  fit: { z: [Math.log(lagS)] },
});

describe('reasons of a whole finding', () => {
  const pairs: readonly (readonly [CauseId, CauseId])[] = [
    ['vent_leak', 'leak'],
    ['purge_leak', 'none'],
    ['sensor_bias', 'none'],
    ['path_blocked', 'none'],
    ['leak', 'canister_saturated'],
    ['canister_saturated', 'fill_valve_stuck_open'],
  ];
  const sides = [-8, 8] as const;
  test.each(pairs)('%s against %s', (first, second) => {
    for (const trims of sides) {
      for (const exceeding of [0.5, null]) {
        // Only what the sentences are made of.
        const facts = {
          verdict: 'cannot-tell',
          causes: [cause(first, 0.5, 6), cause(second, 0.4, 0), cause('leak', 0.1, 0)],
          best: { id: first, parts: { trims }, ...lateBy(9) },
          rival: { id: second, parts: { trims: 0 } },
          prepared: [{ conditions: { fuelTemperatureKnown: false } }],
          exceeds: { mm0_5: exceeding, mm1_0: null },
          diameterMm: null,
        };
        expectGerman(reasonsFor(facts as unknown as Parameters<typeof reasonsFor>[0]).map(({ text }) => text));
      }
    }
  });
});

test('what a run leaves untested', () => {
  expectGerman([
    limitText({ kind: 'no-reference' }),
    limitText({ kind: 'tank-untested' }),
    limitText({ kind: 'tank-turn-short', lastedS: 55 }),
    limitText({ kind: 'purge-untested' }),
    limitText({ kind: 'tank-side-untested', standingGaugePa: -120, temperatureSwingK: 0.4 }),
    limitText({ kind: 'canister-side-untested' }),
    limitText({ kind: 'isolation-untested' }),
  ]);
});

test('remarks on a recording', () => {
  const quality: Quality = {
    time: {
      durationS: 100,
      rateHz: 0.2,
      missingSamples: 3,
      gaps: [1, 2, 3, 4, 5].map((at) => ({ fromS: at * 10, toS: at * 10 + 5 })),
    },
    channels: [
      {
        channel: 'tankPressureGaugePa',
        samples: 100,
        missing: 2,
        resolution: 12.5,
        noise: 8.25,
        clippedLow: 0.2,
        clippedHigh: 0.1,
        stuck: true,
        spikes: 2,
      },
    ],
  } as unknown as Quality;
  expectGerman(qualityInWords(quality));
  expectGerman(qualityInWords({ ...quality, channels: [], time: { ...quality.time, rateHz: 10, missingSamples: 0 } }));
});

test('what a recording lacks', () => {
  expectGerman([
    "hold.csv: the vent valve's command is not recorded; it was taken from the phases",
    "hold.csv: the purge valve's command is not recorded; it was taken from the phases",
    'hold.csv: manifold pressure is not known; that of an idling engine is assumed',
    'hold.csv: no channel tells when the vent valve was shut, so it takes no part; give its times in the notes.',
    'hold.csv: no channel tells when the purge valve worked, so it takes no part; correct its phases by hand.',
    'hold.csv: pressures such as -1.20e+6 Pa are beyond any vapour system, so it takes no part; check the unit of that column.',
    'hold.csv: readings beyond any vapour system (12, such as 1.00e+300 Pa) were left out',
  ]);
});

test('numbers get a decimal comma, and what is not known is handed on, marked', () => {
  expect(machineTextInGerman('tank pressure: steps of 12.5 Pa')).toBe('Tankdruck: Stufen von 12,5 Pa');
  expect(machineTextInGerman('A sentence of tomorrow.')).toContain('A sentence of tomorrow.');
  expect(machineTextInGerman('A sentence of tomorrow.')).toContain(UNTRANSLATED);
});
