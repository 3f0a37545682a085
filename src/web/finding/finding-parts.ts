/** What the page takes from a finding, before it is drawn. Pure. */
import type { CauseProbability, Finding, Overlay, Place } from '../../diagnosis/finding.ts';
import { holeOf } from '../../report/hole.ts';
import { firstCause, tellingPlaces } from '../../report/words.ts';

/** Causes below this share are summed into one row: they cannot be excluded, but need no row of their own. */
const SMALL_SHARE = 0.01;
const MOST_ROWS = 8;
/** A rival above this share is named among what is not proven. */
const OPEN_SHARE = 0.05;
/** A second cause within this share of the first is named in the same breath. */
const CLOSE_RIVAL = 0.5;

export interface RankedCauses {
  readonly shown: readonly CauseProbability[];
  readonly rest: { readonly count: number; readonly share: number } | null;
}

export function rankedCauses({ causes }: Finding): RankedCauses {
  const shown = causes.filter((cause, k) => k === 0 || (cause.probability >= SMALL_SHARE && k < MOST_ROWS));
  const share = 1 - shown.reduce((sum, { probability }) => sum + probability, 0);
  const count = causes.length - shown.length;
  return { shown, rest: count > 0 && share > 0 ? { count, share } : null };
}

export const closeRival = ({ causes }: Finding): CauseProbability | null => {
  const [first, second] = causes;
  return first !== undefined && second !== undefined && second.probability >= CLOSE_RIVAL * first.probability
    ? second
    : null;
};

export interface OpenPoints {
  /** Places of the first cause that look alike. */
  readonly alike: readonly (readonly Place[])[];
  /** A rival that no reason names yet. */
  readonly rival: CauseProbability | null;
  readonly isFault: boolean;
  readonly hasHole: boolean;
}

export function openPoints(finding: Finding): OpenPoints {
  const first = firstCause(finding);
  const rival = finding.causes[1];
  const isSaid = finding.reasons.some(({ kind, text }) => kind === 'limits' && /not excluded/i.test(text));
  return {
    alike: (first === null || tellingPlaces(first) === null ? [] : first.places)
      .map(({ group }) => group)
      .filter((group) => group.length > 1),
    rival: !isSaid && rival !== undefined && rival.probability >= OPEN_SHARE ? rival : null,
    isFault: finding.verdict === 'fault',
    hasHole: first !== null && holeOf(first) !== undefined,
  };
}

export interface Parting {
  readonly fromS: number;
  readonly toS: number;
  /** Largest distance from the model within, Pa; positive: the record lies above. */
  readonly byPa: number;
}

/** Single readings outside are noise; so many in a row are a parting. With 90 % bands one in ten lies outside by right. */
const LEAST_IN_A_ROW = 4;

/** Times at which the record leaves the band for good, longest misfit first. */
export function partings({ timeS, recordedGaugePa, modelledGaugePa, bandPa }: Overlay): readonly Parting[] {
  const found: Parting[] = [];
  let start = -1;
  let largest = 0;
  let sign = 0;
  const end = (k: number): void => {
    if (start >= 0 && k - start >= LEAST_IN_A_ROW)
      found.push({ fromS: timeS[start]!, toS: timeS[k - 1]!, byPa: largest });
    start = -1;
    largest = 0;
  };
  for (let k = 0; k < timeS.length; k++) {
    const apart = recordedGaugePa[k]! - modelledGaugePa[k]!;
    if (!(Math.abs(apart) > bandPa[k]!)) {
      end(k);
      continue;
    }
    if (start >= 0 && Math.sign(apart) !== sign) end(k);
    if (start < 0) start = k;
    sign = Math.sign(apart);
    if (Math.abs(apart) > Math.abs(largest)) largest = apart;
  }
  end(timeS.length);
  return found.sort((a, b) => Math.abs(b.byPa) - Math.abs(a.byPa));
}

/** Root mean square of recorded minus modelled, Pa. */
export function misfitPa({ recordedGaugePa, modelledGaugePa }: Overlay): number {
  let sum = 0;
  let n = 0;
  recordedGaugePa.forEach((recorded, k) => {
    const apart = recorded - modelledGaugePa[k]!;
    if (!Number.isFinite(apart)) return;
    sum += apart * apart;
    n++;
  });
  return Math.sqrt(sum / Math.max(1, n));
}

/** "cap and neck or tank top": places that cannot be told apart are always said together. */
export const joined = (names: readonly string[], or: string): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${or} ${names.at(-1)}`;
