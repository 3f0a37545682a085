/** What follows from a job's section on monitor and inspection, the same on pages and paper. */
import { type MonitorConditions, typicalConditions } from '../../readiness/conditions.ts';
import { type Forecast, parseForecast } from '../../readiness/forecast.ts';
import { evapInUseRatio } from '../../readiness/in-use-ratio.ts';
import { type Inspection, type InspectionRule, inspect } from '../../readiness/inspection.ts';
import { INSPECTION_RULES } from '../../readiness/inspection-rules.ts';
import type { PlanOptions } from '../../readiness/plan.ts';
import type { Job, RecordingEntry } from './job.ts';
import { EMPTY_MONITOR, type Monitor, type MonitorReading } from './monitor.ts';

type Taken = RecordingEntry['taken'];
type WithMonitor = Pick<Job, 'monitor'>;

/** A job that was kept for reading by an older program has no such section. */
export const monitorOf = (job: { readonly monitor?: Monitor }): Monitor => job.monitor ?? EMPTY_MONITOR;

/** The last time that the car was read, of one side of the repair or of both. */
export function newestReading(job: WithMonitor, taken?: Taken): MonitorReading | undefined {
  return monitorOf(job)
    .readings.filter((reading) => taken === undefined || reading.taken === taken)
    .reduce<MonitorReading | undefined>(
      (newest, reading) => (newest === undefined || reading.at >= newest.at ? reading : newest),
      undefined,
    );
}

/** The conditions of this car's monitor; undefined as long as the layout is not known. */
export function conditionsOfJob(job: WithMonitor & Pick<Job, 'car'>): MonitorConditions | undefined {
  return monitorOf(job).conditions ?? (job.car === null ? undefined : typicalConditions(job.car.layout));
}

export interface RuleSettings {
  readonly inspectionRules?: readonly InspectionRule[];
  readonly inspectionRule?: string;
}

/** The shop's own rules first. */
export const rulesOf = ({ inspectionRules = [] }: RuleSettings): readonly InspectionRule[] => [
  ...inspectionRules,
  ...INSPECTION_RULES.filter(({ id }) => inspectionRules.every((own) => own.id !== id)),
];

/** The rule that the job names, else the shop's, else the federal one. */
export function ruleOfJob(job: WithMonitor, settings: RuleSettings): InspectionRule {
  const rules = rulesOf(settings);
  const byId = (id: string | undefined): InspectionRule | undefined => rules.find((rule) => rule.id === id);
  return byId(monitorOf(job).ruleId) ?? byId(settings.inspectionRule) ?? INSPECTION_RULES[0]!;
}

/** undefined without a model year: the allowance goes by it. */
export function inspectionOf(
  { vehicle }: Pick<Job, 'vehicle'>,
  reading: Pick<MonitorReading, 'status' | 'codes' | 'codesRead'>,
  rule: InspectionRule,
): Inspection | undefined {
  if (vehicle.modelYear === undefined) return undefined;
  const { status, codes, codesRead } = reading;
  return inspect(rule, vehicle.modelYear, status, codes, codesRead.includes('permanent'));
}

/** Codes that were stored or pending when a recording was made; undefined: not read. */
export function codesWhen(job: WithMonitor & Pick<Job, 'codes'>, taken: Taken): readonly string[] | undefined {
  const reading = newestReading(job, taken);
  if (reading?.codesRead.includes('confirmed'))
    return reading.codes.filter(({ status }) => status !== 'permanent').map(({ code }) => code);
  const written = job.codes.filter(({ status }) => status !== 'permanent').map(({ code }) => code);
  return written.length === 0 || taken === 'after-repair' ? undefined : written;
}

export function forecastOf({ plan }: Monitor): Forecast | undefined {
  const { forecast } = plan;
  return forecast === undefined
    ? undefined
    : parseForecast(forecast.text, Date.parse(forecast.typedAt), forecast.zone, forecast.unit);
}

/** What a drive plan is made from; undefined without a forecast that can be read, or without a layout. */
export function planOptionsOf(job: WithMonitor & Pick<Job, 'car'>, nowMs: number): PlanOptions | undefined {
  const monitor = monitorOf(job);
  const { forecast, fuelLevel, stoppedAt, routine, garageK, inspectionAt } = monitor.plan;
  const conditions = conditionsOfJob(job);
  const hours = forecastOf(monitor)?.hours ?? [];
  if (forecast === undefined || conditions === undefined || hours.length === 0) return undefined;
  const ratio = evapInUseRatio(newestReading(job)?.status.inUse)?.ratio;
  return {
    nowMs,
    zone: forecast.zone,
    forecast: hours,
    conditions,
    routine,
    ...(fuelLevel === undefined ? {} : { fuelLevel }),
    ...(stoppedAt === undefined ? {} : { stoppedMs: Math.min(nowMs, Date.parse(stoppedAt)) }),
    ...(garageK === undefined ? {} : { garageK }),
    ...(inspectionAt === undefined ? {} : { deadlineMs: Date.parse(inspectionAt) }),
    ...(ratio === undefined ? {} : { inUseRatio: ratio }),
  };
}
