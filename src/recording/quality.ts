import { CHANNEL_ORDER } from './own-columns.ts';
import { type ChannelQuality, findChannelQuality } from './quality-channel.ts';
import { findTimeQuality, type TimeQuality } from './quality-time.ts';
import type { Recording } from './recording.ts';
import type { SensorRange } from './sensor-volts.ts';

/** How good a recording is; plain data. */
export interface Quality {
  readonly time: TimeQuality;
  readonly channels: readonly ChannelQuality[];
}

/** Measures rate, gaps, resolution, clipping, stuck readings, noise and spikes of every channel. */
export function findQuality(recording: Recording, sensor: SensorRange | undefined): Quality {
  return {
    time: findTimeQuality(recording.timeS),
    channels: CHANNEL_ORDER.flatMap((channel) => {
      const values = recording.channels[channel];
      return values ? [findChannelQuality(channel, values, sensor)] : [];
    }),
  };
}
