import { P_ATM, SPECIFIC_GAS_CONSTANT_AIR } from '../physics/constants.ts';
import type { Network } from '../system/network.ts';
import { COMMAND_INDEX } from './commands.ts';
import { explainFailure, type SimulationFailure } from './failure.ts';
import { initialState } from './initial-state.ts';
import { Integrator } from './integrator.ts';
import { LedgerKeeper } from './ledger.ts';
import { NetworkEquations } from './network-equations.ts';
import { inputVector, Outside } from './outside.ts';
import type { Condition, Step, StepRecord } from './procedure.ts';
import { RODASP } from './rosenbrock-tableaus.ts';
import type { Scenario } from './scenario.ts';
import { type LuPlan, planLu } from './sparse-lu.ts';
import { Readings, watchedValue } from './watch.ts';

export const RELATIVE_TOLERANCE = 1e-5; // [-] judgement: about 1 Pa of the absolute pressure
/** Stops nearer than this are one stop, s. */
const SAME_TIME_S = 1e-6;
const FIRST_STEP_S = 0.02; // judgement: a rejected guess costs less than growing from a tiny one

/** Called after every final step; `interpolate` gives states between `fromS` and `toS`. */
export interface StepObserver {
  afterStep(run: Run, fromS: number, toS: number): void;
}

/** Everything that a running simulation consists of. */
export interface Run {
  readonly equations: NetworkEquations;
  readonly integrator: Integrator;
  readonly readings: Readings;
  readonly steps: StepRecord[];
  readonly ledger: LedgerKeeper;
  step: Step;
}

export type RunResult = { readonly run: Run; readonly endS: number; readonly failure?: SimulationFailure };

/** Plans of elimination by structure: cars of one layout share theirs. */
const plans = new Map<string, LuPlan>();
const PLANS_KEPT = 64;

function planFor(equations: NetworkEquations): LuPlan {
  const { network, flows } = equations;
  const spaces = network.spaces.map((s) => s.id).join();
  const sensors = network.sensors.map((s) => s.space).join();
  const key = `${network.layout}|${spaces}|${flows.ids.join()}|${sensors}|${network.weirs.length}`;
  let plan = plans.get(key);
  if (plan === undefined) {
    if (plans.size >= PLANS_KEPT) plans.clear();
    plan = planLu(equations.dynamicSize, equations.pattern, equations.size);
    plans.set(key, plan);
  }
  return plan;
}

/**
 * Absolute tolerances: a share of what each store holds at one atmosphere, so that empty stores don't rule the step.
 *
 * @param equations the equations
 * @param x0 state at the start, its gas read before
 * @param relative relative tolerance [-]
 * @returns tolerance of each component, in its unit
 */
export function absoluteTolerances(equations: NetworkEquations, x0: Float64Array, relative: number): Float64Array {
  const { layout, network } = equations;
  const out = new Float64Array(layout.size).fill(relative);
  network.spaces.forEach((space, i) => {
    const b = layout.base[i]!;
    const reference = (P_ATM * equations.gas.volume[i]!) / (SPECIFIC_GAS_CONSTANT_AIR * 300);
    out[b] = 0.3 * relative * reference;
    out[b + 1] = 0.3 * relative * reference;
    if (space.kind === 'tank') {
      out[b + 2] = 0.3 * relative * Math.abs(x0[b + 2]!);
      out[b + 3] = relative;
      out[b + 4] = relative * 300;
    } else if (space.kind === 'bed') {
      out[b + 2] = relative * Math.max(space.carbonKg, 1e-3);
      out[b + 3] = relative * 300;
    }
  });
  for (const row of layout.sensorRow) out[row] = relative * P_ATM;
  return out;
}

/**
 * Carries a scenario through its procedure.
 *
 * @param scenario what to play
 * @param observers told of every final step
 * @returns the run as it ended, with the failure if there was one
 */
