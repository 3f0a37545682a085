/**
 * The causes as changes of a few priors of the one model. A cause is a part in a wrong state: it moves the prior of
 * the quantity that the part sets, and leaves everything else as on a sound car.
 */
import type { CauseId, Place } from '../finding.ts';
import type { Parameter } from '../fit/parameter.ts';
import { holePrior, type LogPrior, SOUND } from '../priors/nuisances.ts';

export interface Cause {
  readonly id: CauseId;
  /** Own name where one cause has several forms; the id otherwise. */
  readonly form?: string;
  /** Share of the cause's prior that this form has. */
  readonly share?: number;
  /** New centre and sd by parameter name; an absent field keeps the sound car's. */
  readonly changes: Readonly<Record<string, Partial<LogPrior>>>;
  /** Start values of z worth trying, by parameter name. */
  readonly starts: Readonly<Record<string, readonly number[]>>;
  readonly places: readonly Place[];
  /** The parameter that carries the fault's size. */
  readonly size?: string;
  /** Its standing pressure at the start comes from purging alone, so a standing engine leaves none. */
  readonly standingOnlyPurged?: boolean;
  /** Procedures that cannot tell this form from the others of its cause: there the others have its share. */
  readonly unseenIn?: readonly string[];
  /** Whose fit to the pressure it shares: causes that pressure alone cannot tell apart. */
  readonly pressureLike?: CauseId;
}

/** A passage that is shut for good [m2]; far below anything that shows. */
const SHUT: LogPrior = { centre: 1e-12, sd: 0.05 };

/** A choked filter or bed passes in proportion to its drop up to kilopascals [Pa]. Judgement. */
const CHOKED_BED: LogPrior = { centre: 4000, sd: 1 };

/** Lag of a sensor that is slow [s], and how many cars without another fault have one. Judgement. */
const SLOW: LogPrior = { centre: 8, sd: 0.7 };
const SLOW_SHARE = 0.04;
export const SLOW_SENSOR = 'slow sensor';

/** What a passage lets through that is stuck shut or blocked: from nothing that shows to a pinhole. Judgement. */
const SHUT_HOLE = holePrior(0.08, 1);

/**
 * Sizes of faults, medians of equivalent diameters with the spread of their logarithm. Judgement from common practice:
 * holes that set a code run from a quarter of a millimetre to a few millimetres; a cap or hose that is off leaves more
 * than a centimetre; a choked vent still passes a trickle.
 */
