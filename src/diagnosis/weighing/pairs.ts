/** Two faults at once, tried on top of the best single ones. */
import { applyCause, CATALOGUE, type Cause } from '../causes/catalogue.ts';
import type { CauseId } from '../finding.ts';
import { levenbergMarquardt } from '../fit/levenberg-marquardt.ts';
import type { Parameter } from '../fit/parameter.ts';
import { FitProblem } from '../fit/problem.ts';
import { looksSound } from '../priors/selection.ts';
import { laplaceLogEvidence } from './laplace.ts';
import { carryOver } from './start-points.ts';
import { type Context, weigh } from './weigh.ts';
import type { Weighed } from './weighed.ts';
import { logNormaliser } from './with-noise.ts';

/** A second fault must better the fit by this much [ln] to be followed up. */
export const WORTH_A_PAIR = 1.5;
const PAIR_PASS = { mostIterations: 8, enough: 0.2 };

/** Faults that are tried on top of the best single ones. */
export const SECOND_FAULTS: readonly CauseId[] = [
  'sensor_bias',
  'leak',
  'vent_restricted',
  'purge_leak',
  'vent_leak',
  'canister_saturated',
  'purge_stuck_closed',
];
export const FIRST_FAULTS = 2;

/** Two faults at once: the best single causes with each other fault on top, fitted from where the single fit ended. */
export function weighPairs(
  parameters: readonly Parameter[],
  weighed: readonly Weighed[],
  context: Context,
  ran: (runs: number) => void,
): Weighed[] {
  const single = [...weighed]
    .filter((w) => w.id !== 'none' && w.id !== 'sensor_stuck')
    .sort((a, b) => b.logEvidence - a.logEvidence)
    // the best form of each cause
    .filter((w, i, all) => all.findIndex((other) => other.id === w.id) === i);
  // a zero error shows with the vent open, whatever else is wrong, and hides behind what explains the rest
  const sound = weighed.find((w) => w.id === 'none');
  const best = single.filter(
    (w, i) => i < FIRST_FAULTS || (w.id === 'sensor_bias' && sound && w.logEvidence > sound.logEvidence + WORTH_A_PAIR),
  );
  const done = new Set<string>();
  return best.flatMap((first) =>
    SECOND_FAULTS.flatMap((id): Weighed[] => {
      const second = CATALOGUE.find((c) => c.id === id)!;
      const own = first.causes[0]!;
      const name = [own.id, id].sort().join('+');
      if (id === own.id || done.has(name) || clash(own, second)) return [];
      if (
        looksSound(
          context.prepared.map((p) => p.procedure),
          id,
        )
      )
        return [];
      done.add(name);
      if (second.pressureLike) {
        const fitted = first.parts.pressure - logNormaliser(context.recordings);
        return [weigh([own, second], first, fitted, context)];
      }
      const problem = new FitProblem(
        applyCause(
          parameters,
          [own, second],
          context.prepared.map((p) => p.procedure),
        ),
        context.recordings,
      );
      // the first fault's fit may have bent a part of the car towards what the second one is: begin there as well
      const fit = [
        atCentre(first, problem.parameters, Object.keys(second.changes)),
        carryOver(first, problem.parameters),
      ]
        .map((start) =>
          levenbergMarquardt(problem, start, {
            ...PAIR_PASS,
            hopelessAbove: first.fit.cost - WORTH_A_PAIR,
            patience: 3,
          }),
        )
        .reduce((one, other) => (other.cost < one.cost ? other : one));
      ran(problem.runs);
      return [weigh([own, second], { problem, fit }, laplaceLogEvidence(fit), context)];
    }),
  );
}

/** The first fault's fit, the second fault's own parameters at their centre. */
function atCentre(first: Weighed, parameters: readonly Parameter[], changed: readonly string[]): Float64Array {
  return Float64Array.from(parameters, (p, i) => (changed.includes(p.name) ? 0 : first.fit.z[i]!));
}

/** Two causes that set the same part cannot be there at once; nor can two leaks be told from one. */
export function clash(a: Cause, b: Cause): boolean {
  if (Object.keys(a.changes).some((k) => k !== 'initial' && k in b.changes)) return true;
  const holes: readonly CauseId[] = ['leak', 'gross_leak', 'vent_leak'];
  return holes.includes(a.id) && holes.includes(b.id);
}
