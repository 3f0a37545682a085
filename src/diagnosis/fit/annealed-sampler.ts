/**
 * A sampler for posteriors that are not Gaussian enough: particles drawn from the Gaussian approximation q are led to the
 * posterior p through q^(1-b) p^b, b from 0 to 1 in steps chosen so that the weights never degenerate. Between the steps
 * each particle moves by a preconditioned Crank-Nicolson proposal, which leaves q as it is and so needs only p/q to accept.
 * The product of the mean weights estimates the evidence without bias.
 *
 * Sources: Del Moral, Doucet and Jasra, J. R. Stat. Soc. B 68 (2006) 411-436 (samplers along a path of densities);
 * Cotter, Roberts, Stuart and White, Statistical Science 28 (2013) 424-446 (the proposal).
 */
import type { RandomStream } from '../../simulation/random.ts';
import { type Gaussian, logDensityOf } from './gaussian.ts';

export interface SamplerSettings {
  readonly particles: number;
  /** Moves of each particle at each step of the path. */
  readonly moves: number;
  /** The path stops at most so often. */
  readonly mostSteps: number;
}

export interface Sampled {
  /** Equally weighted draws from the posterior. */
  readonly draws: readonly Float64Array[];
  /** ln of the integral of exp(logPosterior). */
  readonly logEvidence: number;
  /** Share of proposals accepted over all moves. */
  readonly accepted: number;
  readonly steps: number;
}

/** Share of the particles that must still count after a step of the path (customary). */
const KEEP = 0.5;
/** How far a first proposal reaches: correlation with where the particle was. Adapted to accept about a third. */
const FIRST_CORRELATION = 0.6;
const WANTED = 0.3;

interface Particle {
  z: Float64Array;
  /** ln p - ln q at z: what a full step of the path weighs. */
  lift: number;
}

/**
 * @param logPosterior ln of the unnormalised density, any constant
 * @param q Gaussian approximation to it
 */
export function sampleAnnealed(
  logPosterior: (z: Float64Array) => number,
  q: Gaussian,
  random: RandomStream,
  s: SamplerSettings,
): Sampled {
  const liftAt = (z: Float64Array) => logPosterior(z) - logDensityOf(q, z);
  let particles: Particle[] = Array.from({ length: s.particles }, () => {
    const z = q.draw(random);
    return { z, lift: liftAt(z) };
  });
  let b = 0;
  let logEvidence = 0;
  let correlation = FIRST_CORRELATION;
  let proposed = 0;
  let accepted = 0;
  let steps = 0;
  while (b < 1) {
    steps++;
    const next = steps >= s.mostSteps ? 1 : nextExponent(particles, b);
    const { weights, logMean } = normalised(particles, next - b);
    logEvidence += logMean;
    b = next;
    particles = resample(particles, weights, random);
    for (let move = 0; move < s.moves; move++) {
      let here = 0;
      for (const p of particles) {
        const z = q.proposeFrom(p.z, correlation, random);
        const lift = liftAt(z);
        if (Math.log(1 - random.uniform()) < b * (lift - p.lift)) {
          p.z = z;
          p.lift = lift;
          here++;
        }
      }
      proposed += particles.length;
      accepted += here;
      const share = here / particles.length;
      // step size s of the proposal, s^2 = 1 - correlation^2
      const step = Math.sqrt(1 - correlation * correlation) * Math.exp(share - WANTED);
      correlation = Math.sqrt(1 - Math.min(0.999, Math.max(0.02, step)) ** 2);
    }
  }
  return { draws: particles.map((p) => p.z), logEvidence, accepted: proposed > 0 ? accepted / proposed : 0, steps };
}

/** Effective share of the particles when the path goes on by this much. */
export function effectiveShare(lifts: readonly number[], by: number): number {
  const top = Math.max(...lifts);
  let sum = 0;
  let squares = 0;
  for (const l of lifts) {
    const w = Math.exp(by * (l - top));
    sum += w;
    squares += w * w;
  }
  return (sum * sum) / squares / lifts.length;
}

/** Largest exponent up to 1 at which enough particles still count, by bisection. */
function nextExponent(particles: readonly Particle[], from: number): number {
  const lifts = particles.map((p) => p.lift);
  if (effectiveShare(lifts, 1 - from) >= KEEP) return 1;
  let low = 0;
  let high = 1 - from;
  for (let i = 0; i < 40; i++) {
    const middle = 0.5 * (low + high);
    if (effectiveShare(lifts, middle) >= KEEP) low = middle;
    else high = middle;
  }
  return from + Math.max(low, 1e-6);
}

function normalised(particles: readonly Particle[], by: number): { weights: number[]; logMean: number } {
  const top = Math.max(...particles.map((p) => p.lift));
  const raw = particles.map((p) => Math.exp(by * (p.lift - top)));
  const sum = raw.reduce((a, x) => a + x, 0);
  return { weights: raw.map((w) => w / sum), logMean: by * top + Math.log(sum / particles.length) };
}

/** Systematic resampling: one random number places evenly spaced pointers on the weights. */
function resample(particles: readonly Particle[], weights: readonly number[], random: RandomStream): Particle[] {
  const n = particles.length;
  const out: Particle[] = [];
  let pointer = random.uniform() / n;
  let sum = weights[0]!;
  let i = 0;
  for (let k = 0; k < n; k++) {
    while (pointer > sum && i < n - 1) sum += weights[++i]!;
    out.push({ ...particles[i]! });
    pointer += 1 / n;
  }
  return out;
}
