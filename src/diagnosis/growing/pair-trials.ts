/**
 * Two faults at once while the recording grows: the pairs that the whole finding weighs, tried one after the other on top of
 * the best single faults. One pair is on trial at a time and steps within the allowance of every update; a pair that
 * explains clearly more than its first fault alone is followed on, of the others it is remembered how they compared.
 */
import type { ProcedureKind } from '../../recording/recording.ts';
import { CATALOGUE, type Cause } from '../causes/catalogue.ts';
import type { Parameter } from '../fit/parameter.ts';
import type { FitProblem } from '../fit/problem.ts';
import { looksSound } from '../priors/selection.ts';
import { clash, FIRST_FAULTS, SECOND_FAULTS, WORTH_A_PAIR } from '../weighing/pairs.ts';
import { CauseFits, nameOf } from './cause-fits.ts';
import { carryOver } from './start-points.ts';
import type { Track } from './track.ts';

type Procedure = ProcedureKind | 'unknown';

/** A trial ends after so many steps, or sooner when it has shown nothing. As the whole finding has it. */
const TRIAL_STEPS = 8;
const PATIENCE = 3;
/** Or after so many updates, when others need the steps more. */
const MOST_UPDATES = 12;
/** Pairs followed on at once. */
const MOST_KEPT = 2;
/** A pair is tried again once the recording has grown by so much [s], or by this share. */
const AGAIN_S = 15;
const AGAIN_SHARE = 0.25;

/** How a pair compared with its first fault alone when it was tried. */
export interface TriedPair {
  readonly causes: readonly [Cause, Cause];
  /** ln evidence of the pressure beyond that of the first fault. */
  readonly gain: number;
  readonly triedS: number;
}

interface Trial {
  readonly causes: readonly [Cause, Cause];
  readonly fits: CauseFits;
  updates: number;
}

interface Site {
  readonly procedure: Procedure;
  readonly problemFor: (causes: readonly Cause[]) => FitProblem;
  /** The fit that stands for a single cause. */
  readonly trackOf: (cause: Cause) => Track;
  /** Counts the runs of a problem that is no longer followed. */
  readonly retire: (fits: CauseFits) => void;
}

export class PairTrials {
  readonly kept = new Map<string, CauseFits>();
  readonly tried = new Map<string, TriedPair>();
  private trial: Trial | undefined;

  /** What steps beside the single causes. */
  get followed(): CauseFits[] {
    return [...this.kept.values(), ...(this.trial ? [this.trial.fits] : [])];
  }

  onTrial(fits: CauseFits): boolean {
    return this.trial?.fits === fits;
  }

  /** The step that the pair on trial would take next. */
  next(): { readonly owner: CauseFits; readonly track: Track } | undefined {
    if (!this.trial) return undefined;
    const { fits } = this.trial;
    return { owner: fits, track: fits.tracks.reduce((a, b) => (b.steps < a.steps ? b : a)) };
  }

  /** Ends a trial that has had its chance and begins the next one that is due. */
  advance(firsts: readonly Cause[], site: Site, nowS: number, lengthS: number): void {
    this.judge(site, nowS);
    if (this.trial) return;
    const again = Math.max(AGAIN_S, AGAIN_SHARE * lengthS);
    const due = possible(firsts, site.procedure)
      .filter(({ causes }) => !this.kept.has(nameOf(causes)))
      .map((p) => ({ ...p, triedS: this.tried.get(nameOf(p.causes))?.triedS ?? Number.NEGATIVE_INFINITY }))
      .filter((p) => nowS - p.triedS >= again)
      .sort((a, b) => a.triedS - b.triedS)[0];
    if (due) this.begin(due.causes, site);
  }

  /** Whether every pair has been tried on all that has come. */
  done(firsts: readonly Cause[], procedure: Procedure, nowS: number): boolean {
    return (
      this.trial === undefined &&
      possible(firsts, procedure).every(({ causes }) => {
        const name = nameOf(causes);
        return this.kept.has(name) || this.tried.get(name)?.triedS === nowS;
      })
    );
  }

