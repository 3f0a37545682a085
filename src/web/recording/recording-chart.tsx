/** The chart of one recording with its phases and figures. Loaded when it comes into sight. */
import { type ReactNode, useMemo } from 'react';
import type { RecordingEntry } from '../../jobs/record/job.ts';
import { writeRecordingCsv } from '../../recording/write-csv.ts';
import { ApiError } from '../api/client.ts';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { channelLanes } from './channel-lanes.ts';
import type { PhaseRow } from './chart/boundaries.ts';
import { LaneChart } from './chart/lane-chart.tsx';
import { firstAtOrAfter } from './chart/nearest.ts';
import type { View } from './chart/view.ts';
import { ChartFigures } from './chart-figures.tsx';
import { type LoadedRecording, loadRecording } from './load-recording.ts';
import { PhaseTable } from './phase-table.tsx';
import { phasesInUse } from './phases-in-use.ts';
import { PrintedDetails } from './printed-details.tsx';
import { saveText } from './save-text.ts';
import { useEntry, useReadingKey, without } from './use-entry.ts';

export function RecordingChart({ entry }: { readonly entry: RecordingEntry }): ReactNode {
  const { readSamples } = useSheet();
  const { recording: text } = useText();
  const key = useReadingKey(entry);
  const [loaded, again] = useLoaded(key, () => loadRecording(key, () => readSamples(entry.id)));
  if (loaded.state === 'loading') return <p className="quiet">{text.loading}</p>;
  // Why it cannot be read stands below, with what can be done.
  if (loaded.state === 'failed' && loaded.error instanceof ApiError && loaded.error.facts.code === 'unreadable')
    return <span className="no-chart" />;
  if (loaded.state === 'failed') return <ErrorMessage error={loaded.error} onRetry={again} />;
  return <LoadedChart entry={entry} loaded={loaded.value} />;
}

function slice({ source, order, head }: LoadedRecording, { fromS, toS }: View): string {
  const from = firstAtOrAfter(source.timeS, fromS);
  const to = firstAtOrAfter(source.timeS, toS + 1e-9);
  return writeRecordingCsv({
    label: head.label,
    timeS: source.timeS.slice(from, to),
    channels: Object.fromEntries(
      order.map((name, k) => [name, Float64Array.from(source.columns[k]!.values.subarray(from, to))]),
    ),
  });
}

interface LoadedChartProps {
  readonly entry: RecordingEntry;
  readonly loaded: LoadedRecording;
}

export function LoadedChart({ entry, loaded }: LoadedChartProps): ReactNode {
  const { recording: text, trade } = useText();
  const { fixed, duration } = useNumbers();
  const units = useUnits();
  const editor = useEntry(entry.id);
  const { source, order, head } = loaded;
  const { lanes, readouts } = useMemo(
    () => channelLanes(order, source.columns, text, units),
    [order, source, text, units],
  );
  const phases = useMemo(() => phasesInUse(entry, head, source.timeS), [entry, head, source]);
  const wideS = (source.timeS.at(-1) ?? 0) - (source.timeS[0] ?? 0);
  const leastS = wideS / Math.max(1, source.timeS.length - 1);
  const save = (next: PhaseRow): void => editor.change((before) => ({ ...before, phases: [...next] }));
  const sentence = text.figures.words(
    entry.label,
    fixed(head.samples, 0),
    duration(wideS),
    trade.procedures[head.procedure],
  );
  return (
    <div className="stack">
      <LaneChart
        label={text.chart.label(entry.label, order.length, duration(wideS))}
        source={source}
        lanes={lanes}
        readouts={readouts}
        phases={phases}
        {...(editor.isReadOnly ? {} : { onPhases: save })}
        onDownload={(view) => saveText(`${entry.label.replace(/\.csv(\.gz)?$/i, '')}-part.csv`, slice(loaded, view))}
      />
      {!editor.isReadOnly && phases.length > 0 && (
        <details>
          <summary>{text.phases.title}</summary>
          <PhaseTable
            phases={phases}
            leastS={leastS}
            isByHand={entry.phases !== undefined}
            onChange={save}
            onReset={() => editor.change((before) => without(before, 'phases'))}
          />
        </details>
      )}
      <PrintedDetails summary={text.figures.title}>
        <ChartFigures name={entry.label} sentence={sentence} source={source} readouts={readouts} phases={phases} />
      </PrintedDetails>
    </div>
  );
}
