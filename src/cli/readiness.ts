/** `readiness`: whether the car passes, why its monitor has not run, and when it will. */
import { readFileSync } from 'node:fs';
import type { ConditionResult } from '../readiness/condition-result.ts';
import { conditionsSchema, type MonitorConditions, typicalConditions } from '../readiness/conditions.ts';
import { type EngineOffOutlook, engineOffOutlook } from '../readiness/engine-off-result.ts';
import { type AttemptResult, evaluateReadiness } from '../readiness/evaluate.ts';
import { type ForecastHour, parseForecast } from '../readiness/forecast.ts';
import { evapInUseRatio } from '../readiness/in-use-ratio.ts';
import { type InspectionRule, inspect, inspectionRuleSchema } from '../readiness/inspection.ts';
import { INSPECTION_RULES } from '../readiness/inspection-rules.ts';
import { type DrivePlan, planDrives } from '../readiness/plan.ts';
import { situationAfter } from '../readiness/situation-after.ts';
import { inspectionSlip } from '../readiness/slip.ts';
import { READINESS_EN } from '../readiness/text/en.ts';
import { PLAIN_METRIC, readinessFigures } from '../readiness/text/figures.ts';
import type { CarStatus, ReadCode } from '../recording/bus/capture-reading.ts';
import type { Recording } from '../recording/recording.ts';
import { type Car, carSchema } from '../system/car.ts';
import { EXIT } from './exit-codes.ts';
import { cannotRead, Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { printJson, printText } from './output.ts';
import { readAnyRecording } from './read-any-recording.ts';

const WORDS = READINESS_EN;
const FIGURES = readinessFigures(PLAIN_METRIC);

export interface ReadinessOptions {
  readonly car: string;
  readonly conditions?: string;
  readonly rule?: string;
  readonly ruleFile?: string;
  readonly modelYear?: number;
  readonly parkedHours?: number;
  readonly forecast?: string;
  readonly unit?: 'C' | 'F';
  readonly level?: number;
  readonly leaves?: string;
  readonly garage?: number;
  readonly deadline?: string;
  readonly zone?: string;
  readonly json?: boolean;
}

interface Read {
  readonly path: string;
  readonly recording?: Recording;
  readonly status?: CarStatus;
  readonly codes?: readonly ReadCode[];
  readonly codesRead?: readonly ReadCode['status'][];
}

function ruleOf(options: ReadinessOptions): InspectionRule {
  if (options.ruleFile !== undefined)
    return readJsonFile(options.ruleFile, inspectionRuleSchema, 'vaporwright-inspection-1').value;
  const wanted = options.rule ?? INSPECTION_RULES[0]!.id;
  const rule = INSPECTION_RULES.find(({ id }) => id === wanted);
  if (rule === undefined)
    throw new Failure(EXIT.usage, `no inspection rule "${wanted}"`, {
      expected: INSPECTION_RULES.map(({ id }) => id).join(', '),
      advice: 'Give your local rule with --rule-file (format: vaporwright schema inspection).',
    });
  return rule;
}

function planFrom(
  options: ReadinessOptions,
  conditions: MonitorConditions,
  status: CarStatus | undefined,
): { readonly plan: DrivePlan; readonly hours: readonly ForecastHour[] } | undefined {
  if (options.forecast === undefined) return undefined;
  const zone = options.zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  const nowMs = Date.now();
  let text: string;
  try {
    text = readFileSync(options.forecast, 'utf8');
  } catch (error) {
    throw cannotRead(options.forecast, error);
  }
  const { hours, problems } = parseForecast(text, nowMs, zone, options.unit ?? 'C');
  const [problem] = problems;
  if (problem !== undefined)
    throw new Failure(EXIT.input, `${options.forecast} cannot be read as a forecast`, {
      file: options.forecast,
      line: problem.line,
      found: problem.found,
      expected: WORDS.forecastWanted(problem.wanted),
    });
  const deadlineMs = options.deadline === undefined ? undefined : Date.parse(options.deadline);
  if (deadlineMs !== undefined && Number.isNaN(deadlineMs))
    throw new Failure(EXIT.usage, `"${options.deadline}" is no date`, {
      expected: 'as 2026-12-04 or 2026-12-04T10:00',
    });
  const leaves = /^(\d{1,2}):(\d{2})$/.exec(options.leaves ?? '');
  const ratio = evapInUseRatio(status?.inUse)?.ratio;
  const plan = planDrives({
    nowMs,
    zone,
    forecast: hours,
    conditions,
    routine: leaves === null ? [] : [{ hour: Number(leaves[1]), minute: Number(leaves[2]), lengthS: 1800 }],
    ...(options.level === undefined ? {} : { fuelLevel: options.level / 100 }),
    ...(options.garage === undefined ? {} : { garageK: options.garage + 273.15 }),
    ...(deadlineMs === undefined ? {} : { deadlineMs }),
    ...(ratio === undefined ? {} : { inUseRatio: ratio }),
  });
  return { plan, hours };
}

/** Whether the time parked after the first planned drive can give an engine-off test a result at all. */
function outlookOf(
  car: Car,
  planned: ReturnType<typeof planFrom>,
  options: ReadinessOptions,
): EngineOffOutlook | undefined {
  const first = planned?.plan.attempts[0];
  if (car.layout !== 'engine-off' || planned === undefined || first === undefined) return undefined;
  const level = options.level === undefined ? undefined : options.level / 100;
  const situation = situationAfter(planned.hours, first.stopMs, level);
  return situation === undefined ? undefined : engineOffOutlook(car, situation);
}

const resultForMachines = ({ fact: _, ...result }: ConditionResult, words: string) => ({ ...result, words });
const inWords = (result: ConditionResult) => resultForMachines(result, WORDS.found(result, FIGURES));

const attemptForMachines = (path: string, { attempt, verdict, blocker, results }: AttemptResult) => ({
  file: path,
  attempt,
  verdict,
  ...(blocker === undefined ? {} : { blocker: inWords(blocker) }),
  results: results.map(inWords),
});

const planForMachines = ({ attempts, pattern, probability, remarks, avoid }: DrivePlan) => ({
  attempts: attempts.map((each) => ({ ...each, notes: each.notes.map((note) => WORDS.note(note, FIGURES)) })),
  pattern: pattern.map((step) => WORDS.step(step, FIGURES)),
  probability,
  remarks: remarks.map((remark) => WORDS.remark(remark, FIGURES)),
  avoid: avoid.map((each) => WORDS.avoid(each, FIGURES)),
});

const at = (seconds: number): string => FIGURES.duration(seconds);

function attemptLines(path: string, { attempt, verdict, blocker, results }: AttemptResult): string[] {
  const outcome =
    blocker !== undefined
      ? `blocked first by ${blocker.condition.id} at ${at(blocker.atS ?? attempt.startS)}: ${WORDS.found(blocker, FIGURES)}`
      : verdict === 'conditions-met'
        ? 'all conditions met'
        : 'not blocked as far as can be seen';
  return [
    `  ${path}, start at ${at(attempt.startS)}: ${outcome}`,
    ...results
      .filter((each) => each.outcome === 'unknown')
      .map((each) => `    not known: ${each.condition.id}: ${WORDS.found(each, FIGURES)}`),
  ];
}

function planLines(plan: DrivePlan): string[] {
  const { attempts, pattern, remarks, avoid } = planForMachines(plan);
  return [
    'When it will',
    ...attempts.flatMap(({ date, clock, temperatureK, probability, cumulative, notes }) => [
      `  ${date} ${clock}, ${FIGURES.temperature(temperatureK)}: ${FIGURES.percent(probability)}, by then ${FIGURES.percent(cumulative)}`,
      ...notes.map((note) => `    ${note}`),
    ]),
    ...(attempts.length === 0 ? [] : [`  How to drive: ${pattern.join('; ')}`]),
    ...remarks.map((text) => `  ${text}`),
    'Avoid',
    ...avoid.map((text) => `  ${text}`),
  ];
}

export async function readinessCommand(paths: readonly string[], options: ReadinessOptions): Promise<void> {
  if (paths.length === 0 && options.forecast === undefined) {
    throw new Failure(EXIT.usage, 'there is nothing to go by', {
      expected: 'recordings or bus captures of drives and soaks, or --forecast FILE to plan the next ones, or both',
      advice: 'Try: vaporwright readiness --car car.json --model-year 2012 drive.log',
    });
  }
  const car = readJsonFile(options.car, carSchema, 'vaporwright-car-1').value;
  const conditions =
    options.conditions === undefined
      ? typicalConditions(car.layout)
      : readJsonFile(options.conditions, conditionsSchema, 'vaporwright-monitor-1').value;
  const rule = ruleOf(options);
  const read: Read[] = [];
  for (const path of paths) {
    const { recording, capture } = await readAnyRecording(path, car);
    read.push({
      path,
      ...(recording === undefined ? {} : { recording }),
      ...(capture === undefined ? {} : { status: capture.status, codes: capture.codes, codesRead: capture.codesRead }),
    });
  }
  const status = [...read].reverse().find((each) => each.status !== undefined)?.status;
  const codes = read.flatMap((each) => each.codes ?? []);
  const codesRead = [...new Set(read.flatMap((each) => each.codesRead ?? []))];
  const active = !codesRead.includes('confirmed')
    ? undefined
    : codes.filter((code) => code.status !== 'permanent').map(({ code }) => code);
  const attempts = read.flatMap(({ path, recording }) =>
    recording === undefined
      ? []
      : evaluateReadiness(recording, conditions, {
          ...(options.parkedHours === undefined ? {} : { parkedBeforeS: options.parkedHours * 3600 }),
          ...(active === undefined ? {} : { codes: active }),
        }).map((result) => ({ path, result })),
  );
  const inspection =
    status === undefined || options.modelYear === undefined
      ? undefined
      : inspect(rule, options.modelYear, status, codes, codesRead.includes('permanent'));
  const slip =
    inspection === undefined || status === undefined
      ? undefined
      : inspectionSlip(rule, inspection, { status, codes, codesRead }, WORDS, FIGURES);
  const planned = planFrom(options, conditions, status);
  const outlook = outlookOf(car, planned, options);
  if (options.json === true) {
    printJson({
      schema: 'vaporwright-readiness-1',
      conditions,
      status: status ?? null,
      codes,
      codesRead,
      attempts: attempts.map(({ path, result }) => attemptForMachines(path, result)),
      inspection:
        inspection === undefined
          ? null
          : {
              rule: rule.id,
              ...inspection,
              reasons: inspection.reasons.map((reason) => WORDS.reason(reason, FIGURES)),
              missing: inspection.missing.map(WORDS.gap),
            },
      slip: slip ?? null,
      plan: planned === undefined ? null : planForMachines(planned.plan),
      outlook: outlook === undefined ? null : { ...outlook, words: WORDS.outlook(outlook, FIGURES) },
      caution: WORDS.caution,
    });
    return;
  }
  const lines: string[] = [];
  if (slip !== undefined) lines.push('Inspection', ...slip.map(({ what, value }) => `  ${what}: ${value}`), '');
  else if (status !== undefined) lines.push('Inspection: give --model-year to judge it.', '');
  else if (options.modelYear !== undefined)
    lines.push('Inspection: the files hold no readiness; a bus capture of the car does.', '');
  if (paths.length > 0) lines.push(`Why it has not run (${conditions.label})`);
  if (paths.length > 0 && attempts.length === 0) lines.push('  no engine start is seen in the recordings');
  lines.push(...attempts.flatMap(({ path, result }) => attemptLines(path, result)));
  if (planned !== undefined) lines.push(...(lines.length > 0 ? [''] : []), ...planLines(planned.plan));
  if (outlook !== undefined) lines.push('', `Engine-off test: ${WORDS.outlook(outlook, FIGURES)}`, WORDS.plateau);
  lines.push('', WORDS.caution);
  printText(lines.join('\n'));
}
