/** Follows vacuum draws, engine-off tests, purge drives and refuellings with the model of tank and canister side. */
import type { ProcedureKind } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import type { CauseId } from '../finding.ts';
import { type Posterior, posteriorOf } from '../posterior.ts';
import { type Grid, gridOf, type Prepared } from '../prepare.ts';
import { selectionFactor } from '../priors/selection.ts';
import { SizeMixture } from '../size.ts';
import { standings, weighNow } from './evidence.ts';
import { Fits } from './fits.ts';
import { FINE_BIN_S, NO_PRESSURE, NOTHING_SAID, type RunFollower, ranked, type Said } from './followed.ts';
import { type History, MOST_BINS } from './history.ts';
import { HoldWatch } from './hold-watch.ts';
import { WAITING } from './holding-longer.ts';
import { firstFaults } from './pair-trials.ts';
import { contextsOf } from './size-question.ts';
import { Coarseness, type Outline, snapshot } from './snapshot.ts';
import { TrimRounds } from './trim-round.ts';

const SIZING: readonly ProcedureKind[] = ['vacuum-draw', 'engine-off'];
/** Starts are tried anew after a command change, and once more when what it did has shown [s]. */
const SECOND_LOOK_S = 10;
const LEAST_BETWEEN_S = { 'purge-drive': 30, other: 1 } as const;
/** Steps of the model for each second: some 15 ms. */
const STEPS_PER_S = 36_000;
/** Fewer readings than this tell nothing. */
const FEWEST_READINGS = 20;
/** A pair below this probability is not listed, as in the whole finding. */
const NEGLIGIBLE = 0.01;
/**
 * While it is not known where a filling begins and ends the bins are this fine [s]: as samples are at 10 a second, while the
 * rows of several channels of a bus come together. So many are kept.
 */
const FINEST: Grid['width'] = () => FINE_BIN_S;
const MOST_FINE_BINS = 600;

/** What is known beside the recording. */
export interface Known {
  readonly prior: Readonly<Record<CauseId, number>>;
  /** Whether a complaint or a code was told. */
  readonly told: boolean;
}

export class TwoSpaceFollower implements RunFollower {
  readonly width: Grid['width'];
  readonly stepsPerS = STEPS_PER_S;
  readonly mostBins: number;
  private readonly car: Car;
  private readonly history: History;
  private readonly known: Known;
  private readonly procedure: ProcedureKind;
  private readonly coarseness = new Coarseness();
  private readonly trims = new TrimRounds();
  private readonly hold = new HoldWatch();
  private fits: Fits | undefined;
  private changesDone = 0;
  private begunS = Number.NEGATIVE_INFINITY;
  private secondLookDue = false;
  private ended = false;

  constructor(car: Car, history: History, procedure: ProcedureKind, known: Known) {
    this.car = car;
    this.history = history;
    this.procedure = procedure;
    this.known = known;
    const filling = procedure === 'refuelling';
    this.width = filling ? FINEST : gridOf(procedure).width;
    this.mostBins = filling ? MOST_FINE_BINS : MOST_BINS;
  }

