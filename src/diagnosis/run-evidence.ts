/**
 * Procedures that are fitted run by run with a model of their own: the pump run and the sealed tank's hold. Their evidence is
 * pooled with that of the other recordings by cause.
 */
import type { Phase, ProcedureKind, Recording } from '../recording/recording.ts';
import type { Car } from '../system/car.ts';
import { limitText } from './explain/run-limits.ts';
import { CAUSES, type CauseId, type CauseProbability, type Overlay, type PhaseEvidence } from './finding.ts';
import { pumpLimits } from './pump/limits.ts';
import { weighPumpRun } from './pump/weigh-pump-run.ts';
import { sealedLimits } from './sealed/limits.ts';
import { weighSealedHold } from './sealed/weigh-sealed-hold.ts';
import type { WeighedSimple } from './single-run/weigh.ts';
import { SizeMixture } from './size.ts';

/** What a run says of the causes: as much as probabilities and sizes need. */
export interface RunWeights<W extends FormWeight = FormWeight> {
  /** By cause; the sealed tank's canister-side hole counts as a leak. */
  readonly byCause: ReadonlyMap<CauseId, readonly W[]>;
}
export type FormWeight = Pick<WeighedSimple<string>, 'logEvidence' | 'size'>;

export interface RunEvidence extends RunWeights<WeighedSimple<string>> {
  /** Place of the recording in the list that the user gave. */
  readonly recording: number;
  readonly procedure: ProcedureKind;
  readonly limits: readonly string[];
  /** The side where a hole would be was never put to the test: whatever fits best, nothing is shown. */
  readonly inconclusive: boolean;
}

export const RUN_PROCEDURES: readonly (ProcedureKind | 'unknown')[] = ['pump-run', 'sealed-hold'];

export const UNTESTED: readonly string[] = ['tank-side-untested', 'tank-untested', 'no-reference'];

/** The finding's name of a run's cause. */
export const causeOf = (id: string): CauseId => (id === 'canister_leak' ? 'leak' : id) as CauseId;

/** Weighs one run; undefined when it has no pressure that its model can use. */
export function weighRun(
  car: Car,
  recording: Recording,
  index: number,
  procedure: ProcedureKind,
  phases: readonly Phase[],
): RunEvidence | undefined {
  const pump = procedure === 'pump-run';
  const weighed: readonly WeighedSimple<string>[] = pump
    ? weighPumpRun(car, recording, phases)
    : weighSealedHold(car, recording, phases);
  if (weighed.length === 0) return undefined;
  const byCause = new Map<CauseId, WeighedSimple<string>[]>();
  for (const w of weighed) {
    const id = causeOf(w.id);
    byCause.set(id, [...(byCause.get(id) ?? []), w]);
  }
  const limits = pump ? pumpLimits(recording) : sealedLimits(recording);
  return {
    recording: index,
    procedure,
    byCause,
    limits: limits.map(limitText),
    inconclusive: limits.some((l) => UNTESTED.includes(l.kind)),
  };
}

/** ln evidence of a run for a cause: the mean over its forms; a cause that the run does not know looks sound in it. */
export function runLogEvidence(run: RunWeights, id: CauseId): number {
  const forms = run.byCause.get(id) ?? run.byCause.get('none')!;
  const top = Math.max(...forms.map((f) => f.logEvidence));
  return top + Math.log(forms.reduce((s, f) => s + Math.exp(f.logEvidence - top), 0) / forms.length);
}

/** The form of a cause that fits best. */
export function leadingForm<W extends FormWeight>(run: RunWeights<W>, id: CauseId): W {
  const forms = run.byCause.get(id) ?? run.byCause.get('none')!;
  return forms.reduce((a, b) => (b.logEvidence > a.logEvidence ? b : a));
}

/** A cause that no run can show weighs less: the test was chosen for what it can show. Judgement. */
const UNKNOWN_FACTOR = 0.2;

/** Causes whose size is that of a hole to ambient. */
const HOLES: readonly CauseId[] = ['none', 'leak', 'gross_leak', 'vent_leak'];

