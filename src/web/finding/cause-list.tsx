/** Causes, most probable first, with the places that cannot be told apart said together. */
import type { ReactNode } from 'react';
import type { CauseProbability, Finding } from '../../diagnosis/finding.ts';
import { holeOf } from '../../report/hole.ts';
import { tellingPlaces } from '../../report/words.ts';
import { LengthBar } from '../kit/length-bar.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { joined, rankedCauses } from './finding-parts.ts';
import { useDiameter } from './use-diameter.ts';

export function CauseList({ finding }: { readonly finding: Finding }): ReactNode {
  const { finding: text, trade } = useText();
  const { shown, rest } = rankedCauses(finding);
  if (shown.length === 0) return null;
  return (
    <div className="stack causes">
      <h3>{text.causes.title}</h3>
      <ol className="cause-rows">
        {shown.map((cause, k) => (
          <li key={cause.id}>
            <LengthBar name={trade.causes[cause.id]} share={cause.probability} isRival={k > 0} withWords />
            <CauseDetail cause={cause} />
          </li>
        ))}
        {rest !== null && (
          <li>
            <LengthBar name={text.causes.rest(rest.count)} share={rest.share} isRival withWords />
          </li>
        )}
      </ol>
      {finding.pairs.length > 0 && (
        <>
          <h4>{text.causes.pairs}</h4>
          <ul className="cause-rows">
            {finding.pairs.map(({ ids, probability }) => (
              <li key={ids.join()}>
                <LengthBar
                  name={text.causes.pair(trade.causes[ids[0]], trade.causes[ids[1]])}
                  share={probability}
                  isRival
                />
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** A place below this share of its cause is not worth a line. */
const SMALL_PLACE = 0.02;

function CauseDetail({ cause }: { readonly cause: CauseProbability }): ReactNode {
  const { finding: text, trade } = useText();
  const { percent } = useNumbers();
  const { interval } = useDiameter();
  const hole = holeOf(cause);
  const total = cause.places.reduce((sum, { probability }) => sum + probability, 0);
  const places =
    tellingPlaces(cause) === null
      ? []
      : [...cause.places]
          .sort((a, b) => b.probability - a.probability)
          .filter(({ probability }) => probability >= SMALL_PLACE * total);
  if (hole === undefined && places.length === 0) return null;
  const nameOf = (group: CauseProbability['places'][number]['group']): string => {
    const names = joined(
      group.map((place) => trade.places[place]),
      text.or,
    );
    return group.length > 1 ? text.causes.alike(names) : names;
  };
  return (
    <div className="detail small quiet">
      {hole !== undefined && <p>{interval(hole)}</p>}
      {places.length > 0 && (
        <ul aria-label={text.causes.placesOf(trade.causes[cause.id])}>
          {places.map(({ group, probability }) => (
            <li key={group.join()}>
              {nameOf(group)}
              {places.length > 1 ? `, ${percent(probability / Math.max(total, 1e-9))}` : ''}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
