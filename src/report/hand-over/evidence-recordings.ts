/** Evidence that comes from recordings: traces, sizes, causes, why, and the conditions of both sides. */
import type { Interval } from '../../diagnosis/finding.ts';
import { holeOf } from '../hole.ts';
import { exceeds } from '../limits.ts';
import { sizeNote } from '../size-note.ts';
import { isHidden } from '../trace-figure.ts';
import { firstCause, saysNothing, tellingPlaces } from '../words.ts';
import { type Desk, inUnits, limitName, placesOf, proofSay } from './desk.ts';
import { type Bar, type Block, listed, type Section, text, titled } from './document.ts';
import type { HandOverFinding, HandOverRecording } from './hand-over.ts';
import { comparedRecordings } from './not-verified.ts';
import { technicalLine, upperFirst } from './outcome.ts';
import { type SizeRow, sizesFigure } from './sizes-figure.ts';
import { axesFor, handOverTraceFigure, pressureName } from './trace-figure.ts';

export function recordingsSection(desk: Desk): Section {
  const { given, words } = desk;
  const title = words.sections.recordings;
  if (given.recordings.length === 0) return { title, blocks: [text('body', words.noRecordings)] };
  // The same procedure shares its axes, so that before and after can be laid over each other by eye.
  const shared = (recording: HandOverRecording) =>
    given.recordings.filter(({ procedure }) => procedure === recording.procedure);
  const blocks = given.recordings.flatMap((recording): Block[] => {
    const first = recording.model === null ? null : words.causes[recording.model.cause].name;
    const rival = recording.rival === null ? null : words.causes[recording.rival.cause].name;
    const side = recording.taken === 'after-repair' ? words.figure.after : words.figure.before;
    return [
      { kind: 'heading', text: `${recording.label} (${side})` },
      text('quiet', `${words.procedures[recording.procedure]}; ${pressureName(desk, recording)}`),
      ...(recording.trace === null
        ? []
        : [
            {
              kind: 'figure' as const,
              draw: (width: number) => handOverTraceFigure(desk, recording, axesFor(shared(recording)), width),
              key: [
                words.figure.traceKey(first, rival),
                recording.model !== null && recording.rival !== null && isHidden(recording.model, recording.rival)
                  ? words.figure.hidden
                  : '',
                shared(recording).length > 1 ? words.figure.sameAxes : '',
              ]
                .filter((part) => part !== '')
                .join(' '),
            },
          ]),
      ...(recording.model === null ? [text('quiet', words.noModel)] : []),
      ...listed(recording.quality.map((said) => inUnits(desk, words.machineText(said)))),
    ];
  });
  return { title, blocks };
}

const sizeRow = (name: string, found: HandOverFinding | null): readonly SizeRow[] => {
  const size: Interval | null = found?.finding.diameterMm ?? null;
  const first = found === null ? null : firstCause(found.finding);
  if (size === null || first === null || found === null) return [];
  const isBound = found.finding.verdict === 'no-fault-seen';
  return isBound || holeOf(first) !== undefined ? [{ name, size, isBound }] : [];
};

/** Why the size here is another one than the line of the causes says. */
function noteOf({ words, q }: Desk, found: HandOverFinding | null): readonly string[] {
  const note = found === null ? null : sizeNote(found.finding);
  if (note === null) return [];
  const { name } = words.causes[note.cause];
  return [note.kind === 'beside' ? words.sizeNotes.beside(name) : words.sizeNotes.weighed(name, q.interval(note.own))];
}

