/** What speaks for and against a finding, what limits it, and which recording would settle it, in sentences. */
import type { CauseId, CauseProbability, Interval, Reason, Verdict } from '../finding.ts';
import { parameterValue } from '../fit/parameter.ts';
import type { Prepared } from '../prepare.ts';
import type { Weighed } from '../weighing/weighed.ts';

export interface ReasonFacts {
  readonly verdict: Verdict;
  readonly causes: readonly CauseProbability[];
  readonly best: Weighed;
  readonly rival: Weighed;
  readonly prepared: readonly Prepared[];
  readonly exceeds: { readonly mm0_5: number | null; readonly mm1_0: number | null };
  readonly diameterMm: Interval | null;
}

const NAMES: Readonly<Record<CauseId, string>> = {
  none: 'no fault',
  leak: 'a leak',
  gross_leak: 'a gross leak (cap or hose off)',
  purge_leak: 'a purge valve that seeps when shut',
  purge_stuck_closed: 'a purge valve that stays shut',
  purge_stuck_open: 'a purge valve that stays open',
  vent_leak: 'a vent valve that does not seal',
  vent_stuck_closed: 'a vent valve that stays shut',
  vent_restricted: 'a choked vent path',
  path_blocked: 'a blocked way from tank to canister',
  fill_valve_stuck_open: 'a fill-limit valve that stays open',
  sensor_bias: 'a pressure sensor with a zero error',
  sensor_gain: 'a pressure sensor with a wrong gain',
  sensor_stuck: 'a pressure sensor that stands still',
  sensor_noisy: 'a noisy pressure sensor',
  canister_saturated: 'a canister full of fuel vapour',
  pump_weak: 'a weak pump',
  pump_dead: 'a pump that does not run',
  orifice_dirty: 'a dirty reference orifice',
  changeover_leak: 'a change-over valve that leaks',
  changeover_stuck: 'a change-over valve that does not move',
  isolation_leak: 'a tank isolation valve that leaks',
  isolation_stuck_shut: 'a tank isolation valve that stays shut',
};

const PHASE_WORDS: Readonly<Record<string, string>> = {
  baseline: 'the time before the draw',
  draw: 'the draw',
  settle: 'the seconds after the purge shut',
  hold: 'the hold',
  release: 'the release',
  sealed: 'the sealed time',
  vented: 'the vented time',
  purge: 'the time with purge flow',
  idle: 'the time without purge flow',
  filling: 'the filling',
  filled: 'the time after the nozzle shut off',
  reference: 'the run through the reference orifice',
  'tank-pump': 'the pump on the tank',
  rest: 'the rest',
};

/** A phase's gain in log likelihood that is worth a sentence: odds of about seven to one. */
const TELLING = 2;
/** Share of the probability that a rival needs to be named. */
const OPEN = 0.08;

/** Reasons where only pump runs and sealed holds were fitted. */
export function runReasons(f: Pick<ReasonFacts, 'verdict' | 'causes' | 'exceeds'>): Reason[] {
  const first = f.causes[0]!;
  const rival = f.causes[1];
  const list: Reason[] = [];
  const told = [...first.byPhase].sort((a, b) => b.logEvidence - a.logEvidence)[0];
  if (rival && told && told.logEvidence > TELLING) {
    list.push({
      kind: 'for',
      text: `${capital(PHASE_WORDS[told.phase] ?? told.phase)} fits ${NAMES[first.id]} and not ${NAMES[rival.id]} (odds ${odds(told.logEvidence)} from this phase).`,
    });
  }
  const open = f.causes.filter((c) => c.id !== first.id && c.probability >= OPEN);
  if (open.length > 0) {
    list.push({
      kind: 'limits',
      text: `Not excluded by these recordings: ${open.map((c) => `${NAMES[c.id]} (${percent(c.probability)})`).join(', ')}.`,
    });
  }
  list.push({
    kind: 'next-recording',
    text: "A second run of the same test under other conditions (another fuel level, a day with a temperature swing) would confirm it. Follow the service information; a sealed tank can hold pressure, so let it down by the car's own refuel request first.",
  });
  return list;
}

