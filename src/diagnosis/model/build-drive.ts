/** Lays a recording out as the steps of the two-space model. */
import type { Recording } from '../../recording/recording.ts';
import type { CommandChange } from './command-changes.ts';
import type { Drive } from './drive.ts';

export interface DriveSettings {
  /** Times that the model must yield a reading for [s], increasing. */
  readonly observationTimesS: Float64Array;
  readonly changes: readonly CommandChange[];
  /** The changes whose exact time is fitted, at most four; a change's slot is its place here. */
  readonly movable: readonly CommandChange[];
  /** Longest step [s] by the time since the last change. */
  readonly longestStepS: (sinceChangeS: number) => number;
  readonly warmKnots: number;
  /** Draw over which the purge flow may drift [s]. */
  readonly draw?: { readonly fromS: number; readonly toS: number };
  readonly ambientAbsPa: number;
  readonly ambientTemperatureK: number;
  readonly tankTemperatureK: number;
  readonly vapourSensitivityPerK: number;
  readonly clipLowGaugePa: number;
  readonly clipHighGaugePa: number;
  /** Liquid flow at a time [m3/s]; absent when nothing is filled. */
  readonly fillM3PerS?: (timeS: number) => number;
  /** Whether the fill-limit valve is shut at a time. */
  readonly full?: (timeS: number) => boolean;
}

/** Below this an engine stands [1/min]. */
const TURNING_RPM = 50;
/**
 * The model starts this long before the first sample, under the first sample's commands [s]: an open vent brings the
 * system to its own pressure within seconds, a shut one keeps what it starts with.
 */
const RUN_IN_S = 8;

/** Interpolates a channel between the samples that exist; constant beyond the ends. */
function channelAt(timeS: Float64Array, x: Float64Array): (t: number) => number {
  const ts: number[] = [];
  const xs: number[] = [];
  for (let i = 0; i < x.length; i++) {
    if (Number.isFinite(x[i]!)) {
      ts.push(timeS[i]!);
      xs.push(x[i]!);
    }
  }
  let k = 0;
  return (t) => {
    if (k >= ts.length || (k > 0 && ts[k]! > t)) k = 0;
    while (k + 1 < ts.length && ts[k + 1]! <= t) k++;
    if (k + 1 >= ts.length || t <= ts[k]!) return xs[k]!;
    return xs[k]! + ((t - ts[k]!) / (ts[k + 1]! - ts[k]!)) * (xs[k + 1]! - xs[k]!);
  };
}

/** State of a command that changes at the middle of the gap between two samples. */
function commandAt(timeS: Float64Array, x: Float64Array): (t: number) => number {
  let k = 0;
  return (t) => {
    if (k > 0 && timeS[k]! > t) k = 0;
    while (k + 1 < timeS.length && 0.5 * (timeS[k]! + timeS[k + 1]!) <= t) k++;
    return x[k]!;
  };
}

