/** The hand-over of a job: what its sheet shows, gathered from the record, its findings and its recordings. */
import type { Overlay } from '../../diagnosis/finding.ts';
import { findingFromStored } from '../../report/finding-format.ts';
import type {
  HandOver,
  HandOverFinding,
  HandOverLanguage,
  HandOverPart,
  HandOverPicture,
  HandOverRecording,
  HandOverUnits,
} from '../../report/hand-over/hand-over.ts';
import { type Limit, REFERENCE_LIMITS } from '../../report/limits.ts';
import type { Job, JobFinding, RecordingEntry } from '../record/job.ts';
import type { RuleSettings } from '../record/monitor-of-job.ts';
import { newestFinding, proofOfJob } from '../record/proof-of-job.ts';
import { handOverMonitor } from './hand-over-monitor.ts';
import { type RecordingData, recordingFacts, traceOf } from './recording-facts.ts';

export interface HandOverSettings {
  readonly language: HandOverLanguage;
  readonly units: HandOverUnits;
  readonly parts: readonly HandOverPart[];
  readonly shop: HandOver['shop'];
  readonly technician?: string;
  readonly limits: readonly Limit[];
  /** Name and version of the program. */
  readonly program: string;
  /** ISO 8601 UTC */
  readonly madeAt: string;
  /** From the job's history, see `codesAroundRepair`; absent: as in the record, not read again. */
  readonly codes?: HandOver['codes'];
  /** Inspection rules of the shop. */
  readonly rules?: RuleSettings;
}

const shown = (job: Job, made: JobFinding | undefined): HandOverFinding | null =>
  made === undefined
    ? null
    : {
        finding: findingFromStored(made.sheet.finding),
        program: made.sheet.program,
        madeAt: made.madeAt,
        outdated: made.outdated,
        recordings: made.sheet.recordings.map(
          ({ sha256, label }) => job.recordings.find((entry) => entry.sha256 === sha256)?.label ?? label,
        ),
      };

/** The first cause over a recording, and no fault or the runner-up beside it. */
function overlaysOf(finding: HandOverFinding | null, at: number): { model: Overlay | null; rival: Overlay | null } {
  const overlays = (finding?.finding.overlays ?? []).filter(({ recording }) => recording === at);
  const first = finding?.finding.causes[0]?.id;
  const model = overlays.find(({ cause }) => cause === first) ?? overlays[0] ?? null;
  const others = overlays.filter((overlay) => overlay !== model);
  return { model, rival: others.find(({ cause }) => cause === 'none') ?? others[0] ?? null };
}

function recordingOf(
  entry: RecordingEntry,
  made: JobFinding | undefined,
  finding: HandOverFinding | null,
  data: RecordingData | undefined,
): HandOverRecording {
  const at = made?.sheet.recordings.findIndex(({ sha256 }) => sha256 === entry.sha256) ?? -1;
  const facts = made?.sheet.recordings[at] ?? (data === undefined ? undefined : recordingFacts(entry, data));
  const { model, rival } = at < 0 ? { model: null, rival: null } : overlaysOf(finding, at);
  const procedure = facts?.procedure ?? entry.facts?.procedure ?? 'unknown';
  const read = data === undefined ? null : traceOf(data.recording, procedure);
  const fitted = model === null ? null : { timeS: model.timeS, gaugePa: model.recordedGaugePa };
  return {
    label: entry.label,
    fileName: entry.fileName,
    sha256: entry.sha256,
    bytes: entry.bytes,
    receivedAt: entry.receivedAt,
    taken: entry.taken,
    usedInFinding: at >= 0,
    procedure,
    durationS: facts?.durationS ?? 0,
    samples: facts?.samples ?? 0,
    phases: facts?.phases ?? [],
    phasesByHand: entry.phases !== undefined,
    commands: facts?.commands ?? { timeS: [] },
    conditions: facts?.conditions ?? {},
    quality: [...(facts?.quality ?? []), ...(facts?.warnings ?? [])],
    trace: read ?? fitted,
    model,
    rival,
  };
}

function workedOf(job: Job, limits: readonly Limit[]): HandOver['worked'] {
  if (job.repairs.length === 0) return null;
  const limit = job.proof?.limit ?? limits[0] ?? REFERENCE_LIMITS[0]!;
  return { proof: proofOfJob(job, limit.diameterMm).proof, limit };
}

/**
 * `data`: the recordings as read; for those that a finding was made from it may be left out. `pictures`: by the id of the
 * attachment.
 */
export function handOverOf(
  job: Job,
  data: readonly RecordingData[],
  settings: HandOverSettings,
  pictures: ReadonlyMap<string, HandOverPicture> = new Map(),
): HandOver {
  const made = { before: newestFinding(job, 'before-repair'), after: newestFinding(job, 'after-repair') };
  const findings = { before: shown(job, made.before), after: shown(job, made.after) };
  const { language, units, parts, shop, technician, limits, program, madeAt } = settings;
  return {
    language,
    units,
    parts,
    program,
    madeAt,
    shop,
    ...(technician === undefined ? {} : { technician }),
    job: { number: job.number, openedAt: job.createdAt, demo: job.demo },
    vehicle: job.vehicle,
    car: job.car,
    complaint: job.complaint,
    codes: settings.codes ?? { before: job.codes, after: null },
    limits,
    recordings: job.recordings.map((entry) => {
      const side = entry.taken === 'after-repair' ? 'after' : 'before';
      return recordingOf(
        entry,
        made[side],
        findings[side],
        data.find(({ id }) => id === entry.id),
      );
    }),
    findings,
    checks: job.checks,
    repairs: job.repairs,
    proof: job.proof,
    worked: workedOf(job, limits),
    monitor: handOverMonitor(job, settings.rules ?? {}, madeAt),
    notes: job.notes,
    attachments: job.attachments.map((entry) => {
      const picture = pictures.get(entry.id);
      return picture === undefined ? entry : { ...entry, picture };
    }),
  };
}
