import { dataItemLength } from '../../recording/bus/data-items.ts';
import { type CarState, monitorStatusBytes, recordedItems, valueAt } from './car-state.ts';

const clamped = (value: number, length: number): number => Math.min(256 ** length - 1, Math.max(0, Math.round(value)));

/** Raw number of an item from its SI value: written out here, not derived from the reader, so that each checks the other. */
const RAW: Readonly<Record<number, (si: number) => number>> = {
  5: (k) => k - 273.15 + 40,
  6: (share) => (share + 1) * 128,
  7: (share) => (share + 1) * 128,
  11: (pa) => pa / 1000,
  12: (rpm) => rpm * 4,
  13: (mPerS) => mPerS * 3.6,
  15: (k) => k - 273.15 + 40,
  46: (share) => share * 255,
  47: (share) => share * 255,
  50: (pa) => (Math.round(Math.min(8191.75, Math.max(-8192, pa)) * 4) + 65_536) % 65_536,
  51: (pa) => pa / 1000,
  70: (k) => k - 273.15 + 40,
};

const COUNTS: Readonly<Record<number, (car: CarState) => number>> = {
  33: () => 0,
  48: (car) => Math.min(255, car.warmUpsSinceClear),
  49: (car) => Math.min(65_535, car.distanceSinceClearKm),
  77: () => 0,
  78: (car) => Math.min(65_535, car.minutesSinceClear),
};

/** Items that the car has, without the support items themselves. */
export function carItems(car: CarState): number[] {
  return [
    ...new Set([
      0x01,
      0x41,
      ...Object.keys(COUNTS).map(Number),
      ...recordedItems(car.recording),
      ...car.extraItems.keys(),
    ]),
  ].sort((a, b) => a - b);
}

/** Bitmap of the 32 items after `base`, with the next support item where there are any beyond. */
export function supportBytes(items: readonly number[], base: number): number[] {
  const bytes = [0, 0, 0, 0];
  for (const item of items) {
    const bit = item - base - 1;
    if (bit >= 0 && bit < 32) bytes[bit >> 3]! |= 0x80 >> (bit & 7);
  }
  if (items.some((item) => item > base + 0x20)) bytes[3]! |= 1;
  return bytes;
}

/** Bytes of an item at a time; absent when the car does not have it. */
export function itemBytes(car: CarState, id: number, timeS: number): number[] | undefined {
  const items = carItems(car);
  if ((id & 0x1f) === 0) return id === 0 || items.some((item) => item > id) ? supportBytes(items, id) : undefined;
  if (!items.includes(id)) return undefined;
  if (id === 0x01) return monitorStatusBytes(car);
  if (id === 0x41) return [0, ...monitorStatusBytes(car).slice(1)];
  const length = dataItemLength(id)!;
  const si = valueAt(car.recording, id, timeS);
  const raw = COUNTS[id]?.(car) ?? car.extraItems.get(id) ?? (si === undefined ? undefined : RAW[id]?.(si));
  if (raw === undefined) return undefined;
  const whole = clamped(raw, length);
  return Array.from({ length }, (_, k) => (whole >> (8 * (length - 1 - k))) & 0xff);
}
