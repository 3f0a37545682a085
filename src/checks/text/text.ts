/** The shape of the words in one language; each language is one file. */
import type { CautionId } from '../cautions.ts';
import type { CircumstanceId } from '../circumstances.ts';
import type { Alike, ComparedCondition } from '../proof/conditions.ts';
import type { LeakBudget } from '../proof/leak-budget.ts';
import type { ProofVerdict, SelfTest } from '../proof/proof.ts';
import type { RepairId } from '../repairs.ts';
import type { RootCauseId } from '../root-causes.ts';
import type { SetupFaultId, SetupId } from '../setups.ts';

export interface CheckText {
  readonly name: string;
  /** For someone at the car, one action each. */
  readonly steps: readonly string[];
  /** What limits it, in one sentence. */
  readonly note: string;
}

/** Sentences and names of a proof; figures come set in language and unit. */
export interface ProofText {
  readonly verdict: Readonly<Record<ProofVerdict, string>>;
  readonly figures: {
    /** Of a repaired fault that no size shows. */
    readonly fault: (before: string, after: string) => string;
    readonly limitMet: (percent: string, limit: string) => string;
    readonly madeDifference: (percent: string) => string;
    readonly anotherLeak: (percent: string) => string;
  };
  readonly against: {
    readonly 'self-test failed': string;
    readonly 'limit exceeded': (percent: string, limit: string) => string;
    readonly 'no difference': (percent: string) => string;
    readonly 'fault still there': (percent: string) => string;
  };
  /** Whole sentences, fit for a list of what is not verified. */
  readonly missing: {
    readonly 'no measurement before': string;
    readonly 'no measurement after': string;
    readonly 'limit not certain': (percent: string, limit: string) => string;
    readonly 'difference not certain': (percent: string) => string;
    readonly 'another leak not excluded': (percent: string) => string;
    readonly 'fault not certain before': (percent: string) => string;
    readonly 'fault not certainly gone': (percent: string) => string;
    readonly 'conditions differ': (which: string) => string;
    readonly 'conditions not known': (which: string) => string;
    readonly 'self-test not run': string;
    readonly 'causes not covered': (causes: string) => string;
  };
  readonly conditions: Readonly<Record<ComparedCondition['what'], string>>;
  readonly values: (before: string, after: string) => string;
  readonly alike: Readonly<Record<Alike, string>>;
  readonly sameFill: string;
  readonly selfTest: Readonly<Record<SelfTest, string>>;
  readonly allCovered: string;
  readonly budget: {
    readonly title: string;
    readonly lead: string;
    /** Head of the column that names whole and sections. */
    readonly where: string;
    readonly whole: string;
    readonly sum: string;
    readonly removed: string;
    readonly repaired: (size: string) => string;
    readonly expectedRest: (size: string) => string;
    readonly rest: Readonly<Record<NonNullable<LeakBudget['rest']>, string>>;
  };
}

export interface ChecksText {
  readonly checks: Readonly<Record<string, CheckText>>;
  readonly cautions: Readonly<Record<CautionId, string>>;
  readonly causes: Readonly<Record<RootCauseId, string>>;
  readonly repairs: Readonly<Record<RepairId, string>>;
  readonly setups: Readonly<Record<SetupId, string>>;
  readonly setupFaults: Readonly<Record<SetupFaultId, string>>;
  readonly circumstances: Readonly<Record<CircumstanceId, string>>;
  readonly sendAway: string;
  readonly proof: ProofText;
  /** Outcomes and fields of checks; a word that is absent is shown as its English name. */
  readonly words: Readonly<Record<string, string>>;
}
