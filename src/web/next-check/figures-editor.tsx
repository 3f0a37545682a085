import { type ReactNode, useState } from 'react';
import { CHECKS } from '../../checks/catalogue/all.ts';
import { RECORDINGS } from '../../checks/catalogue/recordings.ts';
import { CIRCUMSTANCE_FIGURES } from '../../checks/circumstances.ts';
import { applyChanges, type Changes, type Figure } from '../../checks/figure.ts';
import { DEFAULT_FIGURES, priorKey } from '../../checks/figures.ts';
import { REPAIR_IDS } from '../../checks/repairs.ts';
import { ROOT_CAUSES } from '../../checks/root-causes.ts';
import { SETUP_FAULT_FIGURES, SETUPS, setupKey } from '../../checks/setups.ts';
import { COMPLAINTS, type Complaint } from '../../diagnosis/priors/root-causes.ts';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/choice.tsx';
import { NumberField, SelectField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useCheckWords } from './check-words.ts';
import { useFigureNames } from './figure-names.ts';
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
  const { checks } = useText();
  const words = checks.next;
  const catalogue = checks.catalogue();
  const { check } = useCheckWords();
  const names = useFigureNames();
  const figures = applyChanges(DEFAULT_FIGURES, changes);
  const [picked, setPicked] = useState<string | null>(null);
  const shown = picked ?? about;
  const shop = figures.filter(({ key }) => key.startsWith('shop.'));
  const ofStep = figures.filter(({ key }) => key.startsWith(`${shown}.`));
  const own = figures.filter(({ mark }) => mark === 'own').map(({ key }) => ({ key, name: names.whole(key) }));
  const steps = [
    ...[...CHECKS, ...RECORDINGS].map(({ id }) => ({ value: `check.${id}`, name: `${id} ${check(id).name}` })),
    ...REPAIR_IDS.map((id) => ({ value: `repair.${id}`, name: words.repairFirst(catalogue.repairs[id]) })),
  ];
  const setups = SETUPS.map((id) => ({ key: setupKey(id), name: catalogue.setups[id] }));
  const families = [...new Set(ROOT_CAUSES.map(({ family }) => family))];
  // without a complaint all of them count alike
  const priors = (complaints.length > 0 ? complaints : COMPLAINTS).map((complaint) => ({
    complaint,
    named: families.map((family) => ({ key: priorKey(family, complaint), name: names.family(family) })),
  }));
  const named = (all: readonly Figure[]) => all.map(({ key }) => ({ key, name: names.whole(key) }));
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
      {fields(shop)}
      <SelectField
        label={words.figuresOf}
        value={steps.some(({ value }) => value === shown) ? shown : steps[0]!.value}
        options={steps}
        onChange={setPicked}
      />
      {fields(ofStep)}
      {own.length > 0 && (
        <details>
          <summary>{words.ownFigures(own.length)}</summary>
          {fields(own)}
        </details>
      )}
      <details>
        <summary>{words.setupFigures}</summary>
        {fields(setups)}
      </details>
      <details>
        <summary>{words.setupFaultFigures}</summary>
        <p className="small quiet">{words.setupFaultsWords}</p>
        {fields(named(SETUP_FAULT_FIGURES))}
      </details>
      {priors.map(({ complaint, named: ofComplaint }) => (
        <details key={complaint}>
          <summary>{words.priorFigures(names.complaint(complaint))}</summary>
          <p className="small quiet">{words.priorWords}</p>
          {fields(ofComplaint)}
        </details>
      ))}
      <details>
        <summary>{words.circumstanceFigures}</summary>
        {fields(named(CIRCUMSTANCE_FIGURES))}
      </details>
    </Fold>
  );
}

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
