/** The cursor's time as a slider, and what every channel reads there as a table. */
import { type ReactNode, useId, useSyncExternalStore } from 'react';
import { useCalmly } from '../../kit/use-calmly.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import type { ChartSnapshot, ChartState } from './chart-state.ts';
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
/** How often the table follows a chart that moves, ms: it is read when it rests. Judgement. */
const TOLD_EVERY_MS = 120;

/** The time that is read: the cursor's, or that of the middle of the view. */
const timeRead = ({ cursorS, view }: ChartSnapshot): number => cursorS ?? (view.fromS + view.toS) / 2;

export function CursorValues({ state, source, readouts, timeOf }: CursorValuesProps): ReactNode {
  const { recording: text } = useText();
  const id = useId();
  // The slider is the hand's own while a cursor stands; without one it follows the view, and that may wait.
  const calm = useCalmly(state.subscribe, state.read, TOLD_EVERY_MS);
  const cursorS = useSyncExternalStore(state.subscribe, () => state.read().cursorS);
  const { all } = state;
  const wide = all.toS - all.fromS || 1;
  const atS = source.timeS[nearest(source.timeS, cursorS ?? timeRead(calm))] ?? 0;
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
      <Values index={nearest(source.timeS, timeRead(calm))} source={source} readouts={readouts} timeOf={timeOf} />
    </div>
  );
}

interface ValuesProps extends Omit<CursorValuesProps, 'state'> {
  readonly index: number;
}

function Values({ index, source, readouts, timeOf }: ValuesProps): ReactNode {
  const { recording: text } = useText();
  const { fixed } = useNumbers();
  const valueText = ({ column, shown, states }: Readout): string => {
    const si = source.columns[column]?.values[index];
    if (si === undefined || Number.isNaN(si)) return text.chart.absent;
    if (states !== undefined) return states[si >= 0.5 ? 1 : 0];
    return `${fixed(toShown(si, shown), shown.decimals)}\u00a0${shown.unit}`;
  };
  return (
    <div className="cursor-values">
      <table>
        <caption className="visually-hidden">{text.chart.valuesAt(timeOf(source.timeS[index] ?? 0))}</caption>
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
  );
}