/** Probabilities of the causes from runs alone, most probable first. */
export function probabilitiesFromRuns(
  runs: readonly RunWeights[],
  prior: Readonly<Record<CauseId, number>>,
  temper: number,
): { readonly id: CauseId; readonly evidence: number; readonly probability: number }[] {
  const logs = CAUSES.map((id) => ({
    id,
    evidence: runs.reduce((s, r) => s + runLogEvidence(r, id), 0),
  })).filter((c) => prior[c.id] > 0);
  const posterior = logs.map((c) => {
    const shown = runs.some((r) => r.byCause.has(c.id)) ? 1 : UNKNOWN_FACTOR;
    return temper * c.evidence + Math.log(prior[c.id] * shown);
  });
  const top = Math.max(...posterior);
  const mass = posterior.reduce((s, l) => s + Math.exp(l - top), 0);
  return logs
    .map((c, i) => ({ ...c, probability: Math.exp(posterior[i]! - top) / mass }))
    .sort((a, b) => b.probability - a.probability);
}

/** Causes from runs alone, most probable first. */
export function causesFromRuns(
  runs: readonly RunEvidence[],
  prior: Readonly<Record<CauseId, number>>,
  temper: number,
): CauseProbability[] {
  const ranked = probabilitiesFromRuns(runs, prior, temper);
  const highest = Math.max(...ranked.map((c) => c.evidence));
  return ranked.map((c, i) => {
    const rival = ranked[i === 0 ? 1 : 0]!.id;
    const places = new Set(runs.flatMap((r) => (r.byCause.get(c.id) ?? []).flatMap((f) => f.places)));
    const size = sizeMixture(runs, [{ id: c.id, probability: 1 }]);
    return {
      id: c.id,
      probability: c.probability,
      places: places.size > 0 ? [{ group: [...places], probability: c.probability }] : [],
      ...(size && c.probability > 0.1 && HOLES.includes(c.id) && { diameterMm: size.interval() }),
      relativeLogEvidence: c.evidence - highest,
      byPhase: runs.flatMap((r) => phaseGains(r, c.id, rival)),
    };
  });
}

/** Size of the hole to ambient over the causes that have one; undefined if none of them is sized. */
export function sizeMixture(
  runs: readonly RunWeights[],
  causes: readonly { readonly id: CauseId; readonly probability: number }[],
): SizeMixture | undefined {
  const parts = runs.flatMap((r) =>
    causes.flatMap((c) => {
      const size = r.byCause.has(c.id) ? leadingForm(r, c.id).size : undefined;
      return size && c.probability > 0 ? [{ weight: c.probability, posterior: size }] : [];
    }),
  );
  return parts.length > 0 ? new SizeMixture(parts) : undefined;
}

function phaseGains(run: RunEvidence, id: CauseId, rival: CauseId): PhaseEvidence[] {
  const own = leadingForm(run, id);
  const other = leadingForm(run, rival);
  const sums = new Map<PhaseEvidence['phase'], number>();
  own.residualPhase.forEach((phase, k) => {
    const gain = 0.5 * ((other.residuals[k] ?? 0) ** 2 - own.residuals[k]! ** 2);
    sums.set(phase, (sums.get(phase) ?? 0) + gain);
  });
  return [...sums].map(([phase, logEvidence]) => ({ recording: run.recording, phase, logEvidence }));
}

/** Half-width of a 90 % band in standard deviations. */
const BAND = 1.645;
/** Causes drawn beside the sound car. */
const DRAWN = 3;

export function runOverlays(runs: readonly RunEvidence[], causes: readonly CauseProbability[]): Overlay[] {
  return runs.flatMap((r) =>
    causes
      .filter((c, i) => r.byCause.has(c.id) && (i < DRAWN || c.id === 'none'))
      .map((c): Overlay => {
        const w = leadingForm(r, c.id);
        return {
          recording: r.recording,
          cause: c.id,
          timeS: [...w.timeS],
          recordedGaugePa: [...w.recordedGaugePa],
          modelledGaugePa: [...w.modelledGaugePa],
          bandPa: [...w.whiteVariance].map((v) => BAND * Math.sqrt(v + w.slowPa ** 2)),
        };
      }),
  );
}
