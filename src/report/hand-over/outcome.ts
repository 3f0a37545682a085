/** What a finding says, in plain words and with its number. */
import type { CauseId, Finding } from '../../diagnosis/finding.ts';
import { holeOf } from '../hole.ts';
import { exceeds } from '../limits.ts';
import { firstCause, tellingPlaces } from '../words.ts';
import { type Desk, limitName, placesOf } from './desk.ts';

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

export const probabilityOf = (finding: Finding, id: CauseId): number =>
  finding.causes.find((cause) => cause.id === id)?.probability ?? 0;

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

/** What is proven, with what number: before against after. */
export function provenSentences(desk: Desk): readonly string[] {
  const { given, words, q } = desk;
  const { before, after } = given.findings;
  if (given.repairs.length === 0) return [words.noRepairToProve];
  const verdict = given.proof === null ? [] : [`${sentenceOf(words.verdict[given.proof.verdict])}`];
  if (after === null || before === null) return [...verdict, words.notProvenYet];
  const own = before.finding.causes[0];
  const sizeBefore = sizeInShort(desk, before.finding);
  const sizeAfter = sizeInShort(desk, after.finding);
  const isHole = own !== undefined && holeOf(own) !== undefined && sizeBefore !== null;
  const numbers = isHole
    ? sizeAfter === null
      ? words.provenNoSizeAfter(sizeBefore)
      : words.provenSize(sizeBefore, lowerFirst(sentenceOf(sizeAfter)))
    : own === undefined
      ? words.notProvenYet
      : words.provenCause(
          upperFirst(words.causes[own.id].name),
          q.percent(own.probability),
          q.percent(probabilityOf(after.finding, own.id)),
        );
  return [...verdict, numbers, ...(isHole ? limitSentences(desk, after.finding) : [])];
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
export const sentenceOf = (text: string): string =>
  text === '' ? '' : `${upperFirst(text)}${/[.!?]$/.test(text) ? '' : '.'}`;
