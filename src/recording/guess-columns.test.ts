import { describe, expect, it } from 'vitest';
import { findFormat } from './csv-format.ts';
import { guessColumns } from './guess-columns.ts';
import { CHANNEL_ORDER, ownHeader } from './own-columns.ts';
import { lookUpUnit } from './unit-lookup.ts';

function guess(header: string, cell = '1') {
  const text = `time_s;${header};other\n${Array.from({ length: 9 }, (_, i) => `${i};${cell};0`).join('\n')}`;
  return guessColumns(findFormat(text, 'a.csv', undefined), ['time_s'])[0]!;
}

describe('guessColumns', () => {
  // Data names of SAE J1979 and everyday forms of them (common practice, no source).
  it.each([
    ['EVAP System Vapor Pressure (Pa)', 'tankPressureGaugePa', 'Pa'],
    ['Absolute Evap System Vapour Pressure (kPa)', 'tankPressureGaugePa', 'kPa'],
    ['FuelTankPressure [inH2O]', 'tankPressureGaugePa', 'inH2O'],
    ['FTP sensor (V)', 'tankPressureSensorV', 'V'],
    ['Fuel tank pressure voltage (mV)', 'tankPressureSensorV', 'mV'],
    ['Canister pressure (kPa)', 'canisterPressureGaugePa', 'kPa'],
    ['Leak pump pressure (kPa)', 'pumpPressureGaugePa', 'kPa'],
    ['Commanded Evaporative Purge (%)', 'purgeDuty', '%'],
    ['Vent solenoid command', 'ventClosed', undefined],
    ['Fuel Level Input (%)', 'fuelLevel', '%'],
    ['Ambient air temperature (°F)', 'ambientTemperatureK', '°F'],
    ['Engine coolant temp (C)', 'coolantTemperatureK', '°C'],
    ['Intake air temperature (degC)', 'intakeTemperatureK', '°C'],
    ['Absolute barometric pressure (inHg)', 'barometricPa', 'inHg'],
    ['Intake manifold absolute pressure (kPa)', 'manifoldAbsPa', 'kPa'],
    ['Engine RPM (1/min)', 'engineSpeedRpm', '1/min'],
    ['Vehicle speed (mph)', 'vehicleSpeedMPerS', 'mph'],
    ['Short term fuel trim bank 1 (%)', 'shortTrim', '%'],
    ['LTFT1 (%)', 'longTrim', '%'],
    ['tank_pressure_inh2o', 'tankPressureGaugePa', 'inH2O'],
    ['baro_hpa', 'barometricPa', 'hPa'],
    ['vehicle_speed_mph', 'vehicleSpeedMPerS', 'mph'],
    ['ambient_temp_f', 'ambientTemperatureK', '°F'],
  ])('%s is %s in %s', (header, channel, unit) => {
    const found = guess(header);
    expect(found.channel).toBe(channel);
    expect(found.unit).toBe(unit);
  });

  it.each([
    'Fuel rail pressure (kPa)',
    'Oil pressure (kPa)',
    'Short term fuel trim bank 2 (%)',
    'Purge vapour concentration (%)',
    'Purge flow (g/s)',
    'Cabin vent temperature',
    'Desired tank pressure (kPa)',
    'Tank pressure (mph)',
    'Gear',
  ])('%s is left out, with a reason', (header) => {
    const found = guess(header);
    expect(found.channel).toBeNull();
    expect(found.reasons!.length).toBeGreaterThan(0);
  });

  it('knows our own names with certainty', () => {
    for (const channel of CHANNEL_ORDER) expect(guess(ownHeader(channel))).toMatchObject({ channel, confidence: 1 });
  });

  it('tells gauge from absolute by words', () => {
    expect(guess('Tank pressure (kPa abs)').reference).toBe('absolute');
    expect(guess('Tank pressure (psig)').reference).toBe('gauge');
    expect(guess('Tank pressure (kPa)').reference).toBeUndefined();
  });

  it('takes the surer of two columns for one channel', () => {
    const text = `time_s;FTP (Pa);Fuel tank pressure (Pa)\n${Array.from({ length: 9 }, (_, i) => `${i};1;2`).join('\n')}`;
    const found = guessColumns(findFormat(text, 'a.csv', undefined), ['time_s']);
    expect(found.map(({ channel }) => channel)).toEqual([null, 'tankPressureGaugePa']);
    expect(found[0]!.reasons!.join()).toMatch(/already gives/);
  });
});

describe('lookUpUnit', () => {
  it('counts engine speed in 1/min', () => {
    expect(lookUpUnit('rpm')!.factor).toBeCloseTo(1, 12);
  });
});
