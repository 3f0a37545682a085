/** The honest list: what this job has not verified, found from what is there and what is not. */
import { holeOf } from '../hole.ts';
import { firstCause } from '../words.ts';
import { type Desk, placesOf } from './desk.ts';
import type { HandOverRecording } from './hand-over.ts';

/** A rival above this share is named. */
const OPEN_SHARE = 0.05;
/** Judgement: a test is repeated within 5 K and 15 % of a tank, or it compares in part only. */
const SAME_TEMPERATURE_K = 5;
const SAME_LEVEL = 0.15;

export function notVerified(desk: Desk): readonly string[] {
  const items = [...repairOpen(desk), ...findingOpen(desk), ...codesOpen(desk), ...conditionsOpen(desk)];
  const missing = desk.given.proof?.missing.trim() ?? '';
  return [...(missing === '' ? [] : [missing]), ...items, desk.words.open.selfTest, desk.words.open.asleep];
}

function repairOpen({ given, words, q }: Desk): readonly string[] {
  const { open } = words;
  if (given.repairs.length === 0) {
    return given.findings.before?.finding.verdict === 'no-fault-seen' ? [] : [open.noRepair];
  }
  const items: string[] = [];
  const { after } = given.findings;
  if (!given.recordings.some((recording) => recording.taken === 'after-repair')) items.push(open.noRecordingAfter);
  else if (after === null) items.push(open.noFindingAfter);
  if (given.proof === null || given.proof.verdict === 'not-proven') items.push(open.noProof);
  if (given.proof?.verdict === 'not-held') items.push(open.notHeld);
  const first = after === null ? null : firstCause(after.finding);
  if (after !== null && first !== null) {
    if (after.finding.verdict === 'fault') {
      items.push(open.stillFault(words.causes[first.id].name, q.percent(first.probability)));
    } else if (after.finding.diameterMm !== null) {
      items.push(open.smallHole(q.diameter(after.finding.diameterMm.hi90)));
    }
  }
  return items;
}

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
    if (rival.probability >= OPEN_SHARE && rival.id !== 'none') {
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

function conditionsOpen({ given, words, q }: Desk): readonly string[] {
  const { before, after } = comparedRecordings(given.recordings);
  if (before === undefined || after === undefined) return [];
  const items: string[] = [];
  if (before.procedure !== after.procedure) items.push(words.open.otherProcedure);
  const levels = [before.conditions.fuelLevel, after.conditions.fuelLevel];
  if (levels[0] !== undefined && levels[1] !== undefined && Math.abs(levels[0] - levels[1]) > SAME_LEVEL) {
    items.push(words.open.otherLevel(q.percent(levels[0]), q.percent(levels[1])));
  }
  const degrees = [before.conditions.ambientTemperatureK, after.conditions.ambientTemperatureK];
  if (degrees[0] !== undefined && degrees[1] !== undefined && Math.abs(degrees[0] - degrees[1]) > SAME_TEMPERATURE_K) {
    items.push(words.open.otherTemperature(q.temperature(degrees[0]), q.temperature(degrees[1])));
  }
  return items;
}
