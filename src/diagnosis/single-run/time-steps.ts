/** Time steps of a reduced model: they end at every observation and every command change. */

export interface TimeSteps {
  readonly count: number;
  readonly dtS: Float64Array;
  readonly midS: Float64Array;
  /** Step over the step before it [-]; 0 where a command changed in between, or the steps are too unlike. */
  readonly ratio: Float64Array;
  /** For each channel: index of the observation that the end of the step yields, or -1. */
  readonly observation: readonly Int32Array[];
}

/** The model starts this long before the first sample, under the first sample's commands [s]. */
const RUN_IN_S = 1;
/** Times nearer than this are one [s]: channels of one recording share their clock. */
const SAME_S = 0.02;
/** Second-order backward differences are stable up to a ratio of 2.4 (Hairer, Norsett, Wanner, ch. III.5). */
const LARGEST_RATIO = 2.2;

/**
 * @param startS first sample [s]
 * @param observationTimesS times at which each channel is observed [s]
 * @param changesS command changes [s], sorted
 * @param longestS longest step by the time since the last change [s]
 */
export function timeSteps(
  startS: number,
  observationTimesS: readonly Float64Array[],
  changesS: readonly number[],
  longestS: (sinceS: number) => number,
): TimeSteps {
  const from = startS - RUN_IN_S;
  const last = Math.max(startS, ...observationTimesS.map((t) => t[t.length - 1] ?? startS));
  const inside = changesS.filter((t) => t > from && t < last);
  const nodes: { readonly t: number; readonly change: boolean }[] = [
    { t: from, change: true },
    ...inside.map((t) => ({ t, change: true })),
    ...observationTimesS.flatMap((times) => Array.from(times, (t) => ({ t, change: false }))),
  ].sort((a, b) => a.t - b.t || Number(b.change) - Number(a.change));
  const dt: number[] = [];
  const mid: number[] = [];
  const end: number[] = [];
  const ratio: number[] = [];
  let change = Number.NEGATIVE_INFINITY;
  let at = from;
  let fresh = true;
  for (const node of nodes) {
    if (node.t - at > (node.change ? 1e-9 : SAME_S)) {
      const parts = Math.max(1, Math.ceil((node.t - at) / longestS(at - change) - 0.1));
      const h = (node.t - at) / parts;
      for (let k = 0; k < parts; k++) {
        const r = fresh ? 0 : h / dt[dt.length - 1]!;
        ratio.push(r > LARGEST_RATIO ? 0 : r);
        dt.push(h);
        mid.push(at + (k + 0.5) * h);
        end.push(at + (k + 1) * h);
        fresh = false;
      }
      at = node.t;
    }
    if (node.change) {
      change = node.t;
      fresh = true;
    }
  }
  const observation = observationTimesS.map((times) => {
    const index = new Int32Array(dt.length).fill(-1);
    let o = 0;
    for (let i = 0; i < dt.length && o < times.length; i++) if (end[i]! >= times[o]! - SAME_S) index[i] = o++;
    return index;
  });
  return {
    count: dt.length,
    dtS: Float64Array.from(dt),
    midS: Float64Array.from(mid),
    ratio: Float64Array.from(ratio),
    observation,
  };
}
