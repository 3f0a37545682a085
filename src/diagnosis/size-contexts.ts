/**
 * Fits that size the hole to ambient. The size question is asked apart from the fault question: whatever else is wrong
 * with the car, how large a hole does the pressure speak of, under a prior that leans neither to tight nor to leaking?
 */
import { applyCause, type Cause, SLOW_SENSOR } from './causes/catalogue.ts';
import type { CauseId } from './finding.ts';
import { levenbergMarquardt } from './fit/levenberg-marquardt.ts';
import { type Parameter, parameterPosition, parameterValue } from './fit/parameter.ts';
import { FitProblem } from './fit/problem.ts';
import type { Posterior } from './posterior.ts';
import { holePrior } from './priors/nuisances.ts';
import { type SizePosterior, sizeUnder } from './size.ts';
import { laplaceLogEvidence } from './weighing/laplace.ts';
import type { Held, UnderNoise, Weighing } from './weighing/weighed.ts';
import { logNormaliser } from './weighing/with-noise.ts';

/** Half a millimetre within a factor of about three either way: from far below a limit to several millimetres. Judgement. */
export const NEUTRAL = holePrior(0.5, 1);
/** Causes that are themselves statements about the hole share one context. */
export const HOLE_CAUSES: readonly CauseId[] = [
  'none',
  'leak',
  'gross_leak',
  'vent_leak',
  'sensor_noisy',
  'canister_saturated',
  'sensor_stuck',
];
/** A context below this probability does not shape the size. */
const NEGLIGIBLE = 0.03;
/** Nor does a noise below this one. */
const RARE_NOISE = 0.1;
const SETTINGS = { mostIterations: 20, enough: 0.05 };

/** Size posteriors by what else is wrong, with the probability of each. */
export function sizeContexts(
  weighing: Weighing,
  posterior: Posterior,
  procedures: readonly string[],
): { readonly weight: number; readonly posterior: SizePosterior }[] {
  const contexts = new Map<
    string,
    { weight: number; causes: readonly Cause[]; start: Float64Array; parameters: readonly Parameter[]; best: number }
  >();
  for (const s of [...posterior.singles, ...posterior.pairs]) {
    const causes = s.weighed.causes.filter((c) => !HOLE_CAUSES.includes(c.id) || c.form === SLOW_SENSOR);
    const name = causes.map((c) => (c.form === SLOW_SENSOR ? c.form : c.id)).join('+');
    const known = contexts.get(name);
    if (!known)
      contexts.set(name, {
        weight: s.probability,
        causes,
        start: s.weighed.fit.z,
        parameters: s.weighed.problem.parameters,
        best: s.probability,
      });
    else {
      known.weight += s.probability;
      if (s.probability > known.best && s.weighed.id !== 'sensor_stuck') {
        known.best = s.probability;
        known.start = s.weighed.fit.z;
        known.parameters = s.weighed.problem.parameters;
      }
    }
  }
  const key = weighing.parameters.findIndex((p) => p.name === 'leak');
  const [settled, ...others] = weighing.sizing as readonly [UnderNoise, ...UnderNoise[]];
  return [...contexts.values()]
    .filter((c) => c.weight >= NEGLIGIBLE)
    .flatMap((c) => {
      const parameters = applyCause(weighing.parameters, c.causes, procedures).map((p) =>
        p.name === 'leak' ? { ...p, ...NEUTRAL } : p,
      );
      const problem = new FitProblem(parameters, settled.recordings);
      let fit: ReturnType<typeof levenbergMarquardt> | undefined;
      const found = parameterPosition(parameters[key]!, parameterValue(c.parameters[key]!, c.start[key]!));
      // from where the causes' fit ended, and afresh: the valley between leak, seep and evaporation has side pockets
      const again = Float64Array.from(c.start);
      again[key] = Math.max(-2.5, Math.min(2.5, found));
      const afresh = STARTS.map((size) => {
        const z = new Float64Array(parameters.length);
        for (const changed of c.causes.flatMap((cause) => Object.keys(cause.changes))) {
          parameters.forEach((p, i) => {
            if (p.name === changed) z[i] = c.start[i]!;
          });
        }
        z[key] = size;
        return z;
      });
      for (const start of [again, ...afresh]) {
        const own = levenbergMarquardt(problem, start, SETTINGS);
        if (!fit || own.cost < fit.cost) fit = own;
      }
      return underEachNoise({ problem, fit: fit! }, settled, others).map(({ held, share }) => ({
        weight: c.weight * share,
        posterior: sizeUnder(held.problem, held.fit, key),
      }));
    });
}

/** The fit under each noise, with the probability of that noise. */
function underEachNoise(
  found: Held,
  settled: UnderNoise,
  others: readonly UnderNoise[],
): { readonly held: Held; readonly share: number }[] {
  const fits = [
    { held: found, under: settled },
    ...others.map((under) => {
      const problem = new FitProblem(found.problem.parameters, under.recordings);
      return { held: { problem, fit: levenbergMarquardt(problem, found.fit.z, SETTINGS) }, under };
    }),
  ];
  const logs = fits.map(
    ({ held, under }) => laplaceLogEvidence(held.fit) + logNormaliser(under.recordings) + under.logPrior,
  );
  const top = Math.max(...logs);
  const masses = logs.map((l) => Math.exp(l - top));
  const all = masses.reduce((s, m) => s + m, 0);
  return fits.map(({ held }, i) => ({ held, share: masses[i]! / all })).filter(({ share }) => share >= RARE_NOISE);
}

/** Where the search for the size begins [z]. */
const STARTS = [-0.8, 0.6] as const;
