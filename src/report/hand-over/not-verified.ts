/** The honest list: what this job has not verified, found from what is there and what is not. */
import type { Missing } from '../../checks/proof/proof.ts';
import { missingInWords } from '../../checks/proof/words.ts';
import type { Finding } from '../../diagnosis/finding.ts';
import { holeOf, isOpenAir } from '../hole.ts';
import { firstCause } from '../words.ts';
import { type Desk, placesOf, proofSay } from './desk.ts';
import type { HandOverRecording } from './hand-over.ts';

/** A rival above this share is named. */
const OPEN_SHARE = 0.05;
export function notVerified(desk: Desk): readonly string[] {
  const { given, words } = desk;
  const items = [...proofOpen(desk), ...repairOpen(desk), ...findingOpen(desk), ...codesOpen(desk)];
  const typed = given.proof?.missing.trim() ?? '';
  return [
    ...(typed === '' ? [] : [typed]),
    ...items,
    ...(given.worked?.proof.selfTest === 'passed' ? [] : [words.open.selfTest]),
    words.open.asleep,
  ];
}

const hasRecordingAfter = ({ given }: Desk): boolean => given.recordings.some(({ taken }) => taken === 'after-repair');

/** What the proof itself says is missing; a recording without a finding and the car's own test have their own words here. */
function proofOpen(desk: Desk): readonly string[] {
  const { given, checks } = desk;
  if (given.worked === null) return [];
  const isSaidBelow = (code: Missing['code']): boolean =>
    code === 'self-test not run' || (code === 'no measurement after' && hasRecordingAfter(desk));
  return given.worked.proof.missing
    .filter(({ code }) => !isSaidBelow(code))
    .map((item) => missingInWords(item, checks.proof, proofSay(desk)));
}

function repairOpen(desk: Desk): readonly string[] {
  const { given, words, q } = desk;
  const { open } = words;
  if (given.repairs.length === 0) {
    return given.findings.before?.finding.verdict === 'no-fault-seen' ? [] : [open.noRepair];
  }
  const items: string[] = [];
  const { after } = given.findings;
  if (hasRecordingAfter(desk) && after === null) items.push(open.noFindingAfter);
  if (given.proof === null) items.push(open.noProof);
  if ((given.proof?.verdict ?? given.worked?.proof.verdict) === 'not-held') items.push(open.notHeld);
  const first = after === null ? null : firstCause(after.finding);
  if (after !== null && first !== null) {
    if (after.finding.verdict === 'fault') {
      items.push(open.stillFault(words.causes[first.id].name, q.percent(first.probability)));
    } else if (after.finding.diameterMm !== null) {
      items.push(open.smallHole(q.diameter(after.finding.diameterMm.hi90), q.percent(holeProbability(after.finding))));
    }
  }
  return items;
}

const holeProbability = ({ causes }: Finding): number =>
  causes.reduce((sum, { id, probability }) => sum + (isOpenAir(id) ? probability : 0), 0);

function findingOpen(desk: Desk): readonly string[] {
  const { given, words, q } = desk;
  const { before, after } = given.findings;
  const newest = after ?? before;
  if (newest === null) return [words.noFindingYet];
  const items: string[] = [];
  if (newest.outdated) items.push(words.open.outdated);
  const { finding } = newest;
  const first = firstCause(finding);
  // After a repair the places of the old fault no longer matter; what may be left does.
  if (first !== null && after === null && finding.verdict === 'fault') {
    for (const { group } of first.places) if (group.length > 1) items.push(words.open.alike(placesOf(desk, group)));
    if (holeOf(first) !== undefined) items.push(words.open.oneOrSeveral);
  }
  for (const rival of finding.causes.slice(1)) {
    // What a sound car's finding leaves open of holes is said with its size.
    const isSaid = after !== null && finding.verdict === 'no-fault-seen' && isOpenAir(rival.id);
    if (rival.probability >= OPEN_SHARE && rival.id !== 'none' && !isSaid) {
      items.push(words.open.rival(words.causes[rival.id].name, q.percent(rival.probability)));
    }
  }
  return items;
}

function codesOpen({ given, words }: Desk): readonly string[] {
  const { before, after } = given.codes;
  if (before.length === 0 && after === null) return [];
  if (after === null) return given.repairs.length === 0 ? [] : [words.open.codesNotReadAgain];
  return after.length === 0 ? [] : [words.open.codesRemain(after.map(({ code }) => code).join(', '))];
}

/** The recordings that the comparison rests on: the newest of each side. */
export function comparedRecordings(recordings: readonly HandOverRecording[]) {
  return {
    before: recordings.findLast(({ taken, usedInFinding }) => taken === 'before-repair' && usedInFinding),
    after: recordings.findLast(({ taken }) => taken === 'after-repair'),
  };
}
