/** The text equivalent of the chart: a sentence, and a table that print shows too. */
import type { ReactNode } from 'react';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import type { PhaseRow } from './chart/boundaries.ts';
import type { Readout } from './chart/cursor-values.tsx';
import { toShown } from './chart/lanes.ts';
import type { Source } from './chart/source.ts';
import { rangeWithin } from './figures.ts';

export interface ChartFiguresProps {
  /** Names the chart. */
  readonly name: string;
  readonly sentence: string;
  readonly source: Source;
  readonly readouts: readonly Readout[];
  readonly phases: PhaseRow;
}

export function ChartFigures({ name, sentence, source, readouts, phases }: ChartFiguresProps): ReactNode {
  const { recording, trade, common } = useText();
  const { fixed } = useNumbers();
  const text = recording.figures;
  const rangeText = ({ column, shown, states }: Readout, fromS: number, toS: number): string => {
    const range = rangeWithin(source, source.columns[column]!, { fromS, toS });
    if (range === null) return recording.chart.absent;
    const [low, high] = range;
    if (states !== undefined) return low === high ? states[low >= 0.5 ? 1 : 0] : `${states[0]}, ${states[1]}`;
    const [a, b] = [toShown(low, shown), toShown(high, shown)].map((value) => fixed(value, shown.decimals));
    return a === b ? a! : `${a} ${common.to} ${b}`;
  };
  return (
    <div className="stack">
      <p>
        {sentence} {text.pauses(source.pauses.length)}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label={text.caption(name)}>
        <table className="small">
          <caption className="visually-hidden">{text.caption(name)}</caption>
          <thead>
            <tr>
              <th scope="col">{text.channel}</th>
              {phases.map((phase, k) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a phase is its place in the row
                <th scope="col" key={k}>
                  {trade.phases[phase.kind]}
                  <br />
                  {fixed(phase.fromS, 1)} {common.to} {fixed(phase.toS, 1)} s
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {readouts.map((readout) => (
              <tr key={readout.id}>
                <th scope="row">
                  {readout.title}
                  {readout.shown.unit === '' ? '' : `, ${readout.shown.unit}`}
                </th>
                {phases.map((phase, k) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a phase is its place in the row
                  <td key={k}>{rangeText(readout, phase.fromS, phase.toS)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}
