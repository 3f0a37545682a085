/** Bus captures of drives that are made up, as the simulated car would answer a tester that asks once a second. */
import { answer } from '../../src/capture/simulated-car/answer.ts';
import { type CarState, newCarState } from '../../src/capture/simulated-car/car-state.ts';
import { hexText } from '../../src/recording/bus/hex.ts';
import { segmentMessage } from '../../src/recording/bus/segment-message.ts';
import type { Recording } from '../../src/recording/recording.ts';

export interface Stretch {
  readonly seconds: number;
  readonly rpm: number;
  readonly kmh?: number;
  readonly airC?: number;
  readonly coolantC?: number;
  readonly level?: number;
}

/** One row a second. */
export function madeDrive(stretches: readonly Stretch[]): Recording {
  const rows = stretches.flatMap((stretch) => Array.from({ length: stretch.seconds }, () => stretch));
  const column = (value: (row: Stretch) => number) => Float64Array.from(rows, value);
  return {
    label: 'made drive',
    timeS: Float64Array.from(rows, (_, i) => i),
    channels: {
      tankPressureGaugePa: column(() => -20),
      purgeDuty: column(({ rpm }) => (rpm > 0 ? 0.2 : 0)),
      engineSpeedRpm: column(({ rpm }) => rpm),
      vehicleSpeedMPerS: column(({ kmh }) => (kmh ?? 0) / 3.6),
      intakeTemperatureK: column(({ airC }) => (airC ?? 20) + 273.15),
      coolantTemperatureK: column(({ coolantC }) => (coolantC ?? 20) + 273.15),
      ambientTemperatureK: column(({ airC }) => (airC ?? 20) + 273.15),
      fuelLevel: column(({ level }) => level ?? 0.5),
      manifoldAbsPa: column(() => 45_000),
      barometricPa: column(() => 100_000),
    },
  };
}

/** A hot start, a rest of ten minutes, and a start with a warm engine. */
export const HOT_DAY: readonly Stretch[] = [
  { seconds: 10, rpm: 0, airC: 41, coolantC: 30 },
  { seconds: 150, rpm: 800, airC: 41, coolantC: 30 },
  { seconds: 700, rpm: 2200, kmh: 80, airC: 38, coolantC: 90 },
  { seconds: 600, rpm: 0, airC: 34, coolantC: 80 },
  { seconds: 150, rpm: 800, airC: 34, coolantC: 70 },
  { seconds: 200, rpm: 2200, kmh: 80, airC: 33, coolantC: 90 },
];

/** A North American number of no real maker whose check digit agrees, from the table of published items. */
export const MADE_VIN = '1M8GDM9AXKP042788';

export const madeCar = (stretches: readonly Stretch[], more: Partial<CarState> = {}): CarState =>
  newCarState(madeDrive(stretches), {
    vin: MADE_VIN,
    codes: { confirmed: ['P0456'], pending: ['P0442'], permanent: ['P0456'] },
    lampOn: true,
    incompleteMonitors: ['evaporative system', 'catalyst'],
    warmUpsSinceClear: 3,
    distanceSinceClearKm: 96,
    ...more,
  });

const STATUS: readonly (readonly number[])[] = [
  [0x01, 0x00],
  ...[0x01, 0x41, 0x21, 0x30, 0x31, 0x4d, 0x4e].map((item) => [0x01, item]),
  [0x03],
  [0x07],
  [0x0a],
  [0x02, 0x02, 0x00],
  [0x02, 0x2f, 0x00],
  [0x09, 0x02],
  [0x09, 0x08],
  [0x06, 0x3c],
  [0x06, 0x3d],
];
const SAMPLED: readonly (readonly number[])[] = [
  [0x01, 0x0c, 0x0d, 0x05, 0x0f, 0x2f, 0x33],
  [0x01, 0x46, 0x0b, 0x2e, 0x32],
];
const START_S = 1_790_000_000;

/** candump log text: codes and counts first, then the drive second by second, or not. */
export function captureText(car: CarState, withDrive = true): string {
  const lines: string[] = [];
  let atS = START_S;
  const say = (id: string, message: readonly number[]): void => {
    for (const frame of segmentMessage(Uint8Array.from(message))) {
      lines.push(`(${atS.toFixed(6)}) can0 ${id}#${hexText(frame)}`);
      atS += 0.002;
    }
  };
  const ask = (request: readonly number[], timeS: number): void => {
    say('7E0', request);
    const reply = answer(car, Uint8Array.from(request), false, timeS);
    if (reply !== undefined) say('7E8', reply);
  };
  for (const request of STATUS) ask(request, 0);
  const { timeS } = car.recording;
  if (withDrive)
    for (const t of timeS.slice(0, -1)) {
      atS = START_S + 5 + t;
      for (const request of SAMPLED) ask(request, t);
    }
  return `${lines.join('\n')}\n`;
}