export function sizesSection(desk: Desk): Section | null {
  const { given, words, q } = desk;
  const { before, after } = given.findings;
  const rows = [...sizeRow(words.figure.before, before), ...sizeRow(words.figure.after, after)];
  if (rows.length === 0)
    return before === null && after === null
      ? null
      : { title: words.sections.sizes, blocks: [text('body', words.noSize)] };
  const cell = (found: HandOverFinding | null, limit: (typeof given.limits)[number]): string => {
    const probability = found === null ? null : exceeds(found.finding, limit);
    return probability === null ? words.notGiven : q.percent(probability);
  };
  return {
    title: words.sections.sizes,
    blocks: [
      { kind: 'figure', draw: (width) => sizesFigure(desk, rows, width), key: words.figure.sizesKey },
      {
        kind: 'facts',
        rows: rows.map(({ name, size, isBound }) => [
          name,
          isBound ? words.holeBound(q.diameter(size.hi90)) : q.interval(size),
        ]),
      },
      ...listed([before, after].flatMap((found) => noteOf(desk, found))),
      {
        kind: 'table',
        columns: [
          { title: words.facts.exceeds, share: 0.5 },
          { title: words.facts.before, share: 0.25, align: 'right' },
          { title: words.facts.after, share: 0.25, align: 'right' },
        ],
        rows: given.limits.map((limit) => [limitName(desk, limit), cell(before, limit), cell(after, limit)]),
      },
      text('quiet', words.diameterConvention),
      text(
        'quiet',
        words.limitsAreMarks(
          given.limits.map((limit) => `${limit.label}: ${words.limitSource(limit.source)}.`).join(' '),
        ),
      ),
    ],
  };
}

/** Causes below this share are summed into one line. */
const SMALL_SHARE = 0.01;
const MOST_ROWS = 8;

function bars(desk: Desk, found: HandOverFinding): readonly Bar[] {
  const { words, q } = desk;
  const { causes } = found.finding;
  const shown = causes.filter(({ probability }, i) => i === 0 || (probability >= SMALL_SHARE && i < MOST_ROWS));
  const rows = shown.map((cause): Bar => {
    const places = tellingPlaces(cause);
    const hole = holeOf(cause);
    return {
      name: words.causes[cause.id].name,
      detail: [places === null ? '' : placesOf(desk, places), hole === undefined ? '' : q.interval(hole)]
        .filter((part) => part !== '')
        .join(' · '),
      probability: cause.probability,
      certainty: words.certainty(cause.probability),
      percent: q.percent(cause.probability),
    };
  });
  const rest = 1 - shown.reduce((sum, { probability }) => sum + probability, 0);
  if (shown.length === causes.length || rest <= 0) return rows;
  return [
    ...rows,
    {
      name: words.everythingElse,
      detail: words.otherCauses(causes.length - shown.length),
      probability: rest,
      certainty: words.certainty(rest),
      percent: q.percent(rest),
    },
  ];
}

/** Findings with the word for their side. */
const sides = ({ given, words }: Desk): readonly (readonly [string, HandOverFinding])[] => {
  const { before, after } = given.findings;
  return [
    ...(before === null ? [] : [[upperFirst(words.facts.findingBefore), before] as const]),
    ...(after === null ? [] : [[upperFirst(words.facts.findingAfter), after] as const]),
  ];
};

export function causesSection(desk: Desk): Section {
  const { words, q } = desk;
  const found = sides(desk);
  const blocks = found.flatMap(([side, each]): Block[] => [
    { kind: 'heading', text: side },
    text('plain', technicalLine(desk, each.finding)),
    { kind: 'bars', rows: bars(desk, each) },
    ...titled(
      words.pairs,
      each.finding.pairs.map(({ ids, probability }) =>
        words.together(words.causes[ids[0]].name, words.causes[ids[1]].name, q.percent(probability)),
      ),
    ),
  ]);
  return { title: words.sections.causes, blocks: found.length === 0 ? [text('body', words.noFindingYet)] : blocks };
}

