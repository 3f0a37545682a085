import type { ReactNode } from 'react';
import type { ComparedCondition } from '../../checks/proof/conditions.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { useMethodName } from './use-proof-say.ts';

/** What was alike in both measurements and what was not; not known stays said. */
export function ConditionTable({ conditions }: { readonly conditions: readonly ComparedCondition[] }): ReactNode {
  const { checks, common } = useText();
  const words = checks.proof;
  const proof = checks.catalogue().proof;
  const shown = useShown();
  if (conditions.length === 0) return null;
  return (
    <div className="stack">
      <h4>{words.conditions}</h4>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className="table-scroll" tabIndex={0} aria-label={words.conditions}>
        <table>
          <thead>
            <tr>
              <th scope="col">{words.condition}</th>
              <th scope="col">{words.before}</th>
              <th scope="col">{words.after}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {conditions.map((condition) => {
              const { what, alike } = condition;
              const isSameFill = what === 'volatility' && condition.isSameFill;
              return (
                <tr key={what}>
                  <th scope="row">{proof.conditions[what]}</th>
                  <td>{shown(condition, 'before') ?? common.notKnown}</td>
                  <td>{shown(condition, 'after') ?? common.notKnown}</td>
                  <td className={alike === 'no' ? 'warn' : alike === 'unknown' ? 'quiet' : ''}>
                    {isSameFill ? proof.sameFill : proof.alike[alike]}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
    </div>
  );
}

function useShown(): (condition: ComparedCondition, side: 'before' | 'after') => string | undefined {
  const { common } = useText();
  const { percent, fixed } = useNumbers();
  const units = useUnits();
  const methodName = useMethodName();
  return (condition, side) => {
    if (condition.what === 'method') return methodName(condition[side]);
    if (condition.what === 'volatility') {
      const range = condition[side];
      if (range === undefined) return undefined;
      return `${fixed(units.from('pressure', range.low), Math.max(0, units.decimals('pressure') - 1))} ${common.to} ${units.print('pressure', range.high, Math.max(0, units.decimals('pressure') - 1))}`;
    }
    const value = condition[side];
    if (value === undefined) return undefined;
    return condition.what === 'fuel level' ? percent(value) : units.print('temperature', value);
  };
}
