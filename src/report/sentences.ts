/** The finding as sentences: one for the owner, one for the technician. */
import type { Finding } from '../diagnosis/finding.ts';
import { intervalInWords, percent } from './numbers.ts';
import { CAUSE_WORDS, certaintyInWords, firstCause, likeliestPlaces, placesInWords } from './words.ts';

/** Stated wherever a diameter is shown. */
export const DIAMETER_CONVENTION =
  'Equivalent diameter: the thin sharp-edged round hole, discharge coefficient 0.61, that passes the same flow.';

/** Causes whose size is the point: the sentence names it. */
const SIZED: ReadonlySet<string> = new Set(['leak', 'gross_leak', 'vent_leak', 'vent_restricted']);

/** Why the finding cannot tell, or what limits it, as the finding itself says. */
const limitsOf = (finding: Finding): readonly string[] =>
  finding.reasons.filter((reason) => reason.kind === 'limits').map((reason) => reason.text);

const withStop = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

export function technicalSentence(finding: Finding): string {
  const first = firstCause(finding);
  if (finding.verdict === 'cannot-tell' || first === null) {
    const because = limitsOf(finding)[0];
    return because === undefined
      ? 'Cannot tell from this recording.'
      : `Cannot tell from this recording, because ${withStop(lowerFirst(because))}`;
  }
  if (finding.verdict === 'no-fault-seen') {
    const bound = first.diameterMm ?? finding.diameterMm;
    const size =
      bound === null || bound === undefined
        ? ''
        : ` Any hole is smaller than ${bound.hi90.toFixed(2)} mm with 95 % probability.`;
    return `No fault seen (${percent(first.probability)}).${size}`;
  }
  const places = likeliestPlaces(first);
  const name = CAUSE_WORDS[first.id].name;
  const size = first.diameterMm ?? (SIZED.has(first.id) ? finding.diameterMm : null);
  const sized = size !== null && size !== undefined ? `, ${intervalInWords(size)}` : '';
  const where =
    places === null || places.length === 0
      ? ''
      : `, ${first.places.length > 1 ? 'most likely at' : 'at'} ${placesInWords(places)}`;
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}${sized}${where}. Probability ${percent(first.probability)}, ${certaintyInWords(first.probability)}.`;
}

export function ownerSentence(finding: Finding): string {
  const first = firstCause(finding);
  if (finding.verdict === 'cannot-tell' || first === null) {
    return 'This measurement does not say what is wrong; another one is needed before parts are replaced.';
  }
  if (finding.verdict === 'no-fault-seen') {
    return 'The fuel-vapour system behaved as a sound one does in this measurement.';
  }
  const certainty =
    first.probability >= 0.8
      ? 'Very likely'
      : first.probability >= 0.5
        ? 'Most likely'
        : 'The best explanation so far is that';
  return `${certainty} ${CAUSE_WORDS[first.id].plain}.`;
}
