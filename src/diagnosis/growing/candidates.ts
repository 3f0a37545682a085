/** All lines of thought about one cause: a few starts, of which the best stay. */
import type { Cause } from '../causes/catalogue.ts';
import { gaussianSd } from '../fit/marginal.ts';
import type { FitProblem } from '../fit/problem.ts';
import { profile } from './profile.ts';
import { Track } from './track.ts';

/** A start is judged after so many steps, and kept while it may still win [ln]. */
const FAIR_STEPS = 4;
const MAY_STILL_WIN = 2;
const MOST_TRACKS = 4;
/** A parameter better determined than this [z] is Gaussian enough for the evidence. */
const WELL_DETERMINED = 0.12;

export class Candidates {
  readonly cause: Cause;
  tracks: Track[];
  problem: FitProblem;
  /** What the point-by-point integral adds to the Gaussian one [ln]. */
  private correction = 0;

  constructor(cause: Cause, problem: FitProblem, starts: readonly Float64Array[]) {
    this.cause = cause;
    this.problem = problem;
    this.tracks = starts.map((z) => new Track(cause, problem, z));
  }

  get best(): Track {
    let best = this.tracks[0]!;
    for (const t of this.tracks) if (t.cost < best.cost) best = t;
    return best;
  }
  get logEvidence(): number {
    return this.best.logEvidence + this.correction;
  }

  follow(problem: FitProblem): void {
    this.problem = problem;
    for (const t of this.tracks) t.follow(problem);
  }

  begin(starts: readonly Float64Array[]): void {
    const kept = this.best;
    this.tracks = [kept, ...starts.map((z) => new Track(this.cause, this.problem, z))].slice(0, MOST_TRACKS + 1);
    for (const t of this.tracks) if (t !== kept) t.evaluate();
  }

  /** Drops starts that had their chance; of those the best stays, and the next if it may still win elsewhere. */
  prune(): void {
    const best = this.best;
    const fair = this.tracks.filter((t) => t !== best && (t.steps >= FAIR_STEPS || t.arrived));
    let next: Track | undefined;
    for (const t of fair) {
      const may = t.cost < best.cost + MAY_STILL_WIN && !alike(t, best);
      if (may && (!next || t.cost < next.cost)) next = t;
    }
    this.tracks = this.tracks.filter((t) => t === best || t === next || !fair.includes(t));
  }

  /** Whether every start has had its chance. */
  get tried(): boolean {
    return this.tracks.every((t) => t.steps >= FAIR_STEPS || t.arrived);
  }

  /** Looks at how Gaussian the evidence is, after the best track has stepped. */
  integrate(): void {
    const t = this.best;
    const key = t.problem.parameters.findIndex((p) => p.name === (this.cause.size ?? 'leak'));
    if (!t.hessian || !t.jacobian || key < 0) return;
    if (gaussianSd(t.hessian, t.z.length, key) < WELL_DETERMINED) this.correction = 0;
    else {
      const found = profile(t, key);
      const correction = found ? found.logEvidence - t.logEvidence : 0;
      // a profile that fails says nothing of the evidence
      this.correction = Number.isFinite(correction) ? correction : 0;
    }
  }
}

function alike(a: Track, b: Track): boolean {
  return a.z.every((v, i) => Math.abs(v - b.z[i]!) < 0.3);
}
