import type { ReactNode } from 'react';
import type { MonitorReading } from '../../jobs/record/monitor.ts';
import { inUseRatios } from '../../readiness/in-use-ratio.ts';
import { Fold } from '../kit/fold.tsx';
import { useText } from '../text/language.ts';
import { useReadiness } from './use-readiness.ts';

/** In-use counters (service $09) of every monitor that is counted; a denominator of zero is no data. */
export function InUseTable({ inUse }: Pick<MonitorReading['status'], 'inUse'>): ReactNode {
  const { monitor: text, common } = useText();
  const { words, figures } = useReadiness();
  const ratios = inUseRatios(inUse);
  if (ratios.length < 2) return null;
  const { counterColumns: columns } = text.said;
  const shown = (count: number | undefined): string => (count === undefined ? common.notKnown : String(count));
  return (
    <Fold label={text.said.counters} act={text.show}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className="table-scroll" tabIndex={0} aria-label={text.said.counters}>
        <table>
          <thead>
            <tr>
              <th scope="col">{columns.monitor}</th>
              <th scope="col" className="n">
                {columns.completed}
              </th>
              <th scope="col" className="n">
                {columns.eligible}
              </th>
              <th scope="col" className="n">
                {columns.ratio}
              </th>
            </tr>
          </thead>
          <tbody>
            {ratios.map(({ of, completed, eligible, ratio }) => (
              <tr key={of}>
                <th scope="row">{words.counted[of]}</th>
                <td className="n">{completed}</td>
                <td className="n">{eligible}</td>
                <td className="n">{ratio === undefined ? words.noData : figures.number(ratio, 3)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="small quiet">{text.said.starts(shown(inUse?.IGNCNTR), shown(inUse?.OBDCOND))}</p>
    </Fold>
  );
}
