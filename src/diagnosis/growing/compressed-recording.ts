/** The kept history as a short recording: a sample for each bin, and one on either side of each command change. */
import type { ChannelName, Recording } from '../../recording/recording.ts';
import { binTimeS, CHANNEL_NAMES } from './bin.ts';
import { COMMANDS, type Commands, type History } from './history.ts';

interface Row {
  readonly timeS: number;
  readonly values: Float64Array;
}
const COMMAND_COLUMNS = COMMANDS.map((name) => CHANNEL_NAMES.indexOf(name));
/** Samples nearer than this are one [s]. */
const SAME_S = 1e-6;

/** @param untilS the recording goes on under the last commands up to here [s]; absent, it ends with the last sample */
export function compressedRecording(h: History, label: string, untilS?: number): Recording {
  const commandsOnly = (timeS: number, c: Commands): Row => {
    const values = new Float64Array(CHANNEL_NAMES.length).fill(Number.NaN);
    COMMANDS.forEach((name, k) => {
      values[COMMAND_COLUMNS[k]!] = c[name];
    });
    return { timeS, values };
  };
  const rows: Row[] = h.bins.map((b) => ({
    timeS: binTimeS(b),
    values: b.sums.map((s, c) => (b.counts[c]! > 0 ? s / b.counts[c]! : Number.NaN)),
  }));
  for (const c of h.changes) {
    rows.push(commandsOnly(c.timeS - 0.5 * c.gapS, c.before), commandsOnly(c.timeS + 0.5 * c.gapS, c.after));
  }
  rows.push(commandsOnly(h.firstS, h.changes[0]?.before ?? h.commands));
  rows.push(commandsOnly(untilS ?? h.lastS, h.commands));
  rows.sort((a, b) => a.timeS - b.timeS);
  const joined: Row[] = [];
  for (const row of rows) {
    const last = joined[joined.length - 1];
    if (!last || row.timeS - last.timeS > SAME_S) joined.push(row);
    else
      row.values.forEach((v, c) => {
        if (Number.isNaN(last.values[c]!)) last.values[c] = v;
      });
  }
  const channels: Partial<Record<ChannelName, Float64Array>> = {};
  CHANNEL_NAMES.forEach((name, c) => {
    if (h.present.has(name)) channels[name] = Float64Array.from(joined, (r) => r.values[c]!);
  });
  return {
    timeS: Float64Array.from(joined, (r) => r.timeS),
    channels,
    label,
    ...(h.notes && { notes: h.notes }),
  };
}

/** Conditions that are read before anything moves, by channel: from the mean of so many first samples. */
const FROM_THE_START: Partial<Record<ChannelName, number>> = { fuelTemperatureK: 20 };
const FROM_THE_START_FILLING: Partial<Record<ChannelName, number>> = { ...FROM_THE_START, fuelLevel: 5 };

/** One sample with the mean of every channel over the whole recording; of some, over its start. */
export function meanRecording(h: History, label: string): Recording {
  const channels: Partial<Record<ChannelName, Float64Array>> = {};
  const fromStart = h.notes?.procedure === 'refuelling' ? FROM_THE_START_FILLING : FROM_THE_START;
  CHANNEL_NAMES.forEach((name, c) => {
    if (h.counts[c] === 0) return;
    const most = fromStart[name];
    const first = most === undefined ? [] : h.firsts[c]!.slice(0, most);
    const mean = first.length > 0 ? first.reduce((s, x) => s + x, 0) / first.length : h.sums[c]! / h.counts[c]!;
    channels[name] = Float64Array.of(mean);
  });
  return { timeS: Float64Array.of(0), channels, label, ...(h.notes && { notes: h.notes }) };
}
