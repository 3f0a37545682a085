/** What the planner needs of a job. Pure. */
import { type AtHand, cannotNow, type FuelLevel } from '../../checks/at-hand.ts';
import { CHECKS, checkById } from '../../checks/catalogue/all.ts';
import { RECORDINGS } from '../../checks/catalogue/recordings.ts';
import { CIRCUMSTANCE_IDS, type CircumstanceId } from '../../checks/circumstances.ts';
import type { Changes } from '../../checks/figure.ts';
import { DEFAULT_FIGURES } from '../../checks/figures.ts';
import type { JobState, Step } from '../../checks/job-state.ts';
import type { SetupId } from '../../checks/setups.ts';
import type { CheckResult, Job } from '../../jobs/record/job.ts';
import { failedRepairs } from './failed-repairs.ts';

export interface PlanWishes {
  /** 0: working minutes; 1: the whole bill. */
  readonly moneyWeight: number;
  /** Checks that are not wanted here. */
  readonly leftOut: readonly string[];
  /** How the car stands now, besides what its checks show: set-ups that are made. */
  readonly standing: readonly SetupId[];
  readonly hasNoLift: boolean;
  readonly fuelLevel: FuelLevel | 'unknown';
}
export const FIRST_WISHES: PlanWishes = {
  moneyWeight: 1,
  leftOut: [],
  standing: [],
  hasNoLift: false,
  fuelLevel: 'unknown',
};

type FromCatalogue = CheckResult & Required<Pick<CheckResult, 'checkId' | 'answer'>>;

const isFromCatalogue = (check: CheckResult): check is FromCatalogue =>
  check.checkId !== undefined && check.answer !== undefined;

/** The newest result of each catalogue check, in the order in which they were done. */
export function catalogueResults(job: Pick<Job, 'checks'>): readonly FromCatalogue[] {
  const newest = new Map<string, FromCatalogue>();
  for (const check of job.checks) {
    if (!isFromCatalogue(check)) continue;
    newest.delete(check.checkId);
    newest.set(check.checkId, check);
  }
  return [...newest.values()];
}

/** Changes that still name a figure and lie within it; the rest would stop every plan. */
export function usableChanges(changes: Changes): Changes {
  return Object.fromEntries(
    DEFAULT_FIGURES.flatMap(({ key, least, most }) => {
      const value = changes[key];
      return value !== undefined && value >= least && value <= most ? [[key, value]] : [];
    }),
  );
}

/** What was seen before a repair does not speak of the car that was found after it; verifying is the proof's. */
function speaksOfSameCar({ repairs }: Job, foundAt: string | undefined, { checkId, at }: FromCatalogue): boolean {
  if (checkById(checkId).verifies) return false;
  const repairedAt = repairs.map((repair) => repair.at).reduce((a, b) => (a > b ? a : b), '');
  const isFoundAfter = repairedAt !== '' && foundAt !== undefined && foundAt > repairedAt;
  return !isFoundAfter || at > repairedAt;
}

/** Checks and recordings that cannot be done for want of equipment, lift or fuel level, each with what is wanting. */
export function cannotBeDone(atHand: AtHand): ReadonlyMap<string, 'equipment' | 'lift' | 'level'> {
  return new Map(
    [...CHECKS, ...RECORDINGS].flatMap((check) => {
      const why = cannotNow(check, atHand);
      return why === undefined ? [] : [[check.id, why] as const];
    }),
  );
}

const isCircumstance = (name: string): name is CircumstanceId => CIRCUMSTANCE_IDS.some((id) => id === name);

/**
 * @param missing equipment that the shop has not
 * @returns null while there is no car
 */
export function stateOfJob(
  job: Job,
  wishes: PlanWishes,
  changes: Changes,
  missing: readonly string[] = [],
): JobState | null {
  if (job.car === null) return null;
  const finding = job.findings.at(-1);
  const results = catalogueResults(job).filter((result) => speaksOfSameCar(job, finding?.madeAt, result));
  const steps: Step[] = [
    ...results.map(({ checkId, answer }): Step => ({ kind: 'check', id: checkId, entry: answer })),
    ...failedRepairs(job).map((id): Step => ({ kind: 'repair', id })),
  ];
  const made = results.flatMap(({ checkId }): readonly SetupId[] => checkById(checkId).setups);
  const found = finding?.sheet.finding;
  return {
    layout: job.car.layout,
    complaints: job.complaint.types,
    codes: job.codes.map(({ code }) => code),
    circumstances: (job.complaint.circumstances ?? []).filter(isCircumstance),
    ...(found === undefined
      ? {}
      : {
          finding: {
            causes: found.causes.map(({ id, probability, places }) => ({ id, probability, places })),
            ...(found.diameterMm ? { diameterMm: found.diameterMm } : {}),
          },
        }),
    steps,
    leftOut: [...new Set([...wishes.leftOut, ...cannotBeDone({ ...wishes, missing }).keys()])],
    setupsDone: [...new Set([...made, ...wishes.standing])],
    goal: { moneyWeight: wishes.moneyWeight },
    changes: usableChanges(changes),
  };
}
