import type { ReactNode } from 'react';
import type { ComparedCondition } from '../../checks/proof/conditions.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';

/** What was alike in both measurements and what was not; not known stays said. */
export function ConditionTable({ conditions }: { readonly conditions: readonly ComparedCondition[] }): ReactNode {
  const { checks, common } = useText();
  const { percent } = useNumbers();
  const units = useUnits();
  const words = checks.proof;
  if (conditions.length === 0) return null;
  const shown = (what: ComparedCondition['what'], value: number | string | undefined): string => {
    if (value === undefined) return common.notKnown;
    if (typeof value === 'string') return checks.word(value);
    if (what === 'fuel level') return percent(value);
    return what === 'volatility' ? units.print('pressure', value) : units.print('temperature', value);
  };
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
            {conditions.map(({ what, before, after, alike }) => (
              <tr key={what}>
                <th scope="row">{words.what[what] ?? what}</th>
                <td>{shown(what, before)}</td>
                <td>{shown(what, after)}</td>
                <td className={alike === 'no' ? 'warn' : alike === 'unknown' ? 'quiet' : ''}>{words.alike[alike]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}
