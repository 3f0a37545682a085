/**
 * Whether the Gaussian approximation holds for the causes that contend, and a sampler's evidence where it does not.
 *
 * The check draws from the approximation and weighs the draws by the posterior: where only one or two of them carry all the
 * weight, the approximation has not found where the posterior lies. All contenders are then sampled twice, so that they are
 * compared by one method, and the rest are moved by as much as the contenders were. Where the two runs end apart, few
 * particles cannot do better than the approximation, and it stands.
 * Source of the check: effective sample size of importance weights, Kong 1992; Liu, Monte Carlo Strategies in Scientific
 * Computing, 2001, ch. 2.5.
 */
import { randomStream } from '../../simulation/random.ts';
import { effectiveShare, sampleAnnealed } from '../fit/annealed-sampler.ts';
import { type Gaussian, gaussianAt, logDensityOf } from '../fit/gaussian.ts';
import type { FitProblem } from '../fit/problem.ts';
import type { ApproximationCheck, Held, Weighed } from './weighed.ts';
import { logNormaliser } from './with-noise.ts';

/** A cause further below the best than this [ln] does not contend. */
const CONTENDING = 6;
const MOST_CONTENDERS = 3;
const CHECK_DRAWS = 64;
/** The proposal is a little wider than the approximation, so that it covers the posterior's tails. */
const WIDEN = 1.1;
/** Below two of the draws carrying the weight the approximation does not hold. */
const HOLDS_ABOVE = 2 / CHECK_DRAWS;
/** The sampler starts wider still: what it never draws it cannot find. */
const SAMPLER_WIDEN = 1.3;
const SAMPLER = { particles: 64, moves: 2, mostSteps: 24 };
/** Streams of the independent runs, and how far apart [ln] they may end for their mean to be worth more than the approximation. */
const RUNS = [100, 101] as const;
const AGREE = 1.5;
const SEED = 20211;

export interface SampledEvidence {
  readonly weighed: readonly Weighed[];
  readonly pairs: readonly Weighed[];
  readonly checks: readonly ApproximationCheck[];
  readonly runs: number;
}

/**
 * @param weighed every cause with the evidence of its approximation
 * @param pairs two faults at once, with theirs
 * @returns the same with the evidence of contenders replaced where the approximation fails
 */
export function withSampledEvidence(weighed: readonly Weighed[], pairs: readonly Weighed[]): SampledEvidence {
  const contenders = contending(weighed);
  const before = contenders.reduce((s, c) => s + c.problem.runs, 0);
  const checked = contenders.map((c, i) => ({ ...c, share: shareThatCounts(c, i) }));
  const failed = checked.some((c) => c.share < HOLDS_ABOVE);
  const shifts = (failed && sampledShifts(checked)) || new Map<Held['fit'], number>();
  const sorted = [...shifts.values()].sort((a, b) => a - b);
  const common = sorted[sorted.length >> 1] ?? 0;
  return {
    weighed: weighed.map((w) => moved(w, w.id === 'sensor_stuck' ? common : (shifts.get(w.fit) ?? common))),
    pairs: pairs.map((w) => moved(w, shifts.get(w.fit) ?? common)),
    checks: checked.map((c) => ({ id: c.id, effectiveShare: c.share, sampled: shifts.size > 0 })),
    runs: contenders.reduce((s, c) => s + c.problem.runs, 0) - before,
  };
}

interface Contender extends Held {
  readonly id: Weighed['id'];
  /** ln evidence of the fit alone that the approximation gave. */
  readonly approximate: number;
}

const moved = (w: Weighed, by: number): Weighed =>
  by === 0 ? w : { ...w, logEvidence: w.logEvidence + by, parts: { ...w.parts, pressure: w.parts.pressure + by } };

/** By how much the sampler moves each contender; undefined as soon as the runs of one end apart. */
function sampledShifts(contenders: readonly Contender[]): Map<Held['fit'], number> | undefined {
  const own: { readonly shift: number; readonly error: number }[] = [];
  for (const c of contenders) {
    // the same streams for every contender: what they have in common then cancels
    const [a, b] = RUNS.map((stream) => sampledLogEvidence(c, stream)) as [number, number];
    // not a number where no Gaussian can be drawn from
    if (!(Math.abs(a - b) < AGREE)) return undefined;
    own.push({ shift: (a + b) / 2 - c.approximate, error: (a - b) / 2 });
  }
  const shared = drawnTogether(own);
  return new Map(contenders.map((c, i) => [c.fit, shared[i]!]));
}

/**
 * What a few particles say of each contender is partly chance, which two runs of each tell: the shifts are drawn together by the share
 * of their scatter that is no more than that.
 * Source: Morris, J. Am. Stat. Assoc. 78 (1983) 47-55 (empirical Bayes).
 */
export function drawnTogether(own: readonly { readonly shift: number; readonly error: number }[]): number[] {
  const n = own.length;
  if (n < 2) return own.map((x) => x.shift);
  const mean = own.reduce((s, x) => s + x.shift, 0) / n;
  const scatter = own.reduce((s, x) => s + (x.shift - mean) ** 2, 0) / (n - 1);
  const chance = own.reduce((s, x) => s + x.error ** 2, 0) / n;
  const kept = scatter > chance ? 1 - chance / scatter : 0;
  return own.map((x) => mean + kept * (x.shift - mean));
}

function sampledLogEvidence(c: Contender, stream: number): number {
  const q = gaussianAt(c.fit.z, c.fit.hessian, SAMPLER_WIDEN);
  if (!q) return Number.NEGATIVE_INFINITY;
  return sampleAnnealed(posteriorOf(c.problem), q, randomStream(SEED, stream), SAMPLER).logEvidence;
}

/** The best few fits, each once: causes that pressure cannot tell apart share one. */
function contending(weighed: readonly Weighed[]): Contender[] {
  const own = weighed.filter((w) => w.id !== 'sensor_stuck').sort((a, b) => b.logEvidence - a.logEvidence);
  const list: Contender[] = [];
  for (const w of own) {
    if (list.length >= MOST_CONTENDERS || w.logEvidence < own[0]!.logEvidence - CONTENDING) break;
    if (list.some((c) => c.fit === w.fit)) continue;
    list.push({
      id: w.id,
      problem: w.problem,
      fit: w.fit,
      approximate: w.parts.pressure - logNormaliser(w.problem.recordings),
    });
  }
  return list;
}

/** ln of likelihood times prior, with the constants that the Laplace approximation counts. */
function posteriorOf(problem: FitProblem): (z: Float64Array) => number {
  const r = new Float64Array(problem.rows);
  return (z) => {
    problem.residuals(z, r);
    let s = z.length * Math.log(2 * Math.PI);
    for (const x of r) s += x * x;
    for (const x of z) s += x * x;
    // a corner where the model has no answer has no weight
    return Number.isFinite(s) ? -0.5 * s : -1e9;
  };
}

function shareThatCounts(c: Contender, stream: number): number {
  const q: Gaussian | undefined = gaussianAt(c.fit.z, c.fit.hessian, WIDEN);
  if (!q) return 0;
  const random = randomStream(SEED, stream);
  const log = posteriorOf(c.problem);
  const lifts: number[] = [];
  for (let i = 0; i < CHECK_DRAWS; i++) {
    const z = q.draw(random);
    lifts.push(log(z) - logDensityOf(q, z));
  }
  return effectiveShare(lifts, 1);
}
