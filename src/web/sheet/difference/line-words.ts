import type { Text } from '../../text/en.ts';
import type { FieldsText } from '../../text/fields.en.ts';
import type { Numbers } from '../../text/numbers.ts';
import { NBSP } from '../../text/unbroken.ts';
import type { Units } from '../../units/units.ts';
import type { LineWords } from './section-lines.ts';

interface Spoken {
  readonly fields: FieldsText;
  readonly text: Text;
  readonly numbers: Numbers;
  readonly units: Units;
  /** Names of the job's recordings by id: other sections refer to them. */
  readonly recordings: ReadonlyMap<string, string>;
}

const MOMENT = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;
const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Fields and values of a job in the words and units of the page. */
export function lineWordsOf({ fields, text, numbers, units, recordings }: Spoken): LineWords {
  const { trade, recording, job, monitor } = text;
  const { mapping } = recording;
  const catalogue = text.checks.catalogue();
  /** Words for the values of a field that has a fixed set of them. */
  const sets: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    types: trade.complaints,
    status: { ...trade.codeStatus, confirmed: fields.confirmed },
    codesRead: { ...trade.codeStatus, confirmed: fields.confirmed },
    layout: Object.fromEntries(Object.entries(trade.layouts).map(([id, { name }]) => [id, name])),
    filler: job.car.fillers,
    taken: recording.takenNames,
    kind: trade.phases,
    procedure: trade.procedures,
    strength: trade.strengths,
    speaksFor: trade.causes,
    speaksAgainst: trade.causes,
    addresses: trade.causes,
    repairId: catalogue.repairs,
    circumstances: catalogue.circumstances,
    verdict: job.proof.verdicts,
    channel: recording.channels,
    delimiter: mapping.delimiters,
    decimal: mapping.decimals,
    format: mapping.timeFormats,
    dateOrder: mapping.dateOrders,
    reference: mapping.references,
    source: monitor.said.sources,
  };
  return {
    field: (key) => (UUID.test(key) ? (recordings.get(key) ?? key) : fields.names[key]),
    item: fields.item,
    figures: fields.figures,
    list: (words) => words.join(', '),
    value: (key, value) => {
      if (typeof value === 'boolean') return value ? fields.yes : fields.no;
      if (typeof value === 'number') return numberWords(key, value, numbers, units, fields.perMinute);
      const known = sets[key]?.[value] ?? recordings.get(value);
      if (known !== undefined) return known;
      return MOMENT.test(value) ? numbers.dateTime(value) : value;
    },
  };
}

const YEAR_LIKE: ReadonlySet<string> = new Set(['modelYear', 'hour', 'minute', 'headerLine', 'weekdays']);
const SHARES: ReadonlySet<string> = new Set(['fuelLevel', 'gainTolerance', 'ethanolVolumeFraction']);

/** The unit of a number of the record stands at the end of its field's name. */
function numberWords(
  key: string,
  value: number,
  { fixed, percent }: Numbers,
  units: Units,
  perMinute: (volume: string) => string,
): string {
  const plain = (): string => (Number.isInteger(value) ? String(value) : fixed(value, 2));
  const withUnit = (number: string, unit: string): string => `${number}${NBSP}${unit}`;
  if (YEAR_LIKE.has(key)) return plain();
  if (SHARES.has(key)) return percent(value);
  if (key === 'low' || key === 'high') return units.print('pressure', value);
  if (key === 'minutes') return withUnit(plain(), 'min');
  if (key.endsWith('M3PerS')) return perMinute(units.print('volume', value * 60));
  if (key.endsWith('M3')) return units.print('volume', value);
  if (key.endsWith('Mm')) return units.print('length', value * 1e-3);
  if (key.endsWith('Km')) return withUnit(fixed(value, 0), 'km');
  if (key.endsWith('Pa')) return units.print('pressure', value);
  if (key.endsWith('K')) return units.print('temperature', value);
  if (key.endsWith('V')) return withUnit(fixed(value, 2), 'V');
  if (key.endsWith('S')) return withUnit(fixed(value, 1), 's');
  return plain();
}
