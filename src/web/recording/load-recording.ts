/** A recording's samples, fetched and made ready to draw. */

import { findTimeQuality } from '../../recording/quality-time.ts';
import type { ChannelName } from '../../recording/recording.ts';
import { decodeSamples, type Samples, type SamplesHead } from '../../server/contract/samples.ts';
import { channelOrder } from './channel-lanes.ts';
import { buildColumns, type Source } from './chart/source.ts';

export interface LoadedRecording {
  readonly head: SamplesHead;
  readonly order: readonly ChannelName[];
  readonly source: Source;
}

/** Chart and drawing show the same recording: its samples are fetched once. */
const fetched = new Map<string, Promise<Samples>>();
const MOST_KEPT = 3;

/**
 * @param key changes when the server would read the recording in another way
 * @returns the samples; a failure is not kept
 */
export function fetchSamples(key: string, read: () => Promise<ArrayBuffer>): Promise<Samples> {
  const known = fetched.get(key);
  if (known !== undefined) return known;
  const made = read().then(decodeSamples);
  fetched.set(key, made);
  made.catch(() => fetched.delete(key));
  for (const old of fetched.keys()) {
    if (fetched.size <= MOST_KEPT) break;
    fetched.delete(old);
  }
  return made;
}

async function makeReady({ head, timeS, channels }: Samples): Promise<LoadedRecording> {
  const order = channelOrder(Object.keys(channels) as ChannelName[]);
  const columns = await buildColumns(order.map((name) => channels[name]!));
  return { head, order, source: { timeS, columns, pauses: findTimeQuality(timeS).gaps } };
}

export const loadRecording = async (key: string, read: () => Promise<ArrayBuffer>): Promise<LoadedRecording> =>
  makeReady(await fetchSamples(key, read));
