/** What the simulated car is asked about: values over time from a recording, codes, readiness and counts. */
import { DATA_ITEMS, PRESSURE_ITEMS } from '../../recording/bus/data-items.ts';
import { MONITORS, type MonitorName } from '../../recording/bus/monitor-status.ts';
import { COUNTER_NAMES, type InUseCounters } from '../../recording/bus/vehicle-information.ts';
import type { Recording } from '../../recording/recording.ts';

export interface SimulatedResult {
  readonly monitorId: number;
  readonly testId: number;
  readonly scalingId: number;
  readonly value: number;
  readonly lowest: number;
  readonly highest: number;
}

export interface CarState {
  readonly recording: Recording;
  readonly vin: string;
  codes: { confirmed: string[]; pending: string[]; permanent: string[] };
  lampOn: boolean;
  readonly supportedMonitors: readonly MonitorName[];
  incompleteMonitors: MonitorName[];
  warmUpsSinceClear: number;
  distanceSinceClearKm: number;
  minutesSinceClear: number;
  counters: InUseCounters;
  results: SimulatedResult[];
  /** Values of service $01 items that the recording has no channel for, raw. */
  readonly extraItems: ReadonlyMap<number, number>;
}

/** A vehicle identification number that belongs to no maker; its check digit agrees. */
const INVENTED_VIN = '00000000000000000';

/** A car with a recording to play and nothing stored. */
export function newCarState(recording: Recording, change: Partial<CarState> = {}): CarState {
  return {
    recording,
    vin: INVENTED_VIN,
    codes: { confirmed: [], pending: [], permanent: [] },
    lampOn: false,
    supportedMonitors: [
      'misfire',
      'fuel system',
      'components',
      'catalyst',
      'evaporative system',
      'oxygen sensor',
      'oxygen sensor heater',
    ],
    incompleteMonitors: [],
    warmUpsSinceClear: 40,
    distanceSinceClearKm: 1800,
    minutesSinceClear: 2400,
    counters: Object.fromEntries(
      COUNTER_NAMES.map((name) => [name, name === 'EVAPCOMP' ? 16 : name === 'EVAPCOND' ? 50 : 400]),
    ),
    results: [
      { monitorId: 0x3c, testId: 0x81, scalingId: 0xfe, value: -50, lowest: -200, highest: 0 },
      { monitorId: 0x3d, testId: 0x82, scalingId: 0x24, value: 12, lowest: 5, highest: 65535 },
    ],
    extraItems: new Map(),
    ...change,
  };
}

/** What service $04 erases and what it leaves. From memory (SAE J1979): permanent codes and in-use counters stay. */
export function clearCar(car: CarState): void {
  car.codes = { confirmed: [], pending: [], permanent: car.codes.permanent };
  car.lampOn = false;
  car.incompleteMonitors = car.supportedMonitors.filter(
    (name) => !['misfire', 'fuel system', 'components'].includes(name),
  );
  car.warmUpsSinceClear = 0;
  car.distanceSinceClearKm = 0;
  car.minutesSinceClear = 0;
  car.results = [];
}

/** Index of the last sample of a recording at a time; it plays again from the start when it ends. */
function sampleAt(recording: Recording, timeS: number): number {
  const { timeS: times } = recording;
  const lengthS = times[times.length - 1]!;
  const at = lengthS > 0 ? timeS % lengthS : 0;
  let low = 0;
  let high = times.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (times[middle]! <= at) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Items that the recording can answer. */
export function recordedItems(recording: Recording): number[] {
  return DATA_ITEMS.flatMap(({ id, channel }) => {
    const name = id === PRESSURE_ITEMS.narrow ? 'tankPressureGaugePa' : channel;
    return name !== undefined && recording.channels[name] !== undefined ? [id] : [];
  });
}

/** SI value of an item at a time on the car's clock; absent where the recording has none. */
export function valueAt(recording: Recording, id: number, timeS: number): number | undefined {
  const channel =
    id === PRESSURE_ITEMS.narrow ? 'tankPressureGaugePa' : DATA_ITEMS.find((item) => item.id === id)?.channel;
  const values = channel === undefined ? undefined : recording.channels[channel];
  if (values === undefined) return undefined;
  for (let i = sampleAt(recording, timeS); i >= 0; i--) if (!Number.isNaN(values[i]!)) return values[i]!;
  return undefined;
}

export const monitorBits = (car: CarState, names: readonly MonitorName[]): number[] =>
  names.map((name) => (car.supportedMonitors.includes(name) ? 1 : 0) | (car.incompleteMonitors.includes(name) ? 2 : 0));

/** The four bytes of item $01. */
export function monitorStatusBytes(car: CarState): number[] {
  const continuous = monitorBits(car, MONITORS.slice(0, 3));
  const others = monitorBits(car, MONITORS.slice(3));
  const gather = (bits: readonly number[], mask: number): number =>
    bits.reduce((sum, bit, k) => sum | ((bit & mask) !== 0 ? 1 << k : 0), 0);
  return [
    (car.lampOn ? 0x80 : 0) | Math.min(127, car.codes.confirmed.length),
    gather(continuous, 1) | (gather(continuous, 2) << 4),
    gather(others, 1),
    gather(others, 2),
  ];
}
