import type { ChannelName, Recording } from './recording.ts';

/** The commands at every sample; absent where the recording has no such channel. */
export interface Commands {
  readonly ventClosed?: readonly boolean[];
  readonly purging?: readonly boolean[];
  readonly engineRuns?: readonly boolean[];
  readonly pumpOn?: readonly boolean[];
  readonly toTank?: readonly boolean[];
  readonly isolationOpen?: readonly boolean[];
}

/** Slower than this an engine does not run (common practice: idle is 500 1/min or more). */
const RUNNING_RPM = 200;
/** Less than this is a purge valve at rest: half a step of an 8-bit duty. */
const LEAST_DUTY = 0.002;

/** A command holds until the next one is seen; before the first it is taken as the first. */
function held(values: Float64Array | undefined, isOn: (value: number) => boolean): boolean[] | undefined {
  if (values === undefined) return undefined;
  const first = values.find((value) => !Number.isNaN(value));
  if (first === undefined) return undefined;
  let state = isOn(first);
  return Array.from(values, (value) => {
    if (!Number.isNaN(value)) state = isOn(value);
    return state;
  });
}

export function readCommands(recording: Recording): Commands {
  const { channels } = recording;
  const on = (channel: ChannelName) => held(channels[channel], (value) => value > 0.5);
  const found = {
    ventClosed: on('ventClosed'),
    purging: held(channels.purgeDuty, (value) => value > LEAST_DUTY),
    engineRuns: held(channels.engineSpeedRpm, (value) => value > RUNNING_RPM),
    pumpOn: on('pumpOn'),
    toTank: on('changeoverToTank'),
    isolationOpen: on('isolationOpen'),
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined)) as Commands;
}

export const anyTrue = (states: readonly boolean[] | undefined): boolean => states?.includes(true) ?? false;

/** Share of the samples at which a command is on. */
export function shareTrue(states: readonly boolean[]): number {
  return states.length === 0 ? 0 : states.filter(Boolean).length / states.length;
}
