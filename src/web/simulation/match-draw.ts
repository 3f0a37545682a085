/**
 * How strongly the purge valve of a recorded car draws. Neither its size nor, often, its duty is known; the recording
 * tells how long the draw took and how far it came, and that is matched, so that all that follows begins where it did.
 */
import type { CommandPlan, Procedure, StepRecord } from '../../simulation/procedure.ts';
import { runProcedure } from '../../simulation/run-procedure.ts';
import type { Scenario } from '../../simulation/scenario.ts';
import type { RecordedDraw } from './recorded-plan.ts';

/** Runs at most, and how near is near enough [-]. Judgement. */
const MOST_RUNS = 12;
const NEAR = 0.02;
/** A valve so much weaker or stronger than the usual one is not believed. Judgement. */
const LEAST = 0.05;
const MOST = 10;

/** The procedure with the duty of its draws changed. */
export function withDraw(procedure: Procedure, scale: number): Procedure {
  if (scale === 1) return procedure;
  const stronger = (plan: CommandPlan): CommandPlan =>
    typeof plan === 'number'
      ? Math.min(1, plan * scale)
      : plan.map(({ atS, value }) => ({ atS, value: Math.min(1, value * scale) }));
  return {
    ...procedure,
    steps: procedure.steps.map((step) =>
      step.phase === 'draw' && step.commands?.purgeDuty !== undefined
        ? { ...step, commands: { ...step.commands, purgeDuty: stronger(step.commands.purgeDuty) } }
        : step,
    ),
  };
}

export interface DrawMatch {
  /** Factor on the purge valve's duty. */
  readonly scale: number;
  /** False where no believable factor makes the draw what was recorded: the faults or the car must be others. */
  readonly isMatched: boolean;
}
export const UNMATCHED: DrawMatch = { scale: 1, isMatched: false };

/**
 * @param scenario the recording as a scenario, with what the car had
 * @param draw what the draw came to
 * @returns the factor with which the draw takes as long as it did
 */
export function matchDraw(scenario: Scenario, draw: RecordedDraw): DrawMatch {
  // Up to the end of the first draw, which ends at the pressure that was recorded, whatever its target was.
  const last = scenario.procedure.steps.findIndex(({ phase }) => phase === 'draw');
  if (last < 0) return UNMATCHED;
  const reached = {
    what: { kind: 'reading', sensor: 'tankPressure' },
    is: 'below',
    value: draw.endGaugePa,
    outcome: 'reached',
  } as const;
  const steps = scenario.procedure.steps
    .slice(0, last + 1)
    .map((step, i) => (i === last ? { ...step, endsWhen: [reached] } : step));
  let [scale, weak, strong] = [1, LEAST, MOST];
  for (let k = 0; k < MOST_RUNS; k++) {
    const procedure = withDraw({ ...scenario.procedure, steps }, scale);
    const { run, failure } = runProcedure({ ...scenario, procedure }, []);
    const drawn: StepRecord | undefined = run.steps.at(-1);
    if (failure !== undefined || drawn === undefined) return UNMATCHED;
    const short = (drawn.toS - drawn.fromS) / draw.lengthS;
    if (drawn.outcome === undefined) {
      const reading = run.readings.at(run.readings.indexOf('tankPressure'), run.integrator.x);
      // Nearly there at the end of its time is there.
      if (reading < (1 - NEAR) * draw.endGaugePa) return { scale, isMatched: true };
      weak = scale;
    } else {
      if (short > 1 - NEAR) return { scale, isMatched: true };
      strong = scale;
    }
    // Without leaks the time of a draw goes with the flow; between two bounds their middle is as good as any.
    const guess = drawn.outcome !== undefined && weak === LEAST ? scale * short : Math.sqrt(weak * strong);
    scale = guess > weak && guess < strong ? guess : Math.sqrt(weak * strong);
  }
  return UNMATCHED;
}
