import type { ReactNode } from 'react';
import type { ComparedCondition } from '../../checks/proof/conditions.ts';
import { upperFirst } from '../../report/pressure-names.ts';
import { useText } from '../text/language.ts';
import { useProofSay } from './use-proof-say.ts';

/** What was alike in both measurements and what was not; not known stays said. */
export function ConditionTable({ conditions }: { readonly conditions: readonly ComparedCondition[] }): ReactNode {
  const { checks, common } = useText();
  const words = checks.proof;
  const proof = checks.catalogue().proof;
  const { condition: shown } = useProofSay();
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
                  <th scope="row">{upperFirst(proof.conditions[what])}</th>
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
