import { type ReactNode, useId } from 'react';
import type { Job } from '../../../jobs/record/job.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/fields.tsx';
import { withKey } from '../../kit/with-key.ts';
import { useText } from '../../text/language.ts';

type Code = Job['codes'][number];
type Line = NonNullable<Code['freezeFrame']>[number];

interface Props {
  readonly code: Code;
  readonly isReadOnly: boolean;
  readonly onChange: (code: Code) => void;
}

/** The conditions when the code was set, as they were read. */
export function FreezeFrame({ code, isReadOnly, onChange }: Props): ReactNode {
  const text = useText();
  const words = text.job.complaint;
  const lines = code.freezeFrame ?? [];
  const list = useId();
  const set = (next: readonly Line[]): void =>
    onChange(withKey(code, 'freezeFrame', next.length === 0 ? undefined : [...next]));
  const inWords = lines
    .filter((line) => line.name !== '' || line.value !== '')
    .map(
      (line) =>
        `${words.frameNameShown(line.name)} ${line.value}${line.unit === undefined ? '' : `\u00a0${line.unit}`}`,
    )
    .join(' · ');
  if (isReadOnly) return <p className="small quiet">{inWords === '' ? words.noFreezeFrame : inWords}</p>;
  const change = (at: number, line: Line): void => set(lines.map((l, i) => (i === at ? line : l)));
  return (
    <details>
      <summary className="small">
        <span>
          {words.freezeFrame}
          <span className="visually-hidden"> {code.code}</span>
          {inWords !== '' && `: ${inWords}`}
        </span>
      </summary>
      <fieldset className="choice stack">
        <legend className="visually-hidden">{words.freezeFrameOf(code.code)}</legend>
        {lines.map((line, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line has no name of its own until one is typed.
          <div className="line-fields" key={at}>
            <TextField
              label={words.frameName}
              value={words.frameNameShown(line.name)}
              list={list}
              maxLength={80}
              onChange={(name) => change(at, { ...line, name })}
            />
            <TextField
              label={words.frameValue}
              value={line.value}
              maxLength={80}
              onChange={(value) => change(at, { ...line, value })}
            />
            <TextField
              label={words.frameUnit}
              value={line.unit ?? ''}
              maxLength={20}
              onChange={(unit) => change(at, withKey(line, 'unit', unit))}
            />
            <Button
              kind="bare"
              aria-label={words.removeLine(words.frameNameShown(line.name))}
              onClick={() => set(lines.filter((_, i) => i !== at))}
            >
              {text.common.remove}
            </Button>
          </div>
        ))}
        <datalist id={list}>
          {words.suggestions.map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
        <div className="buttons">
          <Button onClick={() => set([...lines, { name: '', value: '' }])}>{words.addLine}</Button>
        </div>
      </fieldset>
    </details>
  );
}
