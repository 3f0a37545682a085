/** How the line stands, in words: state, rate, how much, gaps. */
import { type ReactNode, useEffect, useRef } from 'react';
import type { LiveStatus } from '../../server/contract/live.ts';
import { announce } from '../kit/announce.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { NBSP } from '../text/unbroken.ts';
import { useTimeWords } from './time-words.ts';

export function LiveFacts({ status }: { readonly status: LiveStatus }): ReactNode {
  const { live: text, trade } = useText();
  const { fixed, bytes } = useNumbers();
  const time = useTimeWords();
  const words = text.facts;
  const state = text.states[status.state];
  const first = useRef(true);
  // Spoken when it changes; the counts beside it change all the time and are not.
  useEffect(() => {
    if (!first.current) announce(state);
    first.current = false;
  }, [state]);
  const { port } = status;
  // Before the first row there was nothing that could have a gap.
  const gaps = status.pauses
    .filter(({ toS }) => toS === undefined || toS > 0)
    .map(({ fromS, toS }) =>
      toS === undefined ? words.gapOpen(time(Math.max(0, fromS))) : words.gapOf(time(Math.max(0, fromS)), time(toS)),
    );
  return (
    <div className="stack">
      <p className={status.state === 'waiting' ? 'live-state away' : 'live-state'}>
        {state}
        {status.state === 'sampling' && <span className="quiet"> · {words.rateOf(fixed(status.rateHz, 0))}</span>}
      </p>
      {status.problem !== null && <p className="small">{text.problem(text.said(status.problem))}</p>}
      {port.kind === 'simulated' && <p className="demo-mark">{text.simulatedNow}</p>}
      <dl className="facts">
        <div>
          <dt>{words.line}</dt>
          <dd>
            {port.kind === 'adapter' ? port.address : `${text.port.simulated}, ${trade.layouts[port.layout].name}`}
          </dd>
        </div>
        <div>
          <dt>{words.lasts}</dt>
          <dd>
            {time(status.durationS)}; {words.counted(fixed(status.samples, 0), bytes(status.bytes))}
          </dd>
        </div>
        <div>
          <dt>{words.gaps}</dt>
          <dd>{gaps.length === 0 ? words.gapsNone : gaps.join(`;${NBSP}`)}</dd>
        </div>
      </dl>
      <p className="small quiet">{words.kept}</p>
    </div>
  );
}
