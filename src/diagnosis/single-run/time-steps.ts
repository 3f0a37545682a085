/** Time steps of a reduced model: they end at every observation and every command change. */

export interface TimeSteps {
  readonly count: number;
  readonly dtS: Float64Array;
  readonly midS: Float64Array;
  /** For each channel: index of the observation that the end of the step yields, or -1. */
  readonly observation: readonly Int32Array[];
}

/** The model starts this long before the first sample, under the first sample's commands [s]. */
const RUN_IN_S = 1;

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
  const nodes = [from, ...changesS.filter((t) => t > from && t < last)];
  for (const times of observationTimesS) nodes.push(...times);
  const sorted = [...new Set(nodes)].sort((a, b) => a - b);
  const dt: number[] = [];
  const mid: number[] = [];
  const end: number[] = [];
  let next = 0;
  let change = Number.NEGATIVE_INFINITY;
  for (let i = 0; i + 1 < sorted.length; i++) {
    const b = sorted[i + 1]!;
    let a = sorted[i]!;
    if (b - a < 1e-9) continue;
    while (next < changesS.length && changesS[next]! <= a) change = changesS[next++]!;
    // steps grow from short to long inside one interval, as the pressure settles
    while (a < b) {
      const step = longestS(a - change);
      const stop = b - a <= 1.3 * step ? b : a + step;
      dt.push(stop - a);
      mid.push(0.5 * (a + stop));
      end.push(stop);
      a = stop;
    }
  }
  const observation = observationTimesS.map((times) => {
    const at = new Int32Array(dt.length).fill(-1);
    let o = 0;
    for (let i = 0; i < dt.length && o < times.length; i++) if (end[i]! >= times[o]! - 1e-9) at[i] = o++;
    return at;
  });
  return { count: dt.length, dtS: Float64Array.from(dt), midS: Float64Array.from(mid), observation };
}
