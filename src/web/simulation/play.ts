import { Recorder } from '../../simulation/recorder.ts';
import type { Run, RunResult, StepObserver } from '../../simulation/run-procedure.ts';
import { runProcedure } from '../../simulation/run-procedure.ts';
import { CLEAN_SAMPLING, type Scenario } from '../../simulation/scenario.ts';
import { assemble } from '../../system/assemble.ts';
import { carParameters } from '../../system/car-parameters.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { COMMANDS, type CommandId, type Network } from '../../system/network.ts';
import type { SystemParameters } from '../../system/parameters.ts';
import { type DrawMatch, matchDraw, UNMATCHED, withDraw } from './match-draw.ts';
import type { DrawnSystem, PlayedRun, PlayRequest } from './played-run.ts';
import { type Plan, planOf } from './procedures.ts';

/** Samples of a run: enough for a line across a wide page, and for a line that is being dragged. */
const FINE_SAMPLES = 1200;
const COARSE_SAMPLES = 360;
const MOST_HZ = 20;
const ENDED_EARLY = 0.5;
/** Relative tolerance while dragging; the fine run keeps the simulation's own. Judgement: some 10 Pa. */
const COARSE_TOLERANCE = 1e-4;

/** Parameters of the system that is drawn. */
export function drawnParameters(system: DrawnSystem): SystemParameters {
  const p = carParameters(
    system.car ?? {
      schema: 'vaporwright-car-1',
      label: system.layout,
      layout: system.layout,
      filler: system.closure,
      onBoardRefuellingRecovery: system.hasRecovery,
    },
  );
  if (system.fillFraction !== undefined) p.tank.fillFraction = system.fillFraction;
  return p;
}

/** The network of the system that is drawn, with its faults. */
export const drawnNetwork = (system: DrawnSystem, faults: readonly Fault[]): Network =>
  assemble(drawnParameters(system), system.layout, faults);

/** Names of everything that the drawing shows. */
export function tracesOf(network: Network): readonly string[] {
  const names: string[] = ['manifold.gaugePa', 'ejector.gaugePa'];
  for (const space of network.spaces) {
    names.push(`${space.id}.gaugePa`, `${space.id}.vapourMoleFraction`);
    if (space.kind === 'tank') {
      names.push(`${space.id}.fillFraction`, `${space.id}.gasVolumeM3`, `${space.id}.fuelTemperatureK`);
    }
    if (space.kind === 'bed' && space.carbonKg > 0) names.push(`${space.id}.loading`);
  }
  for (const passage of network.passages) names.push(`${passage.id}.flowKgPerS`);
  return names;
}

/** Notes every change of a command, the float's among them. */
class CommandNotes implements StepObserver {
  readonly timesS: number[] = [];
  readonly values: Record<CommandId, number>[] = [];

  afterStep(run: Run, fromS: number): void {
    const last = this.values.at(-1);
    const { commands } = run.equations;
    if (last !== undefined && COMMANDS.every((id, k) => last[id] === commands[k])) return;
    this.timesS.push(fromS);
    this.values.push(Object.fromEntries(COMMANDS.map((id, k) => [id, commands[k]!])) as Record<CommandId, number>);
  }
}

/**
 * Plays a request with the simulation that the finding uses.
 * @param request system, faults, procedure
 * @param nowMs a clock, only to say how long it took
 * @returns traces of everything that the drawing shows
 */
export function play(request: PlayRequest, nowMs: () => number): PlayedRun {
  const from = nowMs();
  const { system, faults, isCoarse } = request;
  const { layout, hasRecovery } = system;
  const plan = request.recorded ?? planOf({ layout, procedure: request.procedure, hasRecovery });
  const fill = system.fillFraction ?? plan.fillFraction;
  const filled = fill === undefined ? system : { ...system, fillFraction: fill };
  const network = drawnNetwork(filled, faults);
  const match = drawMatch(request, plan, filled);
  const procedure = withDraw(plan.procedure, match.scale);
  const run = (lengthS: number): PlayedRun => {
    const rateHz = Math.min(MOST_HZ, (isCoarse ? COARSE_SAMPLES : FINE_SAMPLES) / lengthS);
    const scenario: Scenario = {
      label: request.procedure,
      network,
      procedure,
      conditions: plan.conditions,
      sampling: { ...CLEAN_SAMPLING, rateHz },
      ...(isCoarse ? { relativeTolerance: COARSE_TOLERANCE } : {}),
    };
    const recorder = new Recorder(scenario, tracesOf(network));
    const notes = new CommandNotes();
    const result = runProcedure(scenario, [recorder, notes]);
    return { ...collect(request, result, recorder, notes, network, nowMs() - from), isDrawMatched: match.isMatched };
  };
  const longestS = procedure.steps.reduce((sum, step) => sum + step.longestS, 0);
  const first = run(longestS);
  // A procedure that ended long before its time-outs has been sampled too thinly.
  return isCoarse || first.durationS > ENDED_EARLY * longestS ? first : run(first.durationS);
}

/** Found once for each recording and car: it is the same whatever fault is tried. */
const drawMatches = new Map<string, DrawMatch>();
const MATCHES_KEPT = 16;

function drawMatch({ recorded }: PlayRequest, { procedure, conditions }: Plan, system: DrawnSystem): DrawMatch {
  if (recorded?.draw === undefined) return UNMATCHED;
  const key = JSON.stringify([recorded.id, system, recorded.draw]);
  let match = drawMatches.get(key);
  if (match === undefined) {
    if (drawMatches.size >= MATCHES_KEPT) drawMatches.clear();
    const network = drawnNetwork(system, recorded.draw.faults);
    match = matchDraw(
      {
        label: recorded.id,
        network,
        procedure,
        conditions,
        sampling: CLEAN_SAMPLING,
        relativeTolerance: COARSE_TOLERANCE,
      },
      recorded.draw,
    );
    drawMatches.set(key, match);
  }
  return match;
}

function collect(
  request: PlayRequest,
  { run, endS, failure }: RunResult,
  recorder: Recorder,
  notes: CommandNotes,
  network: Network,
  tookMs: number,
): Omit<PlayedRun, 'isDrawMatched'> {
  const { timeS } = recorder;
  const traces: Record<string, Float32Array> = {};
  const passedKg: Record<string, Float64Array> = {};
  for (const { name, value } of recorder.traces) {
    traces[name] = Float32Array.from(value);
    if (name.endsWith('.flowKgPerS')) passedKg[name.slice(0, -'.flowKgPerS'.length)] = sumOver(timeS, value);
  }
  const readings: Record<string, Float32Array> = {};
  for (const sensor of network.sensors) {
    const values = recorder.channels.get(`${sensor.id}GaugePa`);
    if (values !== undefined) readings[sensor.id] = Float32Array.from(values);
  }
  return {
    timeS: Float32Array.from(timeS),
    traces,
    passedKg,
    readings,
    commandTimesS: notes.timesS,
    commands: notes.values,
    steps: run.steps,
    durationS: endS,
    request,
    isCoarse: request.isCoarse,
    tookMs,
    ...(failure === undefined ? {} : { failure: { reason: failure.reason, timeS: failure.timeS, part: failure.part } }),
  };
}

/** Integral over time by the trapezoid rule, from zero at the first sample. */
function sumOver(timeS: readonly number[], value: readonly number[]): Float64Array {
  const out = new Float64Array(value.length);
  for (let i = 1; i < value.length; i++) {
    out[i] = out[i - 1]! + 0.5 * (value[i]! + value[i - 1]!) * (timeS[i]! - timeS[i - 1]!);
  }
  return out;
}