  update(outline: Outline, budget: number, ended: boolean): Said {
    const h = this.history;
    if (!h.present.has('tankPressureGaugePa')) {
      return { ...NOTHING_SAID, warnings: [NO_PRESSURE] };
    }
    if (h.readings < FEWEST_READINGS) return { ...NOTHING_SAID, warnings: [] };
    const prepared = snapshot(this.car, h, outline, this.coarseness);
    const { fits, before } = this.follow(prepared, outline, ended);
    if (ended && !this.ended) fits.pairs.tryAllAgain();
    this.ended = ended;
    const trimSteps = this.trims.advance(prepared, standings(fits));
    const reserve = this.hold.reserve(h.lastS, prepared);
    fits.work(budget - (fits.spent() - before) - trimSteps - reserve, h.lastS, h.lastS - this.lastEventS(outline));
    const posterior = this.weigh(prepared, fits);
    let steps = fits.spent() - before + trimSteps;
    fits.setContexts(contextsOf(posterior));
    const sizing = SIZING.includes(this.procedure);
    const settled = fits.settled() && (!ended || fits.pairsDone(h.lastS));
    if (ended && settled && sizing) fits.concludeSizes();
    const sized = sizing ? mixture(fits, posterior) : undefined;
    const exceeds = { mm0_5: sized?.exceeds(0.5) ?? null, mm1_0: sized?.exceeds(1) ?? null };
    const phase = outline.phases[outline.phases.length - 1];
    let holdingLonger: Said['holdingLonger'];
    if (posterior && phase && WAITING.includes(phase.kind) && sizing) {
      const { coarseness } = this;
      holdingLonger = this.hold.look({
        history: h,
        prepared,
        coarseness,
        fits,
        posterior,
        exceeds,
        phase,
        settled,
      });
      steps += this.hold.steps;
    } else this.hold.reset();
    return {
      causes: posterior ? ranked(posterior.byCause) : [],
      pairs: (posterior?.pairs ?? [])
        .filter((p) => p.probability >= NEGLIGIBLE)
        .map((p) => ({ ids: [p.weighed.causes[0]!.id, p.weighed.causes[1]!.id], probability: p.probability })),
      settled,
      diameterMm: sized?.interval() ?? null,
      exceeds,
      ...(holdingLonger && { holdingLonger }),
      warnings: prepared.conditions.warnings,
      limits: [],
      modelSteps: steps,
    };
  }

  /** The fits, on the newest data; begun where there are none yet, begun again where a command has changed. */
  private follow(
    prepared: Prepared,
    outline: Outline,
    ended: boolean,
  ): { readonly fits: Fits; readonly before: number } {
    const h = this.history;
    const events = this.eventsIn(outline);
    if (!this.fits) {
      this.fits = new Fits(this.car, prepared, contextsOf(undefined));
      this.changesDone = events;
      this.begunS = h.lastS;
      this.secondLookDue = events > 0;
      return { fits: this.fits, before: 0 };
    }
    const before = this.fits.spent();
    this.fits.follow(prepared, h.lastS, ended);
    const least = this.procedure === 'purge-drive' ? LEAST_BETWEEN_S['purge-drive'] : LEAST_BETWEEN_S.other;
    const changed = events !== this.changesDone && h.lastS - this.begunS >= least;
    const second = this.secondLookDue && h.lastS - this.lastEventS(outline) >= SECOND_LOOK_S;
    if (changed || second) {
      this.fits.beginAgain();
      this.begunS = h.lastS;
      this.changesDone = events;
      this.secondLookDue = !second && this.procedure !== 'purge-drive';
    }
    return { fits: this.fits, before };
  }

  /** Command changes so far; a filling has none, there its phases count. */
  private eventsIn({ phases }: Outline): number {
    return this.procedure === 'refuelling' ? phases.length - 1 : this.history.changesSeen;
  }

  private lastEventS({ phases }: Outline): number {
    if (this.procedure !== 'refuelling') return this.history.lastChangeS;
    return phases.length > 1 ? phases[phases.length - 1]!.fromS : Number.NEGATIVE_INFINITY;
  }

  private weigh(prepared: Prepared, fits: Fits): Posterior | undefined {
    const { weighed, pairs } = weighNow(prepared, fits, this.trims);
    fits.firsts = firstFaults(weighed.map((w) => ({ cause: w.causes[0]!, logEvidence: w.logEvidence }))).map(
      (w) => w.cause,
    );
    if (!weighed.some((w) => w.id !== 'sensor_stuck' && Number.isFinite(w.logEvidence))) return undefined;
    const { prior, told } = this.known;
    const factor = (id: CauseId) => (told ? 1 : selectionFactor([prepared.procedure], id));
    const weighing = { weighed, pairs: pairs.filter((p) => Number.isFinite(p.logEvidence)) };
    return posteriorOf(weighing, (id) => prior[id] * factor(id));
  }
}

function mixture(fits: Fits, posterior: Posterior | undefined): SizeMixture | undefined {
  const parts = contextsOf(posterior).flatMap((c) => {
    const size = fits.sizes.get(c.name);
    return size ? [{ weight: Math.max(c.weight, 1e-6), posterior: size }] : [];
  });
  return parts.length > 0 ? new SizeMixture(parts) : undefined;
}
