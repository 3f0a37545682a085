/**
 * The finding on a growing recording: each batch of samples updates it, at a cost that does not depend on how long the
 * recording already is, and while someone waits it says whether waiting longer would tell anything more.
 *
 * Vacuum draws, engine-off tests, purge drives and refuellings are followed with one model, pump runs and sealed holds
 * with their own; pairs of faults are tried one after the other. The whole finding is `../diagnose.ts`.
 */
import type { PhaseKind, ProcedureKind, Recording, RecordingNotes } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { causePriors } from '../priors/cause-priors.ts';
import type { Complaint } from '../priors/root-causes.ts';
import { FINE_BIN_S, NO_PRESSURE, NOTHING_SAID, type RunFollower, type Said } from './followed.ts';
import { History } from './history.ts';
import { PumpFollower, SealedFollower } from './single-run-follower.ts';
import { type Outline, outline } from './snapshot.ts';
import { type Known, TwoSpaceFollower } from './two-space-follower.ts';

export type { GrowingCause, GrowingPair } from './followed.ts';

export interface GrowingUpdate extends Said {
  /** Time of the last sample that the finding takes account of [s]; absent before the first. */
  readonly uptoS?: number;
  readonly samples: number;
  /** Samples left out because they were not later than the last: duplicates and steps back. */
  readonly left: number;
  readonly procedure: ProcedureKind | 'unknown';
  readonly phase?: PhaseKind;
  readonly phaseSinceS?: number;
}

export interface GrowingOptions {
  readonly notes?: RecordingNotes;
  readonly complaints?: readonly Complaint[];
  readonly codes?: readonly string[];
  readonly label?: string;
}

/** The finding is worked out anew once so much has come [s]; a changed command does not wait. */
const UPDATE_EVERY_S = 1;
/** Steps of the model that may be saved up, of those allowed for a second [-]. */
const MOST_SAVED = 1.1;
/** Bins kept while it is not known what is recorded: some minutes of single samples. */
const MOST_UNKNOWN_BINS = 600;
/** Rounds of steps that `finish` may take until all has settled. */
const MOST_FINISHING = 120;

export class GrowingFinding {
  private readonly car: Car;
  private readonly history: History;
  private readonly label: string;
  private readonly known: Known;
  private follower: RunFollower | undefined;
  private procedure: ProcedureKind | 'unknown' = 'unknown';
  private saved = 0;
  private doneS = Number.NEGATIVE_INFINITY;
  private changesDone = 0;
  private last: GrowingUpdate;

  constructor(car: Car, options: GrowingOptions = {}) {
    this.car = car;
    this.label = options.label ?? 'the growing recording';
    this.history = new History(car, options.notes);
    this.known = {
      prior: causePriors(options.complaints ?? [], options.codes ?? [], car.layout),
      told: (options.complaints?.length ?? 0) + (options.codes?.length ?? 0) > 0,
    };
    this.last = this.withOutline({ ...NOTHING_SAID, warnings: [] }, undefined);
    if (options.notes?.procedure) this.begin(options.notes.procedure);
  }

  /** Takes the next samples, on the recording's own clock; what is not later than the last sample is left out and counted. */
  add(batch: Recording): GrowingUpdate {
    const h = this.history;
    const before = h.lastS;
    h.add(batch, this.follower?.width ?? (() => FINE_BIN_S));
    const grown = Number.isFinite(before) ? h.lastS - before : 0;
    const perS = this.follower?.stepsPerS ?? 0;
    this.saved = Math.min(MOST_SAVED * perS, this.saved + perS * grown);
    const due = h.lastS - this.doneS >= UPDATE_EVERY_S - 1e-6 || h.changesSeen !== this.changesDone;
    if (h.samples === 0 || !due) {
      this.last = { ...this.last, samples: h.samples, left: h.left, modelSteps: 0 };
      return this.last;
    }
    return this.update(this.saved, false);
  }

  /** Brings the finding to the last sample and lets every cause settle; for when the recording has ended. */
  finish(): GrowingUpdate {
    for (let i = 0; i < MOST_FINISHING && this.history.samples > 0; i++) {
      this.update(MOST_SAVED * (this.follower?.stepsPerS ?? 0), true);
      if (i > 0 && (this.last.settled || this.last.causes.length === 0)) break;
    }
    return this.last;
  }

  private update(budget: number, ended: boolean): GrowingUpdate {
    const h = this.history;
    this.doneS = h.lastS;
    this.changesDone = h.changesSeen;
    const shape = this.outline();
    h.coarsen(this.follower?.mostBins ?? MOST_UNKNOWN_BINS);
    const said = this.follower?.update(shape, budget, ended) ?? this.unfollowed();
    this.saved = Math.max(0, this.saved - said.modelSteps);
    this.last = this.withOutline(said, shape);
    return this.last;
  }

  /** Procedure and phases so far; with another procedure than before the following begins again. */
  private outline(): Outline {
    const h = this.history;
    const shape = outline(h, this.label);
    if (shape.procedure === this.procedure) return shape;
    this.begin(shape.procedure);
    if (this.follower) h.regroup(this.follower.width);
    return outline(h, this.label);
  }

  private begin(procedure: ProcedureKind | 'unknown'): void {
    this.procedure = procedure;
    const { car, history, known } = this;
    if (procedure === 'unknown') this.follower = undefined;
    else if (procedure === 'pump-run') this.follower = new PumpFollower(car, history, known);
    else if (procedure === 'sealed-hold') this.follower = new SealedFollower(car, history, known);
    else this.follower = new TwoSpaceFollower(car, history, procedure, known);
  }

  private unfollowed(): Said {
    const { present } = this.history;
    const blind = !present.has('tankPressureGaugePa') && !present.has('pumpPressureGaugePa');
    return { ...NOTHING_SAID, warnings: blind ? [NO_PRESSURE] : [] };
  }

  private withOutline(said: Said, shape: Outline | undefined): GrowingUpdate {
    const h = this.history;
    const phase = shape?.phases[shape.phases.length - 1];
    return {
      ...said,
      ...(h.samples > 0 && { uptoS: h.lastS }),
      samples: h.samples,
      left: h.left,
      procedure: this.procedure,
      ...(phase && { phase: phase.kind, phaseSinceS: h.lastS - phase.fromS }),
    };
  }
}
