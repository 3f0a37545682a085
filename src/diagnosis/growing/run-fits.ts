/**
 * The fits of all causes to a growing pump run or sealed hold, and what is done of them in one update: every cause is held
 * against the new data, a bounded number of steps goes to those that need one most, and one cause is looked at closely.
 */
import { mixSizes, type SizeDensity, sizeOf } from '../single-run/mix-sizes.ts';
import { estimateSlowNoise, FIRST_SLOW_NOISE, type SlowNoise, whitenChannel } from '../single-run/observed-channel.ts';
import { baseUnder, priorsUnder, type SingleRunCause, setQuantities } from '../single-run/prior.ts';
import { SingleRunProblem } from '../single-run/problem.ts';
import { costAt, startPoints, translate } from '../single-run/start-points.ts';
import { formLogShare, logEvidenceOf, reweighed, type SingleRun } from '../single-run/weigh.ts';
import { RUN_FAIR_STEPS, RunCandidates } from './run-candidates.ts';
import { stepNeed } from './step-need.ts';
import type { Track } from './track.ts';

export interface LaidOut<Id extends string> {
  readonly question: SingleRun<Id>;
  /** Steps of the model in one run. */
  readonly stepCount: number;
}

export interface WeighedForm<Id extends string> {
  readonly id: Id;
  /** ln evidence; constants common to all causes included alike. */
  readonly logEvidence: number;
  readonly size?: SizeDensity;
}

interface Chosen<Id extends string> {
  readonly owner: RunCandidates<Id>;
  readonly track: Track<SingleRunProblem>;
}

/** A cause this much worse than the best [ln] begins again from the best one's car and day, at most this often [s]. */
const SUSPICIOUS = 2;
const HOPELESS = 300;
const LOST_S = 4;
/** Causes further below the best than this [ln] are not looked at closely; a hole beside another fault is worth less. */
const WORTH_LOOK = 9;
const WORTH_SIZE = 5;
/** A cause this much worse than the best [ln] need not have arrived for the finding to have settled. */
const OUT_OF_SIGHT = 60;
/** A fit that still gains less than this a step [ln] does not change the finding. */
const NEARLY = 0.1;
/** While data come one that gains less than this has arrived; a look is of lately for so long [s]. */
const STILL_MOVING = 0.3;
const LOOKED_LATELY_S = 30;
/** The noise is looked at anew this often [s]. */
const NOISE_EVERY_S = 15;
/** A fit that has none yet counts so much less than its cost says [ln]. */
const NO_EVIDENCE = 100;
/** Share of the steps that goes to starts which have not had their chance, however poor they look. */
const FAIR_SHARE = 0.5;
/** Looks in an update, at most. */
const MOST_LOOKS = 2;

export class RunFits<Id extends string> {
  readonly causes: readonly RunCandidates<Id>[];
  private run: LaidOut<Id>;
  private noise: SlowNoise[];
  private noiseS = Number.NEGATIVE_INFINITY;
  private followedS = Number.NEGATIVE_INFINITY;
  private whitening: SingleRunProblem['whitening'];
  private readonly begunAgainS = new Map<string, number>();
  private retired = 0;
  private ended = false;

  constructor(run: LaidOut<Id>) {
    this.run = run;
    this.noise = run.question.channels.map(() => FIRST_SLOW_NOISE);
    this.whitening = this.whiten();
    this.causes = run.question.causes
      .filter((c) => c.sharesFitOf === undefined)
      .map((cause) => {
        const problem = this.problemFor(cause);
        const c = new RunCandidates(cause, problem, this.startsOf(cause, problem));
        for (const t of c.tracks) t.evaluate();
        return c;
      });
  }

  /** Takes up new data: one run of the model for every line of thought. */
  follow(run: LaidOut<Id>, nowS: number, ended: boolean): void {
    this.run = run;
    this.ended = ended;
    if (nowS - this.noiseS >= NOISE_EVERY_S || (ended && this.noiseS < nowS)) {
      this.lookAtNoise();
      this.noiseS = nowS;
      this.followedS = Number.NEGATIVE_INFINITY;
    }
    this.whitening = this.whiten();
    for (const c of this.causes) {
      this.retire(c);
      c.follow(this.problemFor(c.cause));
      if (nowS !== this.followedS) c.fresh = false;
    }
    this.followedS = nowS;
  }

  /** Tries other starts: a command has changed, or its effect has shown. */
  beginAgain(): void {
    const leader = this.leader();
    for (const c of this.causes) c.begin([...this.startsOf(c.cause, c.problem), this.fromLeader(c, leader)]);
  }

