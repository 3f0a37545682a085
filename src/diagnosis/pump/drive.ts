/** Commands and conditions of a pump run as steps of its reduced model. */
import type { ChannelName, Phase, Recording } from '../../recording/recording.ts';
import type { Rails } from '../likelihood/found-rails.ts';
import { median } from '../likelihood/observations.ts';
import type { Conditions } from '../priors/conditions.ts';
import { coarserSteps, type LayOut, WHOLE_RECORDING } from '../single-run/lay-out.ts';
import type { ObservedChannel } from '../single-run/observed-channel.ts';
import { readSwitch, type Switch } from '../single-run/switches.ts';
import { type TimeSteps, timeSteps } from '../single-run/time-steps.ts';

export interface PumpDrive {
  readonly steps: TimeSteps;
  readonly pumpOn: Uint8Array;
  readonly toTank: Uint8Array;
  readonly duty: Float64Array;
  /** Share of the run that has passed, less one half [-]. */
  readonly progress: Float64Array;
  /** +1: the pump draws air out; -1: it pushes air in. */
  readonly direction: 1 | -1;
  /** For each channel: whether it is the module's sensor, and its rails [Pa gauge]. */
  readonly seesModule: readonly boolean[];
  readonly rails: readonly Rails[];
  readonly ambientAbsPa: number;
  readonly ambientTemperatureK: number;
  readonly tankTemperatureK: number;
  readonly vapourSensitivityPerK: number;
}

/** Bins and steps by the time since the last command [s]: fine as the pressure turns, coarse as it settles. */
export const pumpBinWidth = (s: number) => (s < 2 ? 0.3 : Math.min(10, 0.2 + 0.06 * s));
const longestStep = (s: number) => (s < 1 ? 0.15 : Math.min(12, 0.15 + 0.08 * s));

export interface PumpRun {
  readonly channels: readonly ObservedChannel[];
  readonly drive: PumpDrive;
  readonly commands: { readonly pumpOn: Switch; readonly toTank: Switch; readonly duty: Switch };
}

/** @returns undefined where no pressure of the run was recorded */
export function layOutPumpRun(
  recording: Recording,
  phases: readonly Phase[],
  c: Conditions,
  how: LayOut = WHOLE_RECORDING,
): PumpRun | undefined {
  const pumpOn = readSwitch(recording, 'pumpOn', 0);
  const toTank = readSwitch(recording, 'changeoverToTank', 0);
  const duty = readSwitch(recording, 'purgeDuty', 0);
  const changesS = [...pumpOn.changesS, ...toTank.changesS, ...duty.changesS].sort((a, b) => a - b);
  const names: readonly ChannelName[] = ['pumpPressureGaugePa', 'tankPressureGaugePa'];
  const channels = names.flatMap((name) => how.observe(recording, name, phases, changesS, pumpBinWidth) ?? []);
  if (channels.length === 0) return undefined;
  // a module with a single sensor often has its reading logged as the tank's
  const only = channels.length === 1;
  const steps = timeSteps(
    recording.timeS[0]!,
    channels.map((x) => x.observations.timeS),
    changesS,
    coarserSteps(longestStep, how.coarser),
  );
  const span = Math.max(1, recording.timeS[recording.timeS.length - 1]! - recording.timeS[0]!);
  const on = Uint8Array.from(steps.midS, (t) => (pumpOn.at(t) > 0.5 ? 1 : 0));
  return {
    channels,
    commands: { pumpOn, toTank, duty },
    drive: {
      steps,
      pumpOn: on,
      toTank: Uint8Array.from(steps.midS, (t) => (toTank.at(t) > 0.5 ? 1 : 0)),
      duty: Float64Array.from(steps.midS, (t) => Math.max(0, duty.at(t))),
      progress: Float64Array.from(steps.midS, (t) => (t - recording.timeS[0]!) / span - 0.5),
      direction: directionOf(channels[0]!, pumpOn),
      seesModule: channels.map((x) => only || x.channel === 'pumpPressureGaugePa'),
      rails: channels.map((x) => x.rails),
      ambientAbsPa: c.ambientAbsPa,
      ambientTemperatureK: c.ambientTemperatureK,
      tankTemperatureK: 0.5 * (c.ambientTemperatureK + c.fuelTemperatureK),
      vapourSensitivityPerK: c.vapourSensitivityPerK,
    },
  };
}

/** A module that pushes raises the reading while it runs. */
function directionOf(c: ObservedChannel, pumpOn: Switch): 1 | -1 {
  const { timeS, gaugePa } = c.observations;
  const running: number[] = [];
  const standing: number[] = [];
  timeS.forEach((t, i) => {
    (pumpOn.at(t) > 0.5 ? running : standing).push(gaugePa[i]!);
  });
  if (running.length === 0) return 1;
  const rest = standing.length > 0 ? median(standing) : 0;
  return median(running) > rest + 100 ? -1 : 1;
}
