/** Phases as a list: for keyboards, screen readers and exact times. */
import type { ReactNode } from 'react';
import { PHASES } from '../../recording/recording.ts';
import { Button } from '../kit/button.tsx';
import { NumberField, SelectField } from '../kit/fields.tsx';
import { useText } from '../text/language.ts';
import { moveBoundary, type PhaseRow, remove, rename, split } from './chart/boundaries.ts';

export interface PhaseTableProps {
  readonly phases: PhaseRow;
  readonly leastS: number;
  readonly isByHand: boolean;
  readonly onChange: (phases: PhaseRow) => void;
  readonly onReset: () => void;
}

export function PhaseTable({ phases, leastS, isByHand, onChange, onReset }: PhaseTableProps): ReactNode {
  const { recording, trade } = useText();
  const text = recording.phases;
  const options = PHASES.map((kind) => ({ value: kind, name: trade.phases[kind] }));
  return (
    <div className="stack">
      <p>{text.words}</p>
      <ol className="phase-list">
        {phases.map((phase, k) => {
          const name = trade.phases[phase.kind];
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a phase is its place in the row
            <li key={k}>
              <SelectField
                label={text.number(k + 1)}
                value={phase.kind}
                options={options}
                onChange={(kind) => onChange(rename(phases, k, kind))}
              />
              <NumberField
                label={k === 0 ? text.from : text.fromOf(k + 1)}
                value={phase.fromS}
                decimals={2}
                unit="s"
                readOnly={k === 0}
                notNumber={recording.facts.badNumber}
                onChange={(fromS) => {
                  if (fromS !== undefined) onChange(moveBoundary(phases, k - 1, fromS, leastS));
                }}
              />
              <div className="buttons">
                <Button
                  aria-label={text.splitOf(name)}
                  disabled={phase.toS - phase.fromS < 4 * leastS}
                  onClick={() => onChange(split(phases, k))}
                >
                  {text.split}
                </Button>
                <Button
                  aria-label={text.removeOf(name)}
                  disabled={phases.length < 2}
                  onClick={() => onChange(remove(phases, k))}
                >
                  {text.remove}
                </Button>
              </div>
            </li>
          );
        })}
      </ol>
      <div className="buttons">
        <Button disabled={!isByHand} onClick={onReset}>
          {text.reset}
        </Button>
        <span className="quiet">{isByHand ? text.byHand : text.found}</span>
      </div>
    </div>
  );
}