  /**
   * Steps until so much is spent.
   *
   * @param budget steps of the model
   * @param sinceChangeS time since the last command change [s]
   */
  work(budget: number, nowS: number, sinceChangeS: number): void {
    const limit = this.spent() + budget;
    this.lookForLost(nowS);
    const fairLimit = this.spent() + FAIR_SHARE * budget;
    let looks = 0;
    while (this.spent() < limit) {
      const lowest = this.leader().best.cost;
      // one close look goes before the steps, others after them; at the end all causes are looked at together
      const stale = looks < MOST_LOOKS && !this.ended ? this.stalest(lowest) : undefined;
      const untried = this.spent() < fairLimit ? this.untried() : undefined;
      const neediest = stale && looks === 0 ? undefined : (untried ?? this.neediest(lowest, nowS, sinceChangeS));
      if (neediest) this.step(neediest, nowS);
      else if (stale) {
        this.closeLook(stale, nowS);
        looks++;
      } else break;
    }
    for (const c of this.causes) c.prune();
  }

  /**
   * Whether every line of thought that may matter has arrived and was looked at lately; at the end, whether every cause has
   * been tried from the best one's car and day.
   */
  settled(): boolean {
    const lowest = this.leader().best.cost;
    const outOfSight = (c: RunCandidates<Id>) => c.best.cost > lowest + OUT_OF_SIGHT;
    if (this.ended) {
      const waiting = this.lost().some((c) => !c.tried || this.begunAgainS.get(c.form) !== this.followedS);
      return !waiting && this.causes.every((c) => c.tried && (c.best.gained < NEARLY || outOfSight(c)));
    }
    return this.causes.every(
      (c) =>
        outOfSight(c) ||
        (c.standing.gained < STILL_MOVING &&
          (c.best.cost > lowest + WORTH_LOOK || this.followedS - c.lookedS < LOOKED_LATELY_S)),
    );
  }

  get channelCount(): number {
    return this.noise.length;
  }

  /** Evidence and sizes by the integrals of a whole run, once nothing more will come. */
  conclude(): void {
    const lowest = this.leader().best.cost;
    for (const c of this.causes) {
      if (c.best.cost > lowest + WORTH_LOOK) continue;
      const source = this.run.question.causes.some((other) => other.sharesFitOf === c.form);
      c.lookExactly(source, c.best.cost < lowest + WORTH_SIZE);
    }
  }

  /** Whether every cause that may matter has been stepped once. */
  get begun(): boolean {
    const lowest = this.leader().best.cost;
    return this.causes.every((c) => c.standing.steps > 0 || c.best.cost > lowest + HOPELESS);
  }

  leader(): RunCandidates<Id> {
    return this.causes.reduce((a, b) => (b.best.cost < a.best.cost ? b : a));
  }

  /** Steps of the model so far. */
  spent(): number {
    return this.causes.reduce((s, c) => s + c.problem.runs * this.run.stepCount, this.retired);
  }

  /** The causes with their evidence and the hole's size, forms of one cause together, as for a whole run. */
  weighed(): WeighedForm<Id>[] {
    const { causes, beside } = this.run.question;
    const forms = causes.flatMap((cause) => {
      const source = this.causes.find((c) => c.form === (cause.sharesFitOf ?? cause.form ?? cause.id));
      if (!source) return [];
      let log = Number.isFinite(source.logEvidence) ? source.logEvidence : -source.best.cost - NO_EVIDENCE;
      let hole = source.holeGrid;
      if (cause.sharesFitOf !== undefined && source.keyGrid) {
        const grid = reweighed(source.keyGrid, cause.changes[cause.key]);
        // the grid may be of some seconds ago: what the other prior changes is of today all the same
        log += logEvidenceOf(grid) - logEvidenceOf(source.keyGrid);
        hole = cause.hole === cause.key ? grid : source.holeGrid;
      }
      if (cause.hole === undefined) hole = undefined;
      log += (beside?.(cause.id, this.quantitiesOf(source)) ?? 0) + formLogShare(causes, cause);
      return [{ id: cause.id, log, hole }];
    });
    const normaliser = this.whitening.reduce((s, w) => s - 0.5 * w.logDeterminant, 0);
    return [...new Set(forms.map((f) => f.id))].map((id) => {
      const own = forms.filter((f) => f.id === id);
      const top = Math.max(...own.map((f) => f.log));
      const all = Math.log(own.reduce((s, f) => s + Math.exp(f.log - top), 0));
      const sizes = own.flatMap((f) => (f.hole ? [{ ...sizeOf(f.hole), logWeight: f.log }] : []));
      return { id, logEvidence: top + all + normaliser, ...(sizes.length > 0 && { size: mixSizes(sizes) }) };
    });
  }

  problemFor(cause: SingleRunCause<Id>, run: LaidOut<Id> = this.run): SingleRunProblem {
    const { sound, base, model, channels } = run.question;
    const whitening = run === this.run ? this.whitening : this.whiten(run);
    return new SingleRunProblem(priorsUnder(sound, cause), baseUnder(base, cause), model, channels, whitening);
  }

