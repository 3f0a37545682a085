import type { ChannelName } from '../../recording/recording.ts';

/** What a channel is called in German; English: `channelInWords` of the recording room. */
export const CHANNELS_DE: Readonly<Record<ChannelName, string>> = {
  tankPressureGaugePa: 'Tankdruck',
  tankPressureSensorV: 'Tankdrucksensor',
  canisterPressureGaugePa: 'Druck am Aktivkohlebehälter',
  pumpPressureGaugePa: 'Pumpendruck',
  purgeDuty: 'Tastverhältnis Spülung',
  ventClosed: 'Belüftungsventil geschlossen',
  isolationOpen: 'Absperrventil offen',
  pumpOn: 'Pumpe an',
  changeoverToTank: 'Umschaltventil auf Tank',
  fuelLevel: 'Füllstand',
  ambientTemperatureK: 'Außentemperatur',
  fuelTemperatureK: 'Kraftstofftemperatur',
  coolantTemperatureK: 'Kühlmitteltemperatur',
  intakeTemperatureK: 'Ansauglufttemperatur',
  barometricPa: 'Luftdruck',
  manifoldAbsPa: 'Saugrohrdruck',
  engineSpeedRpm: 'Motordrehzahl',
  vehicleSpeedMPerS: 'Geschwindigkeit',
  shortTrim: 'kurzfristige Gemischkorrektur',
  longTrim: 'langfristige Gemischkorrektur',
  fillFlowM3PerS: 'Tankstrom',
};
