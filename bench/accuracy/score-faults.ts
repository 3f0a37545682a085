/** How well probabilities of causes fit the truth, by the definitions of the practice format. */
import type { Answer } from './answers.ts';
import { CLASSES } from './classes.ts';
import { mean, share } from './statistics.ts';
import type { Truth } from './truth.ts';

/** A class that a case has is never charged more than the log of this. */
const LEAST_PROBABILITY = 1e-4;
/** A sound car with a confounder must not be given a fault with more than this. */
const ACCUSED = 0.5;

interface FaultScore {
  readonly top1: boolean;
  readonly top3: boolean;
  readonly top1Wide: boolean;
  readonly top3Wide: boolean;
  /** Both faults of a double fault in the first two places; undefined with one fault. */
  readonly bothInTop2: boolean | undefined;
  readonly brier: number;
  readonly log: number;
}

export interface FaultScores {
  readonly n: number;
  readonly top1: number | undefined;
  readonly top3: number | undefined;
  readonly top1_wide: number | undefined;
  readonly top3_wide: number | undefined;
  readonly brier: number | undefined;
  readonly log: number | undefined;
}

/** Probabilities over all classes; uniform, and no class named, where the answer says nothing. */
function normalised(answer: Answer | undefined): { p: Map<string, number>; ranked: readonly string[] } {
  const raw = CLASSES.map((id) => Math.max(0, answer?.fault_probabilities[id] ?? 0));
  const total = raw.reduce((sum, x) => sum + x, 0);
  const p = new Map<string, number>(CLASSES.map((id, i) => [id, total > 0 ? raw[i]! / total : 1 / CLASSES.length]));
  const ranked = total > 0 ? [...CLASSES].sort((a, b) => p.get(b)! - p.get(a)!) : [];
  return { p, ranked };
}

export function scoreFault(truth: Truth, answer: Answer | undefined): FaultScore {
  const { p, ranked } = normalised(answer);
  const wanted = new Set<string>(truth.faults);
  const wide = new Set<string>([...truth.faults, ...truth.also_accept]);
  const among = (set: ReadonlySet<string>, places: number) => ranked.slice(0, places).some((id) => set.has(id));
  let brier = 0;
  let log = 0;
  for (const id of CLASSES) {
    const q = wanted.has(id) ? 1 / truth.faults.length : 0;
    brier += (p.get(id)! - q) ** 2;
    if (q > 0) log -= q * Math.log(Math.max(p.get(id)!, LEAST_PROBABILITY));
  }
  return {
    top1: among(wanted, 1),
    top3: among(wanted, 3),
    top1Wide: among(wide, 1),
    top3Wide: among(wide, 3),
    bothInTop2: wanted.size > 1 ? [...wanted].every((id) => ranked.slice(0, 2).includes(id)) : undefined,
    brier,
    log,
  };
}

export function scoreFaults(truths: readonly Truth[], answers: ReadonlyMap<string, Answer>): FaultScores {
  const scores = truths.map((t) => scoreFault(t, answers.get(t.case)));
  return {
    n: scores.length,
    top1: share(scores.map((s) => s.top1)),
    top3: share(scores.map((s) => s.top3)),
    top1_wide: share(scores.map((s) => s.top1Wide)),
    top3_wide: share(scores.map((s) => s.top3Wide)),
    brier: mean(scores.map((s) => s.brier)),
    log: mean(scores.map((s) => s.log)),
  };
}

/** Share of double faults whose two causes take the first two places. */
export function bothInTop2(truths: readonly Truth[], answers: ReadonlyMap<string, Answer>): number | undefined {
  const told = truths.map((t) => scoreFault(t, answers.get(t.case)).bothInTop2);
  return share(told.filter((x) => x !== undefined));
}

/** Sound cars with hot fuel or slosh: how many there are, and how many were given a fault with more than 0.5. */
export function accusedConfounders(
  truths: readonly Truth[],
  answers: ReadonlyMap<string, Answer>,
): { n: number; accused: number } {
  const sound = truths.filter((t) => t.confounder !== 'none' && t.faults.every((f) => f === 'none'));
  const accused = sound.filter((t) => {
    const { p } = normalised(answers.get(t.case));
    return CLASSES.some((id) => id !== 'none' && p.get(id)! > ACCUSED);
  });
  return { n: sound.length, accused: accused.length };
}
