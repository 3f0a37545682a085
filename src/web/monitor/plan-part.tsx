/** When the monitor will run: starts of the next days with their chances, how to drive, what to avoid. */
import { type ReactNode, useMemo } from 'react';
import { planOptionsOf } from '../../jobs/record/monitor-of-job.ts';
import { type DrivePlan, planDrives } from '../../readiness/plan.ts';
import { useSheet } from '../sheet/sheet-context.ts';
import { useSpoken, useText } from '../text/language.ts';
import { useNumbers } from '../text/numbers.ts';
import { EngineOffPart } from './engine-off-part.tsx';
import type { MonitorClient } from './monitor-client.ts';
import { PlanForm } from './plan-form.tsx';
import { useGaps } from './use-gaps.ts';
import { useMonitor } from './use-monitor.ts';
import { useReadiness } from './use-readiness.ts';

export function PlanPart({ client }: { readonly client: MonitorClient }): ReactNode {
  const { monitor: text } = useText();
  const { job, isReadOnly } = useSheet();
  const { monitor } = useMonitor();
  const { words } = useReadiness();
  const gaps = useGaps();
  const key = JSON.stringify([monitor.plan, monitor.conditions, monitor.readings.length, job.car?.layout]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key holds all of the job that a plan is made from.
  const plan = useMemo(() => {
    const options = planOptionsOf(job, Date.now());
    return options === undefined ? undefined : { ...planDrives(options), zone: options.zone };
  }, [key]);
  return (
    <div className="part">
      <h3>{text.plan.title}</h3>
      {plan === undefined && <p className="quiet">{gaps.needsForecast}</p>}
      {!isReadOnly && <PlanForm />}
      {plan !== undefined && <Plan plan={plan} />}
      {job.car?.layout === 'engine-off' && (
        <EngineOffPart car={job.car} client={client} stopMs={plan?.attempts[0]?.stopMs} />
      )}
      {plan !== undefined && <p className="small quiet">{words.caution}</p>}
    </div>
  );
}

function Plan({ plan }: { readonly plan: DrivePlan & { readonly zone: string } }): ReactNode {
  const { monitor: text } = useText();
  const { locale } = useSpoken();
  const { percent } = useNumbers();
  const { words, figures } = useReadiness();
  const { attempts, pattern, remarks, avoid, zone } = plan;
  const start = new Intl.DateTimeFormat(locale, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    timeZone: zone,
  });
  const { columns } = text.plan;
  return (
    <>
      {remarks.map((remark) => (
        <p key={remark.kind} className={remark.kind === 'judgement' ? 'small quiet' : ''}>
          {words.remark(remark, figures)}
        </p>
      ))}
      {attempts.length > 0 && (
        <>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard. */}
          <section className="table-scroll" tabIndex={0} aria-label={text.plan.attempts}>
            <table>
              <thead>
                <tr>
                  <th scope="col">{columns.start}</th>
                  <th scope="col">{columns.parked}</th>
                  <th scope="col" className="n">
                    {columns.air}
                  </th>
                  <th scope="col" className="n">
                    {columns.chance}
                  </th>
                  <th scope="col" className="n">
                    {columns.byThen}
                  </th>
                </tr>
              </thead>
              <tbody>
                {attempts.map((attempt) => (
                  <tr key={attempt.startMs}>
                    <th scope="row">
                      {start.format(attempt.startMs)}
                      {attempt.notes.map((note) => (
                        <span key={note.kind} className="small quiet">
                          {' '}
                          {words.note(note, figures)}
                        </span>
                      ))}
                    </th>
                    <td>{figures.duration(attempt.parkedBeforeS)}</td>
                    <td className="n">{figures.temperature(attempt.temperatureK)}</td>
                    <td className="n">{percent(attempt.probability)}</td>
                    <td className="n">{percent(attempt.cumulative)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          <p className="small quiet">{text.plan.zone(zone)}</p>
          <h4>{text.plan.pattern}</h4>
          <ol>
            {pattern.map((step) => (
              <li key={step.kind}>{words.step(step, figures)}</li>
            ))}
          </ol>
        </>
      )}
      <h4>{text.plan.avoid}</h4>
      <ul>
        {avoid.map((each) => (
          <li key={each.kind}>{words.avoid(each, figures)}</li>
        ))}
      </ul>
    </>
  );
}
