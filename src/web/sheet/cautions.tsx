import type { ReactNode } from 'react';
import { Caution } from '../kit/caution.tsx';
import { useText } from '../text/language.ts';
import { useInUnits } from '../units/use-in-units.ts';
import { useSheet } from './sheet-context.ts';

/** The usual cautions before hands-on work; the sealed tank's own stands in front. */
export function Cautions({ isOpen = false }: { readonly isOpen?: boolean }): ReactNode {
  const { job } = useSheet();
  const { trade } = useText();
  const inUnits = useInUnits();
  const all =
    job.car?.layout === 'sealed-tank'
      ? [trade.cautions.sealedTank, ...trade.cautions.standing]
      : trade.cautions.standing;
  const [first, ...rest] = all.map(inUnits);
  return (
    <Caution>
      <p>{first}</p>
      <p className="small">{trade.cautions.general}</p>
      <details open={isOpen}>
        <summary className="small">{trade.cautionsShow}</summary>
        <ul>
          {rest.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </details>
    </Caution>
  );
}
