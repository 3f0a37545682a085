/** Follows pump runs and sealed holds, each with its own model. */
import type { Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { limitText } from '../explain/run-limits.ts';
import type { CauseId } from '../finding.ts';
import { TEMPER } from '../posterior.ts';
import type { Grid } from '../prepare.ts';
import { findConditions } from '../priors/conditions.ts';
import type { PumpCauseId } from '../pump/causes.ts';
import { layOutPumpRun, pumpBinWidth } from '../pump/drive.ts';
import { type PumpLimit, pumpLimits } from '../pump/limits.ts';
import { pumpQuestion } from '../pump/weigh-pump-run.ts';
import { causeOf, type FormWeight, probabilitiesFromRuns, sizeMixture, UNTESTED } from '../run-evidence.ts';
import type { SealedCauseId } from '../sealed/causes.ts';
import { layOutSealedRun, sealedBinWidth } from '../sealed/drive.ts';
import { type SealedLimit, sealedLimits } from '../sealed/limits.ts';
import { sealedQuestion } from '../sealed/weigh-sealed-hold.ts';
import type { LayOut } from '../single-run/lay-out.ts';
import { compressedRecording, meanRecording } from './compressed-recording.ts';
import { NOTHING_SAID, type RunFollower, type Said } from './followed.ts';
import type { History } from './history.ts';
import { type LaidOut, RunFits } from './run-fits.ts';
import { AHEAD, RUN_WAITING, RunHoldWatch } from './run-hold-watch.ts';
import { observeHistory } from './run-observations.ts';
import type { Outline } from './snapshot.ts';
import type { Known } from './two-space-follower.ts';

/** Bins kept at most: a pump run of ten minutes as fine as a whole one is binned has some more. */
const MOST_RUN_BINS = 260;
const MOST_RUN_STEPS = 400;
const COARSER = 1.25;
const MOST_TRIES = 24;
/** What a command does is tried again when it has shown: so long after it [s]. */
const LOOKS_AFTER_S = [10, 60];
/** Steps of the model for each second: some 20 ms, as they are cheaper than those of the two-space model with its derivatives. */
const STEPS_PER_S = 54_000;
/** Fewer readings than this tell nothing. */
const FEWEST_READINGS = 20;
/** What a run that tested nothing can neither show nor exclude. */
const UNSHOWN: readonly CauseId[] = ['none', 'leak', 'gross_leak'];

abstract class SingleRunFollower<Id extends string> implements RunFollower {
  abstract readonly width: Grid['width'];
  readonly stepsPerS = STEPS_PER_S;
  readonly mostBins = MOST_RUN_BINS;
  protected readonly car: Car;
  protected readonly history: History;
  private readonly known: Known;
  private fits: RunFits<Id> | undefined;
  private coarser = 1;
  private changesDone = 0;
  private looksDue: number[] = [];
  private readonly hold = new RunHoldWatch<Id>();

  constructor(car: Car, history: History, known: Known) {
    this.car = car;
    this.history = history;
    this.known = known;
  }

  protected abstract layOut(recording: Recording, outline: Outline, how: LayOut): LaidOut<Id> | undefined;
  protected abstract limitsOf(recording: Recording): readonly (PumpLimit | SealedLimit)[];
  protected abstract readonly noPressure: string;
  /** Why the run cannot be followed with the channels that come, if so. */
  protected lacks(): string | undefined {
    return undefined;
  }

  update(outline: Outline, budget: number, ended: boolean): Said {
    const h = this.history;
    if (h.samples < FEWEST_READINGS) return { ...NOTHING_SAID, warnings: [] };
    const lacks = this.lacks();
    if (lacks !== undefined) return { ...NOTHING_SAID, warnings: [lacks] };
    const run = this.laidOut(outline);
    if (!run) return { ...NOTHING_SAID, warnings: [this.noPressure] };
    const { warnings } = findConditions(this.car, meanRecording(h, outline.recording.label));
    const { fits, before } = this.follow(run, ended);
    fits.work(budget - (fits.spent() - before), h.lastS, h.lastS - h.lastChangeS);
    let modelSteps = fits.spent() - before;
    const settled = fits.settled();
    if (ended && settled) fits.conclude();
    if (!fits.begun) return { ...NOTHING_SAID, warnings, modelSteps };
    const byCause = new Map<CauseId, FormWeight[]>();
    for (const w of fits.weighed()) {
      const id = causeOf(w.id);
      byCause.set(id, [...(byCause.get(id) ?? []), w]);
    }
    const causes = probabilitiesFromRuns([{ byCause }], this.known.prior, TEMPER);
    const limits = this.limitsOf(outline.recording);
    const untested = limits.some((l) => UNTESTED.includes(l.kind)) && UNSHOWN.includes(causes[0]!.id);
    const phase = outline.phases[outline.phases.length - 1];
    const sized = untested ? undefined : sizeMixture([{ byCause }], causes);
    const exceeds = { mm0_5: sized?.exceeds(0.5) ?? null, mm1_0: sized?.exceeds(1) ?? null };
    let holdingLonger: Said['holdingLonger'];
    if (phase && sized && RUN_WAITING.includes(phase.kind)) {
      holdingLonger = this.hold.look({
        fits,
        run,
        ahead: () => this.ahead(outline),
        causes,
        exceeds,
        phase,
        heldS: h.lastS - Math.max(phase.fromS, h.lastChangeS),
        nowS: h.lastS,
        settled,
      });
      modelSteps += this.hold.steps;
    } else this.hold.reset();
    return {
      causes: causes.map(({ id, probability }) => ({ id, probability })),
      pairs: [],
      settled,
      diameterMm: sized?.interval() ?? null,
      exceeds,
      ...(holdingLonger && { holdingLonger }),
      warnings,
      limits: limits.map(limitText),
      modelSteps,
    };
  }

  /** The run with its present phase gone on. */
  private ahead(outline: Outline): LaidOut<Id> | undefined {
    const h = this.history;
    const recording = compressedRecording(h, outline.recording.label, h.lastS + AHEAD.lengthS);
    return this.layOut(recording, outline, { observe: observeHistory(h, AHEAD), coarser: this.coarser });
  }

  /** The run so far, its steps within bounds. */
  private laidOut(outline: Outline): LaidOut<Id> | undefined {
    for (let tries = 0; ; tries++) {
      const run = this.layOut(outline.recording, outline, {
        observe: observeHistory(this.history),
        coarser: this.coarser,
      });
      if (!run || run.stepCount <= MOST_RUN_STEPS || tries >= MOST_TRIES) return run;
      this.coarser *= COARSER;
    }
  }

  private follow(run: LaidOut<Id>, ended: boolean): { readonly fits: RunFits<Id>; readonly before: number } {
    const h = this.history;
    if (!this.fits || this.fits.channelCount !== run.question.channels.length) {
      this.fits = new RunFits(run);
      this.changesDone = h.changesSeen;
      return { fits: this.fits, before: 0 };
    }
    const before = this.fits.spent();
    this.fits.follow(run, h.lastS, ended);
    const changed = h.changesSeen !== this.changesDone;
    const shown = this.looksDue.length > 0 && h.lastS - h.lastChangeS >= this.looksDue[0]!;
    if (changed || shown) {
      this.fits.beginAgain();
      this.changesDone = h.changesSeen;
      this.looksDue = changed ? [...LOOKS_AFTER_S] : this.looksDue.slice(1);
    }
    return { fits: this.fits, before };
  }
}

export class PumpFollower extends SingleRunFollower<PumpCauseId> {
  readonly width = pumpBinWidth;
  protected readonly noPressure = 'No pressure of the pump run was recorded; map the column that holds it.';
  protected override lacks(): string | undefined {
    return this.history.present.has('pumpOn')
      ? undefined
      : 'The command of the leak pump is not recorded; without it a pump run cannot be followed.';
  }

  protected layOut(recording: Recording, { phases }: Outline, how: LayOut): LaidOut<PumpCauseId> | undefined {
    const conditions = findConditions(this.car, meanRecording(this.history, recording.label));
    const run = layOutPumpRun(recording, phases, conditions, how);
    return run && { question: pumpQuestion(this.car, conditions, run), stepCount: run.drive.steps.count };
  }
  protected limitsOf(recording: Recording): readonly PumpLimit[] {
    return pumpLimits(recording);
  }
}

/** Bins before the first command [s]: they coarsen with their number. */
const STANDING_BIN_S = 2;

export class SealedFollower extends SingleRunFollower<SealedCauseId> {
  readonly width = (sinceS: number): number => (Number.isFinite(sinceS) ? sealedBinWidth(sinceS) : STANDING_BIN_S);
  protected readonly noPressure = 'There is no tank pressure; map the column that holds it.';

  protected layOut(recording: Recording, { phases }: Outline, how: LayOut): LaidOut<SealedCauseId> | undefined {
    const conditions = findConditions(this.car, meanRecording(this.history, recording.label));
    const run = layOutSealedRun(recording, phases, conditions, how);
    return run && { question: sealedQuestion(this.car, conditions, run), stepCount: run.drive.steps.count };
  }
  protected limitsOf(recording: Recording): readonly SealedLimit[] {
    return sealedLimits(recording);
  }
}
