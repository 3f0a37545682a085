/** The finding from recordings: the one entry of this room. */
import { findPhases } from '../recording/phases.ts';
import { findProcedure } from '../recording/procedure.ts';
import type { Phase, ProcedureKind, Recording } from '../recording/recording.ts';
import type { Car } from '../system/car.ts';
import { evidenceByPhase } from './explain/by-phase.ts';
import { overlaysFor } from './explain/overlays.ts';
import { placesFor } from './explain/places.ts';
import { reasonsFor, runReasons } from './explain/reasons.ts';
import { CAUSES, type CauseId, type CauseProbability, type Finding, type Verdict } from './finding.ts';
import { withPossibleReadings } from './possible-readings.ts';
import { type Posterior, posteriorOf, TEMPER } from './posterior.ts';
import { type Prepared, prepare } from './prepare.ts';
import { causePriors } from './priors/cause-priors.ts';
import type { Complaint } from './priors/root-causes.ts';
import { selectionFactor } from './priors/selection.ts';
import {
  causesFromRuns,
  RUN_PROCEDURES,
  type RunEvidence,
  runLogEvidence,
  runOverlays,
  sizeMixture,
  weighRun,
} from './run-evidence.ts';
import { SizeMixture, sizeUnder } from './size.ts';
import { sizeContexts } from './size-contexts.ts';
import { weighCauses } from './weigh-causes.ts';
import type { Weighed } from './weighing/weighed.ts';
import { withCommands } from './without-commands.ts';

export interface DiagnosisInput {
  readonly car: Car;
  readonly recordings: readonly Recording[];
  readonly complaints?: readonly Complaint[];
  readonly codes?: readonly string[];
  /** What checks by hand say of causes; several on one cause multiply. */
  readonly handChecks?: readonly HandCheck[];
  /** Phases corrected by hand, by recording; absent ones are found. */
  readonly phases?: readonly (readonly Phase[] | undefined)[];
}

/** What a check at the car says of one cause. */
export interface HandCheck {
  readonly cause: CauseId;
  /** Natural log of the result's probability under the cause, relative to causes that the check says nothing of. */
  readonly logLikelihood: number;
}

export interface DiagnosisOptions {
  readonly onProgress?: (fraction: number, what: string) => void;
}

/** Procedures whose physics the fit covers. */
const COVERED: readonly (ProcedureKind | 'unknown')[] = ['vacuum-draw', 'engine-off', 'purge-drive', 'refuelling'];
/** Procedures that size a hole. */
const SIZING: readonly (ProcedureKind | 'unknown')[] = ['vacuum-draw', 'engine-off'];
/** A cause below this probability gets no size of its own. */
const WORTH_A_SIZE = 0.1;
/** A pair below this probability is not listed. */
const NEGLIGIBLE = 0.01;
/** A finding names a fault only when its cause is at least this probable; between alike causes their sum counts. Judgement. */
const NAMED = 0.4;
/** Share of the work that pump runs and sealed holds take, for the progress shown. Judgement. */
const READING_RUNS = 0.4;
/** Fewer readings than this tell nothing. */
const FEWEST_READINGS = 20;

