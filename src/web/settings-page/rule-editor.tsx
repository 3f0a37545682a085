/** An inspection rule of the place. It is kept when it is whole; a half-typed one stays here until then. */
import { type ReactNode, useState } from 'react';
import type { InspectionRule } from '../../readiness/inspection.ts';
import { Button } from '../kit/button.tsx';
import { Check } from '../kit/choice.tsx';
import { NumberField, TextField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { withKey } from '../kit/with-key.ts';
import { useReadiness } from '../monitor/use-readiness.ts';
import { useText } from '../text/language.ts';
import { useUnits } from '../units/units.ts';

type Allowance = InspectionRule['allowances'][number];

interface Props {
  readonly rule: InspectionRule;
  readonly isReadOnly: boolean;
  readonly onChange: (rule: InspectionRule) => void;
  readonly onRemove: () => void;
}

const FIRST_YEAR = 1970;
const LAST_YEAR = 2100;
const METRE_PER_MILE = 1609.344;
const METRE_PER_KM = 1000;

const isYear = (year: number): boolean => Number.isInteger(year) && year >= FIRST_YEAR && year <= LAST_YEAR;
const isWhole = ({ name, asOf, source, allowances, firstModelYear, permanentCodes }: InspectionRule): boolean =>
  name.trim() !== '' &&
  /^\d{4}-\d{2}-\d{2}$/.test(asOf) &&
  source.trim() !== '' &&
  isYear(firstModelYear) &&
  (permanentCodes === undefined || isYear(permanentCodes.fromYear)) &&
  allowances.length > 0 &&
  allowances.every(
    ({ fromYear, toYear }) => isYear(fromYear) && (toYear === undefined || (isYear(toYear) && toYear >= fromYear)),
  );

export function RuleEditor({ rule, isReadOnly, onChange, onRemove }: Props): ReactNode {
  const { monitor: text, job: jobText } = useText();
  const { words } = useReadiness();
  const [draft, setDraft] = useState<InspectionRule | null>(null);
  const shown = draft ?? rule;
  const set = (next: InspectionRule): void => {
    setDraft(isWhole(next) ? null : next);
    if (isWhole(next)) onChange(next);
  };
  const badYear = (year: number): string | undefined =>
    isYear(year) ? undefined : jobText.car.badYear(FIRST_YEAR, LAST_YEAR);
  const { name, source } = words.rule(rule);
  return (
    <Fold
      label={text.rules.own}
      words={words.ruleLine(name, rule.asOf, words.ruleMark[rule.mark], source)}
      {...(isReadOnly ? { act: text.rules.read } : {})}
    >
      <div className="fields">
        <TextField
          label={text.rules.name}
          value={shown.name}
          maxLength={120}
          readOnly={isReadOnly}
          onChange={(value) => set({ ...shown, name: value })}
        />
        <TextField
          label={text.rules.asOf}
          type="date"
          value={shown.asOf}
          readOnly={isReadOnly}
          onChange={(value) => set({ ...shown, asOf: value })}
        />
        <NumberField
          label={text.rules.firstYear}
          decimals={0}
          value={shown.firstModelYear}
          readOnly={isReadOnly}
          notNumber={jobText.car.notNumber}
          check={badYear}
          onChange={(value) => value !== undefined && set({ ...shown, firstModelYear: value })}
        />
        <TextField
          label={text.rules.source}
          lines={2}
          value={shown.source}
          maxLength={400}
          readOnly={isReadOnly}
          onChange={(value) => set({ ...shown, source: value })}
        />
      </div>
      <div>
        <Allowances shown={shown} isReadOnly={isReadOnly} badYear={badYear} onChange={set} />
      </div>
      <Check
        label={text.rules.continuous}
        checked={shown.countContinuous}
        disabled={isReadOnly}
        onChange={(countContinuous) => set({ ...shown, countContinuous })}
      />
      <Permanent shown={shown} isReadOnly={isReadOnly} badYear={badYear} onChange={set} />
      {!isReadOnly && (
        <div className="buttons">
          <Button kind="bare" onClick={onRemove}>
            {text.rules.remove(rule.name)}
          </Button>
        </div>
      )}
      {draft !== null && (
        <p className="warn" role="alert">
          {text.rules.unfinished}
        </p>
      )}
    </Fold>
  );
}

interface PartProps {
  readonly shown: InspectionRule;
  readonly isReadOnly: boolean;
  readonly badYear: (year: number) => string | undefined;
  readonly onChange: (rule: InspectionRule) => void;
}

function Allowances({ shown, isReadOnly, badYear, onChange }: PartProps): ReactNode {
  const { monitor: text, job: jobText, common } = useText();
  const set = (allowances: readonly Allowance[]): void => onChange({ ...shown, allowances: [...allowances] });
  const change = (at: number, allowance: Allowance): void =>
    set(shown.allowances.map((each, i) => (i === at ? allowance : each)));
  const last = shown.allowances.at(-1);
  return (
    <fieldset className="choice stack">
      <legend>{text.rules.allowances}</legend>
      {shown.allowances.map((allowance, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a span of years has no name of its own.
        <div key={at} className="fields">
          <NumberField
            label={text.rules.fromYear}
            decimals={0}
            value={allowance.fromYear}
            readOnly={isReadOnly}
            notNumber={jobText.car.notNumber}
            check={badYear}
            onChange={(value) => value !== undefined && change(at, { ...allowance, fromYear: value })}
          />
          <NumberField
            label={text.rules.toYear}
            hint={text.rules.toYearHint}
            decimals={0}
            value={allowance.toYear}
            readOnly={isReadOnly}
            notNumber={jobText.car.notNumber}
            check={badYear}
            onChange={(value) => change(at, withKey(allowance, 'toYear', value))}
          />
          <NumberField
            label={text.rules.most}
            decimals={0}
            value={allowance.mostIncomplete}
            readOnly={isReadOnly}
            notNumber={jobText.car.notNumber}
            check={(value) => (Number.isInteger(value) && value >= 0 ? undefined : text.form.whole)}
            onChange={(value) => value !== undefined && change(at, { ...allowance, mostIncomplete: value })}
          />
          <Check
            label={text.rules.onlyEvap}
            checked={allowance.only !== undefined}
            disabled={isReadOnly}
            onChange={(isOnly) =>
              change(at, withKey(allowance, 'only', isOnly ? ['evaporative system' as const] : undefined))
            }
          />
          {!isReadOnly && shown.allowances.length > 1 && (
            <div className="align-end">
              <Button
                kind="bare"
                aria-label={text.rules.removeAllowance(allowance.fromYear)}
                onClick={() => set(shown.allowances.filter((_, i) => i !== at))}
              >
                {common.remove}
              </Button>
            </div>
          )}
        </div>
      ))}
      {!isReadOnly && (
        <div className="buttons">
          <Button
            onClick={() =>
              set([...shown.allowances, { fromYear: (last?.toYear ?? LAST_YEAR - 1) + 1, mostIncomplete: 1 }])
            }
          >
            {text.rules.addAllowance}
          </Button>
        </div>
      )}
    </fieldset>
  );
}

function Permanent({ shown, isReadOnly, badYear, onChange }: PartProps): ReactNode {
  const { monitor: text, job: jobText } = useText();
  const { choice } = useUnits();
  const { permanentCodes: permanent } = shown;
  const perUnit = choice.length === 'in' ? METRE_PER_MILE : METRE_PER_KM;
  const waiver = permanent?.ignoredAfter;
  const whole = (value: number): string | undefined => (value >= 0 ? undefined : text.form.whole);
  const set = (next: NonNullable<InspectionRule['permanentCodes']>): void =>
    onChange({ ...shown, permanentCodes: next });
  return (
    <>
      <Check
        label={text.rules.permanent}
        checked={permanent !== undefined}
        disabled={isReadOnly}
        onChange={(counts) =>
          onChange(withKey(shown, 'permanentCodes', counts ? { fromYear: shown.firstModelYear } : undefined))
        }
      />
      {permanent !== undefined && (
        <div className="fields">
          <NumberField
            label={text.rules.permanentFrom}
            decimals={0}
            value={permanent.fromYear}
            readOnly={isReadOnly}
            notNumber={jobText.car.notNumber}
            check={badYear}
            onChange={(value) => value !== undefined && set({ ...permanent, fromYear: value })}
          />
          <Check
            label={text.rules.ignored}
            checked={waiver !== undefined}
            disabled={isReadOnly}
            onChange={(isWaived) =>
              set(withKey(permanent, 'ignoredAfter', isWaived ? { warmUps: 0, distanceM: 0 } : undefined))
            }
          />
          {waiver !== undefined && (
            <>
              <NumberField
                label={text.rules.warmUps}
                decimals={0}
                value={waiver.warmUps}
                readOnly={isReadOnly}
                notNumber={jobText.car.notNumber}
                check={whole}
                onChange={(value) =>
                  value !== undefined && set({ ...permanent, ignoredAfter: { ...waiver, warmUps: Math.round(value) } })
                }
              />
              <NumberField
                label={text.rules.distance}
                unit={choice.length === 'in' ? 'mi' : 'km'}
                decimals={1}
                value={waiver.distanceM / perUnit}
                readOnly={isReadOnly}
                notNumber={jobText.car.notNumber}
                check={whole}
                onChange={(value) =>
                  value !== undefined && set({ ...permanent, ignoredAfter: { ...waiver, distanceM: value * perUnit } })
                }
              />
            </>
          )}
        </div>
      )}
    </>
  );
}
