/** When liquid flows during a refuelling, how fast, and from when the fill-limit valve can be shut. */
import type { Phase, Recording } from '../../recording/recording.ts';
import type { CommandChange } from './command-changes.ts';

/**
 * What a pump delivers of its noted rate [-]. The noted rate is the cap of 10 gal/min, which no pump may exceed
 * (40 CFR 80.22(j)). Judgement.
 */
const USUAL_SHARE_OF_CAP = 0.95;
/** Time in which the flow builds up after the nozzle's lever is pulled [s], judgement: a moment of a hand. */
export const NOZZLE_RISE_S = 0.3;

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
/** Level at which the fill-limit valve ends a filling [-]: its set point near 95 % of the tank, common practice, no source. */
export const FULL_LEVEL = 0.94;
/** From this level on a shut-off can be the fill-limit valve's doing [-], judgement. */
const MAY_BE_FULL = 0.8;
/** The pressure shows the start only once the flow has built up: width of what is left open [s], judgement. */
const UNSEEN_START_S = 0.7;
/** Share of a try's rise within which the pressure counts as not yet risen [-], judgement: above noise and steps. */
const NEAR_LOWEST = 0.03;
/** A smaller rise may be noise and steps [Pa], judgement. */
const LEAST_RISE_PA = 150;
/** [s], judgement. */
const SHORTEST_TRY_S = 0.1;
/** After a shut-off the pressure falls for a moment whatever follows [s], judgement. */
const SETTLED_S = 0.5;
/** Samples further apart than this do not show a start [s], judgement. */
const COARSE_GAP_S = 0.3;
/** [s], judgement. */
const LONG_FILLING_S = 20;
/** The float rises against its seat about this long before the back pressure shuts the nozzle [s], judgement. */
const FLOAT_LEAD_S = 1;

/** Time at full flow that pours what a try of this length does [s]. */
const atFullFlowS = (lengthS: number) => lengthS - NOZZLE_RISE_S * (1 - Math.exp(-lengthS / NOZZLE_RISE_S));

/** How far the pressure rose before a shut-off [Pa], and when it last stood at its lowest [s]: the flow begins there. */
function riseOf(
  recording: Recording,
  earliestS: number,
  shutOffS: number,
): { risePa: number; footS: number } | undefined {
  const { timeS, channels } = recording;
  const p = channels.tankPressureGaugePa;
  if (!p) return undefined;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < p.length; i++) {
    if (timeS[i]! < earliestS || timeS[i]! > shutOffS || Number.isNaN(p[i]!)) continue;
    lowest = Math.min(lowest, p[i]!);
    highest = Math.max(highest, p[i]!);
  }
  const risePa = highest - lowest;
  if (!(risePa > LEAST_RISE_PA)) return undefined;
  const near = lowest + NEAR_LOWEST * risePa;
  let footS: number | undefined;
  for (let i = 0; i < p.length; i++) {
    if (timeS[i]! >= earliestS && timeS[i]! < shutOffS && p[i]! <= near) footS = timeS[i]!;
  }
  return footS === undefined ? undefined : { risePa, footS };
}

const meanGapS = (timeS: Float64Array): number =>
  timeS.length > 1 ? (timeS[timeS.length - 1]! - timeS[0]!) / (timeS.length - 1) : 1;

/**
 * @param recording refuelling, with notes where the technician made them
 * @param fillings its filling phases
 * @param fuel tank volume [m3] and level at the start [-]
 * @param sampleGapS time between samples [s]; absent, that of the recording's rows
 */
export function fillingPlan(
  recording: Recording,
  fillings: readonly Phase[],
  fuel: { readonly tankVolumeM3: number; readonly level: number },
  sampleGapS?: number,
): FillingPlan {
  const { timeS, notes } = recording;
  const gap = sampleGapS ?? meanGapS(timeS);
  const noted = notes?.shutOffTimesS;
  const spans = fillings.map((f, i) => {
    const stop = noted?.find((t) => Math.abs(t - f.toS) <= 2 * gap + 0.5);
    return { fromS: f.fromS, toS: stop ?? f.toS, exact: stop !== undefined, last: i === fillings.length - 1 };
  });
  const rises = spans.map((f, i) => riseOf(recording, i > 0 ? spans[i - 1]!.toS + SETTLED_S : timeS[0]!, f.toS));
  spans.forEach((f, i) => {
    const foot = rises[i]?.footS;
    if (foot !== undefined) f.fromS = Math.min(foot + 0.5 * gap, f.toS - SHORTEST_TRY_S);
  });
  const total = spans.reduce((s, f) => s + atFullFlowS(f.toS - f.fromS), 0);
  // litres over seconds beats the nominal rate once the filling is long against its uncertain ends
  const flow =
    notes?.filledM3 !== undefined && total > LONG_FILLING_S
      ? notes.filledM3 / total
      : USUAL_SHARE_OF_CAP * (notes?.fillFlowM3PerS ?? DISPENSING_CAP_M3_PER_S);
  let earlyShutOffs = 0;
  if (total <= LONG_FILLING_S) {
    const all = rises.reduce((s, r) => s + (r?.risePa ?? 0), 0);
    if (notes?.filledM3 !== undefined && gap > COARSE_GAP_S && all > 0) {
      // too few samples to see a start: the litres tell it
      const lacking = notes.filledM3 / flow - total;
      spans.forEach((f, i) => {
        const own = lacking * ((rises[i]?.risePa ?? 0) / all);
        const moved = f.fromS - Math.max(-gap, Math.min(gap, own));
        f.fromS = Math.max(timeS[0]!, Math.min(moved, f.toS - SHORTEST_TRY_S));
      });
    }
  }
  const changes: CommandChange[] = [];
  const full: { readonly fromS: number }[] = [];
  let level = fuel.level;
  for (const f of spans) {
    const filled = f.last && notes?.filledM3 ? Math.max(fuel.level + notes.filledM3 / fuel.tankVolumeM3, level) : 0;
    level = Math.max(filled, level + (flow * atFullFlowS(f.toS - f.fromS)) / fuel.tankVolumeM3);
    changes.push({ kind: 'fill-on', timeS: f.fromS, gapS: Math.max(UNSEEN_START_S, 2 * gap) });
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
