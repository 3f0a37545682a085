/**
 * What waiting longer would tell of a pump's turn on the tank or a sealed tank's hold: asked now and then, as
 * `hold-watch.ts` asks it of the other runs.
 */
import type { Phase, PhaseKind } from '../../recording/recording.ts';
import type { CauseId } from '../finding.ts';
import { gaussianSd } from '../fit/marginal.ts';
import { TEMPER } from '../posterior.ts';
import { causeOf } from '../run-evidence.ts';
import type { SingleRunProblem } from '../single-run/problem.ts';
import { addedMisfit } from './expected-gain.ts';
import type { GrowingCause } from './followed.ts';
import { AHEAD_S, HALF_AHEAD_S, HoldAnswer } from './hold-answer.ts';
import type { HoldingLonger } from './holding-longer.ts';
import type { RunCandidates } from './run-candidates.ts';
import type { LaidOut, RunFits } from './run-fits.ts';
import type { Ahead } from './run-observations.ts';
import { hessianOf } from './track.ts';

/** Phases in which someone waits for the pressure to tell. */
export const RUN_WAITING: readonly PhaseKind[] = ['tank-pump', 'hold', 'sealed'];
/** How the stretch ahead is laid out. */
export const AHEAD: Ahead = { lengthS: AHEAD_S, binS: 5 };

export interface RunHoldLook<Id extends string> {
  readonly fits: RunFits<Id>;
  readonly run: LaidOut<Id>;
  /** The run with the present phase gone on. */
  readonly ahead: () => LaidOut<Id> | undefined;
  /** Most probable first. */
  readonly causes: readonly GrowingCause[];
  readonly exceeds: { readonly mm0_5: number | null; readonly mm1_0: number | null };
  readonly phase: Phase;
  readonly heldS: number;
  readonly nowS: number;
  readonly settled: boolean;
}

export class RunHoldWatch<Id extends string> {
  /** Steps of the model that the last look took. */
  steps = 0;
  private readonly answer = new HoldAnswer();
  private turn = 0;

  reset(): void {
    this.answer.reset();
    this.steps = 0;
  }

  look(q: RunHoldLook<Id>): HoldingLonger | undefined {
    this.steps = 0;
    const { answer } = this;
    if (q.settled) answer.noteSettled(q.nowS);
    if (!answer.sd || answer.isOld(q.nowS)) this.ask(q);
    const [first, second] = q.causes;
    return answer.judge(q.nowS, () => ({
      phase: q.phase.kind,
      heldS: q.heldS,
      first: first!,
      rival: second?.id,
      exceeds: q.exceeds,
    }));
  }

  /** The size and the causes by turns, so that no update asks both. */
  private ask(q: RunHoldLook<Id>): void {
    const ahead = q.ahead();
    const standing = q.causes.map((c) => standingFor(q, c.id));
    const [first, second] = standing;
    const sizing = standing.find((c) => c?.cause.hole !== undefined);
    if (!ahead || !sizing) return;
    const { answer } = this;
    answer.lookedS = q.nowS;
    const order = rowOrder(q.run, ahead);
    if (!answer.sd || this.turn++ % 2 === 0) answer.sd = this.sdAhead(q, sizing, ahead, order);
    else if (first && second && first !== second)
      answer.parting = TEMPER * this.partingAhead(q, first, second, ahead, order);
    else answer.parting = 0;
  }

  private sdAhead(
    q: RunHoldLook<Id>,
    c: RunCandidates<Id>,
    ahead: LaidOut<Id>,
    order: RowOrder,
  ): HoldingLonger['sdLnDiameter'] | undefined {
    const { problem, jacobian } = this.lookAhead(q, c, ahead, order);
    const key = problem.parameters.findIndex((p) => p.name === c.cause.hole);
    // the diameter goes with the root of the area
    const scale = 0.5 * problem.parameters[key]!.sd;
    const sd = (rows: number) =>
      scale * gaussianSd(hessianOf(jacobian, problem.size, problem.rows, 0, rows), problem.size, key);
    return { now: sd(order.now), after30S: sd(order.half), after60S: sd(order.rows.length) };
  }

  private partingAhead(
    q: RunHoldLook<Id>,
    first: RunCandidates<Id>,
    rival: RunCandidates<Id>,
    ahead: LaidOut<Id>,
    order: RowOrder,
  ): number {
    const own = q.fits.problemFor(first.cause, ahead);
    const residuals = new Float64Array(own.rows);
    own.residuals(first.standing.z, residuals);
    this.steps += own.runs * ahead.stepCount;
    const other = this.lookAhead(q, rival, ahead, order);
    const foretold = other.residuals.map((r, k) => (k < order.now ? r : r - residuals[order.rows[k]!]!));
    return addedMisfit(other.jacobian, foretold, rival.standing.z, order.now);
  }

  private lookAhead(q: RunHoldLook<Id>, c: RunCandidates<Id>, ahead: LaidOut<Id>, order: RowOrder) {
    const problem: SingleRunProblem = q.fits.problemFor(c.cause, ahead);
    const m = problem.rows;
    const { z } = c.standing;
    const residuals = new Float64Array(m);
    const jacobian = new Float64Array(m * problem.size);
    problem.residuals(z, residuals);
    problem.jacobian(z, jacobian);
    this.steps += problem.runs * ahead.stepCount;
    const sorted = new Float64Array(m * problem.size);
    for (let j = 0; j < problem.size; j++) {
      order.rows.forEach((row, k) => {
        sorted[j * m + k] = jacobian[j * m + row]!;
      });
    }
    return { problem, residuals: Float64Array.from(order.rows, (row) => residuals[row]!), jacobian: sorted };
  }
}

/** The rows of all channels in order of what is there, what the first half ahead adds, and the rest. */
interface RowOrder {
  readonly rows: readonly number[];
  /** Rows that are there, and rows after half the time. */
  readonly now: number;
  readonly half: number;
}

function rowOrder<Id extends string>(run: LaidOut<Id>, ahead: LaidOut<Id>): RowOrder {
  const now: number[] = [];
  const soon: number[] = [];
  const late: number[] = [];
  let at = 0;
  ahead.question.channels.forEach((c, i) => {
    const have = run.question.channels[i]!.observations.timeS.length;
    const all = c.observations.timeS.length;
    const half = have + Math.round(((all - have) * HALF_AHEAD_S) / AHEAD_S);
    for (let k = 0; k < all; k++) (k < have ? now : k < half ? soon : late).push(at + k);
    at += all;
  });
  return { rows: [...now, ...soon, ...late], now: now.length, half: now.length + soon.length };
}

/** The fit that stands for a cause of the finding: that of its best form, or of the one it shares. */
function standingFor<Id extends string>(q: RunHoldLook<Id>, id: CauseId): RunCandidates<Id> | undefined {
  const forms = q.run.question.causes.filter((c) => causeOf(c.id) === id).map((c) => c.sharesFitOf ?? c.form ?? c.id);
  const own = q.fits.causes.filter((c) => forms.includes(c.form) && c.standing.steps > 0);
  return own.length === 0 ? undefined : own.reduce((a, b) => (b.standing.cost < a.standing.cost ? b : a));
}