  private whiten(run: LaidOut<Id> = this.run): SingleRunProblem['whitening'] {
    return run.question.channels.map((c, i) => whitenChannel(c, this.noise[i] ?? FIRST_SLOW_NOISE));
  }

  private startsOf(cause: SingleRunCause<Id>, problem: SingleRunProblem): readonly Float64Array[] {
    return this.run.question.startsFor?.(cause, problem.parameters) ?? startPoints(problem.parameters, cause);
  }

  /** The best explanation's car and day, seen through this cause's priors. */
  private fromLeader(c: RunCandidates<Id>, leader: RunCandidates<Id>): Float64Array {
    return translate(this.quantitiesOf(leader), c.problem.parameters);
  }

  private quantitiesOf({ cause, standing }: RunCandidates<Id>): Float64Array {
    const { base } = this.run.question;
    const q = new Float64Array(base.length);
    setQuantities(standing.problem.parameters, standing.z, baseUnder(base, cause), q);
    return q;
  }

  /** A poor fit that has come to rest may be a poor start: the one that waited longest begins again. */
  private lookForLost(nowS: number): void {
    const leader = this.leader();
    const since = (c: RunCandidates<Id>) => this.begunAgainS.get(c.form) ?? Number.NEGATIVE_INFINITY;
    const lost = this.lost()
      .filter((c) => (c.best.arrived || this.ended) && c.tried)
      .sort((a, b) => since(a) - since(b));
    for (const c of lost) {
      if (nowS - since(c) < (this.ended ? Number.MIN_VALUE : LOST_S)) return;
      this.begunAgainS.set(c.form, nowS);
      const start = this.fromLeader(c, leader);
      // one that is far off has to stand better from the start
      if (c.best.cost > leader.best.cost + HOPELESS && costAt(c.problem, start) >= c.best.cost) continue;
      c.begin([start]);
      // at the end nothing else waits for the steps
      if (!this.ended) return;
    }
  }

  /** Causes that are worse than the best by so much that a poor start may be the reason. */
  private lost(): RunCandidates<Id>[] {
    const lowest = this.leader().best.cost;
    return this.causes.filter(
      (c) => c.best.cost > lowest + SUSPICIOUS && (this.ended || c.best.cost < lowest + HOPELESS),
    );
  }

  /** Of the starts that have not had their chance the one that stands best. */
  private untried(): Chosen<Id> | undefined {
    let chosen: Chosen<Id> | undefined;
    for (const owner of this.causes) {
      for (const track of owner.untried) if (!chosen || track.cost < chosen.track.cost) chosen = { owner, track };
    }
    return chosen;
  }

  private neediest(lowest: number, nowS: number, sinceChangeS: number): Chosen<Id> | undefined {
    let most = 0;
    let chosen: Chosen<Id> | undefined;
    for (const owner of this.causes) {
      for (const track of owner.tracks) {
        const need = stepNeed(track, lowest, nowS, sinceChangeS, RUN_FAIR_STEPS);
        if (need > most) {
          most = need;
          chosen = { owner, track };
        }
      }
    }
    return chosen;
  }

  private step({ owner, track }: Chosen<Id>, nowS: number): void {
    track.step(nowS);
    track.gapThen = track.cost - this.leader().best.cost;
    if (track === owner.best && track.gained > NEARLY) owner.fresh = false;
  }

  /** Of the causes that may matter the one that was looked at longest ago. */
  private stalest(lowest: number): RunCandidates<Id> | undefined {
    return this.causes
      .filter((c) => !c.fresh && c.best.steps > 0 && c.best.cost < lowest + WORTH_LOOK)
      .sort((a, b) => a.lookedS - b.lookedS)[0];
  }

  private closeLook(c: RunCandidates<Id>, nowS: number): void {
    const track = c.best;
    this.step({ owner: c, track }, nowS);
    const source = this.run.question.causes.some((other) => other.sharesFitOf === c.form);
    c.look(nowS, source, track.cost < this.leader().best.cost + WORTH_SIZE);
  }

  private lookAtNoise(): void {
    const { best, cause } = this.leader();
    const problem = this.problemFor(cause);
    if (problem.size !== best.z.length) return;
    const { channels } = this.run.question;
    const modelled = channels.map((c) => new Float64Array(c.observations.timeS.length));
    problem.readings(best.z, modelled);
    this.retired += problem.runs * this.run.stepCount;
    this.noise = channels.map((c, i) =>
      estimateSlowNoise(
        c,
        c.observations.gaugePa.map((x, k) => x - modelled[i]![k]!),
      ),
    );
  }

  private retire(c: RunCandidates<Id>): void {
    this.retired += c.problem.runs * this.run.stepCount;
  }
}
