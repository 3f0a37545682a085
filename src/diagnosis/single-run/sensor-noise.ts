/** What the white noise of a run's channels says of their sensors, whatever the pressures are. */
import { logMean } from '../likelihood/log-mean.ts';
import { sensorState } from '../likelihood/sensor-state.ts';
import type { ObservedChannel } from './observed-channel.ts';

/** What a cause says of each channel's sensor. */
export type SensorClaim = 'sound' | 'frozen';

/**
 * ln density of the measured noises.
 *
 * @param channels the run's channels
 * @param claims of each channel
 */
export function noiseLogDensity(channels: readonly ObservedChannel[], claims: readonly SensorClaim[]): number {
  return channels.reduce((s, c, i) => s + sensorState(c)[claims[i]!], 0);
}

/** The same where a sensor is noisy, not known which or how many: every choice of them alike. */
export function noisyLogDensity(channels: readonly ObservedChannel[]): number {
  const states = channels.map((c) => sensorState(c));
  const choices = 2 ** channels.length - 1;
  const logs = Array.from({ length: choices }, (_, k) =>
    states.reduce((s, state, i) => s + (((k + 1) >> i) & 1 ? state.noisy : state.sound), 0),
  );
  return logMean(logs);
}
