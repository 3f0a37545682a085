/** Names of checks, causes, repairs and steps in the language chosen. */
import type { ProbableCause } from '../../checks/plan.ts';
import type { TreeStep } from '../../checks/plan-tree.ts';
import type { RepairId } from '../../checks/repairs.ts';
import type { RootCauseId } from '../../checks/root-causes.ts';
import type { CheckText } from '../../checks/text/text.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { allSaid, useInUnits } from '../units/use-in-units.ts';

/** Outcomes of recordings that are simulated have numbers for names. */
const TRACE = /^trace \d+$/;

/** Steps stand on their own, as the names of checks do. */
const capital = (words: string): string => words.charAt(0).toLocaleUpperCase() + words.slice(1);

export interface CheckWords {
  readonly check: (id: string) => CheckText;
  readonly step: (step: Pick<TreeStep, 'kind' | 'id'>) => string;
  /** An answer; a simulated trace goes by the cause that it most likely comes from. */
  readonly answer: (outcome: string, likeliest: RootCauseId | undefined) => string;
  readonly causes: (causes: readonly ProbableCause[], most?: number) => string;
  /** Whole minutes, and whole money. */
  readonly whole: (value: number) => string;
}

export function useCheckWords(): CheckWords {
  const { checks } = useText();
  const numbers = useNumbers();
  const inUnits = useInUnits();
  const catalogue = checks.catalogue();
  const check = (id: string): CheckText => allSaid(catalogue.checks[id] ?? { name: id, steps: [], note: '' }, inUnits);
  return {
    check,
    step: ({ kind, id }) => {
      if (kind === 'check') return check(id).name;
      return capital(kind === 'repair' ? catalogue.repairs[id as RepairId] : catalogue.sendAway);
    },
    answer: (outcome, likeliest) =>
      TRACE.test(outcome) && likeliest !== undefined
        ? checks.next.likeTrace(catalogue.causes[likeliest])
        : checks.word(outcome),
    causes: (causes, most = 3) =>
      causes
        .slice(0, most)
        .map(({ id, probability }) => `${catalogue.causes[id]} ${numbers.percent(probability)}`)
        .join('; '),
    whole: (value) => numbers.fixed(value, 0),
  };
}
