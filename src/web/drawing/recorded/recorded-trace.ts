import type { RecordedTrace } from '../player/trace-chart.tsx';

/** Points that are kept: about two for each pixel of a wide chart. */
const MOST = 2400;

/**
 * A channel between two times, thinned to its extremes: it is drawn anew whenever a slider moves.
 *
 * @param timeS and `values` of the channel
 * @param fromS begins here, which becomes 0 of the trace
 * @param toS ends here
 * @returns the trace; undefined where nothing was recorded between them
 */
export function recordedTrace(
  timeS: ArrayLike<number>,
  values: ArrayLike<number>,
  fromS: number,
  toS: number,
): RecordedTrace | undefined {
  const kept: number[] = [];
  for (let i = 0; i < values.length && timeS[i]! <= toS; i++) {
    if (timeS[i]! >= fromS && Number.isFinite(values[i]!)) kept.push(i);
  }
  if (kept.length === 0) return undefined;
  const stride = Math.max(1, Math.ceil((2 * kept.length) / MOST));
  const points: number[] = [];
  for (let k = 0; k < kept.length; k += stride) {
    let lowest = kept[k]!;
    let highest = lowest;
    for (const i of kept.slice(k, k + stride)) {
      if (values[i]! < values[lowest]!) lowest = i;
      if (values[i]! > values[highest]!) highest = i;
    }
    points.push(Math.min(lowest, highest));
    if (lowest !== highest) points.push(Math.max(lowest, highest));
  }
  return {
    timeS: Float32Array.from(points, (i) => timeS[i]! - fromS),
    gaugePa: Float32Array.from(points, (i) => values[i]!),
  };
}
