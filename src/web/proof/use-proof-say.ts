/** How the pages write figures and names into the sentences of a proof. */
import type { ComparedCondition } from '../../checks/proof/conditions.ts';
import type { ProofSay } from '../../checks/proof/words.ts';
import { useDiameter } from '../finding/use-diameter.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';

export function useProofSay(): ProofSay {
  const { checks, common, trade } = useText();
  const { percent, list, fixed } = useNumbers();
  const { diameter } = useDiameter();
  const units = useUnits();
  const { causes, checks: catalogue } = checks.catalogue();
  const procedures: Readonly<Record<string, string>> = trade.procedures;
  /** A kind of test by its name: a procedure of a recording, or a check. */
  const methodName = (method: string): string => procedures[method] ?? catalogue[method]?.name ?? method;
  const condition = (compared: ComparedCondition, side: 'before' | 'after'): string | undefined => {
    if (compared.what === 'method') return methodName(compared[side]);
    if (compared.what === 'volatility') {
      const range = compared[side];
      if (range === undefined) return undefined;
      const decimals = Math.max(0, units.decimals('pressure') - 1);
      return `${fixed(units.from('pressure', range.low), decimals)} ${common.to} ${units.print('pressure', range.high, decimals)}`;
    }
    const value = compared[side];
    if (value === undefined) return undefined;
    return compared.what === 'fuel level' ? percent(value) : units.print('temperature', value);
  };
  return { percent, list, diameter, condition, cause: (id) => causes[id] };
}
