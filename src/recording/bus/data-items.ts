import type { ChannelName } from '../recording.ts';

/**
 * Data items of SAE J1979 service $01 (and $02): length in bytes, and for those that this tool uses, name and scaling to
 * SI. Scaling confirmed in Wireshark packet-obd-ii.c where `mark` is absent; lengths from memory (SAE J1979 / ISO 15031-5),
 * checked against that decoder by the goldens in test/bus.
 */
export interface DataItem {
  readonly id: number;
  readonly name: string;
  readonly unit: string;
  /** Value in SI units from the item's bytes. */
  readonly value: (data: Uint8Array, at: number) => number;
  /** Channel of a recording that the value is, as it stands. */
  readonly channel?: ChannelName;
  readonly mark?: 'from memory';
}

const byte = (data: Uint8Array, at: number): number => data[at]!;
const word = (data: Uint8Array, at: number): number => (data[at]! << 8) | data[at + 1]!;
const signedWord = (data: Uint8Array, at: number): number => (word(data, at) << 16) >> 16;
const share = (data: Uint8Array, at: number): number => byte(data, at) / 255;
const trim = (data: Uint8Array, at: number): number => byte(data, at) / 128 - 1;
const celsius = (data: Uint8Array, at: number): number => byte(data, at) - 40 + 273.15;
const kilopascal = (data: Uint8Array, at: number): number => byte(data, at) * 1000;
const catalyst = (data: Uint8Array, at: number): number => word(data, at) / 10 - 40 + 273.15;

const SHARE = { unit: '1', value: share } as const;
const KELVIN = { unit: 'K', value: celsius } as const;
const TRIM = { unit: '1', value: trim } as const;

export const DATA_ITEMS: readonly DataItem[] = [
  { id: 0x03, name: 'fuel system status', unit: 'bits', value: word },
  { id: 0x04, name: 'calculated load', ...SHARE },
  { id: 0x05, name: 'coolant temperature', ...KELVIN, channel: 'coolantTemperatureK' },
  { id: 0x06, name: 'short-term fuel trim, bank 1', ...TRIM, channel: 'shortTrim' },
  { id: 0x07, name: 'long-term fuel trim, bank 1', ...TRIM, channel: 'longTrim' },
  { id: 0x0b, name: 'manifold pressure, absolute', unit: 'Pa', value: kilopascal, channel: 'manifoldAbsPa' },
  { id: 0x0c, name: 'engine speed', unit: '1/min', value: (d, at) => word(d, at) / 4, channel: 'engineSpeedRpm' },
  { id: 0x0d, name: 'vehicle speed', unit: 'm/s', value: (d, at) => byte(d, at) / 3.6, channel: 'vehicleSpeedMPerS' },
  { id: 0x0f, name: 'intake air temperature', ...KELVIN, channel: 'intakeTemperatureK' },
  { id: 0x10, name: 'air mass flow', unit: 'kg/s', value: (d, at) => word(d, at) / 100_000 },
  { id: 0x11, name: 'throttle', ...SHARE },
  { id: 0x1f, name: 'run time since start', unit: 's', value: word },
  { id: 0x21, name: 'distance with the lamp on', unit: 'm', value: (d, at) => word(d, at) * 1000 },
  { id: 0x2e, name: 'commanded purge', ...SHARE, channel: 'purgeDuty' },
  { id: 0x2f, name: 'fuel level', ...SHARE, channel: 'fuelLevel' },
  { id: 0x30, name: 'warm-ups since codes were cleared', unit: '1', value: byte },
  { id: 0x31, name: 'distance since codes were cleared', unit: 'm', value: (d, at) => word(d, at) * 1000 },
  // Trap: the public decoder scales it right but labels kPa; the unit is Pa.
  { id: 0x32, name: 'tank pressure, gauge', unit: 'Pa', value: (d, at) => signedWord(d, at) / 4 },
  { id: 0x33, name: 'barometric pressure', unit: 'Pa', value: kilopascal, channel: 'barometricPa' },
  { id: 0x3c, name: 'catalyst temperature, bank 1, sensor 1', unit: 'K', value: catalyst },
  { id: 0x42, name: 'module voltage', unit: 'V', value: (d, at) => word(d, at) / 1000 },
  { id: 0x44, name: 'commanded air-fuel equivalence ratio', unit: '1', value: (d, at) => (word(d, at) * 2) / 65_536 },
  { id: 0x46, name: 'ambient temperature', ...KELVIN, channel: 'ambientTemperatureK' },
  { id: 0x4d, name: 'run time with the lamp on', unit: 's', value: (d, at) => word(d, at) * 60 },
  { id: 0x4e, name: 'run time since codes were cleared', unit: 's', value: (d, at) => word(d, at) * 60 },
  { id: 0x52, name: 'ethanol in the fuel', ...SHARE, mark: 'from memory' },
  { id: 0x53, name: 'tank pressure, absolute', unit: 'Pa', value: (d, at) => word(d, at) * 5 },
  // Raw word: which of two readings it has is decided per car, see wide-gauge.ts.
  { id: 0x54, name: 'tank pressure, gauge, wide range', unit: 'raw', value: word, mark: 'from memory' },
];

const BY_ID = new Map(DATA_ITEMS.map((item) => [item.id, item]));
export const dataItem = (id: number): DataItem | undefined => BY_ID.get(id);

export const PRESSURE_ITEMS = { narrow: 0x32, absolute: 0x53, wide: 0x54 } as const;

/** Lengths of all items $00..$67, in order; 0 where it is not known. From memory (SAE J1979 / ISO 15031-5). */
const LENGTHS =
  '4422111111112111' + // 00..0F
  '2111222222221112' + // 10..1F
  '4222444444441111' + // 20..2F
  '1221444444442222' + // 30..3F
  '4422211111111224' + // 40..4F
  '4112211112111221' + // 50..5F
  '41125253'; // 60..67

/** Bytes of an item in a reply; absent where this is not known, so that what follows it cannot be read either. */
export function dataItemLength(id: number): number | undefined {
  const digit = LENGTHS[id];
  return digit === undefined || digit === '0' ? undefined : Number(digit);
}

/**
 * Fuel trims send a second byte where the engine has a third and fourth bank, which the reply itself does not say.
 * From memory (SAE J1979).
 */
export const mayHaveSecondByte = (id: number): boolean => (id >= 0x06 && id <= 0x09) || (id >= 0x55 && id <= 0x58);

/** $00, $20, $40 ... say which of the next 32 items there are. */
export const isSupportItem = (id: number): boolean => (id & 0x1f) === 0;

/** Items that a support bitmap names. */
export function supportedItems(base: number, data: Uint8Array, at: number): number[] {
  const found: number[] = [];
  for (let bit = 0; bit < 32; bit++)
    if ((data[at + (bit >> 3)]! & (0x80 >> (bit & 7))) !== 0) found.push(base + 1 + bit);
  return found;
}
