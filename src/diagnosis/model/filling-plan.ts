/** When liquid flows during a refuelling, how fast, and from when the fill-limit valve can be shut. */
import type { Phase, Recording } from '../../recording/recording.ts';
import type { CommandChange } from './command-changes.ts';

export interface FillingPlan {
  readonly changes: readonly CommandChange[];
  readonly flowAt: (timeS: number) => number;
  readonly fullAt: (timeS: number) => boolean;
  /** Level at the last shut-off [-], when the last filling was long enough to have filled the tank. */
  readonly endLevel?: number;
  /** Noted shut-offs with room left in the tank. */
  readonly earlyShutOffs: number;
}

/** Dispensing cap of 10 US gal/min [m3/s]. Source: 40 CFR 80.22(j). */
const DISPENSING_CAP_M3_PER_S = (10 * 3.785411784e-3) / 60;
/** From this level on a shut-off can be the fill-limit valve's doing [-], judgement. */
const MAY_BE_FULL = 0.8;
/** [s], judgement. */
const LONG_FILLING_S = 20;
/** The float rises against its seat about this long before the back pressure shuts the nozzle [s], judgement. */
const FLOAT_LEAD_S = 1;

/**
 * @param recording refuelling, with notes where the technician made them
 * @param fillings its filling phases
 * @param fuel tank volume [m3] and level at the start [-]
 */
export function fillingPlan(
  recording: Recording,
  fillings: readonly Phase[],
  fuel: { readonly tankVolumeM3: number; readonly level: number },
): FillingPlan {
  const { timeS, notes } = recording;
  const gap = timeS.length > 1 ? (timeS[timeS.length - 1]! - timeS[0]!) / (timeS.length - 1) : 1;
  const noted = notes?.shutOffTimesS;
  const spans = fillings.map((f, i) => {
    const stop = noted?.find((t) => Math.abs(t - f.toS) <= 2 * gap + 0.5);
    return { fromS: f.fromS, toS: stop ?? f.toS, exact: stop !== undefined, last: i === fillings.length - 1 };
  });
  const total = spans.reduce((s, f) => s + f.toS - f.fromS, 0);
  // litres over seconds beats the nominal rate once the filling is long against its uncertain ends
  const flow =
    notes?.filledM3 !== undefined && total > LONG_FILLING_S
      ? notes.filledM3 / total
      : (notes?.fillFlowM3PerS ?? DISPENSING_CAP_M3_PER_S);
  let earlyShutOffs = 0;
  const first = spans[0];
  if (first && notes?.filledM3 !== undefined && total <= LONG_FILLING_S) {
    // short tries: the litres tell the length of the first better than the pressure's foot does
    const rest = total - (first.toS - first.fromS);
    const own = notes.filledM3 / flow - rest;
    if (own > 0.2) spans[0] = { ...first, fromS: Math.max(timeS[0]!, first.toS - own) };
  }
  const changes: CommandChange[] = [];
  const full: { readonly fromS: number }[] = [];
  let level = fuel.level;
  for (const f of spans) {
    const filled = f.last && notes?.filledM3 ? Math.max(fuel.level + notes.filledM3 / fuel.tankVolumeM3, level) : 0;
    level = Math.max(filled, level + (flow * (f.toS - f.fromS)) / fuel.tankVolumeM3);
    changes.push({ kind: 'fill-on', timeS: f.fromS, gapS: 2 * gap });
    if (level >= MAY_BE_FULL) {
      const shut = Math.max(f.fromS + 0.5, f.toS - FLOAT_LEAD_S);
      changes.push({ kind: 'float-shut', timeS: shut, gapS: Math.min(1.2, 1.6 * (f.toS - shut)) });
      full.push({ fromS: shut });
    } else if (f.exact) earlyShutOffs++;
    changes.push({ kind: 'fill-off', timeS: f.toS, gapS: f.exact ? 0.1 : gap });
  }
  return {
    changes,
    flowAt: (t) => (spans.some((f) => t > f.fromS && t < f.toS) ? flow : 0),
    fullAt: (t) => full.some((f) => t > f.fromS),
    ...(full.length > 0 && { endLevel: level }),
    earlyShutOffs,
  };
}
