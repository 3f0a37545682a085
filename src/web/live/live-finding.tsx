/** The finding so far: what could it be, how large, and whether holding longer tells more. */
import type { ReactNode } from 'react';
import type { GrowingUpdate } from '../../diagnosis/growing/growing-finding.ts';
import type { LiveFollow, LiveStatus } from '../../server/contract/live.ts';
import { Diameter } from '../kit/interval.tsx';
import { LengthBar } from '../kit/length-bar.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useUnits } from '../units/units.ts';
import { useTimeWords } from './time-words.ts';

/** Causes below this share need no row while all of it still moves. */
const SMALL_SHARE = 0.02;
const MOST_ROWS = 5;
/** A pair of faults below this share is not worth a line. */
const WORTH_A_LINE = 0.05;
const M_PER_MM = 1e-3;

interface Props {
  readonly status: LiveStatus;
  readonly follow: LiveFollow | null;
}

export function LiveFinding({ status, follow }: Props): ReactNode {
  const { live: text } = useText();
  const words = text.finding;
  const finding = follow?.finding ?? null;
  if (status.follows === 'no-car') return <p>{words.noCar}</p>;
  if (status.follows === 'failed') return <p>{words.failed}</p>;
  if (status.procedure === null) return <p>{words.noProcedure}</p>;
  if (finding === null) return <p className="quiet">{words.waiting}</p>;
  if (finding.causes.length === 0) {
    return (
      <>
        <p className="quiet">{words.waiting}</p>
        <Warnings finding={finding} />
      </>
    );
  }
  return <Growing finding={finding} />;
}

function Growing({ finding }: { readonly finding: GrowingUpdate }): ReactNode {
  const { live: text, trade } = useText();
  const { percent } = useNumbers();
  const units = useUnits();
  const time = useTimeWords();
  const words = text.finding;
  const [first] = finding.causes;
  const shown = finding.causes.filter(({ probability }, k) => k === 0 || (k < MOST_ROWS && probability >= SMALL_SHARE));
  const rest = 1 - shown.reduce((sum, { probability }) => sum + probability, 0);
  const limits = [
    { mm: 0.5, probability: finding.exceeds.mm0_5 },
    { mm: 1, probability: finding.exceeds.mm1_0 },
  ];
  return (
    <div className="stack">
      <p className="finding-sentence">{words.sentence(trade.causes[first!.id], percent(first!.probability))}</p>
      <p className="quiet">
        {finding.uptoS !== undefined && words.upTo(time(finding.uptoS))}
        {!finding.settled && ` ${words.trying}`}
      </p>
      <ol className="cause-rows">
        {shown.map(({ id, probability }, k) => (
          <li key={id}>
            <LengthBar name={trade.causes[id]} share={probability} isRival={k > 0} />
          </li>
        ))}
        {rest >= SMALL_SHARE && (
          <li>
            <LengthBar name={words.rest} share={rest} isRival />
          </li>
        )}
      </ol>
      {finding.diameterMm !== null && (
        <p>
          {words.holeBefore} <Diameter size={finding.diameterMm} />.
          {limits.map(({ mm, probability }) =>
            probability === null ? null : (
              <span key={mm}> {words.over(units.print('length', mm * M_PER_MM, 1), percent(probability))}</span>
            ),
          )}
        </p>
      )}
      {finding.pairs.map(({ ids: [one, other], probability }) =>
        probability < WORTH_A_LINE ? null : (
          <p key={`${one} ${other}`}>{words.pair(trade.causes[one], trade.causes[other], percent(probability))}</p>
        ),
      )}
      {finding.holdingLonger !== undefined && (
        <p>
          <strong>
            {words.longer}: {finding.holdingLonger.verdict === 'worth it' ? words.longerWorth : words.longerNothing}
          </strong>{' '}
          {text.said(finding.holdingLonger.reason)}
        </p>
      )}
      <Untested finding={finding} />
      <Warnings finding={finding} />
      <p className="small quiet">{words.provisional}</p>
    </div>
  );
}

/** What the run has not put to the test so far. */
function Untested({ finding: { limits } }: { readonly finding: GrowingUpdate }): ReactNode {
  const { live, finding } = useText();
  if (limits.length === 0) return null;
  return (
    <>
      <p className="small">{live.finding.untested}:</p>
      <ul className="small">
        {limits.map((limit) => (
          <li key={limit}>{finding.said(limit)}</li>
        ))}
      </ul>
    </>
  );
}

/** What is assumed or missing. */
function Warnings({ finding: { warnings } }: { readonly finding: GrowingUpdate }): ReactNode {
  const { live, finding } = useText();
  if (warnings.length === 0) return null;
  return (
    <ul className="small">
      {warnings.map((warning) => (
        <li key={warning}>{finding.said(live.said(warning))}</li>
      ))}
    </ul>
  );
}
