import type { Quantity } from '../units/unit-table.ts';
import type { ChannelName } from './recording.ts';

/** What kind of quantity a channel holds; `switch` is an on/off command. */
export type ChannelQuantity = Quantity | 'switch';

export interface OwnColumn {
  readonly base: string;
  /** Suffix and unit that our own files are written with; on/off columns have none. */
  readonly suffix?: string;
  readonly unit?: string;
  readonly quantity: ChannelQuantity;
}

/** Our own header names. A base name with any other unit suffix (`tank_pressure_inh2o`) is read as well. */
export const OWN_COLUMNS: Readonly<Record<ChannelName, OwnColumn>> = {
  tankPressureGaugePa: { base: 'tank_pressure', suffix: 'pa', unit: 'Pa', quantity: 'pressure' },
  tankPressureSensorV: { base: 'tank_pressure_sensor', suffix: 'v', unit: 'V', quantity: 'voltage' },
  canisterPressureGaugePa: { base: 'canister_pressure', suffix: 'pa', unit: 'Pa', quantity: 'pressure' },
  pumpPressureGaugePa: { base: 'pump_pressure', suffix: 'pa', unit: 'Pa', quantity: 'pressure' },
  purgeDuty: { base: 'purge_duty', suffix: 'pct', unit: '%', quantity: 'fraction' },
  ventClosed: { base: 'vent_closed', quantity: 'switch' },
  isolationOpen: { base: 'isolation_open', quantity: 'switch' },
  pumpOn: { base: 'pump_on', quantity: 'switch' },
  changeoverToTank: { base: 'changeover_to_tank', quantity: 'switch' },
  fuelLevel: { base: 'fuel_level', suffix: 'pct', unit: '%', quantity: 'fraction' },
  ambientTemperatureK: { base: 'ambient_temp', suffix: 'c', unit: '°C', quantity: 'temperature' },
  fuelTemperatureK: { base: 'fuel_temp', suffix: 'c', unit: '°C', quantity: 'temperature' },
  coolantTemperatureK: { base: 'coolant_temp', suffix: 'c', unit: '°C', quantity: 'temperature' },
  intakeTemperatureK: { base: 'intake_temp', suffix: 'c', unit: '°C', quantity: 'temperature' },
  barometricPa: { base: 'baro', suffix: 'kpa', unit: 'kPa', quantity: 'pressure' },
  manifoldAbsPa: { base: 'map', suffix: 'kpa', unit: 'kPa', quantity: 'pressure' },
  engineSpeedRpm: { base: 'engine', suffix: 'rpm', unit: '1/min', quantity: 'rotational speed' },
  vehicleSpeedMPerS: { base: 'vehicle_speed', suffix: 'kmh', unit: 'km/h', quantity: 'speed' },
  shortTrim: { base: 'stft', suffix: 'pct', unit: '%', quantity: 'fraction' },
  longTrim: { base: 'ltft', suffix: 'pct', unit: '%', quantity: 'fraction' },
  fillFlowM3PerS: { base: 'fill_flow', suffix: 'l_per_min', unit: 'L/min', quantity: 'volume flow' },
};

/** What a channel is called to a person. */
export const channelInWords = (channel: ChannelName): string => {
  const words: Partial<Record<ChannelName, string>> = {
    barometricPa: 'barometric pressure',
    manifoldAbsPa: 'manifold pressure',
    engineSpeedRpm: 'engine speed',
    shortTrim: 'short-term fuel trim',
    longTrim: 'long-term fuel trim',
  };
  return words[channel] ?? OWN_COLUMNS[channel].base.replaceAll('_', ' ').replace(/ temp$/, ' temperature');
};

/** A unit as a person reads it: a bare fraction has no symbol of its own. */
export const unitInWords = (unit: string): string => (unit === '1' ? 'as a fraction' : unit);

export const CHANNEL_ORDER = Object.keys(OWN_COLUMNS) as ChannelName[];

/** Header name that our own files use for a channel. */
export function ownHeader(channel: ChannelName): string {
  const { base, suffix } = OWN_COLUMNS[channel];
  return suffix === undefined ? base : `${base}_${suffix}`;
}
