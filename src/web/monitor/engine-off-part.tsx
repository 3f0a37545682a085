/** Whether an engine-off test can give a result at all for this swing and vapour volume, played on the simulator. */
import type { ReactNode } from 'react';
import { forecastOf } from '../../jobs/record/monitor-of-job.ts';
import type { EngineOffOutlook, EngineOffPeak } from '../../readiness/engine-off-result.ts';
import { type EngineOffSituation, situationAfter } from '../../readiness/situation-after.ts';
import type { Car } from '../../system/car.ts';
import { ErrorMessage } from '../kit/message.tsx';
import { QuantityField } from '../kit/quantity-field.tsx';
import { withKey } from '../kit/with-key.ts';
import { useText } from '../text/language.ts';
import { useUnits } from '../units/units.ts';
import type { MonitorClient } from './monitor-client.ts';
import { useAnswer } from './use-answer.ts';
import { useGaps } from './use-gaps.ts';
import { useMonitor } from './use-monitor.ts';
import { useReadiness } from './use-readiness.ts';

interface Props {
  readonly car: Car;
  readonly client: MonitorClient;
  /** End of the first planned drive. */
  readonly stopMs: number | undefined;
}

const TEMPERATURES = [
  ['ambientFromK', 'from'],
  ['ambientToK', 'to'],
  ['fuelTemperatureK', 'fuel'],
] as const;

export function EngineOffPart({ car, client, stopMs }: Props): ReactNode {
  const { monitor: text } = useText();
  const { monitor, change, isReadOnly } = useMonitor();
  const gaps = useGaps();
  const typed = monitor.engineOff ?? {};
  const planned =
    stopMs === undefined ? undefined : situationAfter(forecastOf(monitor)?.hours ?? [], stopMs, monitor.plan.fuelLevel);
  const situation = completed(planned, typed, monitor.plan.fuelLevel);
  const key = situation === undefined ? null : JSON.stringify([situation, car]);
  const answer = useAnswer(key, () => client.ask('outlook', { car, situation: situation as EngineOffSituation }));
  return (
    <div className="stack">
      <h4>{text.engineOff.title}</h4>
      {situation === undefined ? (
        <p className="quiet">{gaps.needsPlan}</p>
      ) : answer.state === 'loading' ? (
        <p className="quiet" role="status">
          {text.engineOff.playing}
        </p>
      ) : answer.state === 'failed' ? (
        <ErrorMessage error={answer.error} />
      ) : (
        <Outlook outlook={answer.value} />
      )}
      {!isReadOnly && (
        <div className="fields no-print">
          {TEMPERATURES.map(([name, label]) => (
            <QuantityField
              key={name}
              label={text.engineOff[label]}
              quantity="temperature"
              valueSi={typed[name] ?? (planned === undefined ? undefined : tenths(planned[name]))}
              onChange={(value) =>
                change((before) => {
                  const next = withKey(before.engineOff ?? {}, name, value);
                  return withKey(before, 'engineOff', Object.keys(next).length === 0 ? undefined : next);
                })
              }
            />
          ))}
        </div>
      )}
    </div>
  );
}

const CELSIUS_K = 273.15;
/** A forecast tells no more than a tenth of a degree. */
const tenths = (kelvin: number): number => Math.round((kelvin - CELSIUS_K) * 10) / 10 + CELSIUS_K;

type Typed = NonNullable<ReturnType<typeof useMonitor>['monitor']['engineOff']>;

/** Typed temperatures over those that follow from the forecast; undefined as long as one is not known. */
function completed(
  planned: EngineOffSituation | undefined,
  typed: Typed,
  fuelLevel: number | undefined,
): EngineOffSituation | undefined {
  if (planned !== undefined) return { ...planned, ...typed };
  const { ambientFromK, ambientToK, fuelTemperatureK } = typed;
  if (ambientFromK === undefined || ambientToK === undefined || fuelTemperatureK === undefined) return undefined;
  const hours = [0, 1].map((hour) => ({ momentMs: hour * 3_600_000, temperatureK: ambientFromK }));
  const usual = situationAfter(hours, 0, fuelLevel);
  return usual === undefined ? undefined : { ...usual, ...typed };
}

function Outlook({ outlook }: { readonly outlook: EngineOffOutlook }): ReactNode {
  const { monitor: text } = useText();
  const { words, figures } = useReadiness();
  const units = useUnits();
  const { peaks, passHighGaugePa, passLowGaugePa } = outlook;
  const passes = ({ highestGaugePa, lowestGaugePa }: EngineOffPeak): boolean =>
    highestGaugePa >= passHighGaugePa || lowestGaugePa <= passLowGaugePa;
  return (
    <>
      <p>
        <strong>{words.outlook(outlook, figures)}</strong>
      </p>
      <p className="small quiet">{text.engineOff.words}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className="table-scroll" tabIndex={0} aria-label={text.engineOff.title}>
        <table>
          <thead>
            <tr>
              <th scope="col">{text.engineOff.hole}</th>
              <th scope="col" className="n">
                {text.engineOff.highest}
              </th>
              <th scope="col" className="n">
                {text.engineOff.lowest}
              </th>
              <th scope="col">{text.engineOff.passes}</th>
            </tr>
          </thead>
          <tbody>
            {peaks.map((peak) => (
              <tr key={peak.holeM}>
                <th scope="row">{peak.holeM === 0 ? words.noHole : units.print('length', peak.holeM)}</th>
                <td className="n">{figures.pascals(peak.highestGaugePa)}</td>
                <td className="n">{figures.pascals(peak.lowestGaugePa)}</td>
                <td>{passes(peak) ? text.engineOff.tight : text.engineOff.notTight}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="small quiet">{words.plateau}</p>
    </>
  );
}
