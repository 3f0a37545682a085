import type { ChannelName } from './recording.ts';

export interface NameRule {
  readonly channel: ChannelName;
  readonly pattern: RegExp;
  readonly confidence: number;
  /** The header says the opposite of the channel, as "vent open". */
  readonly inverted?: boolean;
}

/**
 * Words of the trade in column headers (SAE J1979 data names and everyday forms), most telling first.
 * Headers are compared in lower case with every other character turned into one space.
 */
export const NAME_RULES: readonly NameRule[] = [
  { channel: 'canisterPressureGaugePa', pattern: /\bcanister\b.*\bpress/, confidence: 0.85 },
  { channel: 'pumpPressureGaugePa', pattern: /\b(leak|evap|module|detection) pump\b.*\bpress/, confidence: 0.8 },
  { channel: 'tankPressureGaugePa', pattern: /\b(fuel )?tank\b.*\bpress/, confidence: 0.95 },
  { channel: 'tankPressureGaugePa', pattern: /^(?!.*\bpurge\b).*\b(evap|evaporative)\b.*\bpress/, confidence: 0.9 },
  { channel: 'tankPressureGaugePa', pattern: /\bvapou?r press/, confidence: 0.85 },
  { channel: 'tankPressureGaugePa', pattern: /\b(ftp|ftps|evap vp)\b/, confidence: 0.8 },
  { channel: 'tankPressureGaugePa', pattern: /^(press(ure)?|vacuum|p tank)$/, confidence: 0.5 },
  { channel: 'tankPressureSensorV', pattern: /\b(ftp|tank|evap|vapou?r)\b.*\b(volts?|voltage)\b/, confidence: 0.9 },
  { channel: 'tankPressureSensorV', pattern: /^(volts?|voltage|sensor volts?)$/, confidence: 0.5 },
  {
    channel: 'purgeDuty',
    pattern: /\bpurge\b.*\b(duty|command|commanded|pwm|cycle|valve|solenoid)\b/,
    confidence: 0.9,
  },
  { channel: 'purgeDuty', pattern: /\b(commanded|command|duty)\b.*\bpurge\b/, confidence: 0.9 },
  {
    channel: 'purgeDuty',
    pattern: /^(?!.*\b(flow|conc\w*|temp\w*|press\w*|line|mass)\b).*\bpurge\b/,
    confidence: 0.65,
  },
  { channel: 'ventClosed', pattern: /\bvent\b.*\b(open|opened)\b/, confidence: 0.85, inverted: true },
  { channel: 'ventClosed', pattern: /\bvent\b.*\b(closed?|shut|seal(ed)?)\b/, confidence: 0.95 },
  { channel: 'ventClosed', pattern: /\bvent\b.*\b(valve|solenoid|command|commanded|state|status)\b/, confidence: 0.85 },
  { channel: 'ventClosed', pattern: /^(?!.*\b(temp\w*|cabin|flap|fan|hvac|flow)\b).*\b(vent|cvs)\b/, confidence: 0.7 },
  { channel: 'isolationOpen', pattern: /\bisolation\b.*\b(closed?|shut)\b/, confidence: 0.8, inverted: true },
  { channel: 'isolationOpen', pattern: /\bisolation\b/, confidence: 0.85 },
  { channel: 'changeoverToTank', pattern: /\bchange ?over\b/, confidence: 0.85 },
  { channel: 'pumpOn', pattern: /\b(leak|evap|module|detection|vacuum) pump\b/, confidence: 0.8 },
  { channel: 'pumpOn', pattern: /^pump( (on|state|status|command))?$/, confidence: 0.6 },
  { channel: 'fuelLevel', pattern: /\bfuel\b.*\blevel\b/, confidence: 0.95 },
  { channel: 'fuelLevel', pattern: /\b(tank|level) (level|input|pct|percent)\b/, confidence: 0.75 },
  { channel: 'fuelLevel', pattern: /^(fli|level)$/, confidence: 0.6 },
  { channel: 'fuelTemperatureK', pattern: /\bfuel\b.*\btemp/, confidence: 0.9 },
  { channel: 'ambientTemperatureK', pattern: /\b(ambient|outside|outdoor|exterior)\b.*\b(temp|air)/, confidence: 0.95 },
  { channel: 'ambientTemperatureK', pattern: /^(aat|oat|ambient)$/, confidence: 0.7 },
  { channel: 'coolantTemperatureK', pattern: /\bcoolant\b/, confidence: 0.9 },
  { channel: 'coolantTemperatureK', pattern: /^(ect|engine temp(erature)?)$/, confidence: 0.75 },
  { channel: 'intakeTemperatureK', pattern: /\b(intake|inlet)\b.*\btemp/, confidence: 0.9 },
  { channel: 'intakeTemperatureK', pattern: /\biat\b/, confidence: 0.75 },
  { channel: 'barometricPa', pattern: /\bbaro(metric|meter)?\b/, confidence: 0.95 },
  { channel: 'barometricPa', pattern: /\b(atmospheric|ambient)\b.*\bpress/, confidence: 0.85 },
  { channel: 'manifoldAbsPa', pattern: /\bmanifold\b.*\b(press|abs|vac)/, confidence: 0.95 },
  { channel: 'manifoldAbsPa', pattern: /\b(intake|inlet)\b.*\bpress/, confidence: 0.8 },
  { channel: 'manifoldAbsPa', pattern: /\bmap\b/, confidence: 0.85 },
  { channel: 'engineSpeedRpm', pattern: /\bengine\b.*\b(rpm|speed|revs?|revolutions)\b/, confidence: 0.95 },
  { channel: 'engineSpeedRpm', pattern: /\brpm\b/, confidence: 0.85 },
  { channel: 'vehicleSpeedMPerS', pattern: /\b(vehicle|road|car)\b.*\bspeed\b/, confidence: 0.95 },
  { channel: 'vehicleSpeedMPerS', pattern: /^(vss|speed)\b/, confidence: 0.75 },
  { channel: 'shortTrim', pattern: /\bshort\b.*\btrim\b/, confidence: 0.95 },
  { channel: 'shortTrim', pattern: /\bstft/, confidence: 0.9 },
  { channel: 'longTrim', pattern: /\blong\b.*\btrim\b/, confidence: 0.95 },
  { channel: 'longTrim', pattern: /\bltft/, confidence: 0.9 },
  {
    channel: 'fillFlowM3PerS',
    pattern: /\b(fill|filling|dispens\w*|refuel\w*|nozzle)\b.*\b(flow|rate)\b/,
    confidence: 0.85,
  },
];

/** Headers that hold such words and mean something else. */
export const OTHER_THINGS =
  /\b(rail|oil|tyre|tire|brake|boost|exhaust|catalyst|transmission|gearbox|wheel|fan|bank 2|b2|desired|target|fuel pump|washer|air ?con|a c)\b/;
/** Second bank of a V engine: the first one is taken. */
export const SECOND_BANK = /\b(bank ?2|b2|stft ?2|ltft ?2)\b/;
