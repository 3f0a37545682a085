/** What the sheet says, section by section, as data that page and PDF both print. */
import type { CauseProbability, Finding } from '../diagnosis/finding.ts';
import { cautionsFor, GENERAL_CAUTION } from './cautions.ts';
import { holeOf } from './hole.ts';
import { exceeds } from './limits.ts';
import { celsius, duration, fixed, intervalInWords, kilopascal, millimetres, NBSP, percent } from './numbers.ts';
import { ownerSentence, SIZE_NOTES, technicalSentence } from './sentences.ts';
import type { Sheet, SheetRecording } from './sheet.ts';
import { type SizeNote, sizeNote } from './size-note.ts';
import {
  CAUSE_WORDS,
  certaintyInWords,
  evidenceInWords,
  firstCause,
  PHASE_WORDS,
  PROCEDURE_WORDS,
  placesInWords,
  saysNothing,
  tellingPlaces,
} from './words.ts';

export interface CauseRow {
  readonly name: string;
  readonly probability: number;
  readonly percent: string;
  readonly certainty: string;
  readonly detail: string;
}

export interface EvidenceRow {
  readonly phase: string;
  readonly recording: string;
  readonly logEvidence: number;
  readonly words: string;
}

export type Row = readonly [label: string, value: string];

export interface Story {
  readonly title: string;
  readonly isDemo: boolean;
  readonly madeAt: string;
  readonly owner: string;
  readonly technical: string;
  /** Parts of the technical sentence that carry it: size and place. */
  readonly emphasis: readonly string[];
  readonly limits: readonly string[];
  readonly limitMarks: readonly string[];
  readonly causes: readonly CauseRow[];
  readonly pairs: readonly string[];
  readonly evidence: readonly EvidenceRow[];
  /** Instead of rows, when no phase says anything. */
  readonly evidenceNote: string | null;
  readonly reasonsFor: readonly string[];
  readonly reasonsAgainst: readonly string[];
  readonly notProven: readonly string[];
  readonly nextRecordings: readonly string[];
  readonly warnings: readonly string[];
  readonly caution: string;
  readonly cautions: readonly string[];
  readonly car: readonly Row[];
  readonly recordings: readonly {
    readonly label: string;
    readonly rows: readonly Row[];
    readonly remarks: readonly string[];
  }[];
  readonly provenance: readonly Row[];
}

/** Causes below this share are summed into one line: they cannot be excluded, but need no row of their own. */
const SMALL_SHARE = 0.01;
const MOST_ROWS = 8;
/** A rival above this share is named among what is not proven. */
const OPEN_SHARE = 0.05;

export function causeRows(causes: readonly CauseProbability[]): readonly CauseRow[] {
  const shown = causes.filter((cause, i) => i === 0 || (cause.probability >= SMALL_SHARE && i < MOST_ROWS));
  const rows = shown.map((cause): CauseRow => {
    const places = [...cause.places].sort((a, b) => b.probability - a.probability);
    const total = places.reduce((sum, place) => sum + place.probability, 0);
    const where =
      tellingPlaces(cause) === null
        ? ''
        : places.length === 1
          ? placesInWords(places[0]?.group ?? [])
          : places
              .slice(0, 3)
              .map((place) => `${placesInWords(place.group)} ${percent(place.probability / Math.max(total, 1e-9))}`)
              .join(', ');
    const hole = holeOf(cause);
    const size = hole === undefined ? '' : intervalInWords(hole);
    return {
      name: CAUSE_WORDS[cause.id].name,
      probability: cause.probability,
      percent: percent(cause.probability),
      certainty: certaintyInWords(cause.probability),
      detail: [where, size].filter((part) => part !== '').join(' · '),
    };
  });
  const rest = 1 - shown.reduce((sum, cause) => sum + cause.probability, 0);
  if (shown.length === causes.length || rest <= 0) return rows;
  return [
    ...rows,
    {
      name: 'everything else',
      probability: rest,
      percent: percent(rest),
      certainty: certaintyInWords(rest),
      detail: `${causes.length - shown.length} other causes`,
    },
  ];
}

const reasons = (finding: Finding, kind: string): readonly string[] =>
  finding.reasons.filter((reason) => reason.kind === kind).map((reason) => reason.text);

function notProven(sheet: Sheet): readonly string[] {
  const { finding } = sheet;
  const first = firstCause(finding);
  const items = [...reasons(finding, 'limits')];
  const groups = (first?.places ?? []).filter((place) => place.group.length > 1);
  for (const { group } of groups)
    items.push(`Which of ${placesInWords(group)} it is: these look alike in this recording.`);
  const rival = finding.causes[1];
  const isSaid = items.some((text) => /not excluded/i.test(text));
  if (!isSaid && rival !== undefined && rival.probability >= OPEN_SHARE) {
    items.push(`Not excluded: ${CAUSE_WORDS[rival.id].name} (${percent(rival.probability)}).`);
  }
  if (finding.verdict === 'fault') items.push('That a repair holds: repeat the same recording after it and compare.');
  if (first !== null && holeOf(first) !== undefined)
    items.push('Whether the hole is one or several: the size is the total, and holes add by area.');
  items.push(
    'Anything that did not happen while recording: a fault that comes with heat, movement or a full tank may be asleep.',
  );
  return items;
}

