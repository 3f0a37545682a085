/** What the inspection slip shows of a job: the car's own word before and after the repair, rule, verdict, plan. */
import { type DrivePlan, planDrives } from '../../readiness/plan.ts';
import type { HandOver, HandOverMonitor } from '../../report/hand-over/hand-over.ts';
import type { Job } from '../record/job.ts';
import { inspectionOf, newestReading, planOptionsOf, type RuleSettings, ruleOfJob } from '../record/monitor-of-job.ts';

/** A plan is of use as long as the monitor has not run. */
function planOf(job: Job, nowMs: number): HandOverMonitor['plan'] {
  const options = planOptionsOf(job, nowMs);
  if (options === undefined) return null;
  const plan: DrivePlan = planDrives(options);
  return { ...plan, zone: options.zone };
}

/** undefined: the car was never asked. */
export function handOverMonitor(job: Job, rules: RuleSettings, madeAt: string): HandOver['monitor'] {
  const readings = (['before-repair', 'after-repair'] as const).flatMap((taken) => newestReading(job, taken) ?? []);
  const newest = readings.at(-1);
  if (newest === undefined) return undefined;
  const rule = ruleOfJob(job, rules);
  const evap = newest.status.sinceClear?.monitors.find(({ name }) => name === 'evaporative system');
  return {
    readings,
    rule,
    inspection: inspectionOf(job, newest, rule) ?? null,
    plan: evap?.complete === true ? null : planOf(job, Date.parse(madeAt)),
  };
}