  /** Lets every pair be tried once more. */
  tryAllAgain(): void {
    for (const [name, t] of this.tried) this.tried.set(name, { ...t, triedS: Number.NEGATIVE_INFINITY });
  }

  private begin(causes: readonly [Cause, Cause], site: Site): void {
    const problem = site.problemFor(causes);
    const { problem: alone, z } = site.trackOf(causes[0]);
    // the first fault's fit may have bent a part of the car towards what the second one is: begin there as well
    const fits = new CauseFits(causes, problem, [
      atCentre(z, problem.parameters, Object.keys(causes[1].changes)),
      carryOver(alone.parameters, z, problem.parameters),
    ]);
    for (const t of fits.tracks) t.evaluate();
    this.trial = { causes, fits, updates: 0 };
  }

  private judge(site: Site, nowS: number): void {
    if (!this.trial) return;
    const { causes, fits } = this.trial;
    const alone = site.trackOf(causes[0]);
    const better = (t: Track) => t.cost < alone.cost - WORTH_A_PAIR;
    const stepped = fits.tracks.every((t) => t.steps > 0);
    const had = fits.tracks.every((t) => t.arrived || t.steps >= TRIAL_STEPS || (t.steps >= PATIENCE && !better(t)));
    if (!had && !(stepped && ++this.trial.updates >= MOST_UPDATES)) return;
    const { best } = fits;
    this.trial = undefined;
    const name = nameOf(causes);
    this.tried.set(name, { causes, gain: best.logEvidence - alone.logEvidence, triedS: nowS });
    if (better(best)) {
      this.kept.set(name, fits);
      this.dropWorst(site);
    } else site.retire(fits);
  }

  private dropWorst(site: Site): void {
    if (this.kept.size <= MOST_KEPT) return;
    const [name, worst] = [...this.kept].reduce((a, b) => (b[1].best.logEvidence < a[1].best.logEvidence ? b : a));
    this.kept.delete(name);
    site.retire(worst);
  }
}

interface PossiblePair {
  readonly causes: readonly [Cause, Cause];
}

/** The pairs that have a fit of their own: each of the best single faults with each other fault on top. */
function possible(firsts: readonly Cause[], procedure: Procedure): PossiblePair[] {
  const found = new Map<string, PossiblePair>();
  for (const first of firsts) {
    for (const second of secondsFor(first, procedure)) {
      if (second.pressureLike) continue;
      const name = nameOf([first, second]);
      if (!found.has(name)) found.set(name, { causes: [first, second] });
    }
  }
  return [...found.values()];
}

/** Faults that can be there beside a first one and that the procedure can show. */
export function secondsFor(first: Cause, procedure: Procedure): Cause[] {
  return SECOND_FAULTS.flatMap((id) => {
    const second = CATALOGUE.find((c) => c.id === id)!;
    return id === first.id || clash(first, second) || looksSound([procedure], id) ? [] : [second];
  });
}

/** The single causes that a second fault is tried on: the best, and a zero error that explains more than a sound car. */
export function firstFaults<T extends { readonly cause: Cause; readonly logEvidence: number }>(all: readonly T[]): T[] {
  const sound = all.find((w) => w.cause.id === 'none');
  return all
    .filter((w) => w.cause.id !== 'none' && w.cause.id !== 'sensor_stuck')
    .sort((a, b) => b.logEvidence - a.logEvidence)
    .filter(
      (w, i) =>
        i < FIRST_FAULTS || (w.cause.id === 'sensor_bias' && sound && w.logEvidence > sound.logEvidence + WORTH_A_PAIR),
    );
}

/** The first fault's fit, the second fault's own parameters at their centre. */
function atCentre(z: Float64Array, parameters: readonly Parameter[], changed: readonly string[]): Float64Array {
  return Float64Array.from(parameters, (p, i) => (changed.includes(p.name) ? 0 : z[i]!));
}
