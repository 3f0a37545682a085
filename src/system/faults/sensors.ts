import type { FaultKind } from './fault.ts';

/** F14, F16: what the module reads. */
export const SENSOR_FAULTS: readonly FaultKind[] = [
  {
    kind: 'sensor-offset',
    family: 'F14',
    words: 'tank pressure sensor reads with an offset',
    part: 'pressureSensor',
    size: { unit: 'Pa', meaning: 'offset', low: -2000, typical: 400, high: 2000 },
    apply(p, size) {
      p.sensor.offsetPa += size;
    },
  },
  {
    kind: 'sensor-gain',
    family: 'F14',
    words: 'tank pressure sensor reads with a wrong gain',
    part: 'pressureSensor',
    size: { unit: '1', meaning: 'reading over truth', low: 0.3, typical: 0.6, high: 1.8 },
    apply(p, size) {
      p.sensor.gain *= size;
    },
  },
  {
    kind: 'sensor-stuck',
    family: 'F14',
    words: 'tank pressure sensor stuck',
    part: 'pressureSensor',
    size: { unit: 's', meaning: 'time from which its reading stays', low: 0, typical: 0, high: 600 },
    apply(p, size) {
      p.sensor.stuckFromS = size;
    },
  },
  {
    kind: 'sensor-slow',
    family: 'F14',
    words: 'tank pressure sensor slow: snout or hose nearly blocked',
    part: 'pressureSensor',
    size: { unit: 's', meaning: 'lag', low: 0.5, typical: 10, high: 120 },
    apply(p, size) {
      p.sensor.lagS = size;
    },
  },
  {
    kind: 'sensor-noisy',
    family: 'F14',
    words: 'tank pressure sensor noisy',
    part: 'pressureSensor',
    size: { unit: 'Pa', meaning: 'standard deviation of the noise', low: 20, typical: 120, high: 1000 },
    apply(p, size) {
      p.sensor.noisePa = Math.hypot(p.sensor.noisePa, size);
    },
  },
  {
    kind: 'level-wrong',
    family: 'F16',
    words: 'fuel level sender reads wrong',
    part: 'levelSender',
    size: { unit: '1', meaning: 'error of the level, share of a full tank', low: -0.5, typical: 0.2, high: 0.5 },
    apply(p, size) {
      p.readings.levelOffset += size;
    },
  },
  {
    kind: 'fuel-temperature-wrong',
    family: 'F16',
    words: 'fuel temperature sensor reads wrong',
    part: 'temperatureSensor',
    size: { unit: 'K', meaning: 'error', low: -30, typical: 10, high: 30 },
    apply(p, size) {
      p.readings.fuelTemperatureOffsetK += size;
    },
  },
  {
    kind: 'ambient-temperature-wrong',
    family: 'F16',
    words: 'ambient temperature sensor reads wrong',
    part: 'temperatureSensor',
    size: { unit: 'K', meaning: 'error', low: -30, typical: 10, high: 30 },
    apply(p, size) {
      p.readings.ambientTemperatureOffsetK += size;
    },
  },
];
