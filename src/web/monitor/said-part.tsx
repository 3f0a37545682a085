/** What the car says of its own tests, before and after the repair. */
import { type ReactNode, useState } from 'react';
import type { MonitorReading } from '../../jobs/record/monitor.ts';
import { newestReading } from '../../jobs/record/monitor-of-job.ts';
import { statusLines } from '../../readiness/slip.ts';
import { Button } from '../kit/button.tsx';
import { Fold } from '../kit/fold.tsx';
import { useSheet } from '../sheet/sheet-context.ts';
import { useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { InUseTable } from './in-use-table.tsx';
import { ReadingDialog } from './reading-dialog.tsx';
import { TestResults } from './test-results.tsx';
import { useGaps } from './use-gaps.ts';
import { useMonitor } from './use-monitor.ts';
import { useReadiness } from './use-readiness.ts';

export function SaidPart(): ReactNode {
  const { monitor: text } = useText();
  const { job, isReadOnly } = useSheet();
  const { monitor } = useMonitor();
  const gaps = useGaps();
  const [isEntering, setEntering] = useState(false);
  const newest = newestReading(job);
  return (
    <div className="part">
      <h3>{text.said.title}</h3>
      {newest === undefined ? (
        <p className="quiet">{gaps.none}</p>
      ) : (
        <>
          <p>
            <strong>{text.said[stateOf(newest)]}</strong>
          </p>
          <Lines />
          <InUseTable {...(newest.status.inUse === undefined ? {} : { inUse: newest.status.inUse })} />
          <TestResults results={newest.results} />
        </>
      )}
      {monitor.readings.length > 1 && <AllReadings />}
      {!isReadOnly && (
        <div className="buttons no-print">
          <Button onClick={() => setEntering(true)}>{text.said.enter}</Button>
        </div>
      )}
      {isEntering && <ReadingDialog onClose={() => setEntering(false)} />}
    </div>
  );
}

function stateOf({ status }: MonitorReading): 'has' | 'hasNot' | 'notFitted' | 'notAsked' {
  if (status.sinceClear === undefined) return 'notAsked';
  const evap = status.sinceClear.monitors.find(({ name }) => name === 'evaporative system');
  if (evap?.supported !== true) return 'notFitted';
  return evap.complete ? 'has' : 'hasNot';
}

/** One column, or two where the car was read before and after the repair. */
function Lines(): ReactNode {
  const { monitor: text } = useText();
  const { job } = useSheet();
  const { dateTime } = useNumbers();
  const { words, figures } = useReadiness();
  const readings = (['before-repair', 'after-repair'] as const).flatMap((taken) => newestReading(job, taken) ?? []);
  const columns = readings.map((reading) => [
    { what: text.said.readAt, value: dateTime(reading.at) },
    {
      what: text.said.from,
      value: [text.said.sources[reading.source], reading.fileName ?? ''].filter((part) => part !== '').join(' '),
    },
    ...statusLines(reading, words, figures),
  ]);
  const names = [...new Set(columns.flatMap((lines) => lines.map(({ what }) => what)))];
  const table = (
    <table className="said">
      {readings.length > 1 && (
        <thead>
          <tr>
            <th scope="col">{text.said.what}</th>
            {readings.map(({ id, taken }) => (
              <th key={id} scope="col">
                {taken === 'before-repair' ? text.said.before : text.said.after}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {names.map((name) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {columns.map((lines, at) => (
              <td key={readings[at]?.id}>{lines.find(({ what }) => what === name)?.value ?? words.notRead}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
  if (readings.length < 2) return table;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
    <section className="table-scroll" tabIndex={0} aria-label={text.said.title}>
      {table}
    </section>
  );
}

function AllReadings(): ReactNode {
  const { monitor: text, common, recording } = useText();
  const { monitor, change, isReadOnly } = useMonitor();
  const { dateTime } = useNumbers();
  return (
    <Fold label={text.said.all} words={text.said.allCount(monitor.readings.length)}>
      <ul className="rows">
        {monitor.readings.map(({ id, at, taken, source, fileName, by }) => (
          <li key={id} className="row-head">
            <p>
              {dateTime(at)}, {recording.takenNames[taken]}, {fileName ?? text.said.sources[source]}
              <span className="small quiet"> · {by}</span>
            </p>
            {!isReadOnly && (
              <Button
                kind="bare"
                aria-label={text.said.removeOne(dateTime(at))}
                onClick={() =>
                  change((before) => ({ ...before, readings: before.readings.filter((each) => each.id !== id) }))
                }
              >
                {common.remove}
              </Button>
            )}
          </li>
        ))}
      </ul>
    </Fold>
  );
}