export function diagnose(input: DiagnosisInput, options: DiagnosisOptions = {}): Finding {
  const report = options.onProgress ?? (() => {});
  const warnings: string[] = [];
  const procedures: (ProcedureKind | 'unknown')[] = [];
  const prepared: Prepared[] = [];
  const indices: number[] = [];
  const runs: RunEvidence[] = [];
  input.recordings.forEach((given, i) => {
    const possible = withPossibleReadings(given);
    if ('leftOut' in possible) {
      procedures.push(given.notes?.procedure ?? 'unknown');
      warnings.push(possible.leftOut);
      return;
    }
    const { recording } = possible;
    warnings.push(...possible.warnings);
    const procedure = recording.notes?.procedure ?? findProcedure(recording).kind;
    procedures.push(procedure);
    if (RUN_PROCEDURES.includes(procedure)) {
      const kind = procedure as ProcedureKind;
      const phases = input.phases?.[i] ?? findPhases(recording, undefined, { kind, reasons: [] });
      report(READING_RUNS * (i / input.recordings.length), `weighing a ${kind}`);
      const run = weighRun(input.car, recording, i, kind, phases);
      if (run) runs.push(run);
      else
        warnings.push(`${recording.label}: it has no pressure that a ${kind} can be judged by, so it takes no part.`);
      return;
    }
    const pressure = recording.channels.tankPressureGaugePa;
    if (!pressure) {
      warnings.push(`${recording.label}: it has no tank pressure, so it takes no part; map the column that holds it.`);
      return;
    }
    if (pressure.filter(Number.isFinite).length < FEWEST_READINGS) {
      warnings.push(`${recording.label}: fewer than ${FEWEST_READINGS} pressure readings, too few for a finding.`);
      return;
    }
    if (!COVERED.includes(procedure)) {
      warnings.push(
        `${recording.label}: looks like no known procedure, so it takes no part; name the procedure in the notes if it is one.`,
      );
      return;
    }
    const phases = input.phases?.[i] ?? findPhases(recording, undefined, { kind: procedure, reasons: [] });
    const told = withCommands(input.car, recording, procedure, phases);
    if ('leftOut' in told) {
      warnings.push(told.leftOut);
      return;
    }
    const p = prepare(input.car, told.recording, procedure, phases);
    warnings.push(...p.conditions.warnings, ...told.warnings);
    prepared.push(p);
    indices.push(i);
  });
  const checked = checkFactors(input.handChecks ?? []);
  const before = causePriors(input.complaints ?? [], input.codes ?? [], input.car.layout);
  const prior = Object.fromEntries(CAUSES.map((id) => [id, before[id] * checked(id)])) as typeof before;
  if (prepared.length === 0) {
    report(1, 'done');
    return runs.length > 0 ? findingFromRuns(runs, prior, procedures, warnings) : nothingToSay(procedures, warnings);
  }
  const startShare = runs.length > 0 ? READING_RUNS : 0;
  const weighing = weighCauses(input.car, prepared, (f, what) => report(startShare + (0.85 - startShare) * f, what));
  const told = (input.complaints?.length ?? 0) + (input.codes?.length ?? 0) > 0;
  const used = prepared.map((p) => p.procedure);
  const posterior = posteriorOf(
    weighing,
    (id) => prior[id] * (told ? 1 : selectionFactor(used, id)) * runFactor(runs, id),
  );
  const ranked = rankedCauses(posterior);
  const best = ranked[0]!;
  const rival = ranked.find((r) => r.leading.fit !== best.leading.fit) ?? best;

  const sizing = used.some((p) => SIZING.includes(p));
  const contexts = sizing ? sizeContexts(weighing, posterior, used) : [];
  report(0.95, 'sizing the hole');
  const mixture = contexts.length > 0 ? new SizeMixture(contexts) : undefined;
  const highest = Math.max(...weighing.weighed.map((w) => w.logEvidence));
  const causes: CauseProbability[] = ranked.map((r) => {
    const size =
      sizing && hasHole(r.id) && r.probability >= WORTH_A_SIZE
        ? sizeUnder(r.leading.problem, r.leading.fit, r.leading.sizeIndex)
        : undefined;
    return {
      id: r.id,
      probability: r.probability,
      places: placesFor(r.forms),
      ...(size && { diameterMm: new SizeMixture([{ weight: 1, posterior: size }]).interval() }),
      relativeLogEvidence: r.leading.logEvidence - highest,
      byPhase: evidenceByPhase(r.leading, r === best ? rival.leading : best.leading, prepared, indices),
    };
  });
  const verdict = verdictOf(causes);
  const diameterMm = mixture ? mixture.interval() : null;
  const exceeds = { mm0_5: mixture ? mixture.exceeds(0.5) : null, mm1_0: mixture ? mixture.exceeds(1) : null };
  report(1, 'done');
  return {
    verdict,
    procedures,
    causes: withAbsent(causes),
    pairs: posterior.pairs
      .filter((p) => p.probability >= NEGLIGIBLE)
      .map((p) => ({ ids: [p.weighed.causes[0]!.id, p.weighed.causes[1]!.id], probability: p.probability })),
    diameterMm,
    exceeds,
    reasons: [
      ...reasonsFor({ verdict, causes, best: best.leading, rival: rival.leading, prepared, exceeds, diameterMm }),
      ...runs.flatMap((r) => r.limits.map((text) => ({ kind: 'limits' as const, text }))),
    ],
    warnings,
    overlays: [
      ...overlaysFor(
        ranked.map((r) => r.leading),
        prepared,
        indices,
        weighing.noise,
      ),
      ...runOverlays(runs, causes),
    ],
  };
}

