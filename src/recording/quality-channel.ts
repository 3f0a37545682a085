import { OWN_COLUMNS } from './own-columns.ts';
import type { ChannelName } from './recording.ts';
import { findResolution } from './resolution.ts';
import type { SensorRange } from './sensor-volts.ts';
import { quantile } from './value-range.ts';

export interface ChannelQuality {
  readonly channel: ChannelName;
  readonly samples: number;
  readonly missing: number;
  readonly min?: number;
  readonly max?: number;
  /** Quantisation step in the channel's unit; absent when none shows. */
  readonly resolution?: number;
  /** One sigma of the noise from second differences, in the channel's unit; quantisation is part of it. */
  readonly noise?: number;
  /** Share of the samples that stand at the lowest or highest value as if cut off. */
  readonly clippedLow: number;
  readonly clippedHigh: number;
  /** No change at all over the whole recording. */
  readonly constant: boolean;
  /** Constant although a working sensor of this kind moves; only pressures are judged. */
  readonly stuck: boolean;
  /** Single samples far off both neighbours. */
  readonly spikes: number;
}

/** So many equal samples in a row at an extreme look cut off (judgement). */
const CLIP_RUN = 5;
const STUCK_SAMPLES = 30;
/** A second difference of normal noise has sqrt(6) times its sigma; 0.6745 turns a median into a sigma. */
const MEDIAN_TO_SIGMA = 1 / (0.6745 * Math.sqrt(6));
const SPIKE_SIGMAS = 10;
const MOST_DIFFERENCES = 20_000;

/** Longest-run share of samples that equal `extreme` in runs of at least CLIP_RUN. */
function shareInRuns(values: Float64Array, extreme: number): number {
  let inRuns = 0;
  let run = 0;
  for (let i = 0; i <= values.length; i++) {
    if (i < values.length && values[i] === extreme) run++;
    else {
      if (run >= CLIP_RUN) inRuns += run;
      run = 0;
    }
  }
  return inRuns / values.length;
}

function findNoise(values: Float64Array): number | undefined {
  const stride = Math.max(1, Math.floor(values.length / MOST_DIFFERENCES));
  const found = new Float64Array(Math.ceil(values.length / stride));
  let n = 0;
  for (let i = 1; i + 1 < values.length; i += stride) {
    const second = Math.abs(values[i - 1]! - 2 * values[i]! + values[i + 1]!);
    if (!Number.isNaN(second)) found[n++] = second;
  }
  if (n < 3) return undefined;
  const sorted = found.subarray(0, n).sort();
  const median = quantile(sorted, 0.5);
  // With coarse steps more than half of the differences are zero; the mean then still tells something.
  if (median > 0) return median * MEDIAN_TO_SIGMA;
  let sum = 0;
  const kept = Math.floor(0.98 * n);
  for (let k = 0; k < kept; k++) sum += sorted[k]! ** 2;
  return kept === 0 ? 0 : Math.sqrt(sum / kept / 6);
}

function countSpikes(values: Float64Array, threshold: number): number {
  let spikes = 0;
  for (let i = 1; i + 1 < values.length; i++) {
    const before = values[i]! - values[i - 1]!;
    const after = values[i]! - values[i + 1]!;
    if ((before > threshold && after > threshold) || (before < -threshold && after < -threshold)) spikes++;
  }
  return spikes;
}

/** Clipped where the sensor ends: at the ends of its range when that is known, else wherever readings pile up. */
function clipping(values: Float64Array, min: number, max: number, noise: number, sensor: SensorRange | undefined) {
  const atEnd = (extreme: number, end: number | undefined, sign: 1 | -1): boolean =>
    end === undefined ? Math.abs(extreme) > 20 * noise && noise > 0 : sign * (extreme - end) >= -0.01 * Math.abs(end);
  return {
    low: atEnd(min, sensor?.minGaugePa, -1) ? shareInRuns(values, min) : 0,
    high: atEnd(max, sensor?.maxGaugePa, 1) ? shareInRuns(values, max) : 0,
  };
}

export function findChannelQuality(
  channel: ChannelName,
  values: Float64Array,
  sensor: SensorRange | undefined,
): ChannelQuality {
  let missing = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (Number.isNaN(value)) missing++;
    else {
      if (value < min) min = value;
      if (value > max) max = value;
    }
  }
  const samples = values.length;
  const { quantity } = OWN_COLUMNS[channel];
  const present = samples - missing;
  if (present === 0)
    return { channel, samples, missing, clippedLow: 0, clippedHigh: 0, constant: false, stuck: false, spikes: 0 };
  const constant = min === max;
  const isPressure = quantity === 'pressure' && channel !== 'barometricPa' && channel !== 'manifoldAbsPa';
  const stuck = constant && isPressure && present >= STUCK_SAMPLES;
  const measured = quantity !== 'switch' && channel !== 'purgeDuty';
  const resolution = constant || quantity === 'switch' ? undefined : findResolution(values)?.step;
  const noise = quantity === 'switch' ? undefined : findNoise(values);
  let clipped = { low: 0, high: 0 };
  if (isPressure && !constant)
    clipped = clipping(values, min, max, noise ?? 0, channel === 'tankPressureGaugePa' ? sensor : undefined);
  const threshold = Math.max(SPIKE_SIGMAS * (noise ?? 0), 4 * (resolution ?? 0));
  return {
    channel,
    samples,
    missing,
    min,
    max,
    ...(resolution === undefined ? {} : { resolution }),
    ...(noise === undefined ? {} : { noise }),
    clippedLow: clipped.low,
    clippedHigh: clipped.high,
    constant,
    stuck,
    spikes: measured && !constant && threshold > 0 ? countSpikes(values, threshold) : 0,
  };
}
