/**
 * Readings that no vapour system has. A wrong unit must not become a fault of the sensor: a recording that is full of such
 * readings takes no part, and single ones (a glitch of the logger) count as not recorded.
 */
import { PLAUSIBLE_RANGE } from '../recording/plausible.ts';
import type { ChannelName, Recording } from '../recording/recording.ts';

const PRESSURES = [
  'tankPressureGaugePa',
  'pumpPressureGaugePa',
  'canisterPressureGaugePa',
] as const satisfies readonly ChannelName[];
/** Share of impossible readings from which on the column is not what it was taken for. Judgement. */
const MOST_IMPOSSIBLE = 0.02;

export type Possible =
  | { readonly recording: Recording; readonly warnings: readonly string[] }
  | { readonly leftOut: string };

export function withPossibleReadings(recording: Recording): Possible {
  let channels = recording.channels;
  const warnings: string[] = [];
  for (const name of PRESSURES) {
    const values = channels[name];
    if (!values) continue;
    const [least, most] = PLAUSIBLE_RANGE[name]!;
    const isImpossible = (value: number): boolean => value < least || value > most;
    const impossible = values.filter(isImpossible);
    if (impossible.length === 0) continue;
    const share = impossible.length / values.filter((value) => !Number.isNaN(value)).length;
    const example = impossible[0]!.toPrecision(3);
    if (share > MOST_IMPOSSIBLE)
      return {
        leftOut: `${recording.label}: pressures such as ${example} Pa are beyond any vapour system, so it takes no part; check the unit of that column.`,
      };
    channels = { ...channels, [name]: values.map((value) => (isImpossible(value) ? Number.NaN : value)) };
    warnings.push(
      `${recording.label}: readings beyond any vapour system (${impossible.length}, such as ${example} Pa) were left out`,
    );
  }
  return { recording: channels === recording.channels ? recording : { ...recording, channels }, warnings };
}
