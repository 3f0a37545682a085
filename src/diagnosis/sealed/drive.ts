/** Commands and conditions of a sealed tank's run as steps of its reduced model. */
import type { ChannelName, Phase, Recording } from '../../recording/recording.ts';
import type { Rails } from '../likelihood/found-rails.ts';
import type { Conditions } from '../priors/conditions.ts';
import { coarserSteps, type LayOut, WHOLE_RECORDING } from '../single-run/lay-out.ts';
import { type ObservedChannel, withModelError } from '../single-run/observed-channel.ts';
import { standingRails } from '../single-run/standing-rails.ts';
import { readSeries, readSwitch } from '../single-run/switches.ts';
import { type TimeSteps, timeSteps } from '../single-run/time-steps.ts';

export interface SealedDrive {
  readonly steps: TimeSteps;
  readonly isolationOpen: Uint8Array;
  readonly ventShut: Uint8Array;
  readonly duty: Float64Array;
  readonly manifoldAbsPa: Float64Array;
  readonly ambientAbsPa: Float64Array;
  /** Fuel less its first temperature, as recorded; absent where it was not [K]. */
  readonly fuelSwingK: Float64Array | undefined;
  /** Ambient less its first temperature [K]. */
  readonly ambientSwingK: Float64Array;
  /** For each channel: whether it is the tank's sensor, and its rails [Pa gauge]. */
  readonly seesTank: readonly boolean[];
  readonly rails: readonly Rails[];
  readonly ambientTemperatureK: number;
  readonly tankTemperatureK: number;
  readonly vapourSensitivityPerK: number;
}

export interface SealedRun {
  readonly channels: readonly ObservedChannel[];
  readonly drive: SealedDrive;
}

/** Bins and steps by the time since the last command [s]: seconds after a command, minutes through a night. */
export const sealedBinWidth = (s: number) => (s < 3 ? 0.3 : Number.isFinite(s) ? Math.min(600, 0.1 + 0.07 * s) : 3);
const longestStep = (s: number) => (s < 1 ? 0.1 : Number.isFinite(s) ? Math.min(600, 0.1 + 0.07 * s) : 600);
/** With the engine running and no manifold pressure recorded it idles [Pa], common practice, no source. */
const IDLE_MANIFOLD_PA = 35e3;

/**
 * Nowhere is the reduced model better than this share of all that a channel shows: what parts two causes by less is as well
 * its own error, as tank and carbon answer a release in more ways than it knows. Judgement.
 */
const MODEL_SHARE = 0.003;

/** @returns undefined where the tank's pressure was not recorded */
export function layOutSealedRun(
  recording: Recording,
  phases: readonly Phase[],
  c: Conditions,
  how: LayOut = WHOLE_RECORDING,
): SealedRun | undefined {
  const isolation = readSwitch(recording, 'isolationOpen', 0);
  const vent = readSwitch(recording, 'ventClosed', 0);
  const duty = readSwitch(recording, 'purgeDuty', 0);
  const changesS = [...isolation.changesS, ...vent.changesS, ...duty.changesS].sort((a, b) => a - b);
  const { timeS } = recording;
  const first = timeS[0]!;
  const span = timeS[timeS.length - 1]! - first;
  // a long rest before the first command is binned by its length
  const width = (s: number) => (Number.isFinite(s) ? sealedBinWidth(s) : Math.max(2, Math.min(600, span / 60)));
  const names: readonly ChannelName[] = ['tankPressureGaugePa', 'canisterPressureGaugePa'];
  const channels = names
    .flatMap((name) => how.observe(recording, name, phases, changesS, width) ?? [])
    .map((x) => withModelError(x, MODEL_SHARE));
  if (channels[0]?.channel !== 'tankPressureGaugePa') return undefined;
  const steps = timeSteps(
    first,
    channels.map((x) => x.observations.timeS),
    changesS,
    coarserSteps(longestStep, how.coarser),
  );
  const along = (f: (t: number) => number) => Float64Array.from(steps.midS, f);
  const fuel = readSeries(recording, 'fuelTemperatureK');
  const ambient = readSeries(recording, 'ambientTemperatureK');
  const barometer = readSeries(recording, 'barometricPa') ?? (() => c.ambientAbsPa);
  const manifold = readSeries(recording, 'manifoldAbsPa') ?? (() => IDLE_MANIFOLD_PA);
  return {
    channels,
    drive: {
      steps,
      isolationOpen: Uint8Array.from(steps.midS, (t) => (isolation.at(t) > 0.5 ? 1 : 0)),
      ventShut: Uint8Array.from(steps.midS, (t) => (vent.at(t) > 0.5 ? 1 : 0)),
      duty: along((t) => Math.max(0, duty.at(t))),
      manifoldAbsPa: along(manifold),
      ambientAbsPa: along(barometer),
      fuelSwingK: fuel && along((t) => fuel(t) - fuel(first)),
      ambientSwingK: along((t) => (ambient ? ambient(t) - ambient(first) : 0)),
      seesTank: channels.map((x) => x.channel === 'tankPressureGaugePa'),
      rails: channels.map(standingRails),
      ambientTemperatureK: c.ambientTemperatureK,
      tankTemperatureK: 0.5 * (c.ambientTemperatureK + c.fuelTemperatureK),
      vapourSensitivityPerK: c.vapourSensitivityPerK,
    },
  };
}
