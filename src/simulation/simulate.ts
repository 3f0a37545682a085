import type { ChannelName, Phase, Recording, RecordingNotes } from '../recording/recording.ts';
import type { SimulationFailure } from './failure.ts';
import type { Ledger } from './ledger.ts';
import type { StepRecord } from './procedure.ts';
import { Recorder } from './recorder.ts';
import { runProcedure } from './run-procedure.ts';
import type { Scenario } from './scenario.ts';
import { TRACE_QUANTITIES, type Trace, type TraceQuantity } from './trace.ts';

/** What a simulation gives. A failure keeps what was recorded until then. */
export interface Simulation {
  readonly recording: Recording;
  /** Steps as they went, with what ended them. */
  readonly steps: readonly StepRecord[];
  readonly phases: readonly Phase[];
  readonly traces: readonly Trace[];
  readonly ledger: Ledger;
  readonly work: { readonly accepted: number; readonly rejected: number; readonly evaluations: number };
  readonly failure?: SimulationFailure;
}

export interface SimulateOptions {
  /** Names as `tank.gaugePa` or `purge.flowKgPerS`: any quantity of any space or passage. */
  readonly trace?: readonly string[];
}

/**
 * Plays a scenario: the network through its procedure, sampled as a recording. Deterministic: the same scenario gives
 * the same numbers. Mistakes in the scenario (a trace or sensor that does not exist) are thrown; what the integration
 * cannot do is returned in `failure`.
 *
 * @param scenario what to play
 * @param options what to trace
 * @returns recording, steps, traces, ledger and work, and the failure if there was one
 */
export function simulate(scenario: Scenario, options: SimulateOptions = {}): Simulation {
  const names = options.trace ?? [];
  const recorder = new Recorder(scenario, names);
  const { run, failure } = runProcedure(scenario, [recorder]);
  const channels: Partial<Record<ChannelName, Float64Array>> = {};
  for (const [channel, values] of recorder.channels) channels[channel] = Float64Array.from(values);
  const { integrator, equations, steps } = run;
  return {
    recording: {
      timeS: Float64Array.from(recorder.timeS),
      channels,
      label: scenario.label,
      notes: notesOf(scenario, steps),
    },
    steps,
    phases: steps.map(({ phase, fromS, toS }) => ({ kind: phase, fromS, toS })),
    traces: recorder.traces.map(({ name, value }) => ({
      name,
      meaning: TRACE_QUANTITIES[name.slice(name.lastIndexOf('.') + 1) as TraceQuantity],
      value: Float64Array.from(value),
    })),
    ledger: run.ledger.close(integrator.x),
    work: { accepted: integrator.accepted, rejected: integrator.rejected, evaluations: equations.evaluations },
    ...(failure === undefined ? {} : { failure }),
  };
}

/** Facts that the technician would note beside the recording. */
function notesOf(scenario: Scenario, steps: readonly StepRecord[]): RecordingNotes {
  const { procedure, conditions } = scenario;
  const draw = procedure.steps.find((s) => s.phase === 'draw');
  const target = draw?.endsWhen?.find((c) => c.what.kind === 'reading' && c.is === 'below')?.value;
  const shutOffs = steps.filter((s) => s.phase === 'filling' && s.outcome !== undefined).map((s) => s.toS);
  const fill = conditions.fillFlowM3PerS;
  return {
    ...(procedure.kind === 'overnight-soak' ? {} : { procedure: procedure.kind }),
    ...(target === undefined ? {} : { drawTargetGaugePa: target }),
    ...(draw === undefined ? {} : { drawTimeOutS: draw.longestS }),
    ...(typeof fill === 'number' ? { fillFlowM3PerS: fill } : {}),
    ...(shutOffs.length === 0 ? {} : { shutOffTimesS: shutOffs }),
  };
}
