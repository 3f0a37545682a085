import type { ReactNode } from 'react';
import { CHECKS } from '../../checks/catalogue/all.ts';
import type { Check } from '../../checks/check.ts';
import { notOffered } from '../../checks/job-problem.ts';
import type { JobState } from '../../checks/job-state.ts';
import { Button } from '../kit/button.tsx';
import { Fold } from '../kit/fold.tsx';
import { useText } from '../text/language.ts';
import { useCheckWords } from './check-words.ts';

interface Props {
  readonly state: JobState;
  /** Checks that are not wanted for this job. */
  readonly leftOut: readonly string[];
  readonly wanting: ReadonlyMap<string, string>;
  readonly minutesOf: (id: string) => number;
  readonly onChoose: (id: string) => void;
  readonly onLeaveOut: (leftOut: readonly string[]) => void;
}

/** All checks by the first thing that they need. */
export function OtherChecks({ state, leftOut, wanting, minutesOf, onChoose, onLeaveOut }: Props): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  const { check, whole } = useCheckWords();
  const groups = new Map<string, Check[]>();
  for (const one of CHECKS) {
    const need = one.equipment[0] ?? '';
    groups.set(need, [...(groups.get(need) ?? []), one]);
  }
  const done = state.steps.map(({ id }) => id);
  return (
    <Fold label={words.others} words={words.othersWords} act={words.show}>
      {[...groups].map(([need, list]) => (
        <div key={need} className="check-group">
          <h4>{need === '' ? words.noEquipment : checks.word(need)}</h4>
          <ul className="rows">
            {list.map((one) => {
              const reason = notOffered(one, state);
              const isLeftOut = leftOut.includes(one.id);
              const why = isLeftOut ? reason : (wanting.get(one.id) ?? reason);
              const said = done.includes(one.id) ? words.doneAlready : why === undefined ? '' : words.notFor[why];
              return (
                <li key={one.id} className="row-head">
                  <span>
                    <Button kind="bare" onClick={() => onChoose(one.id)}>
                      {check(one.id).name}
                    </Button>{' '}
                    <span className="small quiet">
                      {words.min(whole(minutesOf(one.id)))}
                      {said === '' ? '' : ` · ${said}`}
                    </span>
                  </span>
                  {(reason === undefined || isLeftOut) && !wanting.has(one.id) && (
                    <Button
                      kind="bare"
                      aria-label={`${isLeftOut ? words.take : words.leave}: ${check(one.id).name}`}
                      onClick={() =>
                        onLeaveOut(isLeftOut ? leftOut.filter((id) => id !== one.id) : [...leftOut, one.id])
                      }
                    >
                      {isLeftOut ? words.take : words.leave}
                    </Button>
                  )}
                </li>
              );
            })}
          </ul>
        </div>
      ))}
    </Fold>
  );
}
