/** The leak budget: the whole and the same sections before and after, and what went between, by area. */
import type { ReactNode } from 'react';
import type { BudgetRow, LeakBudget } from '../../checks/proof/leak-budget.ts';
import type { Interval } from '../../diagnosis/finding.ts';
import { upperFirst } from '../../report/pressure-names.ts';
import { useDiameter } from '../finding/use-diameter.ts';
import { useText } from '../text/language.ts';

export function BudgetTable({ budget }: { readonly budget: LeakBudget }): ReactNode {
  const { checks } = useText();
  const { interval } = useDiameter();
  const words = checks.proof;
  const text = checks.catalogue().proof.budget;
  const cell = (size: Interval | undefined): string => (size === undefined ? words.notMeasured : interval(size));
  const rows: readonly (readonly [string, BudgetRow])[] = [
    [text.whole, budget.whole],
    ...budget.sections.map((row) => [checks.word(row.name), row] as const),
    ...(budget.sum === undefined ? [] : [[text.sum, budget.sum] as const]),
  ];
  return (
    <div className="stack">
      <h4>{text.title}</h4>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
      <section className="table-scroll" tabIndex={0} aria-label={text.title}>
        <table>
          <thead>
            <tr>
              <th scope="col">{text.where}</th>
              <th scope="col">{words.before}</th>
              <th scope="col">{words.after}</th>
              <th scope="col">{text.removed}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, { beforeMm, afterMm, removedMm }]) => (
              <tr key={name}>
                <th scope="row">{upperFirst(name)}</th>
                <td>{cell(beforeMm)}</td>
                <td>{cell(afterMm)}</td>
                <td>{removedMm === undefined ? '' : interval(removedMm)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {budget.repairedMm !== undefined && <p>{text.repaired(interval(budget.repairedMm))}</p>}
      {budget.expectedRestMm !== undefined && (
        <p>
          {text.expectedRest(interval(budget.expectedRestMm))}{' '}
          {budget.rest !== undefined && (
            <span className={budget.rest === 'more than expected' ? 'warn' : ''}>{text.rest[budget.rest]}</span>
          )}
        </p>
      )}
      <p className="small quiet">
        {text.lead}
        {budget.sections.length === 0 && ` ${words.sectionsHow}`}
      </p>
    </div>
  );
}
