/** The finding as sentences: one for the owner, one for the technician. */
import type { Finding } from '../diagnosis/finding.ts';
import { holeOf } from './hole.ts';
import { intervalInWords, percent } from './numbers.ts';
import { upperFirst } from './pressure-names.ts';
import { CAUSE_WORDS, certaintyInWords, firstCause, placesInWords, tellingPlaces } from './words.ts';

/** Stated wherever a diameter is shown. */
export const DIAMETER_CONVENTION =
  'Equivalent diameter: the thin sharp-edged round hole, discharge coefficient 0.61, that passes the same flow.';

/** Why the size drawn beside the limits differs from the one in the sentence. */
export const SIZE_NOTES = {
  beside: (cause: string): string =>
    `This is what may be open to the outside beside “${cause}”, which is itself no hole to the outside and has no size here.`,
  weighed: (cause: string, own: string): string =>
    `If it is “${cause}”, its own size is ${own}. The size drawn is weighed over all causes, also over those without such a hole.`,
} as const;

/** From here on a finding is spoken without reserve; the number always stands beside it. */
const SURE = 0.8;
/** A second cause within this share of the first is named in the same breath. */
const CLOSE_RIVAL = 0.5;

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
    const open = first.probability >= SURE ? '' : ', but a small or hidden one is not ruled out';
    return `No fault seen${open} (${percent(first.probability)}).${size}`;
  }
  const hole = holeOf(first);
  const size = hole === undefined ? '' : `, ${intervalInWords(hole)}`;
  const places = tellingPlaces(first);
  const where =
    places === null ? '' : `, ${first.places.length > 1 ? 'most likely at' : 'at'} ${placesInWords(places)}`;
  const rival = finding.causes[1];
  const or =
    rival !== undefined && rival.probability >= CLOSE_RIVAL * first.probability
      ? ` Nearly as good: ${CAUSE_WORDS[rival.id].name} (${percent(rival.probability)}).`
      : '';
  return `${upperFirst(CAUSE_WORDS[first.id].name)}${size}${where}. Probability ${percent(first.probability)}, ${certaintyInWords(first.probability)}.${or}`;
}

export function ownerSentence(finding: Finding): string {
  const first = firstCause(finding);
  if (finding.verdict === 'cannot-tell' || first === null) {
    return 'This measurement does not say what is wrong; another one is needed before parts are replaced.';
  }
  if (finding.verdict === 'no-fault-seen') {
    return first.probability >= SURE
      ? 'The fuel-vapour system behaved as a sound one does in this measurement.'
      : 'This measurement showed no fault, but it cannot rule out a small one.';
  }
  return `${ownerCertainty(first.probability)} ${CAUSE_WORDS[first.id].plain}.`;
}

function ownerCertainty(probability: number): string {
  if (probability >= 0.95) return 'Almost certainly';
  if (probability >= SURE) return 'Very likely';
  if (probability >= 0.6) return 'Most likely';
  return 'The best explanation so far is that';
}
