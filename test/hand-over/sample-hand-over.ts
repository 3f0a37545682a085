/** Invented hand-overs for tests: a usual one, and one whose every text is as long as the job record allows or nearly so. */
import { judgeProof, type ProofInput } from '../../src/checks/proof/proof.ts';
import type { Finding, Overlay } from '../../src/diagnosis/finding.ts';
import type {
  HandOver,
  HandOverLanguage,
  HandOverPicture,
  HandOverRecording,
} from '../../src/report/hand-over/hand-over.ts';
import { sampleSheet } from '../e2e/sample-sheet.ts';

const [first, second] = sampleSheet.finding.overlays as readonly [Overlay, Overlay];
const source = sampleSheet.recordings[0]!;

const HASHES = {
  'before-repair': '0f1e2d3c4b5a69788796a5b4c3d2e1f00112233445566778899aabbccddeeff0',
  'after-repair': 'f00ffeeddccbbaa99887766554433221100f1e2d3c4b5a69788796a5b4c3d2e1',
} as const;

const recording = (taken: HandOverRecording['taken'], shown: Overlay, rival: Overlay | null): HandOverRecording => ({
  label: taken === 'before-repair' ? 'Self-test on arrival' : 'Self-test after repair',
  fileName: taken === 'before-repair' ? 'self-test.csv' : 'self-test-after.csv',
  sha256: HASHES[taken],
  bytes: 61_234,
  receivedAt: '2026-03-04T09:10:00.000Z',
  taken,
  usedInFinding: true,
  procedure: 'vacuum-draw',
  durationS: source.durationS,
  samples: source.samples,
  phases: source.phases,
  phasesByHand: false,
  commands: source.commands,
  conditions: source.conditions,
  quality: source.quality,
  trace: { timeS: shown.timeS, gaugePa: shown.recordedGaugePa },
  model: shown,
  rival,
});

const sound: Finding = {
  ...sampleSheet.finding,
  verdict: 'no-fault-seen',
  causes: [
    {
      id: 'none',
      probability: 0.93,
      places: [],
      diameterMm: { median: 0.05, lo90: 0.02, hi90: 0.1 },
      relativeLogEvidence: 0,
      byPhase: [],
    },
    { ...sampleSheet.finding.causes[0]!, probability: 0.07 },
  ],
  diameterMm: { median: 0.08, lo90: 0.03, hi90: 0.18 },
  exceeds: { mm0_5: 0.0002, mm1_0: 0.0001 },
  reasons: [],
  warnings: [],
  overlays: [],
};

/** A grey JPEG of 160 × 120 points. */
const GREY = [
  '/9j/2wBDABQUFBQVFBcZGRcfIh4iHy4rJycrLkYyNjI2MkZqQk5CQk5Cal5yXVZdcl6phXZ2hanDpJukw+zT0+z/////////',
  '2wBDARQUFBQVFBcZGRcfIh4iHy4rJycrLkYyNjI2MkZqQk5CQk5Cal5yXVZdcl6phXZ2hanDpJukw+zT0+z/////////wgAR',
  'CAB4AKADASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAX/xAAUAQEAAAAAAAAAAAAAAAAAAAAA/9oADAMBAAIQAxAA',
  'AACOAAAAC2AAAACIAAAAC2AAAACIAAAAC2AAAACIAAAAC2AAAACIAAAAC2AAAACIAAAAC2AAAACIAAAAC2AAAACIAAAAC2AA',
  'AAD/xAAUEAEAAAAAAAAAAAAAAAAAAACA/9oACAEBAAE/ABZ//8QAFBEBAAAAAAAAAAAAAAAAAAAAYP/aAAgBAgEBPwAh/8QA',
  'FBEBAAAAAAAAAAAAAAAAAAAAYP/aAAgBAwEBPwAh/9k=',
].join('');
const picture: HandOverPicture = {
  mediaType: 'image/jpeg',
  bytes: new Uint8Array(Buffer.from(GREY, 'base64')),
  widthPx: 160,
  heightPx: 120,
};

