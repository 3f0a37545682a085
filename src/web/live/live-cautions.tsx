/** What to mind before a self-test is commanded by hand while the car is recorded. */
import type { ReactNode } from 'react';
import type { LayoutId } from '../../system/car.ts';
import { Caution } from '../kit/caution.tsx';
import { useText } from '../text/language.ts';
import type { Said } from './procedure-choice.tsx';

const ENGINE_RUNS: readonly Said[] = ['vacuum-draw', 'purge-drive', 'none'];
const COMMANDED: readonly Said[] = ['vacuum-draw', 'engine-off', 'pump-run', 'sealed-hold', 'none'];

export function LiveCautions({
  said,
  layout,
}: {
  readonly said: Said | null;
  readonly layout: LayoutId | undefined;
}): ReactNode {
  const { live, trade } = useText();
  const what = said ?? 'none';
  const words = live.caution;
  const lines = [
    words.air,
    ...(COMMANDED.includes(what) ? [words.module, words.service] : []),
    ...(layout === 'sealed-tank' || what === 'sealed-hold' ? [words.sealed] : []),
    ...(ENGINE_RUNS.includes(what) ? [words.fuel] : []),
    ...(what === 'purge-drive' ? [words.road] : []),
  ];
  return (
    <Caution>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p className="small">{trade.cautions.general}</p>
    </Caution>
  );
}
