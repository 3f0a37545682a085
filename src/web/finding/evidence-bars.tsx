/** What each phase says for or against the first cause: a signed length, and words. */
import type { ReactNode } from 'react';
import type { Finding } from '../../diagnosis/finding.ts';
import type { StoredSheet } from '../../report/sheet.ts';
import { firstCause, saysNothing } from '../../report/words.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';

interface Props {
  readonly finding: Finding;
  readonly recordings: StoredSheet['recordings'];
}

/** Beyond odds of a thousand to one a bar grows no longer. Natural log. */
const FULL = Math.log(1000);

export function EvidenceBars({ finding, recordings }: Props): ReactNode {
  const { finding: text, trade } = useText();
  const { fixed } = useNumbers();
  const first = firstCause(finding);
  if (first === null || first.byPhase.length === 0) return null;
  const rival = finding.causes[1];
  const isSilent = first.byPhase.every(({ logEvidence }) => saysNothing(logEvidence));
  const oddsOf = (logEvidence: number): string => {
    const size = Math.min(FULL, Math.abs(logEvidence));
    const odds = text.evidence.ratio(fixed(Math.exp(size), size < 1 ? 1 : 0), logEvidence > 0);
    return text.evidence.odds(Math.abs(logEvidence) > FULL ? text.evidence.over(odds) : odds);
  };
  return (
    <div className="stack">
      <h3>{text.evidence.title}</h3>
      <p className="quiet">
        {rival === undefined
          ? text.evidence.alone(trade.causes[first.id])
          : text.evidence.words(trade.causes[first.id], trade.causes[rival.id])}
      </p>
      {isSilent && <p>{text.evidence.silent}</p>}
      <ul className="evidence-rows">
        {first.byPhase.map(({ recording, phase, logEvidence }) => {
          const share = (Math.min(FULL, Math.abs(logEvidence)) / FULL) * 50;
          const name = trade.phases[phase];
          const label = recordings[recording]?.label ?? '';
          return (
            <li key={`${recording} ${phase}`}>
              <span>{recordings.length > 1 ? text.evidence.inRecording(name, label) : name}</span>
              <span className="signed" aria-hidden="true">
                <i
                  className={logEvidence < 0 ? 'against' : 'for'}
                  style={{ left: `${logEvidence < 0 ? 50 - share : 50}%`, width: `${share}%` }}
                />
              </span>
              <span>
                {text.evidence.strength(logEvidence)}
                {saysNothing(logEvidence) ? '' : <span className="quiet small"> · {oddsOf(logEvidence)}</span>}
              </span>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
