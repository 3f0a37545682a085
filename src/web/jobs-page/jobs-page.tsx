import { type ReactNode, useDeferredValue, useState } from 'react';
import type { JobSummary } from '../../jobs/record/job.ts';
import { createJob, importJob, removeDemo } from '../api/jobs.ts';
import { makeBackup } from '../api/shop.ts';
import { Frame, useSession } from '../frame/frame.tsx';
import { announce } from '../kit/announce.tsx';
import { Button } from '../kit/button.tsx';
import { Check } from '../kit/choice.tsx';
import { FileButton, SelectField, TextField } from '../kit/fields.tsx';
import { ErrorMessage, Message } from '../kit/message.tsx';
import { saveFile } from '../kit/save-file.ts';
import { useDrop } from '../kit/use-drop.ts';
import { useIsReachable } from '../offline/connection.ts';
import { goTo } from '../router/router.ts';
import { leaveFiles } from '../sheet/pending-files.ts';
import { whatIs } from '../sheet/take-in.ts';
import { useText } from '../text/language.ts';
import { JobsTable } from './jobs-table.tsx';
import { NewJobDialog } from './new-job-dialog.tsx';
import { useJobList } from './use-job-list.ts';

type Waiting = JobSummary['waitsFor'];

export function JobsPage(): ReactNode {
  const text = useText();
  const words = text.jobs;
  const session = useSession();
  const isReachable = useIsReachable();
  const [search, setSearch] = useState('');
  const [waitsFor, setWaitsFor] = useState<Waiting | ''>('');
  const [closed, setClosed] = useState(false);
  const asked = useDeferredValue(search.trim());
  const list = useJobList({ words: asked, waitsFor, closed });
  const [isMaking, setIsMaking] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const mayChange = session !== null && session.role !== 'reader';

  const attempt = async (request: () => Promise<void>): Promise<void> => {
    setError(null);
    try {
      await request();
    } catch (problem) {
      setError(problem);
    }
  };
  /** A job file comes in as it is; anything else starts one job that takes all of it in. */
  const takeIn = (files: readonly File[]): Promise<void> =>
    attempt(async () => {
      const rest: File[] = [];
      let last = '';
      for (const file of files) {
        if ((await whatIs(file)).kind === 'job-file') last = (await importJob(file)).id;
        else rest.push(file);
      }
      if (rest.length > 0) {
        last = (await createJob({})).id;
        leaveFiles(last, rest);
      }
      if (last !== '') goTo(`/jobs/${last}`);
    });
  const drop = useDrop((files) => void takeIn(files), mayChange && isReachable);
  const demo = list.jobs.filter((job) => job.demo).length;
  const isFiltered = asked !== '' || waitsFor !== '' || closed;

  return (
    <Frame current="jobs" title={words.title}>
      <main className={`paper list${drop.isOver ? ' dropping' : ''}`} id="sheet" tabIndex={-1} {...drop.handlers}>
        <div className="sheet stack">
          <div className="head-row">
            <div>
              <h1>{words.title}</h1>
              {mayChange && isReachable && <p className="quiet">{words.drop}</p>}
            </div>
            {mayChange && (
              <div className="buttons">
                <Button kind="primary" disabled={!isReachable} onClick={() => setIsMaking(true)}>
                  {words.newJob}
                </Button>
                <FileButton
                  label={words.chooseRecording}
                  multiple
                  disabled={!isReachable}
                  onFiles={(files) => void takeIn(files)}
                />
              </div>
            )}
          </div>
          {error !== null && <ErrorMessage error={error} onClose={() => setError(null)} />}
          <search className="filters">
            <TextField label={words.search} hint={words.searchHint} type="search" value={search} onChange={setSearch} />
            <SelectField<Waiting | ''>
              label={words.waitsFor}
              value={waitsFor}
              options={[
                { value: '', name: words.any },
                ...(Object.keys(text.trade.waitsFor) as Waiting[]).map((value) => ({
                  value,
                  name: text.trade.waitsFor[value],
                })),
              ]}
              onChange={setWaitsFor}
            />
            <Check label={words.closed} checked={closed} onChange={setClosed} />
          </search>
          {list.error !== null ? (
            <ErrorMessage error={list.error} onRetry={list.again} />
          ) : list.isLoading && list.jobs.length === 0 ? (
            <p className="quiet">{text.common.loading}</p>
          ) : list.jobs.length === 0 ? (
            isFiltered ? (
              <p>{words.none}</p>
            ) : (
              <div className="stack empty">
                <h2>{words.empty}</h2>
                <p>{words.emptyWords}</p>
              </div>
            )
          ) : (
            <>
              <p className="visually-hidden" role="status">
                {words.count(list.jobs.length)}
              </p>
              <JobsTable jobs={list.jobs} />
              {list.hasMore && (
                <div className="buttons">
                  <Button onClick={list.more}>{words.more}</Button>
                </div>
              )}
            </>
          )}
          {demo > 0 && mayChange && (
            <Message>
              <p>{words.demoWords(demo)}</p>
              <div className="buttons">
                <Button
                  disabled={!isReachable}
                  onClick={() =>
                    void attempt(async () => {
                      announce(words.demoRemoved((await removeDemo()).removed));
                      list.again();
                    })
                  }
                >
                  {words.removeDemo}
                </Button>
              </div>
            </Message>
          )}
          {mayChange && (
            <div className="buttons list-foot">
              <FileButton
                kind="bare"
                label={words.importJob}
                accept=".json,application/json"
                disabled={!isReachable}
                onFiles={(files) => void takeIn(files)}
              />
              {session.role === 'owner' && (
                <Button
                  kind="bare"
                  disabled={!isReachable}
                  onClick={() =>
                    void attempt(async () => {
                      const { blob, fileName } = await makeBackup();
                      saveFile(blob, fileName);
                      announce(words.backupMade);
                    })
                  }
                >
                  {words.backup}
                </Button>
              )}
            </div>
          )}
        </div>
      </main>
      {isMaking && <NewJobDialog onClose={() => setIsMaking(false)} />}
    </Frame>
  );
}
