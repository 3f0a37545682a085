/** A job's recording as the drawing plays it: its samples, its day, its plan and the trace under the played one. */
import { useMemo } from 'react';
import type { Conditions } from '../../../diagnosis/priors/conditions.ts';
import type { RecordingEntry } from '../../../jobs/record/job.ts';
import type { ChannelName } from '../../../recording/recording.ts';
import type { Samples } from '../../../server/contract/samples.ts';
import type { Car } from '../../../system/car.ts';
import type { Fault } from '../../../system/faults/fault.ts';
import { useLoaded } from '../../kit/use-loaded.ts';
import { fetchSamples } from '../../recording/load-recording.ts';
import { phasesInUse } from '../../recording/phases-in-use.ts';
import { useReadingKey } from '../../recording/use-entry.ts';
import { useSheet } from '../../sheet/sheet-context.ts';
import {
  type PlayedSpan,
  playedSpan,
  type RecordedEvent,
  type RecordedPlan,
  recordedDay,
  recordedPlan,
} from '../../simulation/recorded-plan.ts';
import type { RecordedTrace, TracedSensor } from '../player/trace-chart.tsx';
import { recordedTrace } from './recorded-trace.ts';

export interface Recorded {
  readonly event: RecordedEvent;
  readonly day: Conditions;
  readonly plan: RecordedPlan;
  readonly span: PlayedSpan;
  readonly sensor: TracedSensor;
  readonly trace: RecordedTrace | undefined;
}

export type RecordedState =
  | { readonly state: 'loading' | 'failed' | 'unplayable' }
  | { readonly state: 'there'; readonly recorded: Recorded };

const SENSORS = [
  ['tankPressure', 'tankPressureGaugePa'],
  ['pumpPressure', 'pumpPressureGaugePa'],
  ['canisterPressure', 'canisterPressureGaugePa'],
] as const satisfies readonly (readonly [TracedSensor, ChannelName])[];

/**
 * @param entry the recording of the job
 * @param car its car
 * @param faults what the car had, as far as it is known
 * @returns undefined without a recording
 */
export function useRecorded(entry: RecordingEntry, car: Car, faults: readonly Fault[]): RecordedState {
  const { readSamples } = useSheet();
  const key = useReadingKey(entry);
  const [loaded] = useLoaded(key, () => fetchSamples(key, () => readSamples(entry.id)));
  const samples = loaded.state === 'there' ? loaded.value : undefined;
  const recorded = useMemo(
    () => (samples === undefined ? undefined : readied(samples, key, entry, car, faults)),
    [samples, key, entry, car, faults],
  );
  if (loaded.state !== 'there') return { state: loaded.state };
  return recorded === undefined ? { state: 'unplayable' } : { state: 'there', recorded };
}

function readied(
  { head, timeS, channels }: Samples,
  key: string,
  entry: RecordingEntry,
  car: Car,
  faults: readonly Fault[],
): Recorded | undefined {
  const phases = phasesInUse(entry, head, timeS);
  const procedure = entry.facts?.procedure ?? head.procedure;
  const span = playedSpan(phases);
  if (procedure === 'unknown' || span === undefined) return undefined;
  const { facts } = entry;
  const id = JSON.stringify([key, phases.slice(0, 24), facts]);
  const event: RecordedEvent = {
    id,
    label: entry.label,
    timeS,
    channels,
    procedure,
    phases,
    ...(facts === undefined ? {} : { notes: facts }),
  };
  const day = recordedDay(car, event);
  const plan = recordedPlan(car, faults, event, day);
  if (plan === undefined) return undefined;
  const inOrder = procedure === 'pump-run' ? [SENSORS[1], SENSORS[0], SENSORS[2]] : SENSORS;
  const traced = inOrder.find(([, channel]) => channels[channel] !== undefined) ?? inOrder[0]!;
  const values = channels[traced[1]];
  return {
    event,
    day,
    plan,
    span,
    sensor: traced[0],
    trace: values === undefined ? undefined : recordedTrace(timeS, values, span.fromS, span.toS),
  };
}
