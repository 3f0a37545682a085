import { Fragment, type ReactNode } from 'react';
import type { Plan } from '../../checks/plan.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useCheckWords } from './check-words.ts';

/** Below this many minutes two plans are as good as each other. */
const LEAST_EXTRA = 0.5;

interface WhyProps {
  readonly plan: Plan;
  readonly isLast: boolean;
  readonly ratePerHour: number;
}

export function PlanWhy({ plan, isLast, ratePerHour }: WhyProps): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  const { percent } = useNumbers();
  const { step, whole } = useCheckWords();
  return (
    <div className="stack">
      <h4>{words.why}</h4>
      {!isLast && <p className="quiet">{words.whyLater}</p>}
      {isLast && plan.instead.length === 0 && <p>{words.whyNone}</p>}
      {plan.instead.length > 0 && (
        <ul>
          {plan.instead.map((other) => {
            const say = other.step.kind === 'repair' ? words.reflexRepair : words.reflexCheck;
            const work = other.expected.minutes - plan.expected.minutes;
            const money = (work / 60) * ratePerHour + other.expected.goods - plan.expected.goods;
            return (
              <li key={other.step.id}>
                {say(step(other.step), percent(other.probability))}{' '}
                <strong>{other.extra < LEAST_EXTRA ? words.noDearer : words.extra(whole(other.extra))}</strong>{' '}
                {words.difference(whole(Math.abs(work)), work >= 0, whole(Math.abs(money)), money >= 0)}
              </li>
            );
          })}
        </ul>
      )}
    </div>
  );
}

/** What each answer would change. */
export function PlanAnswers({ plan }: { readonly plan: Plan }): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  const { percent } = useNumbers();
  const { step, causes, whole, answer: answerOf } = useCheckWords();
  const held =
    plan.next.kind === 'repair' ? 1 - plan.answers.reduce((sum, { probability }) => sum + probability, 0) : 0;
  if (plan.answers.length === 0 && held === 0) return null;
  return (
    <div className="stack">
      <h4>{words.answers}</h4>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className="table-scroll plan-answers" tabIndex={0} aria-label={words.answers}>
        <table>
          <thead>
            <tr>
              <th scope="col">{words.answer}</th>
              <th scope="col" className="n">
                {words.chance}
              </th>
              <th scope="col" className="n">
                {words.rest}
              </th>
            </tr>
          </thead>
          <tbody>
            {held > 0 && (
              <>
                <tr>
                  <th scope="row">{checks.word('held')}</th>
                  <td className="n">{percent(held)}</td>
                  <td className="n">{words.min(whole(0))}</td>
                </tr>
                <tr className="about">
                  <td colSpan={3}>{words.proven}</td>
                </tr>
              </>
            )}
            {[...plan.answers]
              .sort((a, b) => b.probability - a.probability)
              .map((answer) => (
                <Fragment key={answer.outcome}>
                  <tr>
                    <th scope="row">{answerOf(answer.outcome, answer.causes[0]?.id)}</th>
                    <td className="n">{percent(answer.probability)}</td>
                    <td className="n">{words.min(whole(answer.expected.minutes))}</td>
                  </tr>
                  <tr className="about">
                    <td colSpan={3}>
                      {words.nextStep}: {step(answer.next)}
                      <span className="small quiet">
                        {words.thenLikely}: {causes(answer.causes, 2)}
                      </span>
                    </td>
                  </tr>
                </Fragment>
              ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}

export function PlanStop({ plan }: { readonly plan: Plan }): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  const { percent } = useNumbers();
  const { causes } = useCheckWords();
  const { probability, causes: left } = plan.unproven;
  return (
    <div className="stack">
      <h4>{words.stop}</h4>
      <p>
        {words.stopWords}{' '}
        {probability > 0.001 ? words.stopUnproven(percent(probability), causes(left)) : words.stopProven}
      </p>
    </div>
  );
}
