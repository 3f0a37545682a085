import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CaptureReader } from '../../src/recording/bus/read-capture.ts';

/** Made by tools/python-can-check.ts: Debian's python3-can asked the simulated car of golden-car.ts over slcan. */
const reading = (() => {
  const reader = new CaptureReader({ fileName: 'python-can.log' });
  reader.push(readFileSync(fileURLToPath(new URL('goldens/python-can.log', import.meta.url))));
  return reader.finish();
})();

describe('an independent client of the simulated car', () => {
  it('got an answer to everything that it asked, every message whole', () => {
    const [unit] = reading.units;
    expect(unit?.transport).toMatchObject({ incomplete: 0, messages: 15, first: 5 });
    expect(Object.values(unit!.transport.anomalies).every((count) => count === 0)).toBe(true);
    expect(unit?.unread).toEqual([]);
    expect(unit?.negatives).toEqual([{ service: 1, reason: 'request out of range', count: 1 }]);
  });

  it('heard what the car is', () => {
    expect(reading.status).toMatchObject({
      vin: '1M8GDM9AXKP042788',
      warmUpsSinceClear: 15,
      distanceSinceClearM: 50_000,
      inUse: { EVAPCOMP: 16, EVAPCOND: 50 },
      sinceClear: { lampOn: true, codeCount: 2 },
    });
    expect(reading.codes.map(({ code, status }) => `${code} ${status}`)).toEqual([
      'P0442 confirmed',
      'P0456 confirmed',
      'P0441 pending',
      'P0455 permanent',
    ]);
    expect(reading.results).toMatchObject([
      { monitorId: 0x3c, value: -12.5, lowest: -50, passed: true },
      { monitorId: 0x3d, value: 12, lowest: 5, highest: 65_535, passed: true },
    ]);
    const last = (channel: 'tankPressureGaugePa' | 'purgeDuty' | 'engineSpeedRpm' | 'fuelLevel' | 'shortTrim') =>
      reading.recording!.channels[channel]!.filter((value) => !Number.isNaN(value)).at(-1);
    expect(last('tankPressureGaugePa')).toBe(-125);
    expect(last('purgeDuty')).toBe(0.2);
    expect(last('engineSpeedRpm')).toBe(750);
    expect(last('fuelLevel')).toBe(0.6);
    expect(last('shortTrim')).toBe(-0.0234375);
  });
});
