/** Whether it pays to go on holding: the verdict and its reason, from what more of the hold is expected to tell. */
import type { PhaseKind } from '../../recording/recording.ts';
import type { CauseId } from '../finding.ts';

export interface HoldingLonger {
  readonly verdict: 'worth it' | 'adds nothing';
  readonly reason: string;
  /** Standard deviation of the ln of the diameter now and after so many more seconds of hold. */
  readonly sdLnDiameter: { readonly now: number; readonly after30S: number; readonly after60S: number };
  /** Expected gain of ln odds of the first cause over its nearest rival in another minute, tempered as the finding is. */
  readonly partingLnOdds: number;
}

export interface HoldQuestion {
  readonly phase: PhaseKind;
  readonly heldS: number;
  readonly settled: boolean;
  readonly sdLnDiameter: HoldingLonger['sdLnDiameter'];
  readonly partingLnOdds: number;
  readonly first: { readonly id: CauseId; readonly probability: number };
  readonly rival: CauseId | undefined;
  readonly exceeds: { readonly mm0_5: number | null; readonly mm1_0: number | null };
}

/** Phases in which someone stands and waits. */
export const WAITING: readonly PhaseKind[] = ['hold', 'sealed'];
/** In the first seconds after the valves shut the gas settles; a verdict then would be rash [s]. Common practice, 10 s. */
const LEAST_HOLD_S = 10;
/** A limit is decided at this probability on either side. Judgement. */
const DECIDED = 0.98;
/** A cause is decided at this probability. Judgement. */
const CAUSE_DECIDED = 0.9;
/** Shrinking by less than this in a minute does not change what is done; a hole known to within this needs no more. Judgement. */
const WORTH_SHRINK = 0.1;
const FINE_SD = 0.1;
/** Ln odds that change a mind: a factor of e. */
const WORTH_PARTING = 1;

export function judgeHold(q: HoldQuestion): HoldingLonger {
  const { sdLnDiameter: sd, partingLnOdds } = q;
  const base = { sdLnDiameter: sd, partingLnOdds };
  const worth = (reason: string): HoldingLonger => ({ verdict: 'worth it', reason, ...base });
  if (q.heldS < LEAST_HOLD_S) {
    return worth(`Only ${q.heldS.toFixed(0)} s so far; the gas is still settling.`);
  }
  if (!q.settled) return worth('The causes are still being tried on what has come so far.');
  const limits = [
    { name: '0.5 mm', p: q.exceeds.mm0_5 },
    { name: '1.0 mm', p: q.exceeds.mm1_0 },
  ].flatMap((l) => (l.p === null ? [] : [{ name: l.name, p: l.p }]));
  const open = limits.filter((l) => Math.max(l.p, 1 - l.p) < DECIDED);
  const shrink = 1 - sd.after60S / sd.now;
  const narrower = `another minute would narrow the size from ±${percent(1.645 * sd.now)} to ±${percent(1.645 * sd.after60S)}`;
  if (open.length > 0 && shrink >= WORTH_SHRINK) {
    return worth(`Whether the hole is above ${open.map((l) => l.name).join(' and ')} is open, and ${narrower}.`);
  }
  if ((q.exceeds.mm0_5 ?? 0) > 0.5 && sd.now > FINE_SD && shrink >= WORTH_SHRINK) {
    return worth(`There is a hole, and ${narrower}.`);
  }
  const causeOpen = q.first.probability < CAUSE_DECIDED && q.rival !== undefined;
  if (causeOpen && partingLnOdds >= WORTH_PARTING) {
    return worth(
      `Another minute is expected to part ${words(q.first.id)} from ${words(q.rival!)} by a factor of ${Math.exp(Math.min(partingLnOdds, 7)).toFixed(0)}.`,
    );
  }
  const sized =
    open.length === 0
      ? 'the limits of 0.5 and 1.0 mm are decided'
      : `whether the hole is above ${open.map((l) => l.name).join(' and ')} stays open`;
  const parted = causeOpen
    ? `${words(q.first.id)} and ${words(q.rival!)} would look alike for as long as it lasts`
    : `${words(q.first.id)} stands at ${percent(q.first.probability)}`;
  return { verdict: 'adds nothing', reason: `${capital(sized)}; ${narrower}; ${parted}.`, ...base };
}

const percent = (x: number) => `${(100 * x).toFixed(x < 0.095 ? 1 : 0)} %`;
const words = (id: CauseId) => (id === 'none' ? 'a sound car' : id.replaceAll('_', ' '));
const capital = (s: string) => s.charAt(0).toUpperCase() + s.slice(1);
