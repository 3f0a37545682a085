/** How a file is read, on its first rows: guessed, shown, corrected. */
import { type ReactNode, useState } from 'react';
import type { Mapping } from '../../recording/mapping.ts';
import { Button } from '../kit/button.tsx';
import { Message } from '../kit/message.tsx';
import { useText } from '../text/language.ts';
import { FirstRows } from './first-rows.tsx';
import { MappingColumns } from './mapping-columns.tsx';
import { claimedTwice, emptyMapping, withAllColumns } from './mapping-draft.ts';
import { MappingFormat } from './mapping-format.tsx';

export interface MappingEditorProps {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** In use; null when none could be guessed. */
  readonly mapping: Mapping | null;
  readonly guessed: Mapping | null;
  readonly isGiven: boolean;
  readonly isReadOnly?: boolean;
  readonly applyName?: string;
  readonly onApply: (mapping: Mapping) => void;
  /** Absent where there is nothing to go back to. */
  readonly onReset?: () => void;
}

export function MappingEditor(props: MappingEditorProps): ReactNode {
  const { header, rows, mapping, guessed, isGiven, isReadOnly = false, applyName, onApply, onReset } = props;
  const { recording } = useText();
  const text = recording.mapping;
  const start = withAllColumns(mapping ?? guessed ?? emptyMapping(header), header);
  const [draft, setDraft] = useState<Mapping | null>(null);
  const shown = draft ?? start;
  const twice = claimedTwice(shown);
  return (
    <div className="stack">
      <p className="quiet">{isGiven ? text.byHand : text.guessed}</p>
      <FirstRows header={header} rows={rows} mapping={shown} />
      <MappingFormat mapping={shown} header={header} isReadOnly={isReadOnly} onChange={setDraft} />
      <MappingColumns mapping={shown} rows={rows} header={header} isReadOnly={isReadOnly} onChange={setDraft} />
      {twice !== null && <Message isBad>{text.twice(recording.channels[twice])}</Message>}
      {!isReadOnly && (
        <div className="buttons">
          <Button
            kind="primary"
            disabled={twice !== null || (draft === null && applyName === undefined)}
            onClick={() => {
              onApply(shown);
              setDraft(null);
            }}
          >
            {applyName ?? text.apply}
          </Button>
          {(draft !== null || isGiven) && (
            <Button
              onClick={() => {
                setDraft(null);
                if (isGiven) onReset?.();
              }}
            >
              {text.reset}
            </Button>
          )}
          {draft !== null && <span className="quiet">{text.unsaved}</span>}
        </div>
      )}
    </div>
  );
}
