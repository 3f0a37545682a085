/** A mapping while it is being corrected. Pure. */
import type { ColumnMapping, Mapping, TimeMapping } from '../../recording/mapping.ts';
import { OWN_COLUMNS } from '../../recording/own-columns.ts';
import type { ChannelName } from '../../recording/recording.ts';
import { UNITS } from '../../units/unit-table.ts';

/** A mapping that leaves every column out, where nothing could be guessed. */
export const emptyMapping = (header: readonly string[]): Mapping => ({
  schema: 'vaporwright-mapping-1',
  columns: header.map((column) => ({ column, channel: null })),
});

/** Every column of the file has its row, in the order of the file. */
export function withAllColumns(mapping: Mapping, header: readonly string[]): Mapping {
  const time = mapping.time?.columns ?? [];
  const names = header.length > 0 ? header : mapping.columns.map(({ column }) => column);
  return {
    ...mapping,
    columns: names
      .filter((name) => !time.includes(name))
      .map((name) => mapping.columns.find(({ column }) => column === name) ?? { column: name, channel: null }),
  };
}

/** What a person has set is no guess any more. */
export function setColumn(mapping: Mapping, name: string, change: Partial<ColumnMapping>): Mapping {
  return {
    ...mapping,
    columns: mapping.columns.map((each) => {
      if (each.column !== name) return each;
      const { confidence: _, reasons: __, ...kept } = each;
      return { ...kept, ...change };
    }),
  };
}

export const isPressure = (channel: ChannelName | null): boolean =>
  channel !== null && OWN_COLUMNS[channel].quantity === 'pressure';
export const isSwitch = (channel: ChannelName | null): boolean =>
  channel !== null && OWN_COLUMNS[channel].quantity === 'switch';

/** Units that a channel can come in; none for on/off columns. */
export function unitsFor(channel: ChannelName | null): readonly string[] {
  if (channel === null) return [];
  const { quantity } = OWN_COLUMNS[channel];
  return UNITS.filter((unit) => unit.quantity === quantity).map(({ symbol }) => symbol);
}

/** Another channel takes our own unit, and zero at ambient, until told otherwise. */
export function setChannel(mapping: Mapping, name: string, channel: ChannelName | null): Mapping {
  const before = mapping.columns.find(({ column }) => column === name);
  const unit = channel === null ? undefined : OWN_COLUMNS[channel].unit;
  const fits = before?.unit !== undefined && unitsFor(channel).includes(before.unit);
  const { unit: _, reference: __, inverted: ___, ...rest } = before ?? { column: name, channel: null };
  const bare: Mapping = {
    ...mapping,
    columns: mapping.columns.map((each) => (each.column === name ? { ...rest } : each)),
  };
  return setColumn(bare, name, {
    channel,
    ...(fits ? { unit: before?.unit } : unit === undefined ? {} : { unit }),
    ...(isPressure(channel) && channel !== 'barometricPa' && channel !== 'manifoldAbsPa'
      ? { reference: before?.reference ?? 'gauge' }
      : {}),
  });
}

export function setTime(mapping: Mapping, header: readonly string[], change: Partial<TimeMapping>): Mapping {
  const before: TimeMapping = mapping.time ?? { columns: [header[0] ?? ''], format: 'seconds' };
  const { confidence: _, reasons: __, ...kept } = before;
  return withAllColumns({ ...mapping, time: { ...kept, ...change } }, header);
}

/** A channel that two columns claim, which no file can be read with. */
export function claimedTwice(mapping: Mapping): ChannelName | null {
  const seen = new Set<ChannelName>();
  for (const { channel } of mapping.columns) {
    if (channel === null) continue;
    if (seen.has(channel)) return channel;
    seen.add(channel);
  }
  return null;
}
