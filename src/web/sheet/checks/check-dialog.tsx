import { type FormEvent, type ReactNode, useState } from 'react';
import { CHECK_LIKELIHOOD_RATIO } from '../../../jobs/record/check-weights.ts';
import type { CheckResult } from '../../../jobs/record/job.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/choice.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { NumberField, TextField } from '../../kit/fields.tsx';
import { newId } from '../../kit/new-id.ts';
import { withKey } from '../../kit/with-key.ts';
import { useText } from '../../text/language.ts';
import { Cautions } from '../cautions.tsx';
import { useWho } from '../use-who.ts';
import { CausePicker } from './cause-picker.tsx';

interface Props {
  /** The check to change; null for a new one. */
  readonly check: CheckResult | null;
  readonly onSave: (check: CheckResult) => void;
  readonly onClose: () => void;
}

const EMPTY = { what: '', result: '', speaksFor: [], speaksAgainst: [], strength: 'clear' } as const;

/** A check done by hand: what, what came of it, and for or against which causes it speaks. */
export function CheckDialog({ check, onSave, onClose }: Props): ReactNode {
  const text = useText();
  const words = text.job.check;
  const by = useWho();
  const [draft, setDraft] = useState<Omit<CheckResult, 'id' | 'at' | 'by'>>(
    check ?? { ...EMPTY, speaksFor: [], speaksAgainst: [] },
  );
  const [value, setValue] = useState(check?.measured?.value);
  const [unit, setUnit] = useState(check?.measured?.unit ?? '');
  const [isTried, setIsTried] = useState(false);
  const both = draft.speaksFor.find((cause) => draft.speaksAgainst.includes(cause));

  const submit = (event: FormEvent): void => {
    event.preventDefault();
    event.stopPropagation();
    setIsTried(true);
    if (draft.what.trim() === '' || draft.result.trim() === '' || both !== undefined) return;
    onSave(
      withKey<CheckResult, 'measured'>(
        { ...draft, id: check?.id ?? newId(), at: check?.at ?? new Date().toISOString(), by: check?.by ?? by },
        'measured',
        value === undefined ? undefined : { value, unit },
      ),
    );
  };

  return (
    <Dialog title={words.title} onClose={onClose}>
      <form className="stack" onSubmit={submit} noValidate>
        <TextField
          label={words.what}
          hint={words.whatHint}
          value={draft.what}
          maxLength={400}
          error={isTried && draft.what.trim() === '' ? words.needsWhat : undefined}
          onChange={(what) => setDraft({ ...draft, what })}
        />
        <TextField
          label={words.result}
          lines={2}
          value={draft.result}
          maxLength={2000}
          error={isTried && draft.result.trim() === '' ? words.needsResult : undefined}
          onChange={(result) => setDraft({ ...draft, result })}
        />
        <div className="fields">
          <NumberField label={words.value} value={value} notNumber={text.job.car.notNumber} onChange={setValue} />
          <TextField label={words.unit} value={unit} maxLength={20} onChange={setUnit} />
        </div>
        <div className="fields halves">
          <CausePicker
            label={words.speaksFor}
            causes={draft.speaksFor}
            onChange={(speaksFor) => setDraft({ ...draft, speaksFor })}
          />
          <CausePicker
            label={words.speaksAgainst}
            causes={draft.speaksAgainst}
            onChange={(speaksAgainst) => setDraft({ ...draft, speaksAgainst })}
          />
        </div>
        {both !== undefined && (
          <p className="warn" role="alert">
            {words.bothSides(text.trade.causes[both])}
          </p>
        )}
        <Choice
          label={words.strength}
          isStacked
          options={(['weak', 'clear', 'strong'] as const).map((name) => ({
            value: name,
            name: text.trade.strengths[name],
            words: words.strengthWords[name](CHECK_LIKELIHOOD_RATIO[name]),
          }))}
          value={draft.strength}
          onChange={(strength) => setDraft({ ...draft, strength })}
        />
        <p className="small quiet">{words.strengthNote}</p>
        <Cautions />
        <div className="buttons">
          <Button type="submit" kind="primary">
            {text.common.save}
          </Button>
          <Button onClick={onClose}>{text.common.cancel}</Button>
        </div>
      </form>
    </Dialog>
  );
}
