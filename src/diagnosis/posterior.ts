/** Probabilities of causes and pairs from evidence and priors. */
import type { Cause } from './causes/catalogue.ts';
import type { CauseId } from './finding.ts';
import type { Weighed, Weighing } from './weighing/weighed.ts';

/** Chance that a car has two of these faults at once. Judgement: comebacks with a second leak are common, not usual. */
const TWO_FAULTS = 0.05;
/**
 * The evidence is tempered: what parts two causes in the two-space model is in part the model's own error, which recurs in
 * every sample and so is counted too often. What the sensor's noise says is one number that no model stands behind: it is not.
 */
export const TEMPER = 0.7;

export interface Posterior {
  readonly singles: readonly { readonly weighed: Weighed; readonly probability: number }[];
  readonly pairs: readonly { readonly weighed: Weighed; readonly probability: number }[];
  /** By cause, a pair's probability shared between its two. */
  readonly byCause: ReadonlyMap<CauseId, number>;
}

/** @param prior probability by cause before the recordings, any scale */
export function posteriorOf(
  weighing: Pick<Weighing, 'weighed' | 'pairs'>,
  prior: (cause: CauseId) => number,
  temper: number = TEMPER,
): Posterior {
  const own = (c: Cause) => prior(c.id) * (c.share ?? 1);
  const total = weighing.weighed.reduce((s, w) => s + own(w.causes[0]!), 0);
  const log = (c: Cause) => Math.log(own(c) / total);
  const tempered = (w: Weighed) => temper * (w.logEvidence - w.parts.sensor) + w.parts.sensor;
  const singles = weighing.weighed.map((w) => tempered(w) + Math.log(1 - TWO_FAULTS) + log(w.causes[0]!));
  const pairs = weighing.pairs.map(
    (w) => tempered(w) + Math.log(2 * TWO_FAULTS) + w.causes.reduce((s, c) => s + log(c), 0),
  );
  const top = Math.max(...singles, ...pairs);
  const mass = [...singles, ...pairs].reduce((s, l) => s + Math.exp(l - top), 0);
  const share = (l: number) => Math.exp(l - top) / mass;
  const byCause = new Map<CauseId, number>();
  const add = (id: CauseId, p: number) => byCause.set(id, (byCause.get(id) ?? 0) + p);
  weighing.weighed.forEach((w, i) => {
    add(w.id, share(singles[i]!));
  });
  weighing.pairs.forEach((w, i) => {
    for (const c of w.causes) add(c.id, share(pairs[i]!) / w.causes.length);
  });
  const descending = <T extends { probability: number }>(list: T[]) =>
    list.sort((a, b) => b.probability - a.probability);
  return {
    singles: descending(weighing.weighed.map((weighed, i) => ({ weighed, probability: share(singles[i]!) }))),
    pairs: descending(weighing.pairs.map((weighed, i) => ({ weighed, probability: share(pairs[i]!) }))),
    byCause,
  };
}
