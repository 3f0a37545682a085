/** What a reader shows, entered by hand. */
import { type FormEvent, type ReactNode, useState } from 'react';
import type { MonitorReading } from '../../jobs/record/monitor.ts';
import { MONITORS, type MonitorName } from '../../recording/bus/monitor-status.ts';
import { Button } from '../kit/button.tsx';
import { Choice, Several } from '../kit/choice.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { NumberField, SelectField, TextField } from '../kit/fields.tsx';
import { newId } from '../kit/new-id.ts';
import { codesIn } from '../sheet/complaint/code-form.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useWho } from '../sheet/use-who.ts';
import { useText } from '../text/language.ts';
import { useUnits } from '../units/units.ts';
import { fromField, toField } from './local-moment.ts';
import { useMonitor } from './use-monitor.ts';
import { useReadiness } from './use-readiness.ts';

const METRE_PER_MILE = 1609.344;
const METRE_PER_KM = 1000;
const LISTS = ['confirmed', 'pending', 'permanent'] as const;
type List = (typeof LISTS)[number];
type State = 'not-fitted' | 'run' | 'not-run';

export function ReadingDialog({ onClose }: { readonly onClose: () => void }): ReactNode {
  const { monitor: text, job: jobText, recording, common } = useText();
  const words = text.form;
  const { job } = useSheet();
  const { change } = useMonitor();
  const { words: readiness } = useReadiness();
  const { choice } = useUnits();
  const by = useWho();
  const [at, setAt] = useState(() => toField(new Date().toISOString()));
  const [taken, setTaken] = useState<MonitorReading['taken']>(
    job.repairs.length > 0 ? 'after-repair' : 'before-repair',
  );
  const [lamp, setLamp] = useState<'on' | 'off' | 'unknown'>('unknown');
  const [states, setStates] = useState<Readonly<Partial<Record<MonitorName, State>>>>({});
  const [lists, setLists] = useState<List[]>([]);
  const [codes, setCodes] = useState<Readonly<Partial<Record<List, string>>>>({});
  const [warmUps, setWarmUps] = useState<number | undefined>();
  const [distance, setDistance] = useState<number | undefined>();
  const [completed, setCompleted] = useState<number | undefined>();
  const [eligible, setEligible] = useState<number | undefined>();
  const [isTried, setTried] = useState(false);
  const perUnit = choice.length === 'in' ? METRE_PER_MILE : METRE_PER_KM;
  const whole = (value: number): string | undefined =>
    Number.isInteger(value) && value >= 0 ? undefined : words.whole;
  const moment = fromField(at);
  const fitted = MONITORS.filter((name) => (states[name] ?? 'not-fitted') !== 'not-fitted');
  const read = LISTS.map((list) => ({ list, codes: codesIn(codes[list] ?? '') }));
  const isGood =
    moment !== undefined &&
    fitted.length > 0 &&
    read.every((each) => !lists.includes(each.list) || each.codes !== null);

  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (!isGood || moment === undefined) return;
    const reading: MonitorReading = {
      id: newId(),
      at: moment,
      by,
      source: 'by-hand',
      taken,
      status: {
        sinceClear: {
          scope: 'since-clear',
          ...(lamp === 'unknown' ? {} : { lampOn: lamp === 'on' }),
          ignition: 'spark',
          monitors: MONITORS.map((name) => ({
            name,
            supported: fitted.includes(name),
            complete: states[name] === 'run',
          })),
        },
        ...(warmUps === undefined ? {} : { warmUpsSinceClear: warmUps }),
        ...(distance === undefined ? {} : { distanceSinceClearM: distance * perUnit }),
        ...(completed === undefined || eligible === undefined
          ? {}
          : { inUse: { EVAPCOMP: completed, EVAPCOND: eligible } }),
      },
      codes: read.flatMap(({ list, codes: found }) =>
        lists.includes(list) ? (found ?? []).map((code) => ({ code, status: list })) : [],
      ),
      codesRead: lists,
      results: [],
    };
    change((before) => ({ ...before, readings: [...before.readings, reading] }));
    onClose();
  };

  return (
    <Dialog title={text.said.enterTitle} onClose={onClose}>
      <form className="stack" onSubmit={submit} noValidate>
        <div className="fields">
          <TextField
            label={words.at}
            wide
            type="datetime-local"
            value={at}
            error={isTried && moment === undefined ? words.needsDate : undefined}
            onChange={setAt}
          />
        </div>
        <Choice
          label={words.taken}
          value={taken}
          options={(['before-repair', 'after-repair'] as const).map((value) => ({
            value,
            name: recording.takenNames[value],
          }))}
          onChange={setTaken}
        />
        <Choice
          label={words.lamp}
          value={lamp}
          options={(['on', 'off', 'unknown'] as const).map((value) => ({ value, name: words.lamps[value] }))}
          onChange={setLamp}
        />
        <fieldset className="choice stack">
          <legend>{words.monitors}</legend>
          <div className="fields">
            {MONITORS.map((name) => (
              <SelectField<State>
                key={name}
                label={readiness.monitors[name]}
                value={states[name] ?? 'not-fitted'}
                options={(['not-fitted', 'run', 'not-run'] as const).map((value) => ({
                  value,
                  name: words.monitorStates[value],
                }))}
                onChange={(state) => setStates({ ...states, [name]: state })}
              />
            ))}
          </div>
          {isTried && fitted.length === 0 && (
            <p className="warn" role="alert">
              {words.needsMonitor}
            </p>
          )}
        </fieldset>
        <Several<List>
          label={words.lists}
          options={LISTS.map((value) => ({ value, name: words.codesOf[value] }))}
          values={lists}
          onChange={setLists}
        />
        {lists.length > 0 && (
          <div className="fields">
            {LISTS.filter((list) => lists.includes(list)).map((list) => (
              <TextField
                key={list}
                label={words.codesOf[list]}
                hint={words.codesHint}
                value={codes[list] ?? ''}
                spellCheck={false}
                error={isTried && codesIn(codes[list] ?? '') === null ? jobText.complaint.badCode : undefined}
                onChange={(value) => setCodes({ ...codes, [list]: value.toUpperCase() })}
              />
            ))}
          </div>
        )}
        <div className="fields">
          <NumberField
            label={words.warmUps}
            value={warmUps}
            decimals={0}
            notNumber={words.whole}
            check={whole}
            onChange={setWarmUps}
          />
          <NumberField
            label={words.distance}
            unit={choice.length === 'in' ? 'mi' : 'km'}
            value={distance}
            decimals={0}
            notNumber={words.whole}
            check={whole}
            onChange={setDistance}
          />
          <NumberField
            label={words.completed}
            value={completed}
            decimals={0}
            notNumber={words.whole}
            check={whole}
            onChange={setCompleted}
          />
          <NumberField
            label={words.eligible}
            value={eligible}
            decimals={0}
            notNumber={words.whole}
            check={whole}
            onChange={setEligible}
          />
        </div>
        <div className="buttons">
          <Button kind="primary" type="submit">
            {common.save}
          </Button>
          <Button onClick={onClose}>{common.cancel}</Button>
        </div>
      </form>
    </Dialog>
  );
}
