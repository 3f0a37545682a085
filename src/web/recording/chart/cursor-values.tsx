/** The cursor's time as a slider, and what every channel reads there as a table. */
import { type ReactNode, useId, useSyncExternalStore } from 'react';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import type { ChartState } from './chart-state.ts';
import { type Shown, toShown } from './lanes.ts';
import { nearest } from './nearest.ts';
import type { Source } from './source.ts';
import { reveal } from './view.ts';

export interface Readout {
  readonly id: string;
  readonly title: string;
  readonly column: number;
  readonly shown: Shown;
  readonly states?: readonly [off: string, on: string];
}

export interface CursorValuesProps {
  readonly state: ChartState;
  readonly source: Source;
  readonly readouts: readonly Readout[];
  readonly timeOf: (timeS: number) => string;
}

const STEPS = 1000;

export function CursorValues({ state, source, readouts, timeOf }: CursorValuesProps): ReactNode {
  const { recording: text } = useText();
  const { fixed } = useNumbers();
  const { cursorS, view } = useSyncExternalStore(state.subscribe, state.read);
  const id = useId();
  const { all } = state;
  const wide = all.toS - all.fromS || 1;
  const index = nearest(source.timeS, cursorS ?? (view.fromS + view.toS) / 2);
  const atS = source.timeS[index] ?? 0;
  const valueText = ({ column, shown, states }: Readout): string => {
    const si = source.columns[column]?.values[index];
    if (si === undefined || Number.isNaN(si)) return text.chart.absent;
    if (states !== undefined) return states[si >= 0.5 ? 1 : 0];
    return `${fixed(toShown(si, shown), shown.decimals)}\u00a0${shown.unit}`;
  };
  return (
    <div className="stack">
      <div className="cursor-row">
        <label htmlFor={id}>
          {text.chart.cursorAt} <output htmlFor={id}>{timeOf(atS)}</output>
        </label>
        <input
          id={id}
          type="range"
          min={0}
          max={STEPS}
          value={Math.round(((atS - all.fromS) / wide) * STEPS)}
          aria-valuetext={timeOf(atS)}
          onChange={(event) => {
            const t = all.fromS + (Number(event.currentTarget.value) / STEPS) * wide;
            state.point(t);
            state.show(reveal(state.read().view, t));
          }}
        />
      </div>
      <div className="cursor-values">
        <table>
          <caption className="visually-hidden">{text.chart.valuesAt(timeOf(atS))}</caption>
          <tbody>
            {readouts.map((readout) => (
              <tr key={readout.id}>
                <th scope="row">{readout.title}</th>
                <td>{valueText(readout)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}
