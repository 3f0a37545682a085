/** One condition of the car's monitor: read at rest, changed where it stands, with its mark. */
import { type ReactNode, useState } from 'react';
import type { Condition } from '../../readiness/conditions.ts';
import { Button } from '../kit/button.tsx';
import { Check } from '../kit/choice.tsx';
import { NumberField, TextField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { withKey } from '../kit/with-key.ts';
import { codesIn } from '../sheet/complaint/code-form.ts';
import { useText } from '../text/language.ts';
import { useUnits } from '../units/units.ts';
import { figuresOf, problemOf } from './condition-figures.ts';
import { useReadiness } from './use-readiness.ts';

interface Props {
  readonly condition: Condition;
  /** Not the typical one any more. */
  readonly isOwn: boolean;
  readonly onChange: (condition: Condition) => void;
  readonly onRemove: () => void;
}

/** In the record; each language has its own words for it. */
const BY_HAND = 'given by hand';

export function ConditionFold({ condition, isOwn, onChange, onRemove }: Props): ReactNode {
  const { monitor: text, job: jobText } = useText();
  const { words, figures } = useReadiness();
  const units = useUnits();
  // What cannot be taken stays here with its words until it can.
  const [draft, setDraft] = useState<Condition | null>(null);
  const shown = draft ?? condition;
  const problem = problemOf(shown);
  const name = words.condition(condition.id);
  const set = (next: Condition): void => {
    // A figure that is changed is no longer the one that the mark speaks of.
    const marked = next.mark === condition.mark && !isOwn ? { ...next, mark: BY_HAND } : next;
    const isGood = problemOf(marked) === undefined && marked.mark.trim() !== '';
    setDraft(isGood ? null : marked);
    if (isGood) onChange(marked);
  };
  return (
    <Fold label={name} words={`${words.wanted(condition, figures)} (${words.mark(condition.mark)})`}>
      <div className="fields">
        {figuresOf(shown, units).map(({ key, label, unit, decimals, toShown, toSi, isLimit }) => {
          const value = (shown as unknown as Readonly<Record<string, number | undefined>>)[key];
          return (
            <NumberField
              key={`${key} ${unit}`}
              label={text.conditions[label]}
              unit={unit}
              decimals={decimals}
              value={value === undefined ? undefined : toShown(value)}
              notNumber={jobText.car.notNumber}
              onChange={(typed) => {
                if (typed === undefined && isLimit !== true) return;
                set(withKey(shown, key as keyof Condition, (typed === undefined ? undefined : toSi(typed)) as never));
              }}
            />
          );
        })}
        {shown.kind === 'no-codes' && <Codes codes={shown.codes} onChange={(codes) => set({ ...shown, codes })} />}
        {shown.kind === 'time-in-range' && (
          <Check
            label={text.conditions.unbroken}
            checked={shown.unbroken}
            onChange={(unbroken) => set({ ...shown, unbroken })}
          />
        )}
        <TextField
          label={text.conditions.source}
          wide
          value={words.mark(shown.mark)}
          maxLength={400}
          onChange={(mark) => {
            const next = { ...shown, mark };
            const isGood = mark.trim() !== '' && problemOf(next) === undefined;
            setDraft(isGood ? null : next);
            if (isGood) onChange(next);
          }}
        />
      </div>
      {problem !== undefined && (
        <p className="warn" role="alert">
          {text.conditions[problem]}
        </p>
      )}
      <div className="buttons">
        <Button kind="bare" onClick={onRemove}>
          {text.conditions.removeOne(name)}
        </Button>
      </div>
    </Fold>
  );
}

interface CodesProps {
  readonly codes: readonly string[];
  readonly onChange: (codes: string[]) => void;
}

function Codes({ codes, onChange }: CodesProps): ReactNode {
  const { monitor: text, job: jobText } = useText();
  const [typed, setTyped] = useState(codes.join(' '));
  const read = codesIn(typed);
  return (
    <TextField
      label={text.conditions.codes}
      lines={2}
      value={typed}
      spellCheck={false}
      error={read === null || read.length === 0 ? jobText.complaint.badCode : undefined}
      onChange={(value) => {
        const next = value.toUpperCase();
        setTyped(next);
        const found = codesIn(next);
        if (found !== null && found.length > 0) onChange(found);
      }}
    />
  );
}
