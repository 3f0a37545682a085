/**
 * The fits of all causes to a growing recording, and what is done of them in one update: every cause is held against the
 * new data, and a bounded number of steps goes to those that need one most.
 */
import type { Car } from '../../system/car.ts';
import { applyCause, type Cause, formOf, takingPart } from '../causes/catalogue.ts';
import { levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import { type Parameter, parameterPosition, parameterValue } from '../fit/parameter.ts';
import { FitProblem, type FitRecording } from '../fit/problem.ts';
import { estimateNoise, FIRST_NOISE, type Noise, sizingNoise } from '../likelihood/noise.ts';
import type { Prepared } from '../prepare.ts';
import { carParameters, recordingParameters } from '../priors/nuisances.ts';
import { looksSound } from '../priors/selection.ts';
import { costAt } from '../single-run/start-points.ts';
import { type SizePosterior, sizeUnder } from '../size.ts';
import { recordingUnder } from '../weighing/with-noise.ts';
import { CauseFits } from './cause-fits.ts';
import { PairTrials } from './pair-trials.ts';
import { type SizeContext, sizeOf } from './size-question.ts';
import { carryOver, startPoints } from './start-points.ts';
import { stepNeed } from './step-need.ts';
import type { Track } from './track.ts';

/** A cause this much worse than the best [ln] begins again from the best one's car and day. */
const SUSPICIOUS = 3;
/** Causes this much worse than the best [ln] are not rescued; others at most this often, contexts of the size twice as often [s]. */
const HOPELESS = 300;
const LOST_S = 4;
/** Parameters that are holes to ambient. */
const HOLES = ['leak', 'ventShut'];
/** Causes further below the best than this are not worth an integral [ln]. */
const WORTH_INTEGRAL = 12;
/** A cause this much worse than the best [ln] need not have arrived for the finding to have settled. */
const OUT_OF_SIGHT = 60;
/** A fit that still gains less than this a step [ln] does not change the finding. */
const NEARLY = 0.3;
/** The noise is looked at anew this often, and first after [s]. */
const NOISE_EVERY_S = 12;
/** Every so many updates the cause that waited longest has its turn. */
const TURN_EVERY = 4;
/** A context of the size question counts this much more than its cost says: its answer is what is shown. */
const SIZE_WEIGHT = 2;
/** Probability from which on a context shapes the size that is shown. */
const CONTEXT_COUNTS = 0.03;

/** Where the search for the size begins at the end [z], and how far it goes; as for a whole recording. */
const AFRESH = [-0.8, 0.6] as const;
const SIZE_FIT = { mostIterations: 20, enough: 0.05 };
/** A pair on trial counts so much less than its cost says: single causes go before. */
const TRIAL_WEIGHT = 0.4;
/** A pair this much better than the best single cause [ln] stands for the car until something better comes. */
const PAIR_LEADS = 12;

/** Whose fit stands for a cause in the pressure: its own, or that of the cause it looks like. */
export function ownerOf(cause: Cause, procedure: Prepared['procedure']): string {
  if (cause.pressureLike) return cause.pressureLike;
  return cause.id === 'sensor_stuck' || looksSound([procedure], cause.id) ? 'none' : formOf(cause);
}

/** The causes that have a fit of their own. */
const fittedIn = (procedure: Prepared['procedure']): readonly Cause[] =>
  takingPart([procedure]).filter(
    (c) => ownerOf(c, procedure) === formOf(c) && (c.id !== 'fill_valve_stuck_open' || procedure === 'refuelling'),
  );

/**
 * Steps that a run of the model counts for. A filling's has few, but its fits have the most parameters: what is done with
 * their derivatives takes as long as so many steps more.
 */
const FILLING_MORE = 150;
const costOfRun = ({ drive, procedure }: Prepared): number =>
  drive.stepCount + (procedure === 'refuelling' ? FILLING_MORE : 0);

export class Fits {
  readonly causes = new Map<string, CauseFits>();
  readonly contexts = new Map<string, CauseFits>();
  readonly pairs = new PairTrials();
  /** The single causes that second faults are tried on. */
  firsts: readonly Cause[] = [];
  readonly sizes = new Map<string, SizePosterior>();
  noise: Noise = FIRST_NOISE;
  recording: FitRecording;
  /** The same under the noise that a size is read with. */
  private sizing: FitRecording;
  private sound: readonly Parameter[];
  private prepared: Prepared;
  private readonly car: Car;
  private readonly firstGaugePa: number;
  private noiseS = Number.NEGATIVE_INFINITY;
  private readonly weights = new Map<string, number>();
  private readonly begunAgainS = new Map<string, number>();
  private updates = 0;
  private ended = false;
  private followedS = Number.NEGATIVE_INFINITY;
  private runs = 0;

  constructor(car: Car, prepared: Prepared, contexts: readonly SizeContext[]) {
    this.car = car;
    this.prepared = prepared;
    this.firstGaugePa = prepared.observations.gaugePa[0] ?? 0;
    this.sound = this.parameters();
    this.recording = recordingUnder(this.prepared, this.noise);
    this.sizing = recordingUnder(this.prepared, sizingNoise(this.noise));
    for (const cause of fittedIn(prepared.procedure)) this.causes.set(formOf(cause), this.begin([cause]));
    this.setContexts(contexts);
  }

  /** Takes up new data: one run of the model for every line of thought. */
  follow(prepared: Prepared, nowS: number, ended: boolean): void {
    this.prepared = prepared;
    this.ended = ended;
    this.followedS = nowS;
    this.sound = this.parameters();
    this.recording = recordingUnder(this.prepared, this.noise);
    if (nowS - this.noiseS >= NOISE_EVERY_S) {
      this.lookAtNoise();
      this.noiseS = nowS;
      this.recording = recordingUnder(this.prepared, this.noise);
    }
    this.sizing = recordingUnder(this.prepared, sizingNoise(this.noise));
    for (const c of this.all()) {
      this.countRuns(c.problem);
      c.follow(this.problemFor(c.causes, this.contexts.has(c.form) ? this.sizing : this.recording));
    }
  }

  /** Tries again other starts, from what is known of the car so far: a command has changed, or the picture has. */
  beginAgain(): void {
    const leader = this.leader();
    for (const c of [...this.causes.values(), ...this.contexts.values()]) {
      const [cause] = c.causes;
      const own = Object.keys(cause!.starts).length > 0;
      const starts = own ? startPoints(c.problem.parameters, cause!, c.best.z, this.firstGaugePa) : [];
      if (c.best.cost > leader.cost + SUSPICIOUS) starts.unshift(this.fromLeader(c.causes, leader));
      c.begin(starts);
    }
  }

  /** A poor fit that has come to rest may be a poor start: the one that waited longest begins again from the best. */
  private lookForLost(nowS: number): void {
    const leader = this.leader();
    for (const c of this.lost()) {
      const { form } = c;
      if (!(c.best.arrived || this.ended) || !c.tried) continue;
      const least = this.ended ? Number.MIN_VALUE : (this.contexts.has(form) ? 1 : 2) * LOST_S;
      if (nowS - (this.begunAgainS.get(form) ?? Number.NEGATIVE_INFINITY) < least) continue;
      this.begunAgainS.set(form, nowS);
      const start = this.fromLeader(c.causes, leader);
      // one that is far off has to stand better from the start
      if (c.best.cost > leader.cost + HOPELESS && costAt(c.problem, start) >= c.best.cost) continue;
      c.begin([start]);
      return;
    }
  }

  /** Causes and contexts that are worse than the best by so much that a poor start may be the reason. */
  private lost(): CauseFits[] {
    const lowest = this.leader().cost;
    // a filling has few causes, and at the end there is time
    const everyone = this.ended || this.procedure === 'refuelling';
    return [...this.causes.values(), ...this.contexts.values()].filter((c) => {
      const gap = c.best.cost - lowest;
      return gap >= SUSPICIOUS && (everyone || this.contexts.has(c.form) || gap <= HOPELESS);
    });
  }

  /** The best explanation's car and day, with its whole hole where this cause has one. */
  private fromLeader(causes: readonly Cause[], leader: Track): Float64Array {
    const { parameters } = leader.problem;
    const to = applyCause(this.sound, causes, [this.prepared.procedure]);
    const z = carryOver(parameters, leader.z, to);
    const size = causes[0]!.size ?? 'leak';
    if (!HOLES.includes(size)) return z;
    const area = HOLES.reduce((s, name) => {
      const i = parameters.findIndex((p) => p.name === name);
      return i < 0 ? s : s + parameterValue(parameters[i]!, leader.z[i]!);
    }, 0);
    const key = to.findIndex((p) => p.name === size);
    z[key] = Math.max(-3, Math.min(3, parameterPosition(to[key]!, area)));
    return z;
  }

  /** The contexts of the size question that are followed from now on. */
  setContexts(contexts: readonly SizeContext[]): void {
    for (const name of [...this.contexts.keys()]) {
      if (contexts.some((c) => c.name === name)) continue;
      this.countRuns(this.contexts.get(name)!.problem);
      this.contexts.delete(name);
      this.sizes.delete(name);
    }
    for (const c of contexts) this.weights.set(c.name, c.weight >= CONTEXT_COUNTS ? SIZE_WEIGHT : 1 / SIZE_WEIGHT);
    for (const { name, cause } of contexts) {
      if (!this.contexts.has(name)) this.contexts.set(name, this.begin([cause], this.sizing));
    }
  }

  /**
   * Steps until so much is spent.
   *
   * @param budget steps of the model
   * @param sinceChangeS time since the last command change [s]
   */
  work(budget: number, nowS: number, sinceChangeS: number): void {
    this.updates++;
    const limit = this.spent() + budget;
    this.lookForLost(nowS);
    if (this.updates % TURN_EVERY === 0) this.turn(nowS);
    const lengthS = nowS - this.prepared.recording.timeS[0]!;
    while (this.spent() < limit) {
      if ([...this.causes.values()].every((c) => c.best.steps > 0)) {
        this.pairs.advance(this.firsts, this.site, nowS, lengthS);
      }
      const lowest = this.leader().cost;
      let most = 0;
      let chosen: { owner: CauseFits; track: Track } | undefined;
      for (const owner of this.all()) {
        const context = this.contexts.has(owner.form);
        const weight = this.weightOf(owner);
        for (const track of owner.tracks) {
          const need = weight * stepNeed(track, context ? owner.best.cost : lowest, nowS, sinceChangeS);
          if (need > most) {
            most = need;
            chosen = { owner, track };
          }
        }
      }
      chosen ??= this.pairs.next();
      if (!chosen) break;
      this.step(chosen.owner, chosen.track, nowS);
    }
    for (const c of this.all()) if (!this.pairs.onTrial(c)) c.prune();
  }

  private weightOf(owner: CauseFits): number {
    if (this.pairs.onTrial(owner)) return TRIAL_WEIGHT;
    return this.contexts.has(owner.form) ? (this.weights.get(owner.form) ?? 1) : 1;
  }

  /** Sizes as for a whole recording, once nothing more will come: from where the fit ended and afresh, then by its integral. */
  concludeSizes(): void {
    for (const { form, best, causes } of this.contexts.values()) {
      const { problem, z } = best;
      const key = problem.parameters.findIndex((p) => p.name === 'leak');
      const changed = Object.keys(causes[0]!.changes);
      const afresh = AFRESH.map((size) =>
        z.map((v, i) => (i === key ? size : changed.includes(problem.parameters[i]!.name) ? v : 0)),
      );
      const fit = [z, ...afresh]
        .map((start) => levenbergMarquardt(problem, start, SIZE_FIT))
        .reduce((one, other) => (other.cost < one.cost ? other : one));
      this.sizes.set(form, sizeUnder(problem, fit, key));
    }
  }

  /** Whether every line of thought that may matter has arrived; a pair on trial is a thought to come. */
  settled(): boolean {
    const lowest = this.leader().cost;
    const waiting = this.ended && this.lost().some((c) => !c.tried || this.begunAgainS.get(c.form) !== this.followedS);
    return (
      !waiting &&
      [...this.causes.values(), ...this.contexts.values(), ...this.pairs.kept.values()].every(
        (c) => c.best.steps > 0 && (c.best.gained < NEARLY || c.best.cost > lowest + OUT_OF_SIGHT),
      )
    );
  }

  leader(): Track {
    let best: Track | undefined;
    for (const c of this.causes.values()) if (!best || c.best.cost < best.cost) best = c.best;
    let pair: Track | undefined;
    for (const c of this.pairs.kept.values()) if (!pair || c.best.cost < pair.cost) pair = c.best;
    return pair && pair.cost < best!.cost - PAIR_LEADS ? pair : best!;
  }

  get procedure(): Prepared['procedure'] {
    return this.prepared.procedure;
  }

  /** The fit that stands for a single cause. */
  trackOf(cause: Cause): Track {
    return this.causes.get(ownerOf(cause, this.prepared.procedure))!.standing;
  }

  /** Whether pairs have all been tried on the newest data. */
  pairsDone(nowS: number): boolean {
    return this.pairs.done(this.firsts, this.prepared.procedure, nowS);
  }

  private get site() {
    return {
      procedure: this.prepared.procedure,
      problemFor: (causes: readonly Cause[]) => this.problemFor(causes),
      trackOf: (cause: Cause) => this.trackOf(cause),
      retire: (c: CauseFits) => this.countRuns(c.problem),
    };
  }

  /** Steps of the model so far. */
  spent(): number {
    return this.all().reduce((s, c) => s + c.problem.runs * costOfRun(this.prepared), this.runs);
  }

  problemFor(causes: readonly Cause[], recording = this.recording): FitProblem {
    return new FitProblem(applyCause(this.sound, causes, [this.prepared.procedure]), [recording]);
  }

  private step(owner: CauseFits, track: Track, nowS: number): void {
    track.step(nowS);
    const context = this.contexts.has(owner.form);
    track.gapThen = track.cost - (context ? owner.best.cost : this.leader().cost);
    if (track !== owner.best) return;
    if (context) {
      const size = sizeOf(track);
      if (size) this.sizes.set(owner.form, size);
    } else if (owner.causes.length === 1 && track.cost < this.leader().cost + WORTH_INTEGRAL) owner.integrate();
  }

  /** One step for the cause that has waited longest. */
  private turn(nowS: number): void {
    const waiting = [...this.causes.values()].sort((a, b) => a.best.steppedS - b.best.steppedS)[0];
    if (waiting) this.step(waiting, waiting.best, nowS);
  }

  private begin(causes: readonly Cause[], recording = this.recording): CauseFits {
    const problem = this.problemFor(causes, recording);
    const refuelled = this.prepared.procedure === 'refuelling';
    const starts = startPoints(problem.parameters, causes[0]!, undefined, this.firstGaugePa, refuelled);
    const c = new CauseFits(causes, problem, starts);
    for (const t of c.tracks) t.evaluate();
    return c;
  }

  private all(): CauseFits[] {
    return [...this.causes.values(), ...this.contexts.values(), ...this.pairs.followed];
  }

  private parameters(): Parameter[] {
    const { conditions, shape } = this.prepared;
    return [...carParameters(this.car, conditions), ...recordingParameters(shape, 0)];
  }

  private lookAtNoise(): void {
    const best = this.leader();
    const owner = [...this.causes.values(), ...this.pairs.kept.values()].find((c) => c.best === best);
    const problem = owner && this.problemFor(owner.causes);
    if (problem?.size !== best.z.length) return;
    const o = this.prepared.observations;
    const modelled = new Float64Array(o.timeS.length);
    problem.model(best.z, 0, modelled);
    this.countRuns(problem);
    this.noise = estimateNoise(
      o,
      modelled.map((x, k) => o.gaugePa[k]! - x),
      this.prepared.procedure,
    );
  }

  private countRuns(problem: FitProblem): void {
    this.runs += problem.runs * costOfRun(this.prepared);
  }
}
