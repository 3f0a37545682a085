import { CHANNELS, type ChannelName } from '../recording/recording.ts';

/** A channel's value as a technician reads it. */
export function figure(channel: ChannelName, value: number): string {
  const unit = CHANNELS[channel];
  if (unit === 'K') return `${Math.round(value - 273.15)} °C`;
  if (channel === 'vehicleSpeedMPerS') return `${Math.round(value * 3.6)} km/h`;
  if (channel === 'barometricPa' || channel === 'manifoldAbsPa') return `${Math.round(value / 1000)} kPa`;
  if (unit.startsWith('fraction')) return `${(100 * value).toFixed(1)} %`;
  if (unit.startsWith('Pa')) return `${Math.round(value)} Pa`;
  return `${Math.round(value)} ${unit}`;
}

/** A length of time: seconds up to two minutes, then minutes, then hours. */
export function minutes(seconds: number): string {
  if (seconds < 120) return `${Math.round(seconds)} s`;
  if (seconds < 2 * 3600) return `${Math.round(seconds / 60)} min`;
  return `${(seconds / 3600).toFixed(1).replace(/\.0$/, '')} h`;
}

export const LOCAL_RULES_CAUTION =
  'Typical values and rules only. The car’s own service information, and the inspection rules of the place where the car is registered, win where they differ: check them before you rely on this.';