/** A check is its own evidence, independent of the recordings and of their model: it is not tempered. */
function checkFactors(checks: readonly HandCheck[]): (id: CauseId) => number {
  const log = new Map<CauseId, number>();
  for (const { cause, logLikelihood } of checks) log.set(cause, (log.get(cause) ?? 0) + logLikelihood);
  const highest = Math.max(0, ...log.values());
  return (id) => Math.exp((log.get(id) ?? 0) - highest);
}

/** What pump runs and sealed holds add to a cause's weight, relative to the best cause in each. */
function runFactor(runs: readonly RunEvidence[], id: CauseId): number {
  return Math.exp(
    TEMPER * runs.reduce((s, r) => s + runLogEvidence(r, id) - Math.max(...CAUSES.map((c) => runLogEvidence(r, c))), 0),
  );
}

/** What a run that tested nothing can neither show nor exclude. */
const UNSHOWN: readonly CauseId[] = ['none', 'leak', 'gross_leak'];

function findingFromRuns(
  runs: readonly RunEvidence[],
  prior: Readonly<Record<CauseId, number>>,
  procedures: readonly (ProcedureKind | 'unknown')[],
  warnings: readonly string[],
): Finding {
  const causes = causesFromRuns(runs, prior, TEMPER);
  const untested = runs.every((r) => r.inconclusive) && UNSHOWN.includes(causes[0]!.id);
  const verdict = untested ? 'cannot-tell' : verdictOf(causes);
  const mixture = untested ? undefined : sizeMixture(runs, causes);
  const exceeds = { mm0_5: mixture ? mixture.exceeds(0.5) : null, mm1_0: mixture ? mixture.exceeds(1) : null };
  return {
    verdict,
    procedures,
    causes: withAbsent(causes),
    pairs: [],
    diameterMm: mixture ? mixture.interval() : null,
    exceeds,
    reasons: [
      ...runReasons({ verdict, causes, exceeds }),
      ...runs.flatMap((r) => r.limits.map((text) => ({ kind: 'limits' as const, text }))),
    ],
    warnings,
    overlays: runOverlays(runs, causes),
  };
}

interface RankedCause {
  readonly id: CauseId;
  readonly probability: number;
  /** The form of the cause that weighs most. */
  readonly leading: Weighed;
  readonly forms: readonly { readonly weighed: Weighed; readonly probability: number }[];
}

function rankedCauses(posterior: Posterior): RankedCause[] {
  return [...posterior.byCause]
    .map(([id, probability]) => {
      const forms = posterior.singles.filter((s) => s.weighed.id === id);
      return { id, probability, leading: forms[0]!.weighed, forms };
    })
    .sort((a, b) => b.probability - a.probability);
}

const HOLES: readonly CauseId[] = ['none', 'leak', 'gross_leak', 'vent_leak'];
const hasHole = (id: CauseId) => HOLES.includes(id);

/** Causes that no model weighed stay in the list with probability 0, so that machines find every name. */
function withAbsent(causes: readonly CauseProbability[]): CauseProbability[] {
  const missing = CAUSES.filter((id) => !causes.some((c) => c.id === id));
  return [
    ...causes,
    ...missing.map((id) => ({
      id,
      probability: 0,
      places: [],
      relativeLogEvidence: Number.NEGATIVE_INFINITY,
      byPhase: [],
    })),
  ];
}

function verdictOf(causes: readonly CauseProbability[]): Verdict {
  const first = causes[0]!;
  const none = causes.find((c) => c.id === 'none')?.probability ?? 0;
  if (first.id === 'none' && none >= NAMED) return 'no-fault-seen';
  if (1 - none >= 0.5 + NAMED / 2 || first.probability >= NAMED) return first.id === 'none' ? 'cannot-tell' : 'fault';
  return 'cannot-tell';
}

function nothingToSay(procedures: readonly (ProcedureKind | 'unknown')[], warnings: readonly string[]): Finding {
  return {
    verdict: 'cannot-tell',
    procedures,
    causes: [],
    pairs: [],
    diameterMm: null,
    exceeds: { mm0_5: null, mm1_0: null },
    reasons: [
      { kind: 'limits', text: 'None of the recordings can be used; the warnings say why.' },
      {
        kind: 'next-recording',
        text: 'Record tank pressure with the purge and vent commands through one leak self-test: some seconds with the vent open, the draw, at least a minute of hold, the release.',
      },
    ],
    warnings,
    overlays: [],
  };
}
