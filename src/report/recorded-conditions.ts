/** The day and the fuel of a recording, as far as its channels tell. */
import type { Recording } from '../recording/recording.ts';
import type { SheetRecording } from './sheet.ts';

const firstFinite = (values: Float64Array | undefined): number | undefined => values?.find(Number.isFinite);

/** The first reading of each; absent where the recording has none. */
export function recordedConditions({ channels }: Recording): SheetRecording['conditions'] {
  const fuelLevel = firstFinite(channels.fuelLevel);
  const ambientTemperatureK = firstFinite(channels.ambientTemperatureK);
  const fuelTemperatureK = firstFinite(channels.fuelTemperatureK);
  const barometricPa = firstFinite(channels.barometricPa);
  return {
    ...(fuelLevel === undefined ? {} : { fuelLevel }),
    ...(ambientTemperatureK === undefined ? {} : { ambientTemperatureK }),
    ...(fuelTemperatureK === undefined ? {} : { fuelTemperatureK }),
    ...(barometricPa === undefined ? {} : { barometricPa }),
  };
}