const measuredAt = { method: 'vacuum-draw', fuelLevel: 0.41, ambientTemperatureK: 291.15 } as const;
const limit = { label: '0.020 in', diameterMm: 0.5 } as const;

/** The proof as the job's own room works it out of the two findings, and of sections that were measured on both sides. */
export const sampleProof: ProofInput = {
  before: { diameterMm: sampleSheet.finding.diameterMm!, conditions: measuredAt },
  after: { diameterMm: sound.diameterMm!, conditions: { ...measuredAt, ambientTemperatureK: 293.15 } },
  sectionsBeforeMm: {
    'purge side': { median: 0.06, lo90: 0.03, hi90: 0.12 },
    'canister and vent': { median: 0.08, lo90: 0.04, hi90: 0.15 },
    'tank and neck': { median: 0.6, lo90: 0.5, hi90: 0.72 },
  },
  sectionsAfterMm: {
    'purge side': { median: 0.06, lo90: 0.03, hi90: 0.12 },
    'canister and vent': { median: 0.07, lo90: 0.04, hi90: 0.14 },
    'tank and neck': { median: 0.09, lo90: 0.05, hi90: 0.16 },
  },
  repairedMm: { median: 0.6, lo90: 0.5, hi90: 0.72 },
  limitMm: limit.diameterMm,
  repaired: ['F01'],
  repairsHole: true,
  causesBefore: [
    { id: 'F01', probability: 0.8 },
    { id: 'F04', probability: 0.05 },
  ],
  selfTest: 'not run',
};

export const sampleHandOver: HandOver = {
  language: 'en',
  units: { pressure: 'kPa', length: 'mm', temperature: 'degC' },
  parts: ['customer', 'evidence'],
  program: 'vaporwright 0.0.0-test',
  madeAt: '2026-03-05T16:40:00.000Z',
  shop: { name: 'Invented workshop', address: '1 Example Road, Exampleton', telephone: '000 000' },
  technician: 'Invented technician',
  job: { number: 17, openedAt: '2026-03-04T08:00:00.000Z', demo: true },
  vehicle: {
    name: 'Blue estate',
    owner: 'Invented owner',
    registration: 'DEMO 17',
    modelYear: 2014,
    odometerKm: 121_400,
  },
  car: sampleSheet.car,
  complaint: { words: 'The lamp came on two days after I filled up. It drives fine.', types: ['smell'] },
  codes: {
    before: [
      {
        code: 'P0456',
        status: 'stored',
        freezeFrame: [
          { name: 'engine speed', value: '1480', unit: '1/min' },
          { name: 'fuel level', value: '44', unit: '%' },
        ],
      },
    ],
    after: [],
  },
  limits: sampleSheet.limits,
  recordings: [
    recording('before-repair', first, second),
    recording('after-repair', { ...second, recordedGaugePa: second.modelledGaugePa }, null),
  ],
  findings: {
    before: {
      finding: sampleSheet.finding,
      program: 'vaporwright 0.0.0-test',
      madeAt: '2026-03-04T09:12:00.000Z',
      outdated: false,
      recordings: ['Self-test on arrival'],
    },
    after: {
      finding: sound,
      program: 'vaporwright 0.0.0-test',
      madeAt: '2026-03-05T16:30:00.000Z',
      outdated: false,
      recordings: ['Self-test after repair'],
    },
  },
  checks: [
    {
      at: '2026-03-04T10:05:00.000Z',
      by: 'Invented technician',
      what: 'Cap on the bench tester',
      result: 'fails, leaks at the seal',
      measured: { value: 92.5, unit: 'cm3/min' },
      speaksFor: ['leak'],
      speaksAgainst: ['vent_leak', 'purge_leak'],
      strength: 'strong',
    },
  ],
  repairs: [
    {
      at: '2026-03-05T15:30:00.000Z',
      by: 'Invented technician',
      what: 'Filler cap replaced, seal land cleaned.',
      parts: [{ name: 'filler cap', number: 'INV-0001', price: 18.4 }],
      minutes: 10,
      addresses: ['leak'],
    },
  ],
  proof: { verdict: 'not-proven', words: 'Same test, same level, before and after.', missing: '' },
  worked: { proof: judgeProof(sampleProof), limit },
  notes: [
    { at: '2026-03-04T10:10:00.000Z', by: 'Invented technician', text: 'Customer tops up after the first click.' },
  ],
  attachments: [
    {
      fileName: 'cap.jpg',
      caption: 'the seal of the old cap',
      sha256: 'ab'.repeat(32),
      at: '2026-03-04T10:12:00.000Z',
      picture,
    },
    { fileName: 'invoice.pdf', caption: 'invoice of the cap', sha256: 'cd'.repeat(32), at: '2026-03-05T15:40:00.000Z' },
  ],
};