export function runProcedure(scenario: Scenario, observers: readonly StepObserver[]): RunResult {
  const { network, procedure, conditions } = scenario;
  const equations = new NetworkEquations(network);
  const outside = new Outside(conditions, network.ejectorSuctionPerBoost);
  const relative = scenario.relativeTolerance ?? RELATIVE_TOLERANCE;
  const first = inputVector();
  const last = inputVector();
  outside.valuesAt(0, procedure.steps[0]?.engineRunning ?? false, first);
  equations.inputs.setStretch(0, 1, first, first);
  const x0 = initialState(equations, conditions.start);
  equations.gas.read(x0, equations.inputs);
  const integrator = new Integrator(
    equations,
    {
      tableau: RODASP,
      relativeTolerance: relative,
      absoluteTolerance: absoluteTolerances(equations, x0, relative),
      ...(scenario.maxSteps === undefined ? {} : { maxSteps: scenario.maxSteps }),
    },
    planFor(equations),
  );
  integrator.start(0, x0, FIRST_STEP_S);
  const readings = new Readings(equations);
  const ledger = new LedgerKeeper(equations, x0);
  const run: Run = { equations, integrator, readings, steps: [], ledger, step: procedure.steps[0]! };
  const stuckTimes = network.sensors.flatMap((s) => (s.stuckFromS === undefined ? [] : [s.stuckFromS]));

  for (const step of procedure.steps) {
    const startS = integrator.timeS;
    // Nothing is left of it: the steps before it have taken its time.
    if (step.endsAtS !== undefined && step.endsAtS <= startS + SAME_TIME_S) continue;
    run.step = step;
    const endS = step.endsAtS ?? startS + step.longestS;
    const commandTimes = applyCommands(run, step, startS, startS);
    const stops = [endS, ...commandTimes, ...outside.knots, ...stuckTimes]
      .filter((t) => t > startS + SAME_TIME_S && t <= endS)
      .sort((a, b) => a - b);
    let outcome: Condition | undefined;
    let next = 0;
    while (integrator.timeS < endS && outcome === undefined) {
      while (next < stops.length - 1 && stops[next]! <= integrator.timeS + SAME_TIME_S) next++;
      let stop = stops[next]!;
      if (endS - stop < SAME_TIME_S) stop = endS;
      const from = integrator.timeS;
      outside.valuesAt(from, step.engineRunning, first);
      outside.valuesAt(stop, step.engineRunning, last);
      equations.inputs.setStretch(from, stop, first, last);
      applyCommands(run, step, startS, from);
      floatValve(run);
      readings.freeze(from, integrator.x);
      integrator.discontinuity(Math.min(integrator.stepS, FIRST_STEP_S));
      const result = integrateTo(run, stop, step.endsWhen ?? [], observers);
      if (result === 'failed') {
        const failure = explainFailure(equations, integrator.failure!, integrator.timeS, integrator.stepS);
        run.steps.push({ phase: step.phase, fromS: startS, toS: integrator.timeS, outcome: failure.reason });
        return { run, endS: integrator.timeS, failure };
      }
      if (result !== 'reached' && result !== 'float') outcome = result;
    }
    run.steps.push({
      phase: step.phase,
      fromS: startS,
      toS: integrator.timeS,
      ...(outcome === undefined ? {} : { outcome: outcome.outcome }),
    });
    if (outcome?.endsProcedure) break;
  }
  return { run, endS: integrator.timeS };
}

/** Sets the commands of a step as they stand at `atS`; returns the times at which they change. */
function applyCommands(run: Run, step: Step, startS: number, atS: number): number[] {
  const times: number[] = [];
  const { commands } = run.equations;
  let changed = false;
  for (const [id, plan] of Object.entries(step.commands ?? {})) {
    const k = COMMAND_INDEX[id as keyof typeof COMMAND_INDEX];
    let value = commands[k]!;
    if (typeof plan === 'number') value = plan;
    else {
      for (const point of plan) {
        times.push(startS + point.atS);
        if (startS + point.atS <= atS + SAME_TIME_S) value = point.value;
      }
    }
    if (value !== commands[k]) {
      commands[k] = value;
      changed = true;
    }
  }
  if (changed) run.equations.commandsChanged();
  return times;
}

