import { type FormEvent, type ReactNode, useState } from 'react';
import { REPAIR_IDS } from '../../../checks/repairs.ts';
import type { Job } from '../../../jobs/record/job.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { NumberField, SelectField, TextField } from '../../kit/fields.tsx';
import { newId } from '../../kit/new-id.ts';
import { withKey } from '../../kit/with-key.ts';
import { useText } from '../../text/language.ts';
import { Cautions } from '../cautions.tsx';
import { CausePicker } from '../checks/cause-picker.tsx';
import { useSheet } from '../sheet-context.ts';
import { useWho } from '../use-who.ts';

type Repair = Job['repairs'][number];
type Part = Repair['parts'][number];

interface Props {
  readonly repair: Repair | null;
  readonly onSave: (repair: Repair) => void;
  readonly onClose: () => void;
}

export function RepairDialog({ repair, onSave, onClose }: Props): ReactNode {
  const { job } = useSheet();
  const text = useText();
  const words = text.job.repair;
  const { repairs } = text.checks.catalogue();
  const by = useWho();
  const likeliest = job.findings.at(-1)?.sheet.finding.causes[0]?.id;
  const [draft, setDraft] = useState<Omit<Repair, 'id' | 'at' | 'by'>>(
    repair ?? { what: '', parts: [], addresses: likeliest === undefined || likeliest === 'none' ? [] : [likeliest] },
  );
  const [isTried, setIsTried] = useState(false);
  const setPart = (at: number, part: Part): void =>
    setDraft({ ...draft, parts: draft.parts.map((p, i) => (i === at ? part : p)) });

  const submit = (event: FormEvent): void => {
    event.preventDefault();
    event.stopPropagation();
    setIsTried(true);
    if (draft.what.trim() === '') return;
    onSave({
      ...draft,
      parts: draft.parts.filter((part) => part.name.trim() !== ''),
      id: repair?.id ?? newId(),
      at: repair?.at ?? new Date().toISOString(),
      by: repair?.by ?? by,
    });
  };

  return (
    <Dialog title={words.title} onClose={onClose}>
      <form className="stack" onSubmit={submit} noValidate>
        <TextField
          label={words.what}
          lines={2}
          value={draft.what}
          maxLength={2000}
          error={isTried && draft.what.trim() === '' ? words.needsWhat : undefined}
          onChange={(what) => setDraft({ ...draft, what })}
        />
        <SelectField
          label={words.catalogue}
          hint={words.catalogueHint}
          value={draft.repairId ?? ''}
          options={[
            { value: '', name: words.otherRepair },
            ...REPAIR_IDS.map((value) => ({ value, name: repairs[value] })),
          ]}
          onChange={(repairId) => setDraft(withKey(draft, 'repairId', repairId))}
        />
        <fieldset className="choice">
          <legend>{words.parts}</legend>
          {draft.parts.map((part, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a part has no name of its own until one is typed.
            <div className="line-fields" key={at}>
              <TextField
                label={words.part}
                value={part.name}
                maxLength={200}
                onChange={(name) => setPart(at, { ...part, name })}
              />
              <TextField
                label={words.number}
                value={part.number ?? ''}
                maxLength={80}
                onChange={(number) => setPart(at, withKey(part, 'number', number))}
              />
              <NumberField
                label={words.price}
                value={part.price}
                decimals={2}
                notNumber={text.job.car.notNumber}
                check={(price) => (price < 0 ? text.job.car.notPositive : undefined)}
                onChange={(price) => setPart(at, withKey(part, 'price', price))}
              />
              <Button
                kind="bare"
                aria-label={words.removePart(part.name)}
                onClick={() => setDraft({ ...draft, parts: draft.parts.filter((_, i) => i !== at) })}
              >
                {text.common.remove}
              </Button>
            </div>
          ))}
          <div className="buttons">
            <Button onClick={() => setDraft({ ...draft, parts: [...draft.parts, { name: '' }] })}>
              {words.addPart}
            </Button>
          </div>
        </fieldset>
        <CausePicker
          label={words.addresses}
          causes={draft.addresses}
          onChange={(addresses) => setDraft({ ...draft, addresses })}
        />
        <div className="fields">
          <NumberField
            label={words.minutes}
            value={draft.minutes}
            decimals={0}
            notNumber={text.job.car.notNumber}
            check={(minutes) => (minutes < 0 ? text.job.car.notPositive : undefined)}
            onChange={(minutes) => setDraft(withKey(draft, 'minutes', minutes))}
          />
        </div>
        <p>{words.caution}</p>
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
