import { describe, expect, it } from 'vitest';
import type { Recording } from '../../src/recording/recording.ts';
import type { Car } from '../../src/system/car.ts';
import { spreadsheetDiameterMm } from './spreadsheet.ts';

const CAR: Car = {
  schema: 'vaporwright-car-1',
  label: 'made up',
  layout: 'engine-vacuum',
  tankVolumeM3: 0.056,
  fillerNeckVolumeM3: 0.002,
};
/** Half full: 28 L over the fuel and 2 L in the neck. */
const GAS_VOLUME_M3 = 0.03;

/** Baseline to 5 s, draw to 15 s, then a hold with the given vacuum. */
function recordingOf(holdGaugePa: (sinceS: number) => number): Recording {
  const timeS = Float64Array.from({ length: 350 }, (_, i) => 0.2 * i);
  const by = (f: (t: number) => number) => timeS.map(f);
  return {
    timeS,
    label: 'made up',
    notes: { procedure: 'vacuum-draw' },
    channels: {
      tankPressureGaugePa: by((t) => (t < 5 ? 0 : t < 15 ? 0.1 * (t - 5) * holdGaugePa(0) : holdGaugePa(t - 15))),
      purgeDuty: by((t) => (t >= 5 && t < 15 ? 0.5 : 0)),
      ventClosed: by((t) => (t < 5 ? 0 : 1)),
      fuelLevel: by(() => 0.5),
      ambientTemperatureK: by(() => 293.15),
      barometricPa: by(() => 100_000),
      engineSpeedRpm: by(() => 700),
    },
  };
}

describe('the spreadsheet method', () => {
  it('finds the hole of an isothermal tank from the incompressible law, worked out by hand', () => {
    // Flow of air of 1.1883 kg/m3 (100 kPa, 20 degrees C) through 0.61 of a 1 mm hole, 4.7909e-7 m2:
    // dp/dt = A sqrt(2 dp / rho) p0 / V, so sqrt(dp) falls by A p0 / (V sqrt(2 rho)) = 1.0359 Pa^0.5 each second.
    const rate = (4.7909e-7 * 100_000) / (GAS_VOLUME_M3 * Math.sqrt(2 * 1.1883));
    const d = spreadsheetDiameterMm(
      CAR,
      recordingOf((t) => -(Math.max(0, Math.sqrt(2500) - rate * t) ** 2)),
    );
    // The gas in the tank expands and the slope is taken over some seconds: within 2 %.
    expect(d).toBeGreaterThan(0.98);
    expect(d).toBeLessThan(1.02);
  });

  it('finds no hole where the vacuum holds or grows', () => {
    expect(
      spreadsheetDiameterMm(
        CAR,
        recordingOf((t) => -2500 - t),
      ),
    ).toBe(0);
  });

  it('has no size where there is no vacuum', () => {
    expect(
      spreadsheetDiameterMm(
        CAR,
        recordingOf(() => -5),
      ),
    ).toBeUndefined();
  });
});
