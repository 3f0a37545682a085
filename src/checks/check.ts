/** A check as data: what it needs, costs and tells apart, and what is entered. Words stand in `text/`. */
import type { Complaint } from '../diagnosis/priors/root-causes.ts';
import type { LayoutId } from '../system/car.ts';
import type { Quantity } from '../units/unit-table.ts';
import type { CautionId } from './cautions.ts';
import type { RootCauseId } from './root-causes.ts';
import type { SetupFaultId, SetupId } from './setups.ts';

/** A number that is entered, in SI inside. */
export interface NumberField {
  readonly id: string;
  readonly quantity: Quantity;
  /** Unit offered first, as the unit table prints it. */
  readonly unit: string;
  /** Accepted range in SI; outside it is refused as a slip of unit or sign. */
  readonly least: number;
  readonly most: number;
  readonly optional?: boolean;
}

/** Names of the small likelihoods for numbers; see `likelihood/numeric.ts`. */
export type NumericLikelihood =
  | 'flow'
  | 'hold'
  | 'sections'
  | 'coils'
  | 'sensor zero'
  | 'two readings'
  | 'canister weight'
  | 'vent drop'
  | 'seat loss'
  | 'pump ratio'
  | 'size change';

export interface Outcome {
  readonly id: string;
  /** Root causes that give this outcome; none for the clean one, which stands first. */
  readonly causes: readonly RootCauseId[];
}

export interface Check {
  readonly id: string;
  readonly group: 'look' | 'sensor and wiring' | 'valves' | 'leaks' | 'filling' | 'self-test' | 'recording';
  readonly minutes: number;
  /** Minutes that the car merely stands. */
  readonly waitMinutes?: number;
  /** Consumables, in labour hours. */
  readonly consumablesLabourHours?: number;
  readonly equipment: readonly string[];
  readonly setups: readonly SetupId[];
  /** Checks that must be done before. */
  readonly after: readonly string[];
  readonly layouts?: readonly LayoutId[];
  /** Fuel levels, as fractions, between which it can be done; absent: any. */
  readonly level?: { readonly least: number; readonly most: number };
  /** Only worth while with one of these complaints. */
  readonly complaints?: readonly Complaint[];
  /** Chance that it shows the fault when present, and that it is clean when absent. Judgement (middle of the range). */
  readonly sensitivity: number;
  readonly specificity: number;
  /** Below this diameter (mm) a hole shows less often: the chance that it does then. Judgement. */
  readonly smallHoles?: { readonly belowMm: number; readonly sensitivity: number };
  /** The clean outcome first. */
  readonly outcomes: readonly Outcome[];
  /** 0 none, 1 minor, 2 fuel vapour, 3 open fuel. */
  readonly risk: 0 | 1 | 2 | 3;
  /** Must be acknowledged before the steps show. */
  readonly cautions: readonly CautionId[];
  /** Absent: a choice among the outcomes. */
  readonly numbers?: { readonly fields: readonly NumberField[]; readonly likelihood: NumericLikelihood };
  /** What a failed set-up looks like: its outcome. */
  readonly setupFaults: Readonly<Partial<Record<SetupFaultId, string>>>;
  /** Verification: belongs to a repair, not to the search. */
  readonly verifies?: boolean;
}

type Given = Pick<Check, 'id' | 'minutes' | 'sensitivity' | 'specificity' | 'outcomes'> & Partial<Check>;

/** A check with what is usual left out. */
export const check = (group: Check['group'], given: Given): Check => ({
  group,
  equipment: [],
  setups: [],
  after: [],
  risk: 0,
  cautions: [],
  setupFaults: {},
  ...given,
});
