import { CHANNEL_ORDER, OWN_COLUMNS, ownHeader } from './own-columns.ts';
import type { ChannelName, Recording } from './recording.ts';
import { lookUpUnit } from './unit-lookup.ts';

/** Figures that are written: more than any sensor has, few enough to hide the noise of unit conversion. */
const FIGURES = 12;

const numberText = (value: number): string => (Number.isNaN(value) ? '' : String(Number(value.toPrecision(FIGURES))));

function columnText(channel: ChannelName, values: Float64Array): (i: number) => string {
  const { unit: symbol } = OWN_COLUMNS[channel];
  const unit = symbol === undefined ? undefined : lookUpUnit(symbol);
  if (unit === undefined) return (i) => numberText(values[i]!);
  const { factor, offset } = unit;
  return (i) => numberText((values[i]! - offset) / factor);
}

/** A recording in our own CSV form (RFC 4180, with a header, lines ended by CR LF). A missing sample is an empty cell. */
export function writeRecordingCsv(recording: Recording): string {
  const present = CHANNEL_ORDER.filter((channel) => recording.channels[channel] !== undefined);
  const texts = present.map((channel) => columnText(channel, recording.channels[channel]!));
  const lines = [['time_s', ...present.map(ownHeader)].join(',')];
  recording.timeS.forEach((t, i) => {
    lines.push([String(t), ...texts.map((text) => text(i))].join(','));
  });
  return `${lines.join('\r\n')}\r\n`;
}