/** The fill-limit valve floats shut at its level and falls open below it. Returns whether it moved. */
function floatValve(run: Run): boolean {
  const { network, commands, fuel, layout } = run.equations;
  if (network.fillLimit.stuck !== undefined) return false;
  const level = fuel.fillFraction(layout.nodeIndex.get(network.fillSpace)!, run.integrator.x);
  const k = COMMAND_INDEX.fillLimitShut;
  const shut = commands[k]! > 0;
  const edge = 1e-7; // the event is found on an interpolated state
  if (!shut && level >= network.fillLimit.shutFraction - edge) commands[k] = 1;
  else if (shut && level <= network.fillLimit.openFraction + edge) commands[k] = 0;
  else return false;
  run.equations.commandsChanged();
  return true;
}

/** Distance of a condition from coming true: negative before, zero or above when true. */
function distance(run: Run, condition: Condition, timeS: number, x: Float64Array): number {
  const value = watchedValue(run.equations, run.readings, condition.what, timeS, x);
  return condition.is === 'above' ? value - condition.value : condition.value - value;
}

/** The float as a condition like the others. */
function floatCondition(network: Network, shut: boolean): Condition | undefined {
  if (network.fillLimit.stuck !== undefined) return undefined;
  return {
    what: { kind: 'fillFraction', space: network.fillSpace },
    is: shut ? 'below' : 'above',
    value: shut ? network.fillLimit.openFraction : network.fillLimit.shutFraction,
    outcome: 'float',
  };
}

/** Integrates to a stop, or to the first condition that comes true before it. */
function integrateTo(
  run: Run,
  stopS: number,
  conditions: readonly Condition[],
  observers: readonly StepObserver[],
): Condition | 'reached' | 'float' | 'failed' {
  const { integrator, equations } = run;
  const shut = equations.commands[COMMAND_INDEX.fillLimitShut]! > 0;
  const float = floatCondition(equations.network, shut);
  const watched = float === undefined ? conditions : [...conditions, float];
  const own = (c: Condition) => (c === float ? 'float' : c);
  for (const c of conditions) if (distance(run, c, integrator.timeS, integrator.x) >= 0) return c;
  const probe = new Float64Array(equations.size);
  while (integrator.timeS < stopS) {
    const from = integrator.timeS;
    if (!integrator.step(stopS)) return 'failed';
    let earliest: Condition | undefined;
    let eventS = integrator.timeS;
    for (const c of watched) {
      if (distance(run, c, integrator.timeS, integrator.x) < 0) continue;
      const at = crossing(run, c, from, eventS, probe);
      if (earliest === undefined || at < eventS - SAME_TIME_S) earliest = c;
      eventS = Math.min(eventS, at);
    }
    if (earliest === undefined) {
      finish(run, from, observers);
      continue;
    }
    if (eventS < integrator.timeS - SAME_TIME_S && eventS > from + SAME_TIME_S) {
      // Go back and land on the event, so that the state there is as good as any step's.
      integrator.undo();
      while (integrator.timeS < eventS) {
        const start = integrator.timeS;
        if (!integrator.step(eventS)) return 'failed';
        finish(run, start, observers);
      }
    } else finish(run, from, observers);
    return own(earliest);
  }
  return 'reached';
}

function finish(run: Run, fromS: number, observers: readonly StepObserver[]): void {
  run.ledger.afterStep(run.integrator.x);
  for (const observer of observers) observer.afterStep(run, fromS, run.integrator.timeS);
}

/** Time in the last step at which a condition comes true, by the Illinois method on the dense output. */
function crossing(run: Run, condition: Condition, fromS: number, toS: number, probe: Float64Array): number {
  const { integrator } = run;
  const at = (t: number) => {
    integrator.interpolate(t, probe);
    return distance(run, condition, t, probe);
  };
  let low = fromS;
  let high = toS;
  let gLow = at(low);
  let gHigh = at(high);
  if (gHigh < 0) return toS;
  if (gLow >= 0) return fromS;
  for (let k = 0; k < 60 && high - low > 1e-10 * Math.max(1, toS); k++) {
    const t = high - (gHigh * (high - low)) / (gHigh - gLow);
    const g = at(t);
    if (g >= 0) {
      high = t;
      gHigh = g;
      gLow *= 0.5;
    } else {
      low = t;
      gLow = g;
      gHigh *= 0.5;
    }
  }
  return high;
}
