/** Every number behind the planner that a shop may change, with its mark; reset is taking the change away. */
import { COMPLAINTS, ROOT_CAUSE_PERCENT } from '../diagnosis/priors/root-causes.ts';
import { CHECKS } from './catalogue/all.ts';
import { RECORDINGS } from './catalogue/recordings.ts';
import type { Check } from './check.ts';
import { CIRCUMSTANCE_FIGURES } from './circumstances.ts';
import { applyChanges, type Changes, type Figure } from './figure.ts';
import { REPAIR_FIGURES } from './repairs.ts';
import { SETUP_FAULT_FIGURES, SETUP_FIGURES } from './setups.ts';

export const checkKey = (
  id: string,
  what: 'minutes' | 'wait' | 'consumables' | 'sensitivity' | 'specificity',
): string => `check.${id}.${what}`;
export const priorKey = (family: string, complaint: string): string => `prior.${family}.${complaint}`;

const workFigures = (check: Check): Figure[] => [
  { key: checkKey(check.id, 'minutes'), value: check.minutes, mark: 'judgement', unit: 'min', least: 0, most: 3000 },
  {
    key: checkKey(check.id, 'wait'),
    value: check.waitMinutes ?? 0,
    mark: 'judgement',
    unit: 'min',
    least: 0,
    most: 20_000,
  },
  {
    key: checkKey(check.id, 'consumables'),
    value: check.consumablesLabourHours ?? 0,
    mark: 'judgement',
    unit: 'labour hours',
    least: 0,
    most: 50,
  },
];

const CHECK_FIGURES: readonly Figure[] = CHECKS.flatMap((check): Figure[] => [
  ...workFigures(check),
  ...(['sensitivity', 'specificity'] as const).map(
    (what): Figure => ({
      key: checkKey(check.id, what),
      value: check[what],
      mark: 'judgement',
      unit: 'probability',
      least: 0.01,
      most: 0.999,
    }),
  ),
]);

const PRIOR_FIGURES: readonly Figure[] = Object.entries(ROOT_CAUSE_PERCENT).flatMap(([family, percents]) =>
  COMPLAINTS.map(
    (complaint, i): Figure => ({
      key: priorKey(family, complaint),
      value: (percents[i] ?? 0) / 100,
      mark: 'judgement',
      unit: 'probability',
      least: 0,
      most: 1,
    }),
  ),
);

const SHOP_FIGURES: readonly Figure[] = [
  { key: 'shop.rate', value: 90, mark: 'judgement', unit: 'money/h', least: 1, most: 10_000 },
  // an hour in which the car stands costs a tenth of an hour of work: the bay or the yard, and the customer's patience
  { key: 'shop.waiting', value: 0.1, mark: 'judgement', unit: 'fraction', least: 0, most: 1 },
  // a car sent away unproven still needs its repair, which is counted by itself. Besides, when it comes back: searching from the
  // start, 120 (twice what finding the fault takes on average, since it is the hard cars that are left); reception, road and
  // hand-over again, 30; not charged or made good to the customer, 60; a failed inspection or a worse fault meanwhile, 30
  { key: 'shop.unproven', value: 240, mark: 'judgement', unit: 'min', least: 0, most: 100_000 },
];

export const DEFAULT_FIGURES: readonly Figure[] = [
  ...SHOP_FIGURES,
  ...SETUP_FIGURES,
  ...SETUP_FAULT_FIGURES,
  ...CHECK_FIGURES,
  ...REPAIR_FIGURES,
  ...PRIOR_FIGURES,
  ...CIRCUMSTANCE_FIGURES,
  ...RECORDINGS.flatMap((recording) => workFigures(recording)),
];

/** Values by key, with a shop's changes. */
export function figureValues(changes: Changes = {}): (key: string) => number {
  const values = new Map(applyChanges(DEFAULT_FIGURES, changes).map((figure) => [figure.key, figure.value]));
  return (key) => {
    const value = values.get(key);
    if (value === undefined) throw new Error(`no figure is called "${key}"`);
    return value;
  };
}
