import { type ReactNode, useState } from 'react';
import type { CauseId } from '../../../diagnosis/finding.ts';
import { Button } from '../../kit/button.tsx';
import { SelectField } from '../../kit/fields.tsx';
import { useText } from '../../text/language.ts';
import { useSheet } from '../sheet-context.ts';
import { causesToChoose } from './cause-order.ts';

interface Props {
  readonly label: string;
  readonly causes: readonly CauseId[];
  readonly onChange: (causes: CauseId[]) => void;
}

/** Picks causes one by one; those picked stand below with a way to take them out. */
export function CausePicker({ label, causes, onChange }: Props): ReactNode {
  const { job } = useSheet();
  const text = useText();
  const words = text.job.check;
  const [count, setCount] = useState(0);
  const open = causesToChoose(job).filter((cause) => !causes.includes(cause));
  return (
    <div className="stack picker">
      <SelectField<CauseId | ''>
        // Back to its first line after each pick.
        key={count}
        label={label}
        value=""
        options={[
          { value: '', name: words.pickCause },
          ...open.map((value) => ({ value, name: text.trade.causes[value] })),
        ]}
        onChange={(cause) => {
          if (cause === '') return;
          onChange([...causes, cause]);
          setCount(count + 1);
        }}
      />
      {causes.length > 0 && (
        <ul className="rows small">
          {causes.map((cause) => (
            <li key={cause} className="row-head">
              <span>{text.trade.causes[cause]}</span>
              <Button
                kind="bare"
                aria-label={words.removeCause(text.trade.causes[cause])}
                onClick={() => onChange(causes.filter((c) => c !== cause))}
              >
                {text.common.remove}
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