export const CATALOGUE: readonly Cause[] = [
  { id: 'none', share: 1 - SLOW_SHARE, size: 'leak', changes: {}, starts: {}, places: [] },
  {
    // a sensor with a wet or pinched hose, on a car without another fault: what it shows late must not become one
    id: 'none',
    form: SLOW_SENSOR,
    share: SLOW_SHARE,
    size: 'leak',
    changes: { lag: SLOW },
    starts: { lag: [-0.7, 0.7] },
    places: [],
  },
  {
    id: 'leak',
    share: 0.65,
    size: 'leak',
    changes: { leak: holePrior(0.75, 0.7) },
    starts: { leak: [-1.2, 0, 1.2] },
    places: ['cap and neck', 'tank top', 'vapour line'],
  },
  {
    id: 'leak',
    form: 'leak at the canister',
    share: 0.35,
    size: 'ventShut',
    changes: { ventShut: holePrior(0.75, 0.7) },
    starts: { ventShut: [0] },
    places: ['canister', 'vent side', 'purge line'],
  },
  {
    id: 'gross_leak',
    size: 'leak',
    changes: { leak: holePrior(8, 0.5) },
    starts: { leak: [-0.8, 0.8] },
    places: ['cap and neck', 'vapour line', 'purge line', 'canister'],
  },
  {
    id: 'purge_leak',
    size: 'seep',
    changes: { seep: holePrior(0.5, 0.6) },
    starts: { seep: [-0.8, 0.8] },
    places: ['purge valve'],
  },
  {
    // jammed: what it is commanded makes no difference
    id: 'purge_stuck_open',
    share: 0.5,
    size: 'seep',
    changes: { seep: holePrior(2, 0.45), purge: SHUT, initial: { sd: 1500 } },
    starts: { seep: [-0.8, 0.8] },
    places: ['purge valve'],
  },
  {
    // held off its seat by dirt or a weak spring: commanded, it still opens further
    id: 'purge_stuck_open',
    form: 'purge valve held open',
    share: 0.5,
    size: 'seep',
    changes: { seep: holePrior(2, 0.45), initial: { sd: 1500 } },
    starts: { seep: [-0.8, 0.8] },
    places: ['purge valve'],
  },
  { id: 'purge_stuck_closed', changes: { purge: SHUT }, starts: {}, places: ['purge valve', 'purge line'] },
  {
    // dirt or a worn seal under the seat
    id: 'vent_leak',
    share: 0.6,
    size: 'ventShut',
    changes: { ventShut: holePrior(1.3, 0.75) },
    starts: { ventShut: [-0.8, 0.8] },
    places: ['vent valve'],
  },
  {
    // jammed, or its coil does not pull: the whole passage stays open
    id: 'vent_leak',
    form: 'vent valve that stays open',
    share: 0.4,
    size: 'ventShut',
    changes: { ventShut: SOUND.ventOpen },
    starts: { ventShut: [0] },
    places: ['vent valve'],
  },
  {
    id: 'vent_stuck_closed',
    size: 'ventOpen',
    changes: { ventOpen: SHUT_HOLE, initial: { sd: 3000 } },
    starts: { ventOpen: [0.6, 2] },
    places: ['vent valve'],
  },
  {
    id: 'vent_restricted',
    size: 'ventOpen',
    // a nest, a kinked hose: a hole
    share: 0.7,
    changes: { ventOpen: holePrior(1.3, 0.6), initial: { sd: 1500 } },
    standingOnlyPurged: true,
    starts: { ventOpen: [-1, 0.7] },
    places: ['vent side', 'vent valve'],
  },
  {
    // a filter full of dust, a flooded bed: what passes grows with the drop, not with its root
    id: 'vent_restricted',
    form: 'choked filter or bed',
    share: 0.3,
    // the flow of a filling is steady
    unseenIn: ['refuelling'],
    size: 'ventOpen',
    changes: { ventOpen: holePrior(2.5, 0.5), ventLaminar: CHOKED_BED, initial: { sd: 1500 } },
    standingOnlyPurged: true,
    starts: { ventOpen: [0] },
    places: ['vent side', 'canister'],
  },
  {
    id: 'path_blocked',
    size: 'pipe',
    changes: { pipe: SHUT_HOLE, initial: { sd: 1500 } },
    starts: { pipe: [0, 1.4] },
    places: ['tank to canister', 'fill-limit valve'],
  },
  {
    id: 'fill_valve_stuck_open',
    changes: { fullPipe: holePrior(6, 0.35) },
    starts: {},
    places: ['fill-limit valve'],
  },
  { id: 'sensor_bias', changes: { offset: { sd: 450 } }, starts: {}, places: ['pressure sensor'] },
  { id: 'sensor_gain', changes: { gain: { sd: 0.25 } }, starts: { gain: [-1, 1] }, places: ['pressure sensor'] },
  { id: 'sensor_stuck', changes: {}, starts: {}, places: ['pressure sensor'] },
  { id: 'sensor_noisy', changes: {}, starts: {}, places: ['pressure sensor'], pressureLike: 'none' },
  { id: 'canister_saturated', changes: {}, starts: {}, places: ['canister'], pressureLike: 'none' },
];

/**
 * The causes and forms that recordings of these procedures can be weighed for.
 *
 * @param procedures procedure of each recording
 */
export function takingPart(procedures: readonly string[]): Cause[] {
  const seen = CATALOGUE.filter((c) => !procedures.every((p) => c.unseenIn?.includes(p)));
  const shareOf = (id: CauseId) => seen.reduce((sum, c) => sum + (c.id === id ? (c.share ?? 1) : 0), 0);
  return seen.map((c) => (c.share === undefined ? c : { ...c, share: c.share / shareOf(c.id) }));
}

/** Name of a cause's form, unique in the catalogue. */
export const formOf = (cause: Cause): string => cause.form ?? cause.id;

/** Procedures with a running engine. */
const PURGED: readonly string[] = ['vacuum-draw', 'purge-drive'];

/** Whether a car with this cause may hold a pressure of its own when the recording begins. A filling begins with the cap off. */
const mayStand = (cause: Cause, procedure: string): boolean =>
  procedure !== 'refuelling' && (!cause.standingOnlyPurged || PURGED.includes(procedure));

/**
 * The sound car's parameters with the causes' changes.
 *
 * @param parameters of the sound car
 * @param causes the causes to apply
 * @param procedures procedure of each recording, where they are known
 */
export function applyCause(
  parameters: readonly Parameter[],
  causes: readonly Cause[],
  procedures?: readonly string[],
): Parameter[] {
  return parameters.map((p) => {
    let changed = p;
    for (const cause of causes) {
      const c = cause.changes[p.name];
      if (!c) continue;
      const procedure = procedures?.[p.recording];
      if (p.name === 'initial' && procedure !== undefined && !mayStand(cause, procedure)) continue;
      changed = { ...changed, ...c };
    }
    return changed;
  });
}
