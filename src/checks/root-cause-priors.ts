/** Probabilities of the root causes: from complaint and codes, and from a finding where there is one. */
import type { CauseProbability } from '../diagnosis/finding.ts';
import { COMPLAINTS, type Complaint, columnsOf } from '../diagnosis/priors/root-causes.ts';
import type { LayoutId } from '../system/car.ts';
import { CIRCUMSTANCES, type CircumstanceId, circumstanceKey } from './circumstances.ts';
import { priorKey } from './figures.ts';
import { ROOT_CAUSES, type RootCause } from './root-causes.ts';

/** A cell of the table that says "under 1 %". Judgement. */
const UNDER_ONE_PERCENT = 0.003;
/** Of the finding's probability for a cause, what is spread over root causes at other places. Judgement. */
const ELSEWHERE = 0.05;
/** Share of the complaint's own prior that is kept beside the finding: no model knows every car. Judgement. */
const OPEN_MIND = 0.03;

export interface Told {
  readonly layout: LayoutId;
  readonly complaints: readonly Complaint[];
  readonly codes: readonly string[];
  readonly circumstances: readonly CircumstanceId[];
}

const normalised = (values: readonly number[]): Float64Array => {
  const total = values.reduce((a, b) => a + b, 0);
  return Float64Array.from(values, (v) => (total > 0 ? v / total : 1 / values.length));
};

const canHave = (cause: RootCause, layout: LayoutId): boolean => cause.layouts?.includes(layout) ?? true;

/** In the order of `ROOT_CAUSES`; sums to 1. */
export function rootCausePriors(told: Told, figure: (key: string) => number): Float64Array {
  const columns = columnsOf(told.complaints, told.codes);
  const chosen = columns.length > 0 ? columns : COMPLAINTS;
  return normalised(
    ROOT_CAUSES.map((cause) => {
      if (!canHave(cause, told.layout)) return 0;
      let p = 0;
      for (const column of chosen) p += Math.max(UNDER_ONE_PERCENT, figure(priorKey(cause.family, column)));
      for (const id of told.circumstances) {
        if (cause.id in CIRCUMSTANCES[id]) p *= figure(circumstanceKey(id, cause.id));
      }
      return p * cause.share;
    }),
  );
}

/** The finding's causes and places as root causes, shared out by the prior where the finding does not tell them apart. */
export function rootCausesFromFinding(
  finding: { readonly causes: readonly Pick<CauseProbability, 'id' | 'probability' | 'places'>[] },
  told: Told,
  figure: (key: string) => number,
): Float64Array {
  const prior = rootCausePriors(told, figure);
  const out = ROOT_CAUSES.map((_, i) => OPEN_MIND * prior[i]!);
  for (const { id, probability, places } of finding.causes) {
    const looks = ROOT_CAUSES.map((cause, i) => prior[i]! * (cause.looks[id] ?? 0));
    const all = looks.reduce((a, b) => a + b, 0);
    if (all <= 0) continue;
    const placed = places.reduce((sum, place) => sum + place.probability, 0);
    const elsewhere = placed > 0 ? ELSEWHERE : 1;
    looks.forEach((weight, i) => {
      out[i]! += (1 - OPEN_MIND) * probability * elsewhere * (weight / all);
    });
    for (const { group, probability: share } of places) {
      const here = looks.map((weight, i) => (ROOT_CAUSES[i]!.places.some((p) => group.includes(p)) ? weight : 0));
      const mass = here.reduce((a, b) => a + b, 0);
      if (placed <= 0) continue;
      const from = mass > 0 ? here : looks;
      const total = mass > 0 ? mass : all;
      from.forEach((weight, i) => {
        out[i]! += ((1 - OPEN_MIND) * probability * (1 - elsewhere) * share * weight) / (placed * total);
      });
    }
  }
  return normalised(out);
}
