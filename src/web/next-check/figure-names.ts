/** Names of the planner's figures where they stand apart from their step. */
import type { CircumstanceId } from '../../checks/circumstances.ts';
import type { RepairId } from '../../checks/repairs.ts';
import { ROOT_CAUSES, type RootCauseId } from '../../checks/root-causes.ts';
import type { SetupFaultId, SetupId } from '../../checks/setups.ts';
import { useText } from '../text/language.ts';
import { useCheckWords } from './check-words.ts';

/** "check.T12.minutes" in its three parts; a name in the middle may hold anything but a dot. */
const partsOf = (key: string): readonly [string, string, string] => {
  const [kind = '', id = '', what = ''] = key.split('.');
  return [kind, id, what];
};

/** What the owner noticed has a name; codes are their own. */
const isNamed = <T extends string>(name: string, names: Readonly<Record<T, string>>): name is T =>
  Object.hasOwn(names, name);

export interface FigureNames {
  readonly family: (family: string) => string;
  readonly complaint: (complaint: string) => string;
  /** By what the figure is of and what it says of it. */
  readonly whole: (key: string) => string;
}

export function useFigureNames(): FigureNames {
  const { checks, trade } = useText();
  const { check } = useCheckWords();
  const catalogue = checks.catalogue();
  const names = checks.next.figureNames;
  const family = (of: string): string =>
    ROOT_CAUSES.filter((cause) => cause.family === of)
      .map(({ id }) => catalogue.causes[id])
      .join(' / ');
  const complaint = (of: string): string => (isNamed(of, trade.complaints) ? trade.complaints[of] : of);
  const whole = (key: string): string => {
    const [kind, id, what] = partsOf(key);
    switch (kind) {
      case 'check':
        return `${check(id).name}: ${names[what] ?? what}`;
      case 'repair':
        return `${catalogue.repairs[id as RepairId]}: ${names[what] ?? what}`;
      case 'setup':
        return catalogue.setups[id as SetupId];
      case 'set-up fault':
        return catalogue.setupFaults[id as SetupFaultId];
      case 'prior':
        return `${family(id)}: ${complaint(what)}`;
      case 'circumstance':
        return `${catalogue.circumstances[id as CircumstanceId]}: ${catalogue.causes[what as RootCauseId]}`;
      default:
        return names[id] ?? key;
    }
  };
  return { family, complaint, whole };
}
