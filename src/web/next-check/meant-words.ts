/** What numbers come to, in the words and units of the page. */
import type { Meant } from '../../checks/what-numbers-mean.ts';
import { upperFirst } from '../../report/pressure-names.ts';
import { useDiameter } from '../finding/use-diameter.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';

/** Of a resistance or a plain number, figures that count. */
const decimalsOf = (value: number): number => (Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2);

export function useMeantWords(): (meant: Meant) => string {
  const { checks } = useText();
  const { fixed, percent } = useNumbers();
  const units = useUnits();
  const { interval } = useDiameter();
  const said = (meant: Meant): string => {
    switch (meant.kind) {
      case 'diameter':
        return interval(meant.sizeMm);
      case 'length':
        return units.print('length', meant.value);
      case 'pressure':
        return units.print('pressure', meant.value);
      case 'fraction':
        return percent(meant.value);
      case 'resistance':
        return `${fixed(meant.value, decimalsOf(meant.value))}\u00a0Ω`;
      case 'number':
        return fixed(meant.value, 2);
    }
  };
  return (meant) => `${upperFirst(checks.word(meant.id))}: ${said(meant)}`;
}