const SENTENCE =
  'The lamp came on after the motorway and went out and came back, and my neighbour says that it is always the cap, but the cap is new. ';
const WORD = 'Kraftstoffdampfrückhaltesystemüberwachungslampe';
const long = (letters: number): string =>
  `${WORD} ${SENTENCE.repeat(Math.ceil(letters / SENTENCE.length))}`.slice(0, letters);

/** Texts at their longest, 30 parts, every cause open. */
export function longHandOver(language: HandOverLanguage): HandOver {
  const check = sampleHandOver.checks[0]!;
  const repair = sampleHandOver.repairs[0]!;
  const finding = sampleHandOver.findings.before!;
  return {
    ...sampleHandOver,
    language,
    shop: { name: long(120), address: long(400), telephone: '0'.repeat(40), email: `${'a'.repeat(100)}@example.org` },
    vehicle: {
      ...sampleHandOver.vehicle,
      name: long(120),
      owner: long(200),
      registration: 'W'.repeat(20),
      vin: 'WWWWWWWWWWWWWWWWW',
    },
    complaint: {
      words: long(500),
      types: ['slow fill', 'rough after fill', 'smell', 'not ready', 'hiss or collapse'],
    },
    codes: {
      before: ['P0442', 'P0455', 'P0456', 'P0446', 'P0496', 'P2422'].map((code) => ({
        code,
        status: 'permanent',
        freezeFrame: [{ name: long(80), value: long(80), unit: 'W'.repeat(20) }],
      })),
      after: null,
    },
    recordings: sampleHandOver.recordings.map((each) => ({
      ...each,
      label: long(200),
      fileName: `${'f'.repeat(251)}.csv`,
      quality: [...each.quality, long(300)],
    })),
    findings: {
      ...sampleHandOver.findings,
      before: {
        ...finding,
        outdated: true,
        recordings: [long(200), long(200)],
        finding: {
          ...finding.finding,
          causes: finding.finding.causes.map((cause) => ({ ...cause, probability: 0.2 })),
          warnings: [long(400)],
        },
      },
    },
    checks: Array.from({ length: 3 }, () => ({ ...check, by: long(120), what: long(400), result: long(2000) })),
    repairs: Array.from({ length: 2 }, () => ({
      ...repair,
      by: long(120),
      what: long(2000),
      parts: Array.from({ length: 30 }, (_, i) => ({
        name: `${i + 1} ${long(150)}`,
        number: 'N'.repeat(80),
        price: 123_456.78,
      })),
    })),
    proof: { verdict: 'not-proven', words: long(4000), missing: long(2000) },
    notes: [{ at: '2026-03-04T10:10:00.000Z', by: long(120), text: `${long(4000)}\n\n${long(3900)}` }],
    attachments: [
      ...Array.from({ length: 5 }, (_, i) => ({
        fileName: `${i}${'p'.repeat(254)}`,
        caption: long(1000),
        sha256: 'ab'.repeat(32),
        at: '2026-03-04T10:12:00.000Z',
        // One wide, one tall, one far too large: the figure of pixels is what places it.
        picture: { ...picture, widthPx: [160, 60, 4000][i % 3]!, heightPx: [120, 400, 3000][i % 3]! },
      })),
    ],
  };
}
