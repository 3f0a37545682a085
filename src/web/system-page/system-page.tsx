import { type ReactNode, useMemo, useState } from 'react';
import type { Job } from '../../jobs/record/job.ts';
import { type Car, LAYOUTS, type LayoutId } from '../../system/car.ts';
import { faultKindsOf } from '../../system/faults/catalogue.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { PartId } from '../../system/parts.ts';
import { readJob } from '../api/jobs.ts';
import { PartLine } from '../drawing/parts/part-line.tsx';
import { FaultForm } from '../drawing/player/fault-form.tsx';
import { Legend } from '../drawing/player/legend.tsx';
import { LivingDrawing } from '../drawing/player/living-drawing.tsx';
import { Now } from '../drawing/player/now.tsx';
import { RunFailed } from '../drawing/player/run-failed.tsx';
import { TraceChart } from '../drawing/player/trace-chart.tsx';
import { Transport } from '../drawing/player/transport.tsx';
import { usePlayback } from '../drawing/player/use-playback.ts';
import { type Playing, usePlaying } from '../drawing/player/use-view.ts';
import { scaleLimitPa } from '../drawing/state/pressure-scale.ts';
import { largestGaugePa } from '../drawing/state/summary.ts';
import { Frame } from '../frame/frame.tsx';
import { Check } from '../kit/choice.tsx';
import { SelectField } from '../kit/fields.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { Link } from '../router/link.tsx';
import { drawnNetwork } from '../simulation/play.ts';
import type { DrawnSystem } from '../simulation/played-run.ts';
import { type Playable, playableOn } from '../simulation/procedures.ts';
import { useText } from '../text/language.ts';
import { PartChoice } from './part-choice.tsx';
import '../drawing/picture/picture.css';
import '../drawing/player/player.css';

const FIRST_FAULT: Fault = { kind: 'leak', place: 'cap' };

/** Room for two drawings beside each other; on a phone one is seen at a time. */
const SIDE_BY_SIDE = '(min-width: 60rem)';

/** Free play: any layout or a job's own car, any procedure, any fault beside the sound system on one clock and one scale. */
export function SystemPage({ jobId }: { readonly jobId: string | null }): ReactNode {
  const text = useText();
  const [loaded, again] = useLoaded(jobId ?? '', async () => (jobId === null ? null : readJob(jobId)));
  const words = text.drawing.system;
  if (loaded.state === 'there') return <FreePlay key={jobId} job={loaded.value} />;
  return (
    <Frame current="system" title={words.title}>
      <main className="paper system-paper" id="sheet" tabIndex={-1}>
        <div className="sheet">
          <h1>{words.title}</h1>
          {loaded.state === 'loading' ? (
            <p className="quiet">{text.common.loading}</p>
          ) : (
            <ErrorMessage error={loaded.error} onRetry={again} />
          )}
        </div>
      </main>
    </Frame>
  );
}

/** As the car's file says where it says it; a layout of its own choosing has the project's defaults. */
const systemOf = (car: Car | null): DrawnSystem =>
  car === null
    ? { layout: 'engine-vacuum', closure: 'capped', hasRecovery: true }
    : {
        layout: car.layout,
        closure: car.filler ?? 'capped',
        hasRecovery: car.onBoardRefuellingRecovery ?? true,
        car,
      };

function changed(system: DrawnSystem, closure: DrawnSystem['closure'], hasRecovery: boolean): DrawnSystem {
  const { car } = system;
  return {
    ...system,
    closure,
    hasRecovery,
    ...(car === undefined ? {} : { car: { ...car, filler: closure, onBoardRefuellingRecovery: hasRecovery } }),
  };
}

