import { type FormEvent, type ReactNode, useRef, useState } from 'react';
import { checkById } from '../../checks/catalogue/all.ts';
import type { NumberField } from '../../checks/check.ts';
import { type CheckEntry, type EntryProblem, readEntry } from '../../checks/read-entry.ts';
import { whatNumbersMean } from '../../checks/what-numbers-mean.ts';
import { fromSi } from '../../units/convert.ts';
import { unitBySymbol } from '../../units/parse-unit.ts';
import { Button } from '../kit/button.tsx';
import { Check, Choice } from '../kit/choice.tsx';
import { TextField } from '../kit/fields.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { shownSymbol } from '../units/units.ts';
import { useMeantWords } from './meant-words.ts';

interface Props {
  readonly id: string;
  readonly onResult: (entry: CheckEntry) => string | undefined;
}

/** A choice among the answers of a check, or its numbers with units; what cannot be right is refused beside its field. */
export function ResultForm({ id, onResult }: Props): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  const entry = checkById(id);
  const form = useRef<HTMLFormElement>(null);
  const [outcome, setOutcome] = useState<string | null>(null);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [problems, setProblems] = useState<readonly EntryProblem[]>([]);
  const fields = entry.numbers?.fields;
  const [hasNoNumbers, setHasNoNumbers] = useState(false);
  const isChoice = fields === undefined || hasNoNumbers;
  const meantWords = useMeantWords();
  const now = isChoice ? undefined : readEntry(id, { numbers: typed });
  const meant = now?.ok === true && now.meaning !== undefined ? whatNumbersMean(now.meaning) : [];

  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (isChoice && outcome === null) {
      setProblems([{ text: words.choose }]);
      return;
    }
    const given: CheckEntry = isChoice ? { outcome: outcome! } : { numbers: typed };
    const read = readEntry(id, given);
    const found: readonly EntryProblem[] = read.ok ? [] : read.problems;
    const refused = found.length > 0 ? undefined : onResult(given);
    setProblems(refused === undefined ? found : [{ text: refused }]);
    const first = found.find(({ field }) => field !== undefined)?.field;
    if (first !== undefined) form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus();
  };
  const problemOf = (field: string): string | undefined => {
    const text = problems.find((problem) => problem.field === field)?.text;
    return text === undefined ? undefined : checks.refused(text.replace(`${field}: `, ''));
  };

  return (
    <form ref={form} className="stack no-print" onSubmit={submit} noValidate>
      {isChoice ? (
        <Choice
          label={words.result}
          isStacked
          options={entry.outcomes.map(({ id: value }) => ({ value, name: checks.word(value) }))}
          value={outcome}
          onChange={setOutcome}
        />
      ) : (
        <>
          <h4>{words.result}</h4>
          <div className="fields">
            {fields.map((field) => (
              <EntryField
                key={field.id}
                field={field}
                value={typed[field.id] ?? ''}
                error={problemOf(field.id)}
                onChange={(text) => setTyped({ ...typed, [field.id]: text })}
              />
            ))}
          </div>
          {meant.length > 0 && (
            <div role="status" className="meant">
              <p>{words.meant}</p>
              <ul>
                {meant.map((one) => (
                  <li key={one.id}>{meantWords(one)}</li>
                ))}
              </ul>
            </div>
          )}
        </>
      )}
      {fields !== undefined && (
        <Check
          label={words.noNumbers}
          words={words.noNumbersWords}
          checked={hasNoNumbers}
          onChange={(isTicked) => {
            setHasNoNumbers(isTicked);
            setProblems([]);
          }}
        />
      )}
      {problems
        .filter(({ field }) => field === undefined)
        .map(({ text }) => (
          <p key={text} className="warn" role="alert">
            {checks.refused(text)}
          </p>
        ))}
      <div className="buttons">
        <Button type="submit" kind="primary">
          {words.record}
        </Button>
      </div>
    </form>
  );
}

interface FieldProps {
  readonly field: NumberField;
  readonly value: string;
  readonly error: string | undefined;
  readonly onChange: (text: string) => void;
}

function EntryField({ field, value, error, onChange }: FieldProps): ReactNode {
  const { checks } = useText();
  const numbers = useNumbers();
  const words = checks.next;
  const unit = unitBySymbol(field.unit);
  const shown = (valueSi: number): string => {
    const own = fromSi(valueSi, unit);
    return numbers.fixed(own, Math.abs(own) >= 10 || Number.isInteger(own) ? 0 : 2);
  };
  const name = checks.word(field.id);
  return (
    <TextField
      name={field.id}
      label={field.optional ? `${name} (${words.ifKnown})` : name}
      hint={words.numberHint(shownSymbol(field.unit), shown(field.least), shown(field.most))}
      error={error}
      value={value}
      maxLength={60}
      spellCheck={false}
      onChange={onChange}
    />
  );
}
