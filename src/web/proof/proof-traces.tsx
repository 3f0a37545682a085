/** What was recorded before and after, on the same axes. */
import { lazy, type ReactNode, Suspense, useMemo } from 'react';
import { pressureOf } from '../../report/pressure-names.ts';
import type { StoredSheet } from '../../report/sheet.ts';
import { ChartFigures } from '../recording/chart-figures.tsx';
import { PrintedDetails } from '../recording/printed-details.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { beforeAfterChart, comparedTraces } from './before-after-chart.ts';

// The chart and its library are fetched with the first trace.
const LaneChart = lazy(async () => ({ default: (await import('../recording/chart/lane-chart.tsx')).LaneChart }));

interface Props {
  readonly before: StoredSheet;
  readonly after: StoredSheet;
}

export function ProofTraces({ before, after }: Props): ReactNode {
  const { checks, finding, recording, trade } = useText();
  const words = checks.proof;
  const { fixed } = useNumbers();
  const units = useUnits();
  const compared = useMemo(() => comparedTraces(before, after), [before, after]);
  const chart = useMemo(() => {
    if (compared === null) return null;
    const { factor, offset } = units.unit('pressure');
    const pressure = pressureOf(compared.procedure);
    return beforeAfterChart(
      compared.together,
      { pressure: finding.trace.pressures[pressure] ?? pressure, before: words.before, after: words.after },
      { unit: units.symbol('pressure'), factor, offset, decimals: units.decimals('pressure') },
    );
  }, [compared, units, finding, words]);
  if (compared === null || chart === null) return <p className="quiet">{words.noTraces}</p>;
  const { together, procedure } = compared;
  const label = words.traces(trade.procedures[procedure]);
  return (
    <div className="stack">
      <h4>{words.tracesTitle}</h4>
      <p className="small trace-keys">
        <span>
          <span className="trace-key before" aria-hidden="true" /> {words.before}
        </span>
        <span>
          <span className="trace-key after" aria-hidden="true" /> {words.after}
        </span>
        {together.at !== null && Math.abs(together.movedS) >= 0.5 && (
          <span className="quiet">
            {words.moved(fixed(Math.abs(together.movedS), 0), together.movedS > 0, trade.phases[together.at])}
          </span>
        )}
      </p>
      <Suspense fallback={<p className="quiet">{finding.trace.loading}</p>}>
        <LaneChart
          label={label}
          source={chart.source}
          lanes={chart.lanes}
          readouts={chart.readouts}
          phases={together.before.phases}
        />
      </Suspense>
      <PrintedDetails summary={recording.figures.title}>
        <ChartFigures
          name={label}
          sentence={`${label}.`}
          source={chart.source}
          readouts={chart.readouts}
          phases={together.before.phases}
        />
      </PrintedDetails>
    </div>
  );
}
