/** What speaks for and against, what is not proven, and what to record next, with the cautions of that step. */
import type { ReactNode } from 'react';
import type { Finding, Reason } from '../../diagnosis/finding.ts';
import { Cautions } from '../sheet/cautions.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { joined, openPoints } from './finding-parts.ts';

export function ReasonLists({ finding }: { readonly finding: Finding }): ReactNode {
  const { finding: text, trade } = useText();
  const { percent } = useNumbers();
  const ofKind = (kind: Reason['kind']): readonly string[] =>
    finding.reasons.filter((reason) => reason.kind === kind).map((reason) => text.said(reason.text));
  const open = openPoints(finding);
  const notProven = [
    ...ofKind('limits'),
    ...open.alike.map((group) =>
      text.reasons.whichPlace(
        joined(
          group.map((place) => trade.places[place]),
          text.or,
        ),
      ),
    ),
    ...(open.rival === null ? [] : [text.reasons.rival(trade.causes[open.rival.id], percent(open.rival.probability))]),
    ...(open.isFault ? [text.reasons.repair] : []),
    ...(open.hasHole ? [text.reasons.several] : []),
    text.reasons.asleep,
  ];
  const next = ofKind('next-recording');
  return (
    <>
      <List title={text.reasons.for} items={ofKind('for')} />
      <List title={text.reasons.against} items={ofKind('against')} />
      <List title={text.reasons.notProven} items={notProven} />
      {next.length > 0 && (
        <div className="stack">
          <List title={text.reasons.next} items={next} />
          <Cautions />
        </div>
      )}
      <List title={text.reasons.warnings} items={finding.warnings.map(text.said)} />
    </>
  );
}

function List({ title, items }: { readonly title: string; readonly items: readonly string[] }): ReactNode {
  if (items.length === 0) return null;
  return (
    <div className="reason-list">
      <h3>{title}</h3>
      <ul>
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </div>
  );
}
