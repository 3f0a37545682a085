/** How the pages write figures and names into the sentences of a proof. */
import type { ComparedCondition } from '../../checks/proof/conditions.ts';
import type { ProofSay } from '../../checks/proof/words.ts';
import { useDiameter } from '../finding/use-diameter.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

export function useProofSay(): ProofSay {
  const { checks } = useText();
  const { percent, list } = useNumbers();
  const { diameter } = useDiameter();
  const { causes } = checks.catalogue();
  return { percent, list, diameter, cause: (id) => causes[id] };
}

/** A kind of test by its name: a procedure of a recording, or a check. */
export function useMethodName(): (method: Extract<ComparedCondition, { what: 'method' }>['before']) => string {
  const { checks, trade } = useText();
  const procedures: Readonly<Record<string, string>> = trade.procedures;
  const catalogue = checks.catalogue();
  return (method) => procedures[method] ?? catalogue.checks[method]?.name ?? method;
}
