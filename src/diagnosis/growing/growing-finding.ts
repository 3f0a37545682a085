/**
 * The finding on a growing recording: each batch of samples updates it, at a cost that does not depend on how long the
 * recording already is, and during a hold it says whether holding longer would tell anything more.
 *
 * It follows vacuum draws, engine-off tests and purge drives, one fault at a time; the finding on the whole recording
 * (`../diagnose.ts`) also weighs pairs of faults and covers the other procedures.
 */
import type { Phase, PhaseKind, ProcedureKind, Recording, RecordingNotes } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import type { CauseId, Interval } from '../finding.ts';
import { type Posterior, posteriorOf } from '../posterior.ts';
import { gridOf, type Prepared } from '../prepare.ts';
import { causePriors } from '../priors/cause-priors.ts';
import type { Complaint } from '../priors/root-causes.ts';
import { selectionFactor } from '../priors/selection.ts';
import { SizeMixture } from '../size.ts';
import { standings, weighNow } from './evidence.ts';
import { Fits } from './fits.ts';
import { History } from './history.ts';
import { HoldWatch } from './hold-watch.ts';
import { type HoldingLonger, WAITING } from './holding-longer.ts';
import { contextsOf } from './size-question.ts';
import { Coarseness, type Outline, outline, snapshot } from './snapshot.ts';
import { TrimRounds } from './trim-round.ts';

export interface GrowingCause {
  readonly id: CauseId;
  readonly probability: number;
}

export interface GrowingUpdate {
  /** Time of the last sample that the finding takes account of [s]; absent before the first. */
  readonly uptoS?: number;
  readonly samples: number;
  /** Samples left out because they were not later than the last: duplicates and steps back. */
  readonly left: number;
  readonly procedure: ProcedureKind | 'unknown';
  readonly phase?: PhaseKind;
  readonly phaseSinceS?: number;
  /** Most probable first; empty as long as nothing can be said. */
  readonly causes: readonly GrowingCause[];
  /** False while causes are still being tried on what has come so far. */
  readonly settled: boolean;
  readonly diameterMm: Interval | null;
  readonly exceeds: { readonly mm0_5: number | null; readonly mm1_0: number | null };
  /** Present while the system is held shut. */
  readonly holdingLonger?: HoldingLonger;
  readonly warnings: readonly string[];
  /** Steps of the model that this call took: what bounds its cost. */
  readonly modelSteps: number;
}

export interface GrowingOptions {
  readonly notes?: RecordingNotes;
  readonly complaints?: readonly Complaint[];
  readonly codes?: readonly string[];
  readonly label?: string;
}

const FOLLOWED: readonly (ProcedureKind | 'unknown')[] = ['vacuum-draw', 'engine-off', 'purge-drive'];
const SIZING: readonly (ProcedureKind | 'unknown')[] = ['vacuum-draw', 'engine-off'];
/** The finding is worked out anew once so much has come [s]; a changed command does not wait. */
const UPDATE_EVERY_S = 1;
/** Steps of the model allowed for each second of recording, and saved up at most. */
const STEPS_PER_S = 36_000;
const MOST_SAVED = 40_000;
/** Starts are tried anew after a command change, and once more when what it did has shown [s]. */
const SECOND_LOOK_S = 10;
const LEAST_BETWEEN_S = { 'purge-drive': 30, other: 1 } as const;
/** Fewer readings than this tell nothing. */
const FEWEST_READINGS = 20;
/** Rounds of steps that `finish` may take until all has settled. */
const MOST_FINISHING = 28;

export class GrowingFinding {
  private readonly car: Car;
  private readonly history: History;
  private readonly label: string;
  private readonly prior: Readonly<Record<CauseId, number>>;
  private readonly told: boolean;
  private readonly coarseness = new Coarseness();
  private readonly trims = new TrimRounds();
  private readonly hold = new HoldWatch();
  private fits: Fits | undefined;
  private procedure: ProcedureKind | 'unknown' = 'unknown';
  private saved = 0;
  private spentBefore = 0;
  private doneS = Number.NEGATIVE_INFINITY;
  private changesDone = 0;
  private begunS = Number.NEGATIVE_INFINITY;
  private secondLookDue = false;
  private last: GrowingUpdate;

  constructor(car: Car, options: GrowingOptions = {}) {
    this.car = car;
    this.label = options.label ?? 'the growing recording';
    this.history = new History(car, options.notes);
    this.prior = causePriors(options.complaints ?? [], options.codes ?? []);
    this.told = (options.complaints?.length ?? 0) + (options.codes?.length ?? 0) > 0;
    this.last = this.silent('unknown', undefined, []);
  }

  /** Takes the next samples, on the recording's own clock; what is not later than the last sample is left out and counted. */
  add(batch: Recording): GrowingUpdate {
    const h = this.history;
    const before = h.lastS;
    h.add(batch, gridOf(this.procedure === 'unknown' ? 'vacuum-draw' : this.procedure).width);
    const grown = Number.isFinite(before) ? h.lastS - before : 0;
    this.saved = Math.min(MOST_SAVED, this.saved + STEPS_PER_S * grown);
    const due = h.lastS - this.doneS >= UPDATE_EVERY_S - 1e-6 || h.changesSeen !== this.changesDone;
    if (h.samples === 0 || !due) {
      this.last = { ...this.last, samples: h.samples, left: h.left, modelSteps: 0 };
      return this.last;
    }
    return this.update(this.saved);
  }

  /** Brings the finding to the last sample and lets every cause settle; for when the recording has ended. */
  finish(): GrowingUpdate {
    for (let i = 0; i < MOST_FINISHING; i++) {
      this.update(MOST_SAVED);
      if (i > 0 && this.last.settled) break;
    }
    return this.last;
  }

