/** The owner's own drives: a plan leaves them as they are. */
import type { ReactNode } from 'react';
import type { Monitor } from '../../jobs/record/monitor.ts';
import { Button } from '../kit/button.tsx';
import { Several } from '../kit/choice.tsx';
import { NumberField, TextField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { withKey } from '../kit/with-key.ts';
import { useSpoken, useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

type Drive = Monitor['plan']['routine'][number];

const MOST = 12;
const USUAL: Drive = { hour: 7, minute: 30, lengthS: 1800 };
/** Monday first; 0 is Sunday. */
const WEEK = ['1', '2', '3', '4', '5', '6', '0'] as const;
type Day = (typeof WEEK)[number];
/** A Sunday. */
const SUNDAY_MS = Date.UTC(2023, 0, 1, 12);
const DAY_MS = 86_400_000;

const two = (value: number): string => String(value).padStart(2, '0');
const clock = ({ hour, minute }: Drive): string => `${two(hour)}:${two(minute)}`;

interface Props {
  readonly routine: readonly Drive[];
  readonly onChange: (routine: Drive[]) => void;
}

export function RoutineEditor({ routine, onChange }: Props): ReactNode {
  const { monitor: text, common, job: jobText } = useText();
  const { locale } = useSpoken();
  const { duration, list } = useNumbers();
  const names = new Intl.DateTimeFormat(locale, { weekday: 'short', timeZone: 'UTC' });
  const dayName = (day: number): string => names.format(SUNDAY_MS + day * DAY_MS);
  const daysOf = ({ weekdays }: Drive): string =>
    weekdays === undefined
      ? text.plan.everyDay
      : list(WEEK.filter((day) => weekdays.includes(Number(day))).map((day) => dayName(Number(day))));
  const words = routine.map((drive) => text.plan.driveLine(clock(drive), duration(drive.lengthS), daysOf(drive)));
  const change = (at: number, drive: Drive): void => onChange(routine.map((each, i) => (i === at ? drive : each)));
  return (
    <Fold label={text.plan.routine} words={words.length === 0 ? text.plan.noRoutine : words.join('; ')}>
      {routine.map((drive, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a drive has no name of its own.
        <div key={at} className="stack">
          <div className="fields">
            <TextField
              label={text.plan.leaves}
              type="time"
              value={clock(drive)}
              onChange={(value) => {
                const [hour, minute] = value.split(':').map(Number);
                if (hour !== undefined && minute !== undefined && value !== '') change(at, { ...drive, hour, minute });
              }}
            />
            <NumberField
              label={text.plan.minutes}
              unit="min"
              decimals={0}
              value={drive.lengthS / 60}
              notNumber={jobText.car.notNumber}
              check={(value) => (value > 0 ? undefined : jobText.car.notPositive)}
              onChange={(value) => value !== undefined && change(at, { ...drive, lengthS: value * 60 })}
            />
          </div>
          <div className="weekdays">
            <Several<Day>
              label={text.plan.days}
              options={WEEK.map((value) => ({ value, name: dayName(Number(value)) }))}
              values={
                drive.weekdays === undefined ? [...WEEK] : WEEK.filter((day) => drive.weekdays?.includes(Number(day)))
              }
              onChange={(days) =>
                change(at, withKey(drive, 'weekdays', days.length === WEEK.length ? undefined : days.map(Number)))
              }
            />
          </div>
          <div className="buttons">
            <Button
              kind="bare"
              aria-label={text.plan.removeDrive(clock(drive))}
              onClick={() => onChange(routine.filter((_, i) => i !== at))}
            >
              {common.remove}
            </Button>
          </div>
        </div>
      ))}
      {routine.length < MOST && (
        <div className="buttons">
          <Button onClick={() => onChange([...routine, USUAL])}>{text.plan.addDrive}</Button>
        </div>
      )}
    </Fold>
  );
}
