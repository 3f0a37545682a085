import type { ReactNode } from 'react';
import { applyChanges, type Changes, type Figure } from '../../checks/figure.ts';
import { DEFAULT_FIGURES, priorKey } from '../../checks/figures.ts';
import { ROOT_CAUSES } from '../../checks/root-causes.ts';
import { SETUPS, setupKey } from '../../checks/setups.ts';
import type { Complaint } from '../../diagnosis/priors/root-causes.ts';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/choice.tsx';
import { NumberField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import type { PlanWishes } from './state-of-job.ts';

interface Props {
  readonly changes: Changes;
  readonly onChange: (changes: Changes) => void;
  readonly error: unknown;
  /** Check or repair now before the reader, as its figures are keyed: "check.T12", "repair.cap". */
  readonly about: string;
  /** Complaints of the job: how often each fault is behind them can be changed. */
  readonly complaints: readonly Complaint[];
  readonly wishes: PlanWishes;
  readonly onWish: (change: Partial<PlanWishes>) => void;
}

/** Minutes, costs and probabilities behind the plan: the shop's own, and those of the step before the reader. */
export function FiguresEditor({ changes, onChange, error, about, complaints, wishes, onWish }: Props): ReactNode {
  const { checks, trade } = useText();
  const words = checks.next;
  const catalogue = checks.catalogue();
  const figures = applyChanges(DEFAULT_FIGURES, changes);
  const here = figures.filter(({ key }) => key.startsWith('shop.') || key.startsWith(`${about}.`));
  const setups = SETUPS.map((id) => ({ key: setupKey(id), name: catalogue.setups[id] }));
  const families = [...new Set(ROOT_CAUSES.map(({ family }) => family))];
  const faultsOf = (family: string): string =>
    ROOT_CAUSES.filter((cause) => cause.family === family)
      .map(({ id }) => catalogue.causes[id])
      .join(' / ');
  const priors = complaints.map((complaint) => ({
    complaint,
    named: families.map((family) => ({ key: priorKey(family, complaint), name: faultsOf(family) })),
  }));
  const set = (key: string, value: number | undefined): void => {
    const { [key]: _, ...rest } = changes;
    onChange(value === undefined ? rest : { ...rest, [key]: value });
  };
  const fields = (named: readonly { readonly key: string; readonly name?: string }[]): ReactNode => (
    <div className="fields">
      {named.flatMap(({ key, name }) =>
        figures
          .filter((figure) => figure.key === key)
          .map((figure) => <FigureField key={key} figure={figure} name={name} onSet={(value) => set(key, value)} />),
      )}
    </div>
  );
  return (
    <Fold label={words.figures} words={words.figuresWords} act={words.show}>
      <Choice
        label={words.goal}
        isStacked
        options={[
          { value: 'bill', name: words.goals.bill },
          { value: 'work', name: words.goals.work },
        ]}
        value={wishes.moneyWeight > 0 ? 'bill' : 'work'}
        onChange={(goal) => onWish({ moneyWeight: goal === 'bill' ? 1 : 0 })}
      />
      {error !== null && <ErrorMessage error={error} />}
      {fields(here)}
      <details>
        <summary>{words.setupFigures}</summary>
        {fields(setups)}
      </details>
      {priors.map(({ complaint, named }) => (
        <details key={complaint}>
          <summary>
            {words.priorFigures(isNamed(complaint, trade.complaints) ? trade.complaints[complaint] : complaint)}
          </summary>
          <p className="small quiet">{words.priorWords}</p>
          {fields(named)}
        </details>
      ))}
    </Fold>
  );
}

/** What the owner noticed has a name; codes are their own. */
const isNamed = <T extends string>(complaint: string, names: Readonly<Record<T, string>>): complaint is T =>
  Object.hasOwn(names, complaint);

function FigureField({
  figure,
  name: given,
  onSet,
}: {
  readonly figure: Figure;
  /** Absent: by what the figure says of its step. */
  readonly name: string | undefined;
  readonly onSet: (value: number | undefined) => void;
}): ReactNode {
  const { checks, job } = useText();
  const numbers = useNumbers();
  const words = checks.next;
  const what = figure.key.split('.').at(-1) ?? '';
  const name = given ?? words.figureNames[what] ?? figure.key;
  const reason = figure.mark === 'own' ? undefined : words.figureReasons[what];
  const decimals = figure.unit === 'min' || figure.unit === 'money/h' ? 1 : 3;
  return (
    <div>
      <NumberField
        label={name}
        unit={checks.word(figure.unit)}
        hint={reason === undefined ? checks.word(figure.mark) : `${checks.word(figure.mark)}: ${reason}`}
        decimals={decimals}
        value={figure.value}
        notNumber={job.car.notNumber}
        check={(value) =>
          value < figure.least || value > figure.most
            ? words.outside(numbers.fixed(figure.least, 0), numbers.fixed(figure.most, 0))
            : undefined
        }
        onChange={(value) => value !== undefined && value !== figure.value && onSet(value)}
      />
      {figure.mark === 'own' && (
        <Button kind="bare" aria-label={words.resetFigure(name)} onClick={() => onSet(undefined)}>
          {words.reset}
        </Button>
      )}
    </div>
  );
}
