/** How a recording's columns were understood, for a person: header, what it holds, its unit, how sure. */
import type { ColumnMapping, Mapping, TimeMapping } from '../recording/mapping.ts';
import { channelInWords, OWN_COLUMNS, unitInWords } from '../recording/own-columns.ts';

const TIME_WORDS: Readonly<Record<TimeMapping['format'], string>> = {
  seconds: 'time in seconds',
  milliseconds: 'time in milliseconds',
  minutes: 'time in minutes',
  hours: 'time in hours',
  clock: 'time of day',
  'date-time': 'date and time of day',
};

const sureness = (confidence: number | undefined): string =>
  confidence === undefined ? '' : `  (${Math.round(confidence * 100)} % sure)`;

function columnInWords({ column, channel, unit, reference, inverted, confidence, reasons }: ColumnMapping): string {
  if (channel === null) return `${column}: left out${reasons === undefined ? '' : `, ${reasons.join('; ')}`}`;
  const scale = unit === undefined ? '' : `, ${unitInWords(unit)}`;
  const zero = reference === undefined ? '' : ` ${reference}`;
  const isSwitch = OWN_COLUMNS[channel].quantity === 'switch';
  const sense = isSwitch ? `, on/off${inverted === true ? ', the column says the opposite' : ''}` : '';
  return `${column}: ${channelInWords(channel)}${scale}${zero}${sense}${sureness(confidence)}`;
}

export const mappingInWords = ({ time, columns }: Mapping): readonly string[] => [
  ...(time === undefined
    ? []
    : [`${time.columns.join(' + ')}: ${TIME_WORDS[time.format]}${sureness(time.confidence)}`]),
  ...columns.map(columnInWords),
];
