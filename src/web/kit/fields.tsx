/** A field is a shade with a line under it and its name above it. */
import { type HTMLInputTypeAttribute, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { useNumbers } from '../text/numbers.ts';

interface Named {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly wide?: boolean;
}

interface Shell extends Named {
  readonly isQuote?: boolean;
  readonly children: (ids: { id: string; describedBy: string | undefined }) => ReactNode;
}

export function FieldShell({ label, hint, error, wide = false, isQuote = false, children }: Shell): ReactNode {
  const id = useId();
  const describedBy = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined;
  return (
    <div className={`field${wide ? ' wide' : ''}${isQuote ? ' quote' : ''}`}>
      <label className="name" htmlFor={id}>
        {label}
      </label>
      {children({ id, describedBy })}
      {hint && (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {error && (
        <span className="error" id={`${id}-error`} role="alert">
          {error}
        </span>
      )}
    </div>
  );
}

interface TextProps extends Named {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly lines?: number;
  readonly type?: HTMLInputTypeAttribute;
  readonly readOnly?: boolean;
  readonly required?: boolean;

  readonly autoComplete?: string;
  readonly maxLength?: number;
  readonly list?: string;
  readonly name?: string;
  readonly onBlur?: () => void;
  readonly spellCheck?: boolean;
  /** Somebody's own words: set as a quotation once they stand there. */
  readonly isQuote?: boolean;
}

export function TextField({
  label,
  hint,
  error,
  wide,
  value,
  onChange,
  lines = 1,
  type = 'text',
  isQuote = false,
  ...rest
}: TextProps): ReactNode {
  return (
    <FieldShell label={label} hint={hint} error={error} wide={wide ?? lines > 1} isQuote={isQuote}>
      {({ id, describedBy }) => {
        const shared = {
          id,
          value,
          'aria-describedby': describedBy,
          'aria-invalid': error ? true : undefined,
          autoComplete: 'off',
          ...rest,
        };
        return lines > 1 ? (
          <textarea
            {...shared}
            {...(isQuote ? { placeholder: ' ' } : {})}
            rows={lines}
            onChange={(event) => onChange(event.target.value)}
          />
        ) : (
          <input {...shared} type={type} onChange={(event) => onChange(event.target.value)} />
        );
      }}
    </FieldShell>
  );
}

interface SelectProps<T extends string> extends Named {
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly name: string }[];
  readonly onChange: (value: T) => void;
  readonly disabled?: boolean;
}

export function SelectField<T extends string>({
  label,
  hint,
  error,
  wide,
  value,
  options,
  onChange,
  disabled,
}: SelectProps<T>): ReactNode {
  return (
    <FieldShell label={label} hint={hint} error={error} wide={wide ?? false}>
      {({ id, describedBy }) => (
        <select
          id={id}
          value={value}
          disabled={disabled}
          aria-describedby={describedBy}
          onChange={(event) => onChange(event.target.value as T)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.name}
            </option>
          ))}
        </select>
      )}
    </FieldShell>
  );
}

interface NumberProps extends Named {
  /** Absent stays absent: an empty field. */
  readonly value: number | undefined;
  readonly onChange: (value: number | undefined) => void;
  readonly unit?: string;
  readonly decimals?: number;
  readonly readOnly?: boolean;
  /** Words when the number cannot be taken; undefined when it can. */
  readonly check?: (value: number) => string | undefined;
  readonly notNumber: string;
}

/** Decimal comma and point both count; nothing is handed on that is no number. */
export function parseTyped(text: string): number | undefined | 'unreadable' {
  const plain = text
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\s\u00a0\u202f]/g, '');
  if (plain === '') return undefined;
  if (!/^[-+]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain)) return 'unreadable';
  return Number(plain.replace(',', '.'));
}

/** As it is typed: no zeros that nobody wrote, the decimal mark of the language. */
const typed = (value: number | undefined, decimals: number, mark: string): string =>
  value === undefined ? '' : String(Number(value.toFixed(decimals))).replace('.', mark);

export function NumberField({
  label,
  hint,
  error,
  wide,
  value,
  onChange,
  unit,
  decimals = 3,
  readOnly,
  check,
  notNumber,
}: NumberProps): ReactNode {
  const { fixed } = useNumbers();
  const mark = fixed(0.5, 1).charAt(1);
  const [text, setText] = useState(() => typed(value, decimals, mark));
  const [isTyping, setIsTyping] = useState(false);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  // What was handed on last, so that a value from elsewhere replaces the text and our own does not.
  const last = useRef(value);
  useEffect(() => {
    if (isTyping && value === last.current) return;
    last.current = value;
    if (!isTyping) {
      setText(typed(value, decimals, mark));
      setProblem(undefined);
    }
  }, [value, decimals, mark, isTyping]);
  const take = (next: string): void => {
    setText(next);
    const number = parseTyped(next);
    const wrong = number === 'unreadable' ? notNumber : number === undefined ? undefined : check?.(number);
    setProblem(wrong);
    if (wrong !== undefined || number === 'unreadable') return;
    last.current = number;
    onChange(number);
  };
  return (
    <FieldShell label={label} hint={hint} error={problem ?? error} wide={wide ?? false}>
      {({ id, describedBy }) => (
        <span className="with-unit">
          <input
            id={id}
            inputMode="decimal"
            autoComplete="off"
            value={text}
            readOnly={readOnly}
            aria-describedby={[describedBy, unit && `${id}-unit`].filter(Boolean).join(' ') || undefined}
            aria-invalid={problem || error ? true : undefined}
            onFocus={() => setIsTyping(true)}
            onBlur={() => {
              // A text that cannot be taken stays, with its words, until it is corrected.
              if (problem === undefined) setIsTyping(false);
            }}
            onChange={(event) => take(event.target.value)}
          />
          {unit && (
            <span className="unit" id={`${id}-unit`}>
              {unit}
            </span>
          )}
        </span>
      )}
    </FieldShell>
  );
}

interface FileProps {
  readonly label: string;
  readonly kind?: 'primary' | 'plain' | 'bare';
  readonly accept?: string;
  readonly multiple?: boolean;
  readonly disabled?: boolean;
  readonly onFiles: (files: readonly File[]) => void;
}

/** A button that asks for files. */
export function FileButton({
  label,
  kind = 'plain',
  accept,
  multiple = false,
  disabled = false,
  onFiles,
}: FileProps): ReactNode {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button
        type="button"
        className={`button ${kind === 'plain' ? '' : kind}`.trim()}
        disabled={disabled}
        onClick={() => input.current?.click()}
      >
        {label}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={label}
        accept={accept}
        multiple={multiple}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          // The same file may be chosen twice in a row.
          event.target.value = '';
          if (files.length > 0) onFiles(files);
        }}
      />
    </>
  );
}
