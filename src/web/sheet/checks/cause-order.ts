/** Causes to choose from: those that the car can have, in the finding's order where there is one. */
import { CAUSES, type CauseId } from '../../../diagnosis/finding.ts';
import type { Job } from '../../../jobs/record/job.ts';
import type { LayoutId } from '../../../system/car.ts';

const OF_PUMP: readonly CauseId[] = ['pump_weak', 'pump_dead', 'orifice_dirty', 'changeover_leak', 'changeover_stuck'];
const OF_SEALED_TANK: readonly CauseId[] = ['isolation_leak', 'isolation_stuck_shut'];

const has = (layout: LayoutId | undefined, cause: CauseId): boolean =>
  layout === undefined ||
  !(
    (OF_PUMP.includes(cause) && layout !== 'pump-reference') ||
    (OF_SEALED_TANK.includes(cause) && layout !== 'sealed-tank')
  );

export function causesToChoose(job: Job): readonly CauseId[] {
  const found = job.findings.at(-1)?.sheet.finding.causes.map((cause) => cause.id) ?? [];
  return [...new Set([...found, ...CAUSES])].filter((cause) => cause !== 'none' && has(job.car?.layout, cause));
}
