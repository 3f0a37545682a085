import { type ReactNode, useMemo, useState } from 'react';
import type { Finding } from '../../diagnosis/finding.ts';
import type { Job } from '../../jobs/record/job.ts';
import type { PartId } from '../../system/parts.ts';
import { Message } from '../kit/message.tsx';
import { Link } from '../router/link.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import type { DrawingPanelProps } from '../sheet/slots.ts';
import { drawnNetwork } from '../simulation/play.ts';
import type { DrawnSystem } from '../simulation/played-run.ts';
import { type Playable, playableOn } from '../simulation/procedures.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { faultOfCause } from './cause-fault.ts';
import { PartLine } from './parts/part-line.tsx';
import { PartWords } from './parts/part-words.tsx';
import { Legend } from './player/legend.tsx';
import { LivingDrawing } from './player/living-drawing.tsx';
import { Now } from './player/now.tsx';
import { TraceChart } from './player/trace-chart.tsx';
import { Transport } from './player/transport.tsx';
import { usePlayback } from './player/use-playback.ts';
import { usePlaying } from './player/use-view.ts';
import { scaleLimitPa } from './state/pressure-scale.ts';
import { largestGaugePa } from './state/summary.ts';
import './picture/picture.css';
import './player/player.css';

/** Beside the sheet: the car's own system, with what the finding says is wrong with it. */
export function DrawingPanel(_: DrawingPanelProps): ReactNode {
  const { job } = useSheet();
  const text = useText();
  const finding = job.findings.at(-1)?.sheet.finding as Finding | undefined;
  if (job.car === null) {
    return (
      <>
        <h2>{text.drawing.title}</h2>
        <p className="quiet">{text.drawing.panel.noCar}</p>
      </>
    );
  }
  return <CarDrawing key={job.car.layout} car={job.car} recordings={job.recordings} finding={finding} />;
}

interface Props {
  readonly car: NonNullable<Job['car']>;
  readonly recordings: Job['recordings'];
  readonly finding: Finding | undefined;
}

/** The procedure that was recorded, where it can be played; the layout's own self-test otherwise. */
function procedureOf({ car, recordings, finding }: Props): Playable {
  const able = playableOn(car.layout);
  const noted = recordings.find((r) => r.useInFinding)?.facts?.procedure ?? finding?.procedures[0];
  return able.find((p) => p === noted) ?? able[0]!;
}

export function CarDrawing(props: Props): ReactNode {
  const { car, recordings, finding } = props;
  const text = useText();
  const numbers = useNumbers();
  const words = text.drawing;
  const [chosen, setChosen] = useState<PartId>();
  const system = useMemo<DrawnSystem>(
    () => ({
      layout: car.layout,
      closure: car.filler ?? 'capped',
      hasRecovery: car.onBoardRefuellingRecovery ?? true,
      car,
    }),
    [car],
  );
  const network = useMemo(() => drawnNetwork(system, []), [system]);
  const first = finding?.verdict === 'fault' ? finding.causes[0] : undefined;
  const drawn = useMemo(() => (first === undefined ? undefined : faultOfCause(first, car.layout)), [first, car.layout]);
  const procedure = procedureOf(props);
  const facts = recordings.find((r) => r.useInFinding)?.facts;
  const draw = useMemo(
    () => ({
      ...(facts?.drawTargetGaugePa === undefined ? {} : { targetGaugePa: facts.drawTargetGaugePa }),
      ...(facts?.drawTimeOutS === undefined ? {} : { drawTimeOutS: facts.drawTimeOutS }),
    }),
    [facts],
  );
  const { run, view, error } = usePlaying({ system, fault: drawn?.fault, procedure, draw, isDragging: false });
  const sound = usePlaying(
    drawn === undefined ? undefined : { system, fault: undefined, procedure, draw, isDragging: false },
  );
  const playback = usePlayback(view?.run, Math.max(run?.durationS ?? 0, sound.run?.durationS ?? 0), `${procedure}`);
  const limitPa = useMemo(
    () => scaleLimitPa(Math.max(...[view, sound.view].map((v) => (v === undefined ? 0 : largestGaugePa(v))))),
    [view, sound.view],
  );
  const faultWords = drawn === undefined ? words.sound : words.withFault(text.causes[drawn.cause.id]);
  const sensor = run !== undefined && 'pumpPressure' in run.readings ? 'pumpPressure' : 'tankPressure';
  return (
    <div className="player">
      <div>
        <h2>{words.title}</h2>
        <p className="small quiet">
          {words.playable[procedure]}, {faultWords}
          {drawn?.place !== undefined &&
            `, ${words.panel.atPlace(text.trade.places[drawn.place.name], numbers.percent(drawn.place.probability))}`}
        </p>
        {finding?.verdict === 'fault' && drawn === undefined && <p className="small quiet">{words.panel.notDrawn}</p>}
      </div>
      {error !== undefined && <Message name={words.choose.failed}>{error}</Message>}
      <LivingDrawing
        network={network}
        fault={drawn?.fault}
        view={view}
        limitPa={limitPa}
        playback={playback}
        chosen={chosen}
        onChoose={setChosen}
        name={words.summary(text.trade.layouts[car.layout].name, faultWords)}
      />
      {chosen !== undefined && <PartLine part={chosen} view={view} playback={playback} />}
      <Legend limitPa={limitPa} />
      {run !== undefined && (
        <>
          <Transport playback={playback} steps={run.steps} />
          <TraceChart run={run} beside={sound.run} playback={playback} sensor={sensor} />
        </>
      )}
      {view !== undefined && <Now view={view} playback={playback} isSpoken />}
      <p className="small quiet">{words.now.asAir}</p>
      {chosen === undefined ? (
        <p className="small quiet no-print">{words.part.pick}</p>
      ) : (
        <PartWords part={chosen} view={view} playback={playback} />
      )}
      <p className="no-print">
        <Link href="/system">{words.panel.free}</Link>
      </p>
    </div>
  );
}