/** Manifold pressure where the recording has none: at ambient with the engine off, else unknown and so asked for. */
export function buildDrive(recording: Recording, manifoldWithoutChannelPa: number, s: DriveSettings): Drive {
  const { timeS, channels } = recording;
  const from = timeS[0]! - RUN_IN_S;
  const to = Math.max(timeS[timeS.length - 1]!, s.observationTimesS[s.observationTimesS.length - 1] ?? 0);
  const nodes: number[] = [from, ...s.observationTimesS];
  for (const c of s.changes) nodes.push(c.timeS - 0.5 * c.gapS, c.timeS, c.timeS + 0.5 * c.gapS);
  const sorted = [...new Set(nodes.filter((t) => t >= from && t <= to))].sort((a, b) => a - b);
  const inGap = (a: number, b: number) =>
    s.changes.some((c) => b > c.timeS - 0.5 * c.gapS && a < c.timeS + 0.5 * c.gapS);

  const dt: number[] = [];
  const mid: number[] = [];
  const end: number[] = [];
  let change = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i + 1 < sorted.length; i++) {
    const a = sorted[i]!;
    const b = sorted[i + 1]!;
    if (b - a < 1e-9) continue;
    while (change < s.changes.length && s.changes[change]!.timeS <= a) last = s.changes[change++]!.timeS;
    const parts = inGap(a, b) ? 1 : Math.max(1, Math.ceil((b - a) / s.longestStepS(a - last) - 1e-9));
    for (let j = 0; j < parts; j++) {
      const h = (b - a) / parts;
      dt.push(h);
      mid.push(a + (j + 0.5) * h);
      end.push(j === parts - 1 ? b : a + (j + 1) * h);
    }
  }
  const n = dt.length;
  const observation = new Int32Array(n).fill(-1);
  let o = 0;
  const times = s.observationTimesS;
  for (let i = 0; i < n && o < times.length; i++) {
    if (end[i]! >= times[o]! - 1e-9) observation[i] = o++;
  }
  const ventAt = channels.ventClosed ? commandAt(timeS, channels.ventClosed) : () => 0;
  const dutyCommand = channels.purgeDuty ? commandAt(timeS, channels.purgeDuty) : () => 0;
  const mapAt = channels.manifoldAbsPa ? channelAt(timeS, channels.manifoldAbsPa) : () => manifoldWithoutChannelPa;
  const rpmAt = channels.engineSpeedRpm ? channelAt(timeS, channels.engineSpeedRpm) : () => Number.POSITIVE_INFINITY;
  const duty = new Float64Array(n);
  const ventShut = new Uint8Array(n);
  const manifoldAbsPa = new Float64Array(n);
  const fill = new Float64Array(n);
  const full = new Uint8Array(n);
  const shift = new Int8Array(n);
  const warmPosition = new Float64Array(n);
  const driftPosition = new Float64Array(n).fill(-1);
  const span = Math.max(1e-9, to - from);
  for (let i = 0; i < n; i++) {
    const t = mid[i]!;
    duty[i] = Math.max(0, dutyCommand(t) || 0);
    ventShut[i] = ventAt(t) >= 0.5 ? 1 : 0;
    // a standing engine's manifold is at ambient: the sensors' rounding must not drive a flow
    const m = rpmAt(t) < TURNING_RPM ? s.ambientAbsPa : mapAt(t);
    manifoldAbsPa[i] = Number.isFinite(m) ? m : manifoldWithoutChannelPa;
    if (s.fillM3PerS) fill[i] = s.fillM3PerS(t);
    if (s.full?.(t)) full[i] = 1;
    warmPosition[i] = ((t - from) / span) * (s.warmKnots - 1);
    if (s.draw && t > s.draw.fromS && t < s.draw.toS) {
      driftPosition[i] = (2 * (t - s.draw.fromS)) / (s.draw.toS - s.draw.fromS);
    }
  }
  s.movable.forEach((c, slot) => {
    for (let i = 0; i < n; i++) {
      if (Math.abs(end[i]! - c.timeS) < 1e-9) {
        shift[i] = slot + 1;
        if (i + 1 < n) shift[i + 1] = -(slot + 1);
        return;
      }
    }
  });
  return {
    stepCount: n,
    dtS: Float64Array.from(dt),
    duty,
    ventShut,
    manifoldAbsPa,
    fillM3PerS: fill,
    full,
    observation,
    shift,
    warmPosition,
    driftPosition,
    warmKnots: s.warmKnots,
    observationCount: o,
    ambientAbsPa: s.ambientAbsPa,
    toMiddleS: 0.5 * (timeS[0]! + timeS[timeS.length - 1]!) - from,
    ambientTemperatureK: s.ambientTemperatureK,
    tankTemperatureK: s.tankTemperatureK,
    vapourSensitivityPerK: s.vapourSensitivityPerK,
    clipLowGaugePa: s.clipLowGaugePa,
    clipHighGaugePa: s.clipHighGaugePa,
  };
}
