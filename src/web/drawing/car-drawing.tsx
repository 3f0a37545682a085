import { type ReactNode, useMemo } from 'react';
import type { Car } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { PartId } from '../../system/parts.ts';
import { Button } from '../kit/button.tsx';
import { Fold } from '../kit/fold.tsx';
import { Link } from '../router/link.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import { drawnNetwork } from '../simulation/play.ts';
import type { DrawnSystem } from '../simulation/played-run.ts';
import type { Playable } from '../simulation/procedures.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import type { DrawnCause } from './cause-fault.ts';
import { PartLine } from './parts/part-line.tsx';
import { PartWords } from './parts/part-words.tsx';
import { FaultForm } from './player/fault-form.tsx';
import { Legend } from './player/legend.tsx';
import { LivingDrawing } from './player/living-drawing.tsx';
import { Now } from './player/now.tsx';
import { RunFailed } from './player/run-failed.tsx';
import { TraceChart } from './player/trace-chart.tsx';
import { Transport } from './player/transport.tsx';
import { usePlayback } from './player/use-playback.ts';
import { usePlaying } from './player/use-view.ts';
import { RecordedWords } from './recorded/recorded-words.tsx';
import type { Recorded } from './recorded/use-recorded.ts';
import { scaleLimitPa } from './state/pressure-scale.ts';
import { largestGaugePa } from './state/summary.ts';

export interface CarDrawn {
  readonly car: Car;
  /** The first cause of the finding, where it can be drawn. */
  readonly found: DrawnCause | undefined;
  readonly isUndrawn: boolean;
  /** What was put in by hand in place of what was found. */
  readonly tried: { readonly fault: Fault | undefined } | undefined;
  readonly onTry: (tried: { readonly fault: Fault | undefined } | undefined) => void;
  readonly chosenPart: PartId | undefined;
  readonly onChoosePart: (part: PartId) => void;
}

interface DrawingProps extends CarDrawn {
  readonly procedure: Playable;
  readonly recorded?: Recorded;
}

/** The car's system with its controls, trace and words. */
export function CarDrawing(props: DrawingProps): ReactNode {
  const { car, found, isUndrawn, tried, onTry, chosenPart, onChoosePart, procedure, recorded } = props;
  const { job } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const words = text.drawing;
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
  const fault = tried === undefined ? found?.fault : tried.fault;
  const plan = recorded?.plan;
  const own = usePlaying({ system, fault, procedure, recorded: plan });
  const sound = usePlaying(fault === undefined ? undefined : { system, fault: undefined, procedure, recorded: plan });
  const { live, run, view, error } = own;
  const longestS = Math.max(run?.durationS ?? 0, sound.run?.durationS ?? 0);
  const playback = usePlayback(view?.run, longestS, recorded?.plan.id ?? procedure);
  const limitPa = useMemo(
    () => scaleLimitPa(Math.max(...[view, sound.view].map((v) => (v === undefined ? 0 : largestGaugePa(v))))),
    [view, sound.view],
  );
  const isAsFound = tried === undefined && found !== undefined;
  const faultWords =
    fault === undefined
      ? words.sound
      : words.withFault(isAsFound ? text.causes[found.cause.id] : (words.faults[fault.kind] ?? fault.kind));
  const sensor =
    recorded?.sensor ?? (run !== undefined && 'pumpPressure' in run.readings ? 'pumpPressure' : 'tankPressure');
  return (
    <>
      <div>
        <p className="small quiet">
          {words.playable[procedure]}, {faultWords}
          {isAsFound &&
            found.place !== undefined &&
            `, ${words.panel.atPlace(text.trade.places[found.place.name], numbers.percent(found.place.probability))}`}
          {isAsFound && found.isSizeAssumed && `; ${words.panel.sizeAssumed}`}
        </p>
        {isUndrawn && tried === undefined && <p className="small quiet">{words.panel.notDrawn}</p>}
        {recorded !== undefined && <RecordedWords recorded={recorded} run={run} />}
      </div>
      <RunFailed error={error} run={run} />
      <LivingDrawing
        network={network}
        fault={fault}
        live={live}
        view={view}
        limitPa={limitPa}
        playback={playback}
        chosen={chosenPart}
        onChoose={onChoosePart}
        name={words.summary(text.trade.layouts[car.layout].name, faultWords)}
      />
      {chosenPart !== undefined && <PartLine part={chosenPart} view={view} playback={playback} />}
      <Legend limitPa={limitPa} />
      {run !== undefined && (
        <>
          <Transport playback={playback} steps={run.steps} />
          <TraceChart
            live={live}
            beside={fault === undefined ? undefined : sound.live}
            recorded={recorded?.trace}
            playback={playback}
            sensor={sensor}
          />
        </>
      )}
      <div className="no-print">
        <Fold label={words.panel.tryLabel} words={tried === undefined ? '' : faultWords} act={words.panel.tryAct}>
          <FaultForm
            layout={car.layout}
            closure={system.closure}
            fault={fault}
            onChange={(next) => onTry({ fault: next })}
            onSketch={own.sketch}
          />
          {tried !== undefined && (
            <div className="buttons">
              <Button onClick={() => onTry(undefined)}>
                {found === undefined ? words.panel.asSound : words.panel.asFound}
              </Button>
            </div>
          )}
        </Fold>
      </div>
      {view !== undefined && <Now view={view} playback={playback} isSpoken />}
      <p className="small quiet">{words.now.asAir}</p>
      {chosenPart === undefined ? (
        <p className="small quiet no-print">{words.part.pick}</p>
      ) : (
        <PartWords part={chosenPart} view={view} playback={playback} />
      )}
      <p className="no-print">
        <Link href={`/system?job=${job.id}`}>{words.panel.free}</Link>
      </p>
    </>
  );
}
