/**
 * An invented sheet for tests of the report: curves from closed forms, not from the model, so that a change in
 * the physics does not change these pictures.
 */
import type { Finding } from '../../src/diagnosis/finding.ts';
import type { Sheet } from '../../src/report/sheet.ts';

const DRAW_FROM_S = 12;
const DRAW_TO_S = 26;
const RELEASE_S = 96;
const END_S = 112;

/** A draw to -2 kPa, an exponential return, a release; `tauS` sets how fast the vacuum is lost. */
function pressurePa(t: number, tauS: number): number {
  if (t < DRAW_FROM_S) return 0;
  if (t < DRAW_TO_S) return (-2000 * (t - DRAW_FROM_S)) / (DRAW_TO_S - DRAW_FROM_S);
  const held = -2000 * Math.exp(-(Math.min(t, RELEASE_S) - DRAW_TO_S) / tauS);
  return t < RELEASE_S ? held : held * Math.exp(-(t - RELEASE_S) / 1.5);
}

/** Steps of a coarse converter, and a ripple that never repeats within the recording. */
const recordedPa = (t: number): number =>
  Math.round((pressurePa(t, 62) + 14 * Math.sin(t * 7.3) + 9 * Math.sin(t * 17.9)) / 12) * 12;

const timeS = Array.from({ length: END_S * 5 + 1 }, (_, i) => i / 5);

const finding: Finding = {
  verdict: 'fault',
  procedures: ['vacuum-draw'],
  causes: [
    {
      id: 'leak',
      probability: 0.912,
      places: [
        { group: ['cap and neck', 'tank top', 'vapour line'], probability: 0.8 },
        { group: ['canister', 'vent side'], probability: 0.112 },
      ],
      diameterMm: { median: 0.62, lo90: 0.56, hi90: 0.69 },
      relativeLogEvidence: 0,
      byPhase: [
        { recording: 0, phase: 'baseline', logEvidence: 0.1 },
        { recording: 0, phase: 'draw', logEvidence: 1.4 },
        { recording: 0, phase: 'hold', logEvidence: 38.2 },
        { recording: 0, phase: 'release', logEvidence: -0.7 },
      ],
    },
    {
      id: 'vent_leak',
      probability: 0.067,
      places: [{ group: ['vent valve'], probability: 0.067 }],
      diameterMm: { median: 0.63, lo90: 0.55, hi90: 0.72 },
      relativeLogEvidence: -2.1,
      byPhase: [],
    },
    {
      id: 'sensor_gain',
      probability: 0.014,
      places: [{ group: ['pressure sensor'], probability: 0.014 }],
      relativeLogEvidence: -4.4,
      byPhase: [],
    },
    {
      id: 'none',
      probability: 0.004,
      places: [],
      diameterMm: { median: 0.05, lo90: 0.01, hi90: 0.11 },
      relativeLogEvidence: -38,
      byPhase: [],
    },
    {
      id: 'purge_leak',
      probability: 0.003,
      places: [{ group: ['purge valve'], probability: 0.003 }],
      relativeLogEvidence: -41,
      byPhase: [],
    },
  ],
  pairs: [],
  diameterMm: { median: 0.62, lo90: 0.56, hi90: 0.69 },
  exceeds: { mm0_5: 0.994, mm1_0: 0.0004 },
  reasons: [
    { kind: 'for', text: 'During the hold the vacuum is lost faster than evaporation alone can explain.' },
    { kind: 'against', text: 'The release is a little slower than the model expects.' },
    { kind: 'limits', text: 'The fuel temperature was not recorded; the size allows for 10 to 35 °C.' },
    {
      kind: 'next-recording',
      text: 'The same test with the purge line clamped tells the purge side from the tank side.',
    },
  ],
  warnings: ['The level sensor moved by 3 % during the hold.'],
  overlays: [
    {
      recording: 0,
      cause: 'leak',
      timeS,
      recordedGaugePa: timeS.map(recordedPa),
      modelledGaugePa: timeS.map((t) => pressurePa(t, 60)),
      bandPa: timeS.map((t) => (t < DRAW_FROM_S ? 25 : 45)),
    },
    {
      recording: 0,
      cause: 'none',
      timeS,
      recordedGaugePa: timeS.map(recordedPa),
      modelledGaugePa: timeS.map((t) => pressurePa(t, 420)),
      bandPa: timeS.map(() => 55),
    },
  ],
};

export const sampleSheet: Sheet = {
  schema: 'vaporwright-finding-1',
  program: 'vaporwright 0.0.0-test',
  madeAt: '2026-03-04T09:12:00.000Z',
  car: {
    schema: 'vaporwright-car-1',
    label: 'Blue estate <invented> no. 7',
    layout: 'engine-vacuum',
    filler: 'capped',
    tankVolumeM3: 0.062,
    canisterFreeVolumeM3: 0.0026,
    pressureSensor: { minGaugePa: -3700, maxGaugePa: 1300 },
    fuel: { reidVapourPressurePa: { low: 50_000, high: 62_000 } },
    demo: true,
  },
  carSha256: 'c0'.repeat(32),
  complaint: 'lamp on, drives fine',
  codes: ['P0456'],
  recordings: [
    {
      label: 'self-test.csv',
      sha256: '5a'.repeat(32),
      samples: timeS.length,
      durationS: END_S,
      procedure: 'vacuum-draw',
      phases: [
        { kind: 'baseline', fromS: 0, toS: DRAW_FROM_S },
        { kind: 'draw', fromS: DRAW_FROM_S, toS: DRAW_TO_S },
        { kind: 'settle', fromS: DRAW_TO_S, toS: 30 },
        { kind: 'hold', fromS: 30, toS: RELEASE_S },
        { kind: 'release', fromS: RELEASE_S, toS: END_S },
      ],
      quality: ['5 samples per second, none missing', 'tank pressure: steps of 12 Pa'],
      warnings: ['1 line left out (first: line 40): it is empty'],
      conditions: { fuelLevel: 0.41, ambientTemperatureK: 291.15, barometricPa: 100_900 },
      commands: {
        timeS: [0, 11, DRAW_FROM_S, DRAW_TO_S, RELEASE_S, END_S],
        purgeDuty: [0, 0, 0.6, 0, 0, 0],
        ventClosed: [0, 1, 1, 1, 0, 0],
      },
    },
  ],
  finding,
  limits: [
    { diameterMm: 0.5, label: '0.020 in', source: 'sample, from memory' },
    { diameterMm: 1, label: '0.040 in', source: 'sample, from memory' },
  ],
};
