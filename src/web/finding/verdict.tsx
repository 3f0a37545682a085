/** The finding as two sentences: for the owner, and for the technician with size and place set off. */
import type { ReactNode } from 'react';
import type { Finding } from '../../diagnosis/finding.ts';
import { holeOf } from '../../report/hole.ts';
import { firstCause, tellingPlaces } from '../../report/words.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { closeRival, joined } from './finding-parts.ts';
import { useDiameter } from './use-diameter.ts';

/** From here on a finding is spoken without reserve; the number always stands beside it. */
const SURE = 0.8;

const upperFirst = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

export function Verdict({ finding }: { readonly finding: Finding }): ReactNode {
  const { finding: text } = useText();
  return (
    <>
      <p className="finding-sentence">
        <Technical finding={finding} />
      </p>
      <Certainty finding={finding} />
      <p className="owner-words">{text.owner(finding)}</p>
    </>
  );
}

function Technical({ finding }: { readonly finding: Finding }): ReactNode {
  const { finding: text, trade } = useText();
  const { percent } = useNumbers();
  const { interval, diameter } = useDiameter();
  const first = firstCause(finding);
  if (finding.verdict === 'cannot-tell' || first === null) {
    const why = finding.reasons.find(({ kind }) => kind === 'limits')?.text;
    return why === undefined ? text.sentence.cannotTell : text.sentence.cannotTellBecause(text.said(why));
  }
  if (finding.verdict === 'no-fault-seen') {
    const bound = first.diameterMm ?? finding.diameterMm;
    return (
      <>
        {text.sentence.noFault(first.probability >= SURE, percent(first.probability))}
        {bound !== null && ` ${text.sentence.bound(diameter(bound.hi90))}`}
      </>
    );
  }
  const hole = holeOf(first);
  const places = tellingPlaces(first);
  return (
    <>
      {upperFirst(trade.causes[first.id])}
      {hole !== undefined && (
        <>
          , <strong>{interval(hole)}</strong>
        </>
      )}
      {places !== null && (
        <>
          , {text.sentence.at(first.places.length > 1)}{' '}
          <strong>
            {joined(
              places.map((place) => trade.places[place]),
              text.or,
            )}
          </strong>
        </>
      )}
      .
    </>
  );
}

function Certainty({ finding }: { readonly finding: Finding }): ReactNode {
  const { finding: text, trade } = useText();
  const { percent } = useNumbers();
  const first = firstCause(finding);
  if (finding.verdict !== 'fault' || first === null) return null;
  const rival = closeRival(finding);
  return (
    <p>
      {text.sentence.probability(percent(first.probability), trade.certainty(first.probability))}
      {rival !== null && ` ${text.sentence.rival(trade.causes[rival.id], percent(rival.probability))}`}
    </p>
  );
}
