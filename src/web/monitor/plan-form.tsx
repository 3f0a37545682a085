/** What a drive plan is made from: forecast, level, where it is parked, and the owner's own drives. */
import type { ReactNode } from 'react';
import type { Monitor } from '../../jobs/record/monitor.ts';
import { forecastOf } from '../../jobs/record/monitor-of-job.ts';
import { NumberField, TextField } from '../kit/fields.tsx';
import { QuantityField } from '../kit/quantity-field.tsx';
import { withKey } from '../kit/with-key.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { fromField, toField } from './local-moment.ts';
import { RoutineEditor } from './routine-editor.tsx';
import { useMonitor } from './use-monitor.ts';
import { useReadiness } from './use-readiness.ts';

type Plan = Monitor['plan'];

export function PlanForm(): ReactNode {
  const { monitor: text, job: jobText } = useText();
  const { monitor, change } = useMonitor();
  const units = useUnits();
  const { plan } = monitor;
  const set = <Key extends keyof Plan>(key: Key, value: Plan[Key] | undefined): void =>
    change((before) => ({ ...before, plan: withKey(before.plan, key, value) }));
  const { temperature } = units.choice;
  return (
    <div className="stack no-print">
      <div className="fields">
        <div className="wide forecast">
          <TextField
            label={text.plan.forecast}
            hint={`${text.plan.forecastHint} ${text.plan.numbersIn(temperature)}`}
            lines={4}
            maxLength={20_000}
            spellCheck={false}
            value={plan.forecast?.text ?? ''}
            onChange={(typed) =>
              set(
                'forecast',
                typed.trim() === ''
                  ? undefined
                  : {
                      text: typed,
                      unit: temperature === '°F' ? 'F' : 'C',
                      typedAt: new Date().toISOString(),
                      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
                    },
              )
            }
          />
        </div>
        <ForecastState />
        <NumberField
          label={text.plan.level}
          unit="%"
          decimals={0}
          value={plan.fuelLevel === undefined ? undefined : plan.fuelLevel * 100}
          notNumber={jobText.car.notNumber}
          check={(value) => (value >= 0 && value <= 100 ? undefined : text.plan.percent)}
          onChange={(value) => set('fuelLevel', value === undefined ? undefined : value / 100)}
        />
        <TextField
          label={text.plan.stopped}
          hint={text.plan.stoppedHint}
          type="datetime-local"
          value={toField(plan.stoppedAt)}
          onChange={(value) => set('stoppedAt', fromField(value))}
        />
        <QuantityField
          label={text.plan.garage}
          hint={text.plan.garageHint}
          quantity="temperature"
          valueSi={plan.garageK}
          onChange={(value) => set('garageK', value)}
        />
      </div>
      <RoutineEditor routine={plan.routine} onChange={(routine) => set('routine', routine)} />
    </div>
  );
}

const MOST_SHOWN = 3;

/** What could be read of the forecast, and what not. */
function ForecastState(): ReactNode {
  const { monitor: text } = useText();
  const { monitor } = useMonitor();
  const { dateTime } = useNumbers();
  const { words } = useReadiness();
  const read = forecastOf(monitor);
  if (read === undefined) return null;
  const { hours, problems } = read;
  const [first] = hours;
  const last = hours.at(-1);
  const moment = (ms: number): string => dateTime(new Date(ms).toISOString());
  return (
    <div className="wide" role="status">
      {first !== undefined && last !== undefined && (
        <p className="small quiet">{text.plan.read(hours.length, moment(first.momentMs), moment(last.momentMs))}</p>
      )}
      {last !== undefined && last.momentMs < Date.now() && <p className="warn">{text.plan.over}</p>}
      {problems.slice(0, MOST_SHOWN).map(({ line, found, wanted }) => (
        <p key={line} className="small warn">
          {text.plan.badLine(line, found.slice(0, 60), words.forecastWanted(wanted))}
        </p>
      ))}
      {problems.length > MOST_SHOWN && <p className="small warn">{text.plan.moreBad(problems.length - MOST_SHOWN)}</p>}
    </div>
  );
}
