/** Asks now and then during a hold what more of it would tell, and keeps the answer until it is asked again. */
import type { Phase } from '../../recording/recording.ts';
import type { CauseId } from '../finding.ts';
import { type Posterior, TEMPER } from '../posterior.ts';
import type { Prepared } from '../prepare.ts';
import { recordingUnder } from '../weighing/with-noise.ts';
import type { CauseFits } from './cause-fits.ts';
import { partingAhead, sdAhead } from './expected-gain.ts';
import { type Fits, ownerOf } from './fits.ts';
import type { History } from './history.ts';
import { AHEAD_S, HALF_AHEAD_S, HoldAnswer } from './hold-answer.ts';
import type { HoldingLonger } from './holding-longer.ts';
import { type Coarseness, extended } from './snapshot.ts';

const RUNS_OF_A_LOOK = 28;

export interface HoldLook {
  readonly history: History;
  readonly prepared: Prepared;
  readonly coarseness: Coarseness;
  readonly fits: Fits;
  readonly posterior: Posterior;
  readonly exceeds: { readonly mm0_5: number | null; readonly mm1_0: number | null };
  readonly phase: Phase;
  readonly settled: boolean;
}

interface Pair {
  readonly first: CauseFits;
  readonly rival: CauseFits | undefined;
}

export class HoldWatch {
  /** Steps of the model that the last look took; what the rest of the update has less. */
  steps = 0;
  private readonly answer = new HoldAnswer();
  private turn = 0;

  reset(): void {
    this.answer.reset();
    this.steps = 0;
  }

  /** Steps of the model that a look will take if one is due. */
  reserve(nowS: number, prepared: Prepared): number {
    const due = this.answer.sd !== undefined && this.answer.isOld(nowS);
    return due ? RUNS_OF_A_LOOK * prepared.drive.stepCount : 0;
  }

  look(q: HoldLook): HoldingLonger | undefined {
    this.steps = 0;
    const nowS = q.history.lastS;
    const { answer } = this;
    if (q.settled) answer.noteSettled(nowS);
    if (!answer.sd || answer.isOld(nowS)) this.ask(q, nowS);
    return answer.judge(nowS, () => {
      const { rival } = firstTwo(q.fits, q.posterior, q.prepared.procedure);
      const first = topCause(q.posterior);
      return {
        phase: q.phase.kind,
        heldS: nowS - Math.max(q.phase.fromS, q.history.lastChangeS),
        first: { id: first, probability: q.posterior.byCause.get(first)! },
        rival: rival?.causes[0]?.id,
        exceeds: q.exceeds,
      };
    });
  }

  /** The size and the causes by turns, so that no update asks both. */
  private ask(q: HoldLook, nowS: number): void {
    const { answer } = this;
    answer.lookedS = nowS;
    const size = [...q.fits.contexts.values()][0]?.best;
    if (!size?.hessian) return;
    const ahead = extended(q.history, q.prepared, q.coarseness, AHEAD_S);
    const recording = recordingUnder(ahead, q.fits.noise);
    const rows = q.prepared.observations.timeS.length;
    const all = recording.gaugePa.length;
    const half = rows + Math.round(((all - rows) * HALF_AHEAD_S) / AHEAD_S);
    const bothTurns = this.turn++ % 2 === 1;
    if (!answer.sd || !bothTurns) {
      const sd = sdAhead(size, recording, rows, [half, all]);
      answer.sd = { now: sd.now, after30S: sd.later[0]!, after60S: sd.later[1]! };
      this.steps += sd.runs * recording.drive.stepCount;
    } else {
      const { first, rival } = firstTwo(q.fits, q.posterior, q.prepared.procedure);
      if (rival) {
        const found = partingAhead(first.best, rival.best, recording, rows);
        answer.parting = TEMPER * found.gain;
        this.steps += found.runs * recording.drive.stepCount;
      } else answer.parting = 0;
    }
  }
}

function topCause(posterior: Posterior): CauseId {
  let best: CauseId = 'none';
  let most = -1;
  for (const [id, p] of posterior.byCause) {
    if (p > most) {
      most = p;
      best = id;
    }
  }
  return best;
}

/** The first cause, and the most probable other one that has a fit of its own. */
function firstTwo(fits: Fits, posterior: Posterior, procedure: Prepared['procedure']): Pair {
  const top = topCause(posterior);
  const owners = posterior.singles.flatMap((s) => {
    const cause = s.weighed.causes[0]!;
    const owner = fits.causes.get(ownerOf(cause, procedure));
    return owner ? [{ id: cause.id, owner }] : [];
  });
  const first = owners.find((o) => o.id === top)?.owner ?? owners[0]!.owner;
  const rival = owners.find((o) => o.id !== top && o.owner !== first)?.owner;
  return { first, rival };
}