export function evidenceSection(desk: Desk): Section | null {
  const { words, q } = desk;
  const blocks = sides(desk).flatMap(([side, { finding, recordings }]): Block[] => {
    const said = (kind: string) =>
      finding.reasons.filter((reason) => reason.kind === kind).map((reason) => words.machineText(reason.text));
    const phases = firstCause(finding)?.byPhase ?? [];
    const telling = phases.some(({ logEvidence }) => !saysNothing(logEvidence));
    return [
      { kind: 'heading', text: side },
      ...titled(words.reasonsFor, said('for')),
      ...titled(words.reasonsAgainst, said('against')),
      ...(telling
        ? [
            {
              kind: 'table' as const,
              columns: [
                { title: words.facts.phase, share: 0.42 },
                { title: words.facts.says, share: 0.4 },
                { title: words.facts.logRatio, share: 0.18, align: 'right' as const },
              ],
              rows: phases.map(({ phase, recording, logEvidence }) => [
                recordings.length > 1 ? `${words.phases[phase]} (${recordings[recording] ?? ''})` : words.phases[phase],
                words.evidence(logEvidence),
                q.number(logEvidence, 1),
              ]),
            },
          ]
        : [text('quiet', words.silentPhases)]),
      ...titled(words.limitsOfFinding, said('limits')),
      ...titled(words.nextRecording, said('next-recording')),
      ...titled(words.warnings, finding.warnings.map(words.machineText)),
    ];
  });
  return blocks.length === 0 ? null : { title: words.sections.evidence, blocks };
}

export function conditionsSection(desk: Desk): Section | null {
  const { given, words, checks, q } = desk;
  const { before, after } = comparedRecordings(given.recordings);
  const compared = given.worked?.proof.conditions ?? [];
  if (before === undefined && after === undefined && compared.length === 0) return null;
  type Say = (recording: HandOverRecording) => string | undefined;
  const cell = (recording: HandOverRecording | undefined, say: Say): string =>
    recording === undefined ? '' : (say(recording) ?? words.notRecorded);
  const row = (name: string, say: Say): readonly string[] => [name, cell(before, say), cell(after, say), ''];
  const ownConditions: readonly (readonly [string, Say])[] = [
    [words.facts.procedure, ({ procedure }) => words.procedures[procedure]],
    [
      words.facts.level,
      ({ conditions: { fuelLevel } }) => (fuelLevel === undefined ? undefined : q.percent(fuelLevel)),
    ],
    [
      words.facts.ambient,
      ({ conditions: { ambientTemperatureK: k } }) => (k === undefined ? undefined : q.temperature(k)),
    ],
    [words.facts.fuel, ({ conditions: { fuelTemperatureK: k } }) => (k === undefined ? undefined : q.temperature(k))],
  ];
  const say = proofSay(desk);
  const comparedRows = compared.map((condition): readonly string[] => [
    checks.proof.conditions[condition.what],
    say.condition(condition, 'before') ?? words.notGiven,
    say.condition(condition, 'after') ?? words.notGiven,
    condition.what === 'volatility' && condition.isSameFill
      ? checks.proof.sameFill
      : checks.proof.alike[condition.alike],
  ]);
  return {
    title: words.sections.conditions,
    blocks: [
      {
        kind: 'table',
        columns: [
          { title: words.facts.condition, share: 0.24 },
          { title: words.facts.before, share: 0.28 },
          { title: words.facts.after, share: 0.28 },
          { title: words.facts.alike, share: 0.2 },
        ],
        rows: [
          ...(comparedRows.length > 0 ? comparedRows : ownConditions.map(([name, each]) => row(name, each))),
          row(words.facts.air, ({ conditions: { barometricPa: pa } }) =>
            pa === undefined ? undefined : q.airPressure(pa),
          ),
          row(words.facts.length, ({ durationS, samples }) => `${q.duration(durationS)}, ${words.samples(samples)}`),
          row(words.facts.phasesFrom, ({ phasesByHand }) => (phasesByHand ? words.byHand : words.foundByProgram)),
          row(words.facts.file, ({ fileName }) => fileName),
        ],
      },
    ],
  };
}
