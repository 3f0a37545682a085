/** Inspection rules: those that ship to read, those of the place to write. */
import { type ReactNode, useState } from 'react';
import { rulesOf } from '../../jobs/record/monitor-of-job.ts';
import type { InspectionRule } from '../../readiness/inspection.ts';
import { INSPECTION_RULES } from '../../readiness/inspection-rules.ts';
import type { Settings } from '../../server/contract/settings.ts';
import { Button } from '../kit/button.tsx';
import { SelectField } from '../kit/fields.tsx';
import { Fold } from '../kit/fold.tsx';
import { newId } from '../kit/new-id.ts';
import { useReadiness } from '../monitor/use-readiness.ts';
import { useText } from '../text/language.ts';
import { RuleEditor } from './rule-editor.tsx';

type Kept = Pick<Settings, 'inspectionRules' | 'inspectionRule'>;

interface Props {
  readonly kept: Kept;
  readonly isReadOnly: boolean;
  readonly onChange: (kept: Kept) => void;
}

const MOST = 24;

export function RulesPart({ kept, isReadOnly, onChange }: Props): ReactNode {
  const { monitor: text } = useText();
  const { words } = useReadiness();
  const [own, setOwn] = useState<readonly InspectionRule[]>(kept.inspectionRules ?? []);
  const save = (rules: readonly InspectionRule[], chosen = kept.inspectionRule): void => {
    setOwn(rules);
    const still = chosen !== undefined && [...rules, ...INSPECTION_RULES].some(({ id }) => id === chosen);
    onChange({
      ...(rules.length === 0 ? {} : { inspectionRules: [...rules] }),
      ...(still ? { inspectionRule: chosen } : {}),
    });
  };
  const copy = (rule: InspectionRule): void =>
    save([
      ...own,
      {
        ...rule,
        id: `own-${newId()}`,
        name: text.rules.newName,
        source: words.rule(rule).source,
        mark: 'given by the user',
      },
    ]);
  const rules = rulesOf({ inspectionRules: own });
  return (
    <>
      <p>{text.rules.words}</p>
      {!isReadOnly && (
        <div className="fields">
          <SelectField
            label={text.rules.inUse}
            wide
            value={kept.inspectionRule ?? INSPECTION_RULES[0]!.id}
            options={rules.map((rule) => ({ value: rule.id, name: words.rule(rule).name }))}
            onChange={(id) => save(own, id)}
          />
        </div>
      )}
      <div>
        {own.map((rule) => (
          <RuleEditor
            key={rule.id}
            rule={rule}
            isReadOnly={isReadOnly}
            onChange={(next) => save(own.map((each) => (each.id === next.id ? next : each)))}
            onRemove={() => save(own.filter(({ id }) => id !== rule.id))}
          />
        ))}
        {INSPECTION_RULES.map((rule) => (
          <Shipped key={rule.id} rule={rule} onCopy={isReadOnly || own.length >= MOST ? undefined : () => copy(rule)} />
        ))}
      </div>
    </>
  );
}

interface ShippedProps {
  readonly rule: InspectionRule;
  readonly onCopy: (() => void) | undefined;
}

function Shipped({ rule, onCopy }: ShippedProps): ReactNode {
  const { monitor: text } = useText();
  const { words, figures } = useReadiness();
  const { name, source } = words.rule(rule);
  const { permanentCodes: permanent } = rule;
  return (
    <Fold
      label={text.rules.shipped}
      words={words.ruleLine(name, rule.asOf, words.ruleMark[rule.mark], source)}
      act={text.rules.read}
    >
      <ul>
        {rule.allowances.map(({ fromYear, toYear, mostIncomplete, only }) => (
          <li key={fromYear}>
            {text.rules.span(fromYear, toYear, mostIncomplete)}
            {only === undefined ? '' : ` (${only.map((each) => words.monitors[each]).join(', ')})`}
          </li>
        ))}
        {permanent !== undefined && (
          <li>
            {text.rules.permanentSpan(permanent.fromYear)}
            {permanent.ignoredAfter === undefined
              ? ''
              : `, ${text.rules.ignoredSpan(permanent.ignoredAfter.warmUps, figures.distance(permanent.ignoredAfter.distanceM))}`}
          </li>
        )}
      </ul>
      {onCopy !== undefined && (
        <div className="buttons">
          <Button onClick={onCopy}>{text.rules.copy}</Button>
        </div>
      )}
    </Fold>
  );
}