function FreePlay({ job }: { readonly job: Job | null }): ReactNode {
  const text = useText();
  const words = text.drawing;
  const [system, setSystem] = useState(() => systemOf(job?.car ?? null));
  const [procedure, setProcedure] = useState<Playable>(() => playableOn(system.layout)[0]!);
  const [fault, setFault] = useState<Fault | undefined>(FIRST_FAULT);
  const [isBeside, setBeside] = useState(() => matchMedia(SIDE_BY_SIDE).matches);
  const [chosen, setChosen] = useState<PartId>('ventValve');

  const own = usePlaying({ system, fault, procedure });
  const sound = usePlaying({ system, fault: undefined, procedure });
  const showsPair = isBeside && fault !== undefined;
  const main = fault === undefined ? sound : own;
  const longestS = Math.max(main.run?.durationS ?? 0, showsPair ? (sound.run?.durationS ?? 0) : 0);
  const playback = usePlayback(main.view?.run, longestS, `${system.layout}|${procedure}`);
  const network = useMemo(() => drawnNetwork(system, []), [system]);
  const limitPa = useMemo(
    () => scaleLimitPa(Math.max(...[own.view, sound.view].map((v) => (v === undefined ? 0 : largestGaugePa(v))))),
    [own.view, sound.view],
  );

  const chooseLayout = (layout: LayoutId): void => {
    // Another layout is another car.
    setSystem({ layout, closure: system.closure, hasRecovery: system.hasRecovery });
    setProcedure(playableOn(layout)[0]!);
    if (fault !== undefined && !faultKindsOf(layout).some((k) => k.kind === fault.kind)) setFault(undefined);
  };
  const layoutName = text.trade.layouts[system.layout].name;
  const faultName = fault === undefined ? words.sound : words.withFault(words.faults[fault.kind] ?? fault.kind);
  const sensor = main.run !== undefined && 'pumpPressure' in main.run.readings ? 'pumpPressure' : 'tankPressure';
  const drawing = (played: Playing, shownFault: Fault | undefined, name: string): ReactNode => (
    <LivingDrawing
      network={network}
      fault={shownFault}
      live={played.live}
      view={played.view}
      limitPa={limitPa}
      playback={playback}
      chosen={chosen}
      onChoose={setChosen}
      name={words.summary(layoutName, name)}
    />
  );

  return (
    <Frame current="system" title={words.system.title}>
      <main className="paper system-paper" id="sheet" tabIndex={-1}>
        <div className="sheet">
          <header>
            <h1>{words.system.title}</h1>
            <p className="sub">{words.system.words}</p>
            {job !== null && (
              <p>
                {system.car === undefined ? words.system.anyCar : words.system.ofJob(text.job.title(job.vehicle.name))}{' '}
                <Link href={`/jobs/${job.id}`}>{words.system.toJob(job.number)}</Link>
              </p>
            )}
          </header>
          <div className="player">
            <div className="fault-form no-print">
              <SelectField
                label={words.choose.layout}
                value={system.layout}
                options={LAYOUTS.map((layout) => ({ value: layout, name: text.trade.layouts[layout].name }))}
                onChange={chooseLayout}
              />
              <SelectField
                label={words.choose.procedure}
                value={procedure}
                options={playableOn(system.layout).map((p) => ({ value: p, name: words.playable[p] }))}
                onChange={setProcedure}
              />
              <SelectField
                label={words.choose.closure}
                value={system.closure}
                options={[
                  { value: 'capped', name: words.choose.capped },
                  { value: 'capless', name: words.choose.capless },
                ]}
                onChange={(closure) => setSystem(changed(system, closure, system.hasRecovery))}
              />
              <SelectField
                label={words.choose.recovery}
                value={system.hasRecovery ? 'yes' : 'no'}
                options={[
                  { value: 'yes', name: words.choose.recoveryYes },
                  { value: 'no', name: words.choose.recoveryNo },
                ]}
                onChange={(value) => setSystem(changed(system, system.closure, value === 'yes'))}
              />
            </div>
            <div className="no-print">
              <FaultForm
                layout={system.layout}
                closure={system.closure}
                fault={fault}
                onChange={setFault}
                onSketch={own.sketch}
              />
              <Check
                label={words.choose.beside}
                checked={isBeside}
                disabled={fault === undefined}
                onChange={setBeside}
              />
            </div>
            <RunFailed error={main.error} run={main.run} />
            <div className={showsPair ? 'pair' : ''}>
              {showsPair && (
                <div>
                  <h2>{words.system.healthy}</h2>
                  {drawing(sound, undefined, words.sound)}
                </div>
              )}
              <div>
                <h2>
                  {fault === undefined
                    ? words.system.healthy
                    : `${words.system.faulty}: ${words.faults[fault.kind] ?? fault.kind}`}
                </h2>
                {drawing(main, fault, faultName)}
              </div>
            </div>
            <PartLine part={chosen} view={main.view} playback={playback} />
            <Legend limitPa={limitPa} />
            {main.run !== undefined && (
              <>
                <Transport playback={playback} steps={main.run.steps} />
                <TraceChart
                  live={main.live}
                  beside={showsPair ? sound.live : undefined}
                  playback={playback}
                  sensor={sensor}
                />
              </>
            )}
            <div className={showsPair ? 'pair' : ''}>
              {showsPair && sound.view !== undefined && (
                <Now view={sound.view} playback={playback} name={words.system.healthy} isSpoken={false} />
              )}
              {main.view !== undefined && (
                <Now
                  view={main.view}
                  playback={playback}
                  isSpoken
                  {...(showsPair ? { name: words.system.faulty } : {})}
                />
              )}
            </div>
            <p className="small quiet">{words.now.asAir}</p>
            <PartChoice
              network={network}
              chosen={chosen}
              onChoose={setChosen}
              view={main.view}
              playback={playback}
              layout={system.layout}
              fault={fault}
              onFault={setFault}
            />
          </div>
        </div>
      </main>
    </Frame>
  );
}
