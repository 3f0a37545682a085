import type { ReactNode } from 'react';
import type { MonitorReading } from '../../jobs/record/monitor.ts';
import { Fold } from '../kit/fold.tsx';
import { useText } from '../text/language.ts';
import { useReadiness } from './use-readiness.ts';

/** Units that say nothing to a reader. */
const BARE = ['1', 'raw', 'counts'];
const FIGURES = 4;

/** Results of service $06 of the evaporative monitors, each with its limits. */
export function TestResults({ results }: Pick<MonitorReading, 'results'>): ReactNode {
  const { monitor: text } = useText();
  const { words, figures } = useReadiness();
  if (results.length === 0) return null;
  const shown = (value: number, unit: string): string => {
    const decimals = Math.max(0, FIGURES - 1 - Math.floor(Math.log10(Math.abs(value) || 1)));
    const number = String(Number(value.toFixed(Math.min(decimals, 6)))).replace('-', '\u2212');
    const spoken = figures.number(0.5, 1).includes(',') ? number.replace('.', ',') : number;
    return BARE.includes(unit) ? spoken : `${spoken}\u00a0${unit}`;
  };
  const failed = results.filter(({ passed }) => !passed).length;
  return (
    <Fold
      label={text.said.results}
      words={failed === 0 ? text.said.allPassed : text.said.someFailed(failed)}
      act={text.show}
    >
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className="table-scroll" tabIndex={0} aria-label={text.said.results}>
        <table>
          <thead>
            <tr>
              <th scope="col">{text.said.test}</th>
              <th scope="col" className="n">
                {text.said.value}
              </th>
              <th scope="col">{text.said.limits}</th>
              <th scope="col">{text.said.outcome}</th>
            </tr>
          </thead>
          <tbody>
            {results.map(({ monitorId, testId, value, lowest, highest, unit, passed }) => (
              <tr key={`${monitorId} ${testId}`}>
                <th scope="row">
                  {words.testMonitor(monitorId) ?? `$${monitorId.toString(16).toUpperCase()}`}
                  <span className="small quiet"> {text.said.testNumber(testId.toString(16).toUpperCase())}</span>
                </th>
                <td className="n">{shown(value, unit)}</td>
                <td>{text.said.range(shown(lowest, unit), shown(highest, unit))}</td>
                <td className={passed ? '' : 'warn'}>{passed ? text.said.passed : text.said.failed}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </Fold>
  );
}
