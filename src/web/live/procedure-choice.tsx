/** What is done with the car: the bus does not tell, so a person is asked. */
import type { ReactNode } from 'react';
import { PROCEDURES, type ProcedureKind } from '../../recording/recording.ts';
import { Choice } from '../kit/choice.tsx';
import { useText } from '../text/language.ts';

export type Said = ProcedureKind | 'none';

interface Props {
  readonly label: string;
  /** null: nothing chosen yet. */
  readonly value: Said | null;
  readonly onChange: (value: Said) => void;
  readonly disabled?: boolean;
}

export function ProcedureChoice({ label, value, onChange, disabled = false }: Props): ReactNode {
  const { live, trade } = useText();
  return (
    <Choice<Said>
      label={label}
      isStacked
      value={value}
      disabled={disabled}
      options={[
        ...PROCEDURES.map((each) => ({
          value: each,
          name: trade.procedures[each],
          words: live.what.procedures[each],
        })),
        { value: 'none', name: live.what.none, words: live.what.procedures.none },
      ]}
      onChange={onChange}
    />
  );
}

export const asProcedure = (said: Said): ProcedureKind | null => (said === 'none' ? null : said);
