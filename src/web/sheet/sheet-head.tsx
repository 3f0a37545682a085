import type { ReactNode } from 'react';
import { waitsFor } from '../../jobs/record/waits-for.ts';
import { Button } from '../kit/button.tsx';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { useSheet } from './sheet-context.ts';
import { PARTS, type Part } from './waiting-part.ts';

const NAME_OF: Readonly<
  Record<
    Part,
    'complaint' | 'car' | 'recordings' | 'finding' | 'nextCheck' | 'repair' | 'proof' | 'monitor' | 'handOver'
  >
> = {
  complaint: 'complaint',
  car: 'car',
  recordings: 'recordings',
  finding: 'finding',
  'next-check': 'nextCheck',
  repair: 'repair',
  proof: 'proof',
  monitor: 'monitor',
  'hand-over': 'handOver',
};

export function SheetHead({ waits }: { readonly waits: Part | null }): ReactNode {
  const { job, isReadOnly, setClosed } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const words = text.job;
  return (
    <header>
      <h1>{words.title(job.vehicle.name)}</h1>
      <p className="sub">
        {words.sub(job.number, numbers.date(job.createdAt))}
        {' · '}
        {job.closed ? text.jobs.isClosed : words.waitsFor(text.trade.waitsFor[waitsFor(job)])}
      </p>
      {job.demo && <p className="demo-mark small">{words.demo}</p>}
      {job.closed ? (
        <div className="buttons">
          <p>{words.isClosed}</p>
          <Button onClick={() => void setClosed(false)}>{words.reopen}</Button>
        </div>
      ) : (
        isReadOnly && <p>{words.readOnly}</p>
      )}
      <nav className="contents" aria-label={words.contents}>
        {PARTS.map((part) => (
          <a key={part} href={`#${part}`} aria-current={part === waits ? 'step' : undefined}>
            {words.sections[NAME_OF[part]]}
          </a>
        ))}
      </nav>
    </header>
  );
}
