/** The conditions of this car's monitor: typical ones of the layout until those of the car take their place. */
import { type ReactNode, useState } from 'react';
import { type Condition, type MonitorConditions, typicalConditions } from '../../readiness/conditions.ts';
import { LAYOUTS } from '../../system/car.ts';
import { Button } from '../kit/button.tsx';
import { FileButton, SelectField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { Message } from '../kit/message.tsx';
import { saveFile } from '../kit/save-file.ts';
import { isSame } from '../sheet/same.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { ConditionFold } from './condition-fold.tsx';
import { useMonitor } from './use-monitor.ts';
import { useReadiness } from './use-readiness.ts';

/** Whose conditions they are, in the record. */
const OF_THIS_CAR = 'of this car';

export function ConditionsEditor({ conditions }: { readonly conditions: MonitorConditions }): ReactNode {
  const { monitor: text } = useText();
  const { job } = useSheet();
  const { monitor, change, isReadOnly } = useMonitor();
  const { words, figures } = useReadiness();
  const [badFile, setBadFile] = useState<string | null>(null);
  const typical = job.car === null ? [] : typicalConditions(job.car.layout).conditions;
  const isTypical = (condition: Condition): boolean => typical.some((each) => isSame(each, condition));
  const own = conditions.conditions.filter((each) => !isTypical(each)).length;
  const save = (next: readonly Condition[]): void =>
    change((before) => ({
      ...before,
      conditions: {
        schema: 'vaporwright-monitor-1',
        label: job.vehicle.name === '' ? OF_THIS_CAR : job.vehicle.name,
        conditions: [...next],
      },
    }));
  const load = async (file: File): Promise<void> => {
    // The check of the format is loaded only when a file comes.
    const { conditionsSchema } = await import('../../readiness/conditions.ts');
    let value: unknown;
    try {
      value = JSON.parse(await file.text());
    } catch {
      // No JSON at all: said below.
    }
    const read = conditionsSchema.safeParse(value);
    setBadFile(read.success ? null : file.name);
    if (read.success) change((before) => ({ ...before, conditions: read.data }));
  };
  const isChanged = monitor.conditions !== null;
  return (
    <Fold
      label={text.conditions.title}
      words={
        isChanged
          ? text.conditions.own(conditions.conditions.length, own)
          : text.conditions.typical(conditions.conditions.length)
      }
    >
      <p className="small quiet">{text.conditions.words}</p>
      {isReadOnly ? (
        <ul>
          {conditions.conditions.map((condition) => (
            <li key={condition.id}>
              {words.condition(condition.id)}: {words.wanted(condition, figures)}.{' '}
              <span className="small quiet">{words.mark(condition.mark)}</span>
            </li>
          ))}
        </ul>
      ) : (
        <>
          <div>
            {conditions.conditions.map((condition) => (
              <ConditionFold
                key={condition.id}
                condition={condition}
                isOwn={!isTypical(condition)}
                onChange={(next) => save(conditions.conditions.map((each) => (each.id === next.id ? next : each)))}
                onRemove={() => save(conditions.conditions.filter(({ id }) => id !== condition.id))}
              />
            ))}
          </div>
          <AddCondition known={conditions.conditions} onAdd={(next) => save([...conditions.conditions, next])} />
          {badFile !== null && (
            <Message isBad isLoud>
              <p>{text.conditions.badFile(badFile)}</p>
            </Message>
          )}
          <div className="buttons">
            {isChanged && (
              <Button onClick={() => change((before) => ({ ...before, conditions: null }))}>
                {text.conditions.reset}
              </Button>
            )}
            <FileButton
              label={text.conditions.load}
              kind="bare"
              accept=".json,application/json"
              onFiles={([file]) => file && void load(file)}
            />
            <Button
              kind="bare"
              onClick={() =>
                saveFile(
                  new Blob([`${JSON.stringify(conditions, null, 2)}\n`], { type: 'application/json' }),
                  text.conditions.fileName,
                )
              }
            >
              {text.conditions.saveFile}
            </Button>
          </div>
        </>
      )}
    </Fold>
  );
}

interface AddProps {
  readonly known: readonly Condition[];
  readonly onAdd: (condition: Condition) => void;
}

/** What other layouts ask for, by name. */
function AddCondition({ known, onAdd }: AddProps): ReactNode {
  const { monitor: text } = useText();
  const { words } = useReadiness();
  const offered = [
    ...new Map(
      LAYOUTS.flatMap((layout) => typicalConditions(layout).conditions).map((each) => [each.id, each]),
    ).values(),
  ].filter(({ id }) => known.every((each) => each.id !== id));
  const [id, setId] = useState('');
  const chosen = offered.find((each) => each.id === id) ?? offered[0];
  if (chosen === undefined) return null;
  return (
    <div className="fields">
      <SelectField
        label={text.conditions.add}
        value={chosen.id}
        options={offered.map((each) => ({ value: each.id, name: words.condition(each.id) }))}
        onChange={setId}
      />
      <div className="align-end">
        <Button onClick={() => onAdd(chosen)}>{text.conditions.addOne}</Button>
      </div>
    </div>
  );
}
