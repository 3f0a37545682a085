/** The plan's first steps as a small tree of lists, short enough for one printed page. */
import type { ReactNode } from 'react';
import type { PlanTree } from '../../checks/plan-tree.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useCheckWords } from './check-words.ts';

const DEPTH = 3;
/** Answers less likely than this are left out: they would fill the page. */
const LEAST = 0.03;

export function PlanSteps({ tree }: { readonly tree: PlanTree }): ReactNode {
  const { checks } = useText();
  const words = checks.next;
  return (
    <div className="plan-steps">
      <h4>{words.tree}</h4>
      <ul className="tree">
        <li>
          <Node tree={tree} depth={0} />
        </li>
      </ul>
      <p className="small quiet">
        {words.treeCaution} {words.more}
      </p>
    </div>
  );
}

function Node({ tree, depth }: { readonly tree: PlanTree; readonly depth: number }): ReactNode {
  const { checks } = useText();
  const { percent } = useNumbers();
  const words = checks.next;
  const { step, whole, answer: answerOf } = useCheckWords();
  const answers =
    depth < DEPTH - 1 ? tree.answers.filter(({ probability }) => tree.probability * probability >= LEAST) : [];
  const isCutOff = answers.length === 0 && tree.answers.length > 0;
  return (
    <>
      <strong>{step(tree.step)}</strong>{' '}
      {tree.step.kind !== 'send away' && (
        <span className="small quiet">
          {words.min(whole(tree.step.minutes))}
          {isCutOff && '\u00a0…'}
        </span>
      )}
      {answers.length > 0 && (
        <ul>
          {answers.map(({ outcome, probability, next }) => (
            <li key={outcome}>
              <span className="answer">
                {answerOf(outcome, next === 'proven' ? undefined : next.likeliest.id)} ({percent(probability)}):
              </span>{' '}
              {next === 'proven' ? words.proven : <Node tree={next} depth={depth + 1} />}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
