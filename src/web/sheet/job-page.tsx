import { type ReactNode, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import type { Job, SectionName } from '../../jobs/record/job.ts';
import type { Work } from '../../server/contract/work.ts';
import { ApiError, Unreachable } from '../api/client.ts';
import {
  changeSection,
  importJob,
  readJob,
  readPreview,
  readSamples,
  setClosed,
  undoChange,
  uploadAttachment,
  uploadRecording,
} from '../api/jobs.ts';
import { readSettings } from '../api/shop.ts';
import { Frame, useSession } from '../frame/frame.tsx';
import { announce } from '../kit/announce.tsx';
import { ErrorMessage } from '../kit/message.tsx';
import { useLoaded } from '../kit/use-loaded.ts';
import { goTo } from '../router/router.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { ConflictDialog } from './conflict-dialog.tsx';
import { keepDrafts, readDrafts } from './drafts.ts';
import { JobSaver } from './job-saver.ts';
import { takeFiles } from './pending-files.ts';
import { isSame } from './same.ts';
import { SaveStateWords } from './save-state.tsx';
import { SECTION_NAMES } from './sections.ts';
import { Sheet } from './sheet.tsx';
import { SheetContext, type SheetJob } from './sheet-context.ts';
import type { RefusedFile } from './slots.ts';
import { whatIs } from './take-in.ts';
import { useJobEvents, type WorkList } from './use-job-events.ts';
import { useUndoKey } from './use-undo-key.ts';

export function JobPage({ id }: { readonly id: string }): ReactNode {
  const text = useText();
  const [loaded, again] = useLoaded(id, () => readJob(id));
  if (loaded.state === 'there') return <LoadedJob first={loaded.value} />;
  return (
    <Frame current="jobs" title={text.jobs.title}>
      <main className="paper" id="sheet">
        <div className="sheet">
          <h1 className="visually-hidden">{text.jobs.title}</h1>
          {loaded.state === 'loading' ? (
            <p className="quiet">{text.common.loading}</p>
          ) : (
            <>
              <ErrorMessage error={loaded.error} onRetry={again} />
              {loaded.error instanceof Unreachable && <p>{text.connection.notKept}</p>}
            </>
          )}
        </div>
      </main>
    </Frame>
  );
}

function LoadedJob({ first }: { readonly first: Job }): ReactNode {
  const text = useText();
  const numbers = useNumbers();
  const session = useSession();
  const words = useRef({ text, numbers });
  words.current = { text, numbers };

  const saver = useMemo(
    () =>
      new JobSaver(first, readDrafts(first.id), SECTION_NAMES, {
        change: (job, section, value, isLeaving) =>
          changeSection(job.id, job.version, section, value as Job[SectionName], isLeaving),
        read: readJob,
        keepDrafts,
        tellElsewhere: (sections) => {
          const { text: t, numbers: n } = words.current;
          announce(t.job.elsewhere(n.list(sections.map((name) => t.job.sectionNames[name]))));
        },
      }),
    [first],
  );
  const view = useSyncExternalStore(saver.subscribe, saver.getView);
  const { job } = view;
  const [work, setWork] = useState<readonly Work[]>([]);
  const [problem, setProblem] = useState<unknown>(null);
  const [refusedFile, setRefusedFile] = useState<RefusedFile | null>(null);

  const openWork = useRef<readonly string[]>([]);
  openWork.current = work.filter(({ state }) => state === 'waiting' || state === 'running').map(({ id }) => id);
  const list = useRef<WorkList>({
    open: () => openWork.current,
    follow: (next) =>
      setWork((all) =>
        all.some((w) => w.id === next.id) ? all.map((w) => (w.id === next.id ? next : w)) : [...all, next],
      ),
    forget: (workId) => setWork((all) => all.filter((w) => w.id !== workId)),
  }).current;
  const { follow } = list;
  useJobEvents(job.id, saver, list);

  useEffect(() => {
    const leave = (): void => {
      if (document.visibilityState === 'hidden') void saver.flush(true);
    };
    document.addEventListener('visibilitychange', leave);
    return () => {
      document.removeEventListener('visibilitychange', leave);
      void saver.flush(true);
    };
  }, [saver]);

  const isReader = session?.role === 'reader';
  const sheet = useMemo<SheetJob>(() => {
    const guarded = async (request: () => Promise<void>): Promise<void> => {
      try {
        setProblem(null);
        await request();
      } catch (error) {
        setProblem(error);
      }
    };
    const takeIn: SheetJob['takeIn'] = async (files, taken) => {
      for (const file of files) {
        const { text: t } = words.current;
        const dropped = await whatIs(file);
        const when = taken ?? (saver.getView().job.repairs.length > 0 ? 'after-repair' : 'before-repair');
        await guarded(async () => {
          if (dropped.kind === 'car') {
            saver.save('car', dropped.car);
            announce(t.job.loadedCar(file.name));
          } else if (dropped.kind === 'job-file') {
            goTo(`/jobs/${(await importJob(file)).id}`);
          } else if (dropped.kind === 'unknown-json') {
            throw new Error(t.job.badCar(file.name));
          } else {
            announce(t.job.uploading(file.name));
            try {
              await saver.own(async ({ id }) =>
                dropped.kind === 'recording'
                  ? (await uploadRecording(id, file, { taken: when })).job
                  : uploadAttachment(id, file),
              );
              announce(t.job.uploaded(file.name));
            } catch (error) {
              const isMappable = error instanceof ApiError && (error.status === 422 || error.status === 415);
              if (!isMappable || dropped.kind !== 'recording') throw error;
              setRefusedFile({ file, taken: when, error });
            }
          }
        });
      }
    };
    return {
      job,
      isReadOnly: isReader || job.closed,
      state: view.state,
      work,
      readSamples: (recordingId) => readSamples(job.id, recordingId),
      readPreview: (recordingId) => readPreview(job.id, recordingId),
      readRules: readSettings,
      save: (section, value) => saver.save(section, value),
      flush: () => saver.flush(),
      takeIn,
      adopt: (next) => saver.adopt(next),
      follow,
      undo: () =>
        guarded(async () => {
          try {
            let undone: readonly SectionName[] = [];
            await saver.own(async (now) => {
              const after = await undoChange(now.id, now.version);
              undone = SECTION_NAMES.filter((name) => !isSame(now[name], after[name]));
              return after;
            });
            const { text: t, numbers: n } = words.current;
            announce(t.job.undone(n.list(undone.map((name) => t.job.sectionNames[name]))));
          } catch (error) {
            if (error instanceof ApiError && error.facts.code === 'not-possible') {
              announce(words.current.text.job.nothingToUndo);
            } else throw error;
          }
        }),
      setClosed: (closed) => guarded(() => saver.own((now) => setClosed(now.id, now.version, closed))),
    };
  }, [job, view.state, work, saver, follow, isReader]);

  const { takeIn, undo } = sheet;
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the sheet opens.
  useEffect(() => {
    const files = takeFiles(first.id);
    if (files.length > 0) void takeIn(files);
  }, [first.id]);
  useUndoKey(undo, !sheet.isReadOnly);

  const name = text.job.title(job.vehicle.name);
  return (
    <SheetContext value={sheet}>
      <Frame current="jobs" title={name} state={<SaveStateWords />}>
        <Sheet
          problem={problem}
          dismissProblem={() => setProblem(null)}
          refused={view.refused}
          takeBack={() => saver.takeBack()}
          refusedFile={refusedFile}
          dismissRefusedFile={() => setRefusedFile(null)}
        />
      </Frame>
      {view.conflict && <ConflictDialog conflict={view.conflict} choose={(which) => saver.choose(which)} />}
    </SheetContext>
  );
}
