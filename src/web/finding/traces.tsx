/** The picture that proves the sentence: the record, and the model with the cause that is chosen. */
import { type ReactNode, useMemo, useState } from 'react';
import type { CauseId, Finding, Overlay } from '../../diagnosis/finding.ts';
import { pressureOf } from '../../report/pressure-names.ts';
import type { StoredSheet } from '../../report/sheet.ts';
import { Choice } from '../kit/choice.tsx';
import { SelectField } from '../kit/fields.tsx';
import { LaneChart } from '../recording/chart/lane-chart.tsx';
import { ChartFigures } from '../recording/chart-figures.tsx';
import { PrintedDetails } from '../recording/printed-details.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { misfitPa, type Parting, partings } from './finding-parts.ts';
import { traceChart } from './trace-lanes.ts';

type SheetRecordings = StoredSheet['recordings'];

interface Props {
  readonly finding: Finding;
  readonly recordings: SheetRecordings;
}

export function Traces({ finding, recordings }: Props): ReactNode {
  const { finding: text, trade } = useText();
  const { percent } = useNumbers();
  const drawn = [...new Set(finding.overlays.map(({ recording }) => recording))];
  const [recording, setRecording] = useState(drawn[0] ?? 0);
  const own = finding.overlays.filter((overlay) => overlay.recording === recording);
  const [causeId, setCauseId] = useState<CauseId | null>(null);
  const [rivalId, setRivalId] = useState<CauseId | 'nothing'>('nothing');
  const chosen = own.find(({ cause }) => cause === causeId) ?? own[0];
  const rival = own.find(({ cause }) => cause === rivalId && cause !== chosen?.cause) ?? null;
  if (chosen === undefined) return <p className="quiet">{text.trace.none}</p>;
  const nameOf = ({ cause }: Overlay): string => {
    const share = finding.causes.find(({ id }) => id === cause)?.probability;
    return share === undefined ? trade.causes[cause] : `${trade.causes[cause]}, ${percent(share)}`;
  };
  return (
    <div className="stack traces">
      <h3>{text.trace.title}</h3>
      <div className="no-print stack">
        {drawn.length > 1 && (
          <SelectField
            label={text.trace.recording}
            value={String(recording)}
            options={drawn.map((k) => ({ value: String(k), name: recordings[k]?.label ?? String(k + 1) }))}
            onChange={(value) => setRecording(Number(value))}
          />
        )}
        {own.length > 1 && (
          <>
            <Choice
              label={text.trace.cause}
              isStacked
              value={chosen.cause}
              options={own.map((overlay) => ({ value: overlay.cause, name: nameOf(overlay) }))}
              onChange={setCauseId}
            />
            <SelectField<CauseId | 'nothing'>
              label={text.trace.rival}
              value={rival?.cause ?? 'nothing'}
              options={[
                { value: 'nothing', name: text.trace.noRival },
                ...own.filter((each) => each !== chosen).map((each) => ({ value: each.cause, name: nameOf(each) })),
              ]}
              onChange={setRivalId}
            />
          </>
        )}
      </div>
      <Trace chosen={chosen} rival={rival} recording={recordings[recording]} />
    </div>
  );
}

interface TraceProps {
  readonly chosen: Overlay;
  readonly rival: Overlay | null;
  readonly recording: SheetRecordings[number] | undefined;
}

function Trace({ chosen, rival, recording }: TraceProps): ReactNode {
  const { finding: text, recording: recordingText, trade } = useText();
  const units = useUnits();
  const chart = useMemo(() => {
    if (recording === undefined) return null;
    const { factor, offset } = units.unit('pressure');
    const pressure = pressureOf(recording.procedure);
    const ventStates = recordingText.states.ventClosed ?? ['0', '1'];
    return traceChart(
      chosen,
      rival,
      recording,
      {
        pressure: text.trace.pressures[pressure] ?? pressure,
        recorded: text.trace.recorded,
        modelled: text.trace.modelled,
        rival: rival === null ? '' : text.trace.rivalName(trade.causes[rival.cause]),
        difference: text.trace.difference,
        band: text.trace.band,
        purge: text.trace.purge,
        vent: text.trace.vent,
        ventStates,
      },
      { unit: units.symbol('pressure'), factor, offset, decimals: units.decimals('pressure') },
    );
  }, [chosen, rival, recording, units, text, recordingText, trade]);
  if (chart === null || recording === undefined) return <p className="quiet">{text.trace.none}</p>;
  return (
    <>
      <PartingWords overlay={chosen} recording={recording} />
      <LaneChart
        label={text.trace.label(recording.label, trade.causes[chosen.cause])}
        source={chart.source}
        lanes={chart.lanes}
        readouts={chart.readouts}
        phases={recording.phases}
      />
      <p className="small quiet">{text.trace.key}</p>
      <PrintedDetails summary={recordingText.figures.title}>
        <ChartFigures
          name={text.trace.label(recording.label, trade.causes[chosen.cause])}
          sentence={`${text.trace.label(recording.label, trade.causes[chosen.cause])}.`}
          source={chart.source}
          readouts={chart.readouts}
          phases={recording.phases}
        />
      </PrintedDetails>
    </>
  );
}

const MOST_SPANS = 3;

/** How well the model follows, and where it does not, in words. */
function PartingWords({
  overlay,
  recording,
}: {
  readonly overlay: Overlay;
  readonly recording: SheetRecordings[number];
}): ReactNode {
  const { finding: text, trade } = useText();
  const { fixed, list } = useNumbers();
  const units = useUnits();
  const found = partings(overlay);
  const pressure = (pa: number): string => units.print('pressure', pa, units.decimals('pressure') + 1);
  const spanWords = ({ fromS, toS, byPa }: Parting): string => {
    const phase = recording.phases.find((each) => each.fromS <= fromS && each.toS > fromS);
    return text.trace.span(
      fixed(fromS, 0),
      `${fixed(toS, 0)}\u00a0s`,
      phase === undefined ? '' : trade.phases[phase.kind],
      pressure(Math.abs(byPa)),
      byPa > 0,
    );
  };
  const spans = found.slice(0, MOST_SPANS).map(spanWords);
  if (found.length > MOST_SPANS) spans.push(text.trace.more(found.length - MOST_SPANS));
  return (
    <p>
      {text.trace.fit(trade.causes[overlay.cause], pressure(misfitPa(overlay)))}{' '}
      {found.length === 0 ? text.trace.inside : text.trace.parts(list(spans))}
    </p>
  );
}
