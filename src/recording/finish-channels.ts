import { subtractAmbient } from './gauge-pressure.ts';
import type { Mapping } from './mapping.ts';
import { channelInWords, unitInWords } from './own-columns.ts';
import { PLAUSIBLE_RANGE } from './plausible.ts';
import type { ChannelName } from './recording.ts';
import { pressureFromVolts, type SensorOwner } from './sensor-volts.ts';
import { rangeOf } from './value-range.ts';

export type ChannelValues = Partial<Record<ChannelName, Float64Array>>;

/** Below this a guess is told to the reader, who may know better. */
const DOUBTFUL = 0.75;

/** Subtracts ambient pressure from absolute pressures; gives the channel that lacks one, if any. */
export function makeGauge(
  channels: ChannelValues,
  mapping: Mapping,
  barometricAbsPa: number | undefined,
  warnings: string[],
): ChannelName | undefined {
  for (const each of mapping.columns) {
    const pressure = each.channel === null ? undefined : channels[each.channel];
    if (each.channel === null || each.reference !== 'absolute' || !pressure) continue;
    if (each.channel === 'barometricPa' || each.channel === 'manifoldAbsPa') continue;
    const ambient = barometricAbsPa ?? mapping.barometricAbsPa ?? channels.barometricPa;
    if (ambient === undefined) return each.channel;
    warnings.push(subtractAmbient(pressure, ambient, each.column));
  }
  return undefined;
}

/** Works the tank pressure out from the sensor's volts where there is no pressure. */
export function readVolts(channels: ChannelValues, car: SensorOwner | undefined, warnings: string[]): void {
  const volts = channels.tankPressureSensorV;
  if (!volts || channels.tankPressureGaugePa) return;
  const pressure = pressureFromVolts(volts, car?.pressureSensor);
  if (pressure) {
    channels.tankPressureGaugePa = pressure;
    warnings.push('the tank pressure was worked out from the sensor volts and the sensor range of the car');
  } else
    warnings.push(
      'the recording has sensor volts and no tank pressure: give a car file whose pressureSensor has minGaugePa, maxGaugePa, minV and maxV',
    );
}

/** What a reader should check: values that no car has, and doubtful guesses. */
export function remarks(channels: ChannelValues, mapping: Mapping): string[] {
  const warnings: string[] = [];
  for (const each of mapping.columns) {
    const values = each.channel === null ? undefined : channels[each.channel];
    if (each.channel === null || !values) continue;
    const limits = PLAUSIBLE_RANGE[each.channel];
    const range = rangeOf(values);
    if (limits && range && (range.min < limits[0] || range.max > limits[1]))
      warnings.push(
        `column "${each.column}" read as ${channelInWords(each.channel)} in ${each.unit === undefined ? 'on/off' : unitInWords(each.unit)} goes from ${range.min.toPrecision(4)} to ${range.max.toPrecision(4)} in SI units, outside ${limits[0]} to ${limits[1]}: check its unit`,
      );
    if (each.confidence !== undefined && each.confidence < DOUBTFUL)
      warnings.push(
        `column "${each.column}" was guessed to be ${each.channel === null ? 'of no use' : channelInWords(each.channel)}${each.unit === undefined ? '' : `, ${unitInWords(each.unit)}`}: ${each.reasons?.join('; ')}`,
      );
  }
  if (mapping.time?.confidence !== undefined && mapping.time.confidence < DOUBTFUL)
    warnings.push(`the time was guessed: ${mapping.time.reasons?.join('; ')}`);
  if (!channels.tankPressureGaugePa && !channels.tankPressureSensorV) warnings.push('there is no tank pressure');
  return warnings;
}
