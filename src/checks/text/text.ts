/** The shape of the words in one language; each language is one file. */
import type { CautionId } from '../cautions.ts';
import type { CircumstanceId } from '../circumstances.ts';
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

export interface ChecksText {
  readonly checks: Readonly<Record<string, CheckText>>;
  readonly cautions: Readonly<Record<CautionId, string>>;
  readonly causes: Readonly<Record<RootCauseId, string>>;
  readonly repairs: Readonly<Record<RepairId, string>>;
  readonly setups: Readonly<Record<SetupId, string>>;
  readonly setupFaults: Readonly<Record<SetupFaultId, string>>;
  readonly circumstances: Readonly<Record<CircumstanceId, string>>;
  readonly sendAway: string;
  /** Outcomes and fields of checks; a word that is absent is shown as its English name. */
  readonly words: Readonly<Record<string, string>>;
}
