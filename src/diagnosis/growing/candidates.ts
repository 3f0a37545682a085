/** All lines of thought about one cause: a few starts, of which the best stay. */
import { gaussianSd } from '../fit/marginal.ts';
import type { FitProblem } from '../fit/problem.ts';
import type { FollowedProblem } from './followed-problem.ts';
import { type Profile, profile } from './profile.ts';
import { FAIR_STEPS, FAR } from './step-need.ts';
import { Track } from './track.ts';

/** A start is kept while it may still win [ln]. */
const MAY_STILL_WIN = 2;
const MOST_TRACKS = 4;
/** A parameter better determined than this [z] is Gaussian enough for the evidence. */
const WELL_DETERMINED = 0.12;

export class Candidates<P extends FollowedProblem = FitProblem> {
  /** The parameter whose posterior the evidence is integrated over. */
  readonly key: string;
  tracks: Track<P>[];
  problem: P;
  /** What the point-by-point integral adds to the Gaussian one [ln]. */
  private correction = 0;
  /** The point-by-point posterior of the key as of the last look; absent where a Gaussian does. */
  keyProfile: Profile | undefined;

  private readonly fairSteps: number;

  /** @param fairSteps steps after which a start is judged */
  constructor(key: string, problem: P, starts: readonly Float64Array[], fairSteps = FAIR_STEPS) {
    this.key = key;
    this.fairSteps = fairSteps;
    this.problem = problem;
    this.tracks = starts.map((z) => new Track(problem, z));
  }

  get best(): Track<P> {
    let best = this.tracks[0]!;
    for (const t of this.tracks) if (t.cost < best.cost) best = t;
    return best;
  }
  /** The best that has been stepped, and so has evidence; before the first step the best. */
  get standing(): Track<P> {
    let best: Track<P> | undefined;
    for (const t of this.tracks) if (t.steps > 0 && (!best || t.cost < best.cost)) best = t;
    return best ?? this.best;
  }
  /** What the whole run's integrals say, once nothing more will come [ln]. */
  protected concluded: number | undefined;

  get logEvidence(): number {
    return this.concluded ?? this.standing.logEvidence + this.correction;
  }

  follow(problem: P): void {
    this.problem = problem;
    this.concluded = undefined;
    for (const t of this.tracks) t.follow(problem);
  }

  begin(starts: readonly Float64Array[]): void {
    const kept = this.best;
    this.tracks = [kept, ...starts.map((z) => new Track(this.problem, z))].slice(0, MOST_TRACKS + 1);
    for (const t of this.tracks) if (t !== kept) t.evaluate();
  }

  /** Drops starts that had their chance; of those the best stays, and the next if it may still win elsewhere. */
  prune(): void {
    const best = this.best;
    const fair = this.tracks.filter((t) => t !== best && this.hadItsChance(t));
    let next: Track<P> | undefined;
    for (const t of fair) {
      const may = t.cost < best.cost + MAY_STILL_WIN && !alike(t, best);
      if (may && (!next || t.cost < next.cost)) next = t;
    }
    this.tracks = this.tracks.filter((t) => t === best || t === next || !fair.includes(t));
  }

  /** Whether every start has had its chance. */
  get tried(): boolean {
    return this.untried.length === 0;
  }
  get untried(): Track<P>[] {
    return this.tracks.filter((t) => !this.hadItsChance(t));
  }

  /** A start that is far off is judged sooner. */
  private hadItsChance(t: Track<P>): boolean {
    return t.arrived || t.steps >= (t.cost > this.best.cost + FAR ? FAIR_STEPS : this.fairSteps);
  }

  /** Whether the data leave a parameter so open that a Gaussian would not do. */
  protected looseIn(name: string): boolean {
    const { hessian, z, problem } = this.best;
    const at = problem.parameters.findIndex((p) => p.name === name);
    return at >= 0 && hessian !== undefined && gaussianSd(hessian, z.length, at) >= WELL_DETERMINED;
  }

  /**
   * Looks at how Gaussian the evidence is, after the best track has stepped.
   *
   * @param always whether the posterior of the key is wanted even where it is Gaussian enough for the evidence
   */
  integrate(always = false): void {
    const t = this.best;
    const key = t.problem.parameters.findIndex((p) => p.name === this.key);
    if (!t.hessian || !t.jacobian || key < 0) return;
    this.correction = 0;
    this.keyProfile = undefined;
    if (!always && gaussianSd(t.hessian, t.z.length, key) < WELL_DETERMINED) return;
    const found = profile(t, key);
    const correction = found ? found.logEvidence - t.logEvidence : 0;
    // a profile that fails says nothing of the evidence
    if (!Number.isFinite(correction)) return;
    this.correction = correction;
    this.keyProfile = found;
  }
}

function alike<P extends FollowedProblem>(a: Track<P>, b: Track<P>): boolean {
  return a.z.every((v, i) => Math.abs(v - b.z[i]!) < 0.3);
}
