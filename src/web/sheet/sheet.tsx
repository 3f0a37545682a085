import { type ComponentType, lazy, type ReactNode, Suspense, useMemo, useRef } from 'react';
import { Button } from '../kit/button.tsx';
import { ErrorMessage, ErrorWords, Message } from '../kit/message.tsx';
import { Section } from '../kit/section.tsx';
import { useDrop } from '../kit/use-drop.ts';
import { useIsWide } from '../kit/use-is-wide.ts';
import { useText } from '../text/language.ts';
import { CarSection } from './car/car-section.tsx';
import { ChecksSection } from './checks/checks-section.tsx';
import { ComplaintSection } from './complaint/complaint-section.tsx';
import { FilesSection } from './files/files-section.tsx';
import { HandOverSection } from './hand-over/hand-over-section.tsx';
import { HistorySection } from './history/history-section.tsx';
import type { SaverView } from './job-saver.ts';
import { NotesSection } from './notes/notes-section.tsx';
import { ProofSection } from './proof/proof-section.tsx';
import { RepairSection } from './repair/repair-section.tsx';
import { useSheet } from './sheet-context.ts';
import { SheetHead } from './sheet-head.tsx';
import type { DrawingPanelProps, FindingSectionProps, RecordingSectionProps, RefusedFile } from './slots.ts';
import { waitingPart } from './waiting-part.ts';

const RecordingSection: ComponentType<RecordingSectionProps> = lazy(async () => ({
  default: (await import('../recording/recording-section.tsx')).RecordingSection,
}));
const FindingSection: ComponentType<FindingSectionProps> = lazy(async () => ({
  default: (await import('../finding/finding-section.tsx')).FindingSection,
}));
const MonitorSection = lazy(async () => ({ default: (await import('../monitor/monitor-section.tsx')).MonitorSection }));
const DrawingPanel: ComponentType<DrawingPanelProps> = lazy(async () => ({
  default: (await import('../drawing/drawing-panel.tsx')).DrawingPanel,
}));

interface Props {
  readonly problem: unknown;
  readonly dismissProblem: () => void;
  readonly refused: SaverView['refused'];
  readonly takeBack: () => void;
  readonly refusedFile: RefusedFile | null;
  readonly dismissRefusedFile: () => void;
}

/** The job from top to bottom; the drawing beside it on wide screens, after the finding on narrow ones. */
export function Sheet({
  problem,
  dismissProblem,
  refused,
  takeBack,
  refusedFile,
  dismissRefusedFile,
}: Props): ReactNode {
  const text = useText();
  const { job, isReadOnly, takeIn } = useSheet();
  const drop = useDrop((files) => void takeIn(files), !isReadOnly);
  const frame = useRef<HTMLDivElement>(null);
  const isWide = useIsWide();
  const waits = waitingPart(job);
  const names = text.job.sections;
  const drawing = useMemo(
    () => (
      <aside className="side" aria-label={text.job.beside}>
        <div className="fixed" ref={frame}>
          <Suspense fallback={<p className="quiet">{text.common.loading}</p>}>
            <DrawingPanel frame={frame} />
          </Suspense>
        </div>
      </aside>
    ),
    [text],
  );
  const waiting = <p className="quiet">{text.common.loading}</p>;
  return (
    <main className={`paper with-side${drop.isOver ? ' dropping' : ''}`} id="sheet" tabIndex={-1} {...drop.handlers}>
      <div className="sheet">
        <SheetHead waits={waits} />
        {problem !== null && <ErrorMessage error={problem} onClose={dismissProblem} />}
        {refused && (
          <Message isBad isLoud name={text.job.refusedTitle(text.job.sectionNames[refused.section])}>
            <p>{text.job.refusedWords}</p>
            <ErrorWords error={refused.error} />
            <div className="buttons">
              <Button onClick={takeBack}>{text.job.takeBack}</Button>
            </div>
          </Message>
        )}
        <Section id="complaint" name={names.complaint} isFirst={waits === 'complaint'}>
          <ComplaintSection />
        </Section>
        <Section id="car" name={names.car} isFirst={waits === 'car'}>
          <CarSection />
        </Section>
        <Section id="recordings" name={names.recordings} isFirst={waits === 'recordings'}>
          <Suspense fallback={waiting}>
            <RecordingSection refused={refusedFile} dismissRefused={dismissRefusedFile} />
          </Suspense>
        </Section>
        <Section id="finding" name={names.finding} isFirst={waits === 'finding'}>
          <Suspense fallback={waiting}>
            <FindingSection />
          </Suspense>
        </Section>
        {!isWide && drawing}
        <Section id="next-check" name={names.nextCheck} isFirst={waits === 'next-check'}>
          <ChecksSection />
        </Section>
        <Section id="repair" name={names.repair} isFirst={waits === 'repair'}>
          <RepairSection />
        </Section>
        <Section id="proof" name={names.proof} isFirst={waits === 'proof'}>
          <ProofSection />
        </Section>
        <Section id="monitor" name={names.monitor}>
          <Suspense fallback={waiting}>
            <MonitorSection />
          </Suspense>
        </Section>
        <Section id="hand-over" name={names.handOver} isFirst={waits === 'hand-over'}>
          <HandOverSection />
        </Section>
        <Section id="files" name={names.files}>
          <FilesSection />
        </Section>
        <Section id="notes" name={names.notes}>
          <NotesSection />
        </Section>
        <Section id="history" name={names.history}>
          <HistorySection />
        </Section>
      </div>
      {isWide && drawing}
    </main>
  );
}
