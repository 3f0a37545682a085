/** What is known of the car, how it stands now and what is not at hand, asked in one place. */
import type { ReactNode } from 'react';
import { FUEL_LEVEL_IDS } from '../../checks/at-hand.ts';
import { CHECKS } from '../../checks/catalogue/all.ts';
import { CIRCUMSTANCE_IDS } from '../../checks/circumstances.ts';
import { SETUPS } from '../../checks/setups.ts';
import { Check, Choice, Several } from '../kit/choice.tsx';
import { Fold } from '../kit/fold.tsx';
import { withKey } from '../kit/with-key.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import type { PlanWishes } from './state-of-job.ts';

const EQUIPMENT: readonly string[] = [...new Set(CHECKS.flatMap(({ equipment }) => equipment))];

interface Props {
  readonly wishes: PlanWishes;
  readonly onWish: (change: Partial<PlanWishes>) => void;
  readonly missing: readonly string[];
  readonly onMissing: (missing: readonly string[]) => void;
}

export function Circumstances({ wishes, onWish, missing, onMissing }: Props): ReactNode {
  const { job, save } = useSheet();
  const { checks } = useText();
  const words = checks.next;
  const catalogue = checks.catalogue();
  const known = job.complaint.circumstances ?? [];
  const said = [
    words.circumstancesNow(known.length, missing.length + (wishes.hasNoLift ? 1 : 0)),
    ...wishes.standing.map((id) => catalogue.setups[id]),
  ].filter((part) => part !== '');
  return (
    <Fold label={words.circumstances} words={said.length === 0 ? words.circumstancesNone : said.join(', ')}>
      <div className="stack circumstances">
        <Several
          label={words.knownOfCar}
          options={CIRCUMSTANCE_IDS.map((value) => ({ value, name: catalogue.circumstances[value] }))}
          values={CIRCUMSTANCE_IDS.filter((id) => known.includes(id))}
          onChange={(circumstances) =>
            save(
              'complaint',
              withKey(job.complaint, 'circumstances', circumstances.length === 0 ? undefined : circumstances),
            )
          }
        />
        <Several
          label={words.standing}
          options={SETUPS.map((value) => ({ value, name: catalogue.setups[value] }))}
          values={SETUPS.filter((id) => wishes.standing.includes(id))}
          onChange={(standing) => onWish({ standing })}
        />
        <Choice
          label={words.fuelLevel}
          options={(['unknown', ...FUEL_LEVEL_IDS] as const).map((value) => ({ value, name: words.fuelLevels[value] }))}
          value={wishes.fuelLevel}
          onChange={(fuelLevel) => onWish({ fuelLevel })}
        />
        <Check
          label={words.noLift}
          words={words.noLiftWords}
          checked={wishes.hasNoLift}
          onChange={(hasNoLift) => onWish({ hasNoLift })}
        />
        <details>
          <summary>{words.notAtHand}</summary>
          <Several
            label={words.notAtHand}
            options={EQUIPMENT.map((value) => ({ value, name: checks.word(value) }))}
            values={EQUIPMENT.filter((name) => missing.includes(name))}
            onChange={onMissing}
          />
        </details>
      </div>
    </Fold>
  );
}