  private update(budget: number): GrowingUpdate {
    const h = this.history;
    this.doneS = h.lastS;
    const shape = outline(h, this.label);
    h.coarsen();
    if (!h.present.has('tankPressureGaugePa')) {
      this.last = this.silent(shape.procedure, shape.phases, [
        'There is no tank pressure; map the column that holds it.',
      ]);
      return this.last;
    }
    if (!FOLLOWED.includes(shape.procedure) || h.readings < FEWEST_READINGS) {
      this.changesDone = h.changesSeen;
      const what = shape.procedure === 'unknown' || FOLLOWED.includes(shape.procedure);
      this.last = this.silent(
        shape.procedure,
        shape.phases,
        what ? [] : [`A ${shape.procedure} is not followed while it grows; ask for the finding when it has ended.`],
      );
      return this.last;
    }
    const prepared = snapshot(this.car, h, shape, this.coarseness);
    const fits = this.follow(prepared, shape);
    const start = this.spentBefore;
    const sinceChange = h.lastS - h.lastChangeS;
    const trimSteps = this.trims.advance(prepared, standings(fits));
    fits.work(budget - (fits.spent() - start) - trimSteps - this.hold.reserve(h.lastS, prepared), h.lastS, sinceChange);
    const posterior = this.weigh(prepared, fits);
    let steps = fits.spent() - start + trimSteps;
    fits.setContexts(posterior ? contextsOf(posterior) : contextsOf(undefined));
    const sized = SIZING.includes(shape.procedure) ? this.mixture(fits, posterior) : undefined;
    const exceeds = { mm0_5: sized?.exceeds(0.5) ?? null, mm1_0: sized?.exceeds(1) ?? null };
    const phase = shape.phases[shape.phases.length - 1];
    const settled = fits.settled();
    let holdingLonger: HoldingLonger | undefined;
    if (posterior && phase && WAITING.includes(phase.kind) && SIZING.includes(shape.procedure)) {
      holdingLonger = this.hold.look({
        history: h,
        prepared,
        coarseness: this.coarseness,
        fits,
        posterior,
        exceeds,
        phase,
        settled,
      });
      steps += this.hold.steps;
    } else this.hold.reset();
    this.saved = Math.max(0, this.saved - steps);
    this.last = {
      ...this.silent(shape.procedure, shape.phases, prepared.conditions.warnings),
      causes: posterior
        ? [...posterior.byCause]
            .map(([id, probability]) => ({ id, probability }))
            .sort((a, b) => b.probability - a.probability)
        : [],
      settled,
      diameterMm: sized?.interval() ?? null,
      exceeds,
      ...(holdingLonger && { holdingLonger }),
      modelSteps: steps,
    };
    return this.last;
  }

  /** The fits, on the newest data; begun where there are none yet, begun again where a command has changed. */
  private follow(prepared: Prepared, shape: Outline): Fits {
    const h = this.history;
    if (!this.fits || this.procedure !== shape.procedure) {
      this.procedure = shape.procedure;
      this.fits = new Fits(this.car, prepared, contextsOf(undefined));
      this.spentBefore = 0;
      this.changesDone = h.changesSeen;
      this.begunS = h.lastS;
      this.secondLookDue = h.changesSeen > 0;
    } else {
      this.spentBefore = this.fits.spent();
      this.fits.follow(prepared, h.lastS);
      const least = shape.procedure === 'purge-drive' ? LEAST_BETWEEN_S['purge-drive'] : LEAST_BETWEEN_S.other;
      const changed = h.changesSeen !== this.changesDone && h.lastS - this.begunS >= least;
      const second = this.secondLookDue && h.lastS - h.lastChangeS >= SECOND_LOOK_S;
      if (changed || second) {
        this.fits.beginAgain();
        this.begunS = h.lastS;
        this.changesDone = h.changesSeen;
        this.secondLookDue = !second && shape.procedure !== 'purge-drive';
      }
    }
    return this.fits;
  }

  private weigh(prepared: Prepared, fits: Fits): Posterior | undefined {
    const weighed = weighNow(prepared, fits, this.trims);
    if (!weighed.some((w) => w.id !== 'sensor_stuck' && Number.isFinite(w.logEvidence))) return undefined;
    const factor = (id: CauseId) => (this.told ? 1 : selectionFactor([prepared.procedure], id));
    const weighing = {
      weighed,
      pairs: [],
      checks: [],
      recordings: [fits.recording],
      noise: [fits.noise],
      parameters: [],
      runs: 0,
    };
    return posteriorOf(weighing, (id) => this.prior[id] * factor(id));
  }

  private mixture(fits: Fits, posterior: Posterior | undefined): SizeMixture | undefined {
    const parts = contextsOf(posterior).flatMap((c) => {
      const size = fits.sizes.get(c.name);
      return size ? [{ weight: Math.max(c.weight, 1e-6), posterior: size }] : [];
    });
    return parts.length > 0 ? new SizeMixture(parts) : undefined;
  }

  private silent(
    procedure: ProcedureKind | 'unknown',
    phases: readonly Phase[] | undefined,
    warnings: readonly string[],
  ): GrowingUpdate {
    const h = this.history;
    const phase = phases?.[phases.length - 1];
    return {
      ...(h.samples > 0 && { uptoS: h.lastS }),
      samples: h.samples,
      left: h.left,
      procedure,
      ...(phase && { phase: phase.kind, phaseSinceS: h.lastS - phase.fromS }),
      causes: [],
      settled: false,
      diameterMm: null,
      exceeds: { mm0_5: null, mm1_0: null },
      warnings,
      modelSteps: 0,
    };
  }
}
