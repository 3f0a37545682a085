/** A recording of many samples like a real one, the same at every run: self-test after self-test, thirteen channels. */
import type { ChannelName, Phase, Recording } from '../../src/recording/recording.ts';

const CYCLE_S = 120;
const RATE_HZ = 10;

function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

export function longRecording(samples: number): Recording {
  const random = generator(12345);
  const fill = (value: (t: number, i: number) => number): Float64Array =>
    Float64Array.from({ length: samples }, (_, i) => value((i / RATE_HZ) % CYCLE_S, i));
  const isShut = (t: number): boolean => t > 12 && t < 104;
  const pressure = (t: number): number => {
    if (!isShut(t)) return 0;
    return t < 24 ? -208 * (t - 12) : -2500 + 2000 * (1 - Math.exp(-(t - 24) / 60));
  };
  const channels: Partial<Record<ChannelName, Float64Array>> = {
    tankPressureGaugePa: fill((t) => Math.round((pressure(t) + 25 * (random() - 0.5)) / 4) * 4),
    canisterPressureGaugePa: fill((t) => pressure(t) * 1.02 + 30 * (random() - 0.5)),
    purgeDuty: fill((t) => (t > 12 && t < 24 ? 0.12 : 0)),
    ventClosed: fill((t) => Number(isShut(t))),
    fuelLevel: fill((_, i) => 0.6 - (0.3 * i) / samples + 0.01 * random()),
    ambientTemperatureK: fill((_, i) => 293 + 6 * Math.sin(i / 60_000)),
    fuelTemperatureK: fill((_, i) => 297 + 4 * Math.sin(i / 90_000)),
    barometricPa: fill((_, i) => 98_700 + 120 * Math.sin(i / 200_000)),
    manifoldAbsPa: fill(() => 34_000 + 3000 * random()),
    engineSpeedRpm: fill(() => 720 + 60 * random()),
    vehicleSpeedMPerS: fill((_, i) => Math.max(0, 14 * Math.sin(i / 3000)) + 0.3 * random()),
    shortTrim: fill(() => 0.1 * (random() - 0.5)),
    longTrim: fill((_, i) => -0.0156 + 0.02 * Math.sin(i / 50_000)),
  };
  return { timeS: Float64Array.from({ length: samples }, (_, i) => i / RATE_HZ), channels, label: 'long.csv' };
}

/** As a person would mark the first test of it; the rest is one stretch. */
export const longPhases = (samples: number): readonly Phase[] => [
  { kind: 'baseline', fromS: 0, toS: 12 },
  { kind: 'draw', fromS: 12, toS: 24 },
  { kind: 'hold', fromS: 24, toS: 104 },
  { kind: 'rest', fromS: 104, toS: (samples - 1) / RATE_HZ },
];
