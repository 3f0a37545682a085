import { type ReactNode, useId } from 'react';

interface Option<T extends string> {
  readonly value: T;
  readonly name: string;
  readonly words?: string;
}

interface OneProps<T extends string> {
  readonly label: string;
  readonly options: readonly Option<T>[];
  readonly value: T | null;
  readonly onChange: (value: T) => void;
  readonly isStacked?: boolean;
  readonly disabled?: boolean;
  readonly hint?: string;
}

/** One of several, all in sight. */
export function Choice<T extends string>({
  label,
  options,
  value,
  onChange,
  isStacked = false,
  disabled = false,
  hint,
}: OneProps<T>): ReactNode {
  const name = useId();
  return (
    <fieldset className={isStacked ? 'choice stacked' : 'choice'} disabled={disabled}>
      <legend>{label}</legend>
      {hint && <p className="hint">{hint}</p>}
      <div className="options">
        {options.map((option) => (
          <label className="option" key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span>
              {option.name}
              {option.words && <span className="words">{option.words}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface SeveralProps<T extends string> {
  readonly label: string;
  readonly options: readonly Option<T>[];
  readonly values: readonly T[];
  readonly onChange: (values: T[]) => void;
  readonly disabled?: boolean;
  readonly isStacked?: boolean;
}

/** Any of several, all in sight; the order of the options is kept. */
export function Several<T extends string>({
  label,
  options,
  values,
  onChange,
  disabled = false,
  isStacked = false,
}: SeveralProps<T>): ReactNode {
  return (
    <fieldset className={isStacked ? 'choice stacked' : 'choice'} disabled={disabled}>
      <legend>{label}</legend>
      <div className="options">
        {options.map((option) => (
          <Check
            key={option.value}
            label={option.name}
            {...(option.words === undefined ? {} : { words: option.words })}
            checked={values.includes(option.value)}
            onChange={(checked) =>
              onChange(options.map((o) => o.value).filter((v) => (v === option.value ? checked : values.includes(v))))
            }
          />
        ))}
      </div>
    </fieldset>
  );
}

interface CheckProps {
  readonly label: string;
  readonly words?: string;
  readonly checked: boolean;
  readonly disabled?: boolean;
  readonly onChange: (checked: boolean) => void;
}

export function Check({ label, words, checked, disabled = false, onChange }: CheckProps): ReactNode {
  return (
    <label className="option">
      <input
        type="checkbox"
        checked={checked}
        disabled={disabled}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span>
        {label}
        {words && <span className="words">{words}</span>}
      </span>
    </label>
  );
}
