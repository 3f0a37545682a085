import type { ReactNode } from 'react';
import { checkById } from '../../checks/catalogue/all.ts';
import type { Price } from '../../checks/job-problem.ts';
import type { SetupId } from '../../checks/setups.ts';
import { useText } from '../text/language.ts';
import { useCheckWords } from './check-words.ts';

interface Props {
  readonly price: Price;
  readonly setups: readonly SetupId[];
  readonly ratePerHour: number;
  /** Number of the check; absent for a repair. */
  readonly checkId?: string | undefined;
}

/** What a step takes: minutes, money, set-ups, equipment. */
export function StepFacts({ price, setups, ratePerHour, checkId }: Props): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  const { check, whole } = useCheckWords();
  const catalogue = checks.catalogue();
  const entry = checkId === undefined ? undefined : checkById(checkId);
  return (
    <dl className="facts">
      <div>
        <dt>{words.minutes}</dt>
        <dd>{words.min(whole(price.minutes))}</dd>
      </div>
      {price.waitMinutes > 0 && (
        <div>
          <dt>{words.wait}</dt>
          <dd>{words.min(whole(price.waitMinutes))}</dd>
        </div>
      )}
      <div>
        <dt>{words.cost}</dt>
        <dd>
          {whole((price.minutes / 60) * ratePerHour + price.goods)}{' '}
          <span className="small quiet">{words.costNote(whole(ratePerHour))}</span>
        </dd>
      </div>
      {setups.length > 0 && (
        <div>
          <dt>{words.setups}</dt>
          <dd>{setups.map((id) => catalogue.setups[id]).join('; ')}</dd>
        </div>
      )}
      {entry !== undefined && entry.risk > 0 && (
        <div>
          <dt>{words.risk}</dt>
          <dd>{words.risks[entry.risk]}</dd>
        </div>
      )}
      {entry !== undefined && (
        <div>
          <dt>{words.needs}</dt>
          <dd>
            {entry.equipment.length === 0 ? words.noEquipment : entry.equipment.map(checks.word).join(', ')}
            {entry.after.length > 0 && (
              <span className="small quiet">
                {' · '}
                {words.after(entry.after.map((id) => check(id).name).join('; '))}
              </span>
            )}
          </dd>
        </div>
      )}
    </dl>
  );
}
