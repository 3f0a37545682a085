import type { ReactNode } from 'react';
import type { ConditionResult } from '../../readiness/condition-result.ts';
import { useText } from '../text/language.ts';
import { onClock, useReadiness } from './use-readiness.ts';

interface Props {
  readonly results: readonly ConditionResult[];
  /** The one that blocked first. */
  readonly first: ConditionResult | undefined;
}

/** How every condition went in one attempt, in the order in which a module looks at them. */
export function ConditionResults({ results, first }: Props): ReactNode {
  const { monitor: text } = useText();
  const { words, figures } = useReadiness();
  return (
    <ol className="rows results">
      {results.map((result) => {
        const { condition, outcome, atS } = result;
        const isFirst = outcome === 'blocked' && condition.id === first?.condition.id;
        return (
          <li key={condition.id}>
            <p className="row-head">
              <span>{isFirst ? <strong>{words.condition(condition.id)}</strong> : words.condition(condition.id)}</span>
              <span className={outcome === 'blocked' ? 'warn' : outcome === 'unknown' ? 'quiet' : ''}>
                {text.why.outcomes[outcome]}
                {atS !== undefined && ` ${text.why.at(onClock(atS))}`}
                {isFirst && `, ${text.why.first}`}
              </span>
            </p>
            <p className="small">{words.found(result, figures)}</p>
          </li>
        );
      })}
    </ol>
  );
}
