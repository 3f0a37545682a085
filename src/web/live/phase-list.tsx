/** The phases as they are recognised, newest last. */
import { type ReactNode, useEffect, useRef } from 'react';
import type { Phase } from '../../recording/recording.ts';
import { announce } from '../kit/announce.tsx';
import { useText } from '../text/language.ts';
import { useTimeWords } from './time-words.ts';

export function PhaseList({
  phases,
  isOver,
}: {
  readonly phases: readonly Phase[];
  readonly isOver: boolean;
}): ReactNode {
  const { live: text, trade } = useText();
  const time = useTimeWords();
  const last = phases.at(-1)?.kind;
  const said = useRef(last);
  useEffect(() => {
    if (last !== undefined && last !== said.current) announce(text.phases.announced(trade.phases[last]));
    said.current = last;
  }, [last, text, trade]);
  if (phases.length === 0) return <p className="quiet">{text.phases.none}</p>;
  return (
    <ol className="live-phases">
      {phases.map(({ kind, fromS, toS }, k) => (
        <li key={`${kind} ${fromS}`}>
          {k === phases.length - 1 && !isOver
            ? text.phases.now(trade.phases[kind], time(fromS))
            : text.phases.row(trade.phases[kind], time(fromS), time(toS))}
        </li>
      ))}
    </ol>
  );
}