export function reasonsFor(f: ReasonFacts): Reason[] {
  const list: Reason[] = [];
  const first = f.causes[0]!;
  const second = f.causes.find((c) => c.id === f.rival.id);
  const phases = [...first.byPhase].sort((a, b) => b.logEvidence - a.logEvidence);
  const rivalName = NAMES[f.rival.id];
  const most = phases[0];
  if (most && most.logEvidence > TELLING) {
    list.push({
      kind: 'for',
      text: `${capital(PHASE_WORDS[most.phase] ?? most.phase)} fits ${NAMES[first.id]} and not ${rivalName} (odds ${odds(most.logEvidence)} from this phase).`,
    });
  }
  const least = phases[phases.length - 1];
  if (least && least.logEvidence < -TELLING) {
    list.push({
      kind: 'against',
      text: `${capital(PHASE_WORDS[least.phase] ?? least.phase)} would fit ${rivalName} better (odds ${odds(-least.logEvidence)} from this phase).`,
    });
  }
  const trims = f.best.parts.trims - f.rival.parts.trims;
  if (Math.abs(trims) > TELLING) {
    list.push({
      kind: trims > 0 ? 'for' : 'against',
      text: `The fuel trims ${trims > 0 ? 'agree with' : 'speak against'} ${NAMES[first.id]} (odds ${odds(Math.abs(trims))} against ${rivalName}).`,
    });
  }
  const open = f.causes.filter((c) => c.id !== first.id && c.probability >= OPEN);
  if (open.length > 0) {
    list.push({
      kind: 'limits',
      text: `Not excluded by these recordings: ${open.map((c) => `${NAMES[c.id]} (${percent(c.probability)})`).join(', ')}.`,
    });
  }
  if (f.causes.some((c) => c.id === 'leak' && c.probability > OPEN)) {
    list.push({
      kind: 'limits',
      text: 'Pressure alone does not tell where a hole is: cap, neck, hoses, tank top, canister and vent side look alike.',
    });
  }
  if (f.prepared.some((p) => !p.conditions.fuelTemperatureKnown)) {
    list.push({
      kind: 'limits',
      text: 'The fuel temperature was not recorded, so the share of evaporation is less certain.',
    });
  }
  const lagS = lagOf(f.best);
  if (lagS > SLOW_S) {
    list.push({
      kind: 'limits',
      text: `The pressure sensor follows about ${Math.round(lagS)} s late, where sound ones take a fraction of a second: look at its port, hose and plug before trusting sizes. Let the engine cool; fuel vapour, no sparks.`,
    });
  }
  if (f.verdict === 'cannot-tell') {
    list.push({
      kind: 'limits',
      text: `No cause stands out: the first, ${NAMES[first.id]}, has ${percent(first.probability)}.`,
    });
  }
  list.push({ kind: 'next-recording', text: nextRecording(f, second) });
  return list;
}

/** The recording that would part the first cause from its strongest rival. */
function nextRecording(f: ReasonFacts, rival: CauseProbability | undefined): string {
  const pair = [f.causes[0]!.id, rival?.id ?? 'none'];
  const has = (...ids: CauseId[]) => ids.some((id) => pair.includes(id));
  const straddles = f.exceeds.mm0_5 !== null && f.exceeds.mm0_5 > 0.05 && f.exceeds.mm0_5 < 0.95;
  if (has('vent_leak') && has('leak', 'gross_leak', 'none'))
    return 'The same test with the vent hose plugged at the canister parts the vent valve from every other hole. Follow the service information; no sparks near the open hose.';
  if (has('purge_leak', 'purge_stuck_open', 'purge_stuck_closed'))
    return 'A hold with the purge line clamped at the canister, or a drive with purge steps and trims recorded, parts the purge valve from the rest. Hot parts: let the engine cool before reaching in.';
  if (has('sensor_bias', 'sensor_gain', 'sensor_stuck', 'sensor_noisy'))
    return 'Half a minute with cap off and vent open shows the sensor at ambient pressure. Open the cap slowly and let any hiss stop first.';
  if (has('path_blocked', 'vent_restricted', 'vent_stuck_closed'))
    return 'A recording while purging with the vent hose off the canister parts vent path, canister and vapour line. Outdoors, away from sparks.';
  if (straddles)
    return 'The same test with a longer hold (two to three minutes) and the fuel below 35 °C narrows the size across the 0.5 mm mark.';
  return 'A second run of the same test at another fuel level would confirm it: a true hole keeps its size while the rates change.';
}

/** A sensor later than this is slow [s]. Judgement. */
const SLOW_S = 2;

/** Lag of the sensor in a fit [s]. */
function lagOf({ problem, fit }: Weighed): number {
  const i = problem.parameters.findIndex((p) => p.name === 'lag');
  return i < 0 ? 0 : parameterValue(problem.parameters[i]!, fit.z[i]!);
}

const percent = (x: number) => (x < 0.01 ? 'under 1 %' : `${Math.round(100 * x)} %`);
const odds = (log: number) => (log > 7 ? 'over 1000 to 1' : `${Math.round(Math.exp(log))} to 1`);
const capital = (s: string) => s.charAt(0).toUpperCase() + s.slice(1);
