/**
 * The size question, asked as for a whole recording: how large is the hole to ambient, under a prior that leans neither
 * to tight nor to leaking, whatever else is wrong with the car. See `../size-contexts.ts`.
 */
import { diameterFromEffectiveArea } from '../../physics/equivalent-diameter.ts';
import { type Cause, formOf } from '../causes/catalogue.ts';
import { gaussianSd } from '../fit/marginal.ts';
import type { Posterior } from '../posterior.ts';
import type { SizePosterior } from '../size.ts';
import { HOLE_CAUSES, NEUTRAL } from '../size-contexts.ts';
import { gaussianProfile, profile } from './profile.ts';
import type { Track } from './track.ts';

const FORM = 'size';
/** Contexts followed at once, and the probability from which one counts. */
const MOST_CONTEXTS = 2;
const NEGLIGIBLE = 0.05;
/** A hole better determined than this [z] has a Gaussian size. */
const WELL_DETERMINED = 0.1;

export interface SizeContext {
  readonly name: string;
  readonly cause: Cause;
  readonly weight: number;
}

const contextName = (others: readonly Cause[]) =>
  others.length === 0 ? FORM : `${FORM} with ${others.map(formOf).join(' and ')}`;

/** What else may be wrong, most probable first; the context without another fault is always there. */
export function contextsOf(posterior: Posterior | undefined): SizeContext[] {
  const found = new Map<string, { cause: Cause; weight: number }>();
  found.set(FORM, { cause: contextCause(FORM, []), weight: posterior ? 0 : 1 });
  for (const s of posterior ? [...posterior.singles, ...posterior.pairs] : []) {
    const others = s.weighed.causes.filter((c) => !HOLE_CAUSES.includes(c.id));
    const name = contextName(others);
    const known = found.get(name);
    if (known) known.weight += s.probability;
    else found.set(name, { cause: contextCause(name, others), weight: s.probability });
  }
  const [plain, ...others] = [...found].map(([name, c]) => ({ name, ...c }));
  others.sort((a, b) => b.weight - a.weight);
  return [plain!, ...others.filter((c) => c.weight >= NEGLIGIBLE).slice(0, MOST_CONTEXTS - 1)];
}

function contextCause(name: string, others: readonly Cause[]): Cause {
  return {
    id: others[0]?.id ?? 'leak',
    form: name,
    size: 'leak',
    changes: { ...Object.assign({}, ...others.map((c) => c.changes)), leak: NEUTRAL },
    starts: { leak: [-1, 0.6] },
    places: [],
  };
}

/** Posterior of ln diameter from a track that was just stepped, with the runs it took. */
export function sizeOf(track: Track): SizePosterior | undefined {
  const key = track.problem.parameters.findIndex((p) => p.name === 'leak');
  const p = track.problem.parameters[key];
  if (!p || !track.hessian) return undefined;
  const sd = gaussianSd(track.hessian, track.z.length, key);
  const found = sd < WELL_DETERMINED ? gaussianProfile(track.z[key]!, sd) : profile(track, key);
  return (
    found && {
      lnDiameterMm: found.z.map((z) => Math.log(diameterFromEffectiveArea(p.centre * Math.exp(p.sd * z)) * 1e3)),
      logDensity: found.logDensity,
    }
  );
}