function carRows({ car }: Sheet): readonly Row[] {
  const litres = (m3: number): string => `${fixed(m3 * 1000, m3 < 0.01 ? 1 : 0)}${NBSP}L`;
  const rows: Row[] = [['layout', car.layout.replaceAll('-', ' ')]];
  rows.push(['tank', car.tankVolumeM3 === undefined ? 'not given' : litres(car.tankVolumeM3)]);
  if (car.canisterFreeVolumeM3 !== undefined) rows.push(['canister', litres(car.canisterFreeVolumeM3)]);
  const sensor = car.pressureSensor;
  rows.push([
    'pressure sensor',
    sensor === undefined
      ? 'range not given'
      : `${fixed(sensor.minGaugePa / 1000, 1)} to ${fixed(sensor.maxGaugePa / 1000, 1)}${NBSP}kPa`,
  ]);
  const reid = car.fuel?.reidVapourPressurePa;
  rows.push([
    'fuel, Reid vapour pressure',
    reid === undefined ? 'not given' : `${fixed(reid.low / 1000, 0)} to ${fixed(reid.high / 1000, 0)}${NBSP}kPa`,
  ]);
  if (car.filler !== undefined) rows.push(['filler', car.filler]);
  return rows;
}

function recordingRows(recording: SheetRecording): readonly Row[] {
  const { conditions } = recording;
  const rows: Row[] = [
    ['procedure', PROCEDURE_WORDS[recording.procedure]],
    ['length', `${duration(recording.durationS)}, ${recording.samples} samples`],
  ];
  if (conditions.fuelLevel !== undefined) rows.push(['fuel level', `${fixed(conditions.fuelLevel * 100, 0)}${NBSP}%`]);
  if (conditions.ambientTemperatureK !== undefined) rows.push(['ambient', celsius(conditions.ambientTemperatureK)]);
  rows.push([
    'fuel',
    conditions.fuelTemperatureK === undefined ? 'temperature not recorded' : celsius(conditions.fuelTemperatureK),
  ]);
  if (conditions.barometricPa !== undefined) rows.push(['air pressure', kilopascal(conditions.barometricPa, 1)]);
  return rows;
}

const isSilent = (cause: CauseProbability | null): boolean =>
  cause !== null && cause.byPhase.length > 0 && cause.byPhase.every(({ logEvidence }) => saysNothing(logEvidence));

function sizeNoteInWords(note: SizeNote | null): readonly string[] {
  if (note === null) return [];
  const name = CAUSE_WORDS[note.cause].name;
  return [note.kind === 'beside' ? SIZE_NOTES.beside(name) : SIZE_NOTES.weighed(name, intervalInWords(note.own))];
}

export function story(sheet: Sheet): Story {
  const { finding } = sheet;
  const first = firstCause(finding);
  const several = sheet.recordings.length > 1;
  const hole = first === null ? undefined : holeOf(first);
  return {
    title: sheet.car.label,
    isDemo: sheet.car.demo === true,
    madeAt: sheet.madeAt.slice(0, 16).replace('T', ' '),
    owner: ownerSentence(finding),
    technical: technicalSentence(finding),
    emphasis: [
      hole === undefined ? '' : `${millimetres(hole.median)}${NBSP}mm`,
      placesInWords((first === null ? null : tellingPlaces(first)) ?? []),
    ],
    limits: [
      ...sizeNoteInWords(sizeNote(finding)),
      ...sheet.limits.flatMap((limit) => {
        const probability = exceeds(finding, limit);
        const name = `${millimetres(limit.diameterMm)}${NBSP}mm (${limit.label})`;
        return probability === null ? [] : [`${name}: exceeded with probability ${percent(probability)}`];
      }),
    ],
    limitMarks: sheet.limits.map((limit) => `${limit.label}: ${limit.source}.`),
    causes: causeRows(finding.causes),
    pairs: finding.pairs.map(
      (pair) =>
        `${CAUSE_WORDS[pair.ids[0]].name} together with ${CAUSE_WORDS[pair.ids[1]].name}: ${percent(pair.probability)}`,
    ),
    evidence: isSilent(first)
      ? []
      : (first?.byPhase ?? []).map((item) => ({
          phase: PHASE_WORDS[item.phase],
          recording: several ? (sheet.recordings[item.recording]?.label ?? '') : '',
          logEvidence: item.logEvidence,
          words: evidenceInWords(item.logEvidence),
        })),
    evidenceNote: isSilent(first)
      ? 'No phase by itself tells the first cause from its best rival; what parts them stands above or in the priors.'
      : null,
    reasonsFor: reasons(finding, 'for'),
    reasonsAgainst: reasons(finding, 'against'),
    notProven: notProven(sheet),
    nextRecordings: reasons(finding, 'next-recording'),
    warnings: finding.warnings,
    caution: GENERAL_CAUTION,
    cautions: cautionsFor(sheet.car),
    car: carRows(sheet),
    recordings: sheet.recordings.map((recording) => ({
      label: recording.label,
      rows: recordingRows(recording),
      remarks: [...recording.quality, ...recording.warnings],
    })),
    provenance: [
      ['made by', sheet.program],
      ['made at', `${sheet.madeAt.slice(0, 19).replace('T', ' ')} UTC`],
      ...(sheet.complaint === undefined ? [] : [['complaint', sheet.complaint] as Row]),
      ...(sheet.codes.length === 0 ? [] : [['codes', sheet.codes.join(', ')] as Row]),
      ['car file', `SHA-256 ${sheet.carSha256}`],
      ...sheet.recordings.map((recording): Row => [recording.label, `SHA-256 ${recording.sha256}`]),
    ],
  };
}
