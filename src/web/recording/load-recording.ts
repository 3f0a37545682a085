/** A recording's samples, fetched and made ready to draw. */

import { findTimeQuality } from '../../recording/quality-time.ts';
import type { ChannelName } from '../../recording/recording.ts';
import { decodeSamples, type SamplesHead } from '../../server/contract/samples.ts';
import { readSamples } from '../api/jobs.ts';
import { channelOrder } from './channel-lanes.ts';
import { buildColumns, type Source } from './chart/source.ts';

export interface LoadedRecording {
  readonly head: SamplesHead;
  readonly order: readonly ChannelName[];
  readonly source: Source;
}

export async function makeReady(bytes: ArrayBuffer): Promise<LoadedRecording> {
  const { head, timeS, channels } = decodeSamples(bytes);
  const order = channelOrder(Object.keys(channels) as ChannelName[]);
  const columns = await buildColumns(order.map((name) => channels[name]!));
  return { head, order, source: { timeS, columns, pauses: findTimeQuality(timeS).gaps } };
}

export const loadRecording = async (jobId: string, recordingId: string): Promise<LoadedRecording> =>
  makeReady(await readSamples(jobId, recordingId));
