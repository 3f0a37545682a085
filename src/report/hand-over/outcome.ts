/** What a finding says, in plain words and with its number. */
import { proofInWords } from '../../checks/proof/words.ts';
import type { Finding } from '../../diagnosis/finding.ts';
import { holeOf } from '../hole.ts';
import { exceeds } from '../limits.ts';
import { firstCause, tellingPlaces } from '../words.ts';
import { type Desk, limitName, placesOf, proofSay } from './desk.ts';

/** From here on a finding is spoken without reserve; the number always stands beside it. */
const SURE = 0.8;

export function plainSentence({ words }: Desk, finding: Finding): string {
  const first = firstCause(finding);
  if (finding.verdict === 'cannot-tell' || first === null) return words.couldNotTell;
  if (finding.verdict === 'no-fault-seen') return first.probability >= SURE ? words.noFaultSeen : words.noFaultButSmall;
  return words.foundFault(first.probability, words.causes[first.id].plain);
}

/** The total opening: its size where the first cause is a hole, its bound where no fault was seen; null where neither. */
export function sizeSentence({ words, q }: Desk, finding: Finding): string | null {
  const first = firstCause(finding);
  const size = finding.diameterMm;
  if (first === null || size === null) return null;
  if (finding.verdict === 'no-fault-seen') return words.holeBound(q.diameter(size.hi90));
  return finding.verdict === 'fault' && holeOf(first) !== undefined ? words.holeSize(q.interval(size)) : null;
}

/** The same in few words, to stand after "before" and "after". */
export function sizeInShort({ words, q }: Desk, finding: Finding): string | null {
  const first = firstCause(finding);
  const size = finding.diameterMm;
  if (first === null || size === null) return null;
  if (finding.verdict === 'no-fault-seen') return words.holeBound(q.diameter(size.hi90));
  return finding.verdict === 'fault' && holeOf(first) !== undefined ? q.interval(size) : null;
}

export function limitSentences(desk: Desk, finding: Finding): readonly string[] {
  return desk.given.limits.flatMap((limit) => {
    const probability = exceeds(finding, limit);
    return probability === null ? [] : [desk.words.limitExceeded(limitName(desk, limit), desk.q.percent(probability))];
  });
}

/** The sentence for the technician: cause, size, place, how sure. */
export function technicalLine(desk: Desk, finding: Finding): string {
  const { words, q } = desk;
  const first = firstCause(finding);
  if (finding.verdict !== 'fault' || first === null) return plainSentence(desk, finding);
  const hole = holeOf(first);
  const places = tellingPlaces(first);
  const what = [
    words.causes[first.id].name,
    hole === undefined ? '' : q.interval(hole),
    places === null ? '' : placesOf(desk, places),
  ].filter((part) => part !== '');
  const line = `${what.join(', ')}.`;
  return `${line.charAt(0).toUpperCase()}${line.slice(1)} ${words.howSure(q.percent(first.probability), words.certainty(first.probability))}`;
}

/** The verdict on the repair; that of the figures alone is named beside the technician's where they differ. */
function verdictSentences(desk: Desk): readonly string[] {
  const { given, words, checks } = desk;
  const worked = given.worked?.proof.verdict;
  if (given.proof === null) return worked === undefined ? [] : [checks.proof.verdict[worked]];
  const own = checks.proof.verdict[given.proof.verdict];
  return worked === undefined || worked === given.proof.verdict
    ? [own]
    : [own, words.figuresDiffer(checks.proof.verdict[worked])];
}

/** Sizes before and after as they were measured; of a fault that is no hole its probability stands with the figures. */
function sizesBeforeAndAfter(desk: Desk): readonly string[] {
  const { given, words, q } = desk;
  const { before, after } = given.findings;
  const sizeBefore = before === null ? null : sizeInShort(desk, before.finding);
  const sizeAfter = after === null ? null : sizeInShort(desk, after.finding);
  if (before !== null && after !== null && sizeBefore !== null) {
    return [
      sizeAfter === null
        ? words.provenNoSizeAfter(sizeBefore)
        : words.provenSize(sizeBefore, lowerFirst(sentenceOf(sizeAfter))),
    ];
  }
  const { beforeMm, afterMm } = given.worked?.proof ?? {};
  if (beforeMm === undefined || afterMm === undefined || given.worked?.proof.otherFault !== undefined) return [];
  return [words.provenSize(q.interval(beforeMm), `${q.interval(afterMm)}.`)];
}

/** What is proven, with what number: before against after. */
export function provenSentences(desk: Desk): readonly string[] {
  const { given, words, checks } = desk;
  if (given.repairs.length === 0) return [words.noRepairToProve];
  const said = given.worked === null ? null : proofInWords(given.worked.proof, checks.proof, proofSay(desk));
  return [...verdictSentences(desk), ...(said?.against ?? []), ...sizesBeforeAndAfter(desk), ...(said?.figures ?? [])];
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
export const sentenceOf = (text: string): string =>
  text === '' ? '' : `${upperFirst(text)}${/[.!?]$/.test(text) ? '' : '.'}`;
