/** `readiness`: whether the car passes, why its monitor has not run, and when it will. */
import { readFileSync } from 'node:fs';
import { conditionsSchema, type MonitorConditions, typicalConditions } from '../readiness/conditions.ts';
import { engineOffOutlook } from '../readiness/engine-off-result.ts';
import { evaluateReadiness } from '../readiness/evaluate.ts';
import { parseForecast } from '../readiness/forecast.ts';
import { evapInUseRatio } from '../readiness/in-use-ratio.ts';
import { INSPECTION_RULES, type InspectionRule, inspect, inspectionRuleSchema } from '../readiness/inspection.ts';
import { clockInWords, dateInWords, wallTime } from '../readiness/local-time.ts';
import { type DrivePlan, planDrives } from '../readiness/plan.ts';
import { inspectionSlip } from '../readiness/slip.ts';
import { LOCAL_RULES_CAUTION, minutes } from '../readiness/words.ts';
import type { CarStatus, ReadCode } from '../recording/bus/capture-reading.ts';
import type { Recording } from '../recording/recording.ts';
import { type Car, carSchema } from '../system/car.ts';
import { EXIT } from './exit-codes.ts';
import { cannotRead, Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { printJson, printText } from './output.ts';
import { readAnyRecording } from './read-any-recording.ts';

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
): DrivePlan | undefined {
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
      ...problem,
    });
  const deadlineMs = options.deadline === undefined ? undefined : Date.parse(options.deadline);
  if (deadlineMs !== undefined && Number.isNaN(deadlineMs))
    throw new Failure(EXIT.usage, `"${options.deadline}" is no date`, {
      expected: 'as 2026-12-04 or 2026-12-04T10:00',
    });
  const leaves = /^(\d{1,2}):(\d{2})$/.exec(options.leaves ?? '');
  const ratio = evapInUseRatio(status?.inUse)?.ratio;
  return planDrives({
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
}

/** Whether the coming night can give an engine-off test a result at all. */
function outlookOf(car: Car, plan: DrivePlan | undefined, options: ReadinessOptions): string | undefined {
  const first = plan?.attempts[0];
  if (car.layout !== 'engine-off' || first === undefined) return undefined;
  return engineOffOutlook(car, {
    fuelLevel: (options.level ?? 50) / 100,
    ambientAbsPa: 101_325,
    ambientFromK: first.temperatureK,
    ambientToK: first.temperatureK - 3,
    fuelTemperatureK: first.temperatureK + 8,
    heatW: 250,
  }).words;
}

export async function readinessCommand(paths: readonly string[], options: ReadinessOptions): Promise<void> {
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
  const codesRead = read.flatMap((each) => each.codesRead ?? []);
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
      : inspectionSlip(rule, inspection, status, codes, codesRead);
  const plan = planFrom(options, conditions, status);
  const outlook = outlookOf(car, plan, options);
  if (options.json === true) {
    printJson({
      schema: 'vaporwright-readiness-1',
      conditions,
      attempts: attempts.map(({ path, result }) => ({ file: path, ...result })),
      inspection: inspection ?? null,
      slip: slip?.lines ?? null,
      plan: plan ?? null,
      outlook: outlook ?? null,
      caution: LOCAL_RULES_CAUTION,
    });
    return;
  }
  const lines: string[] = [];
  if (slip !== undefined) lines.push('Inspection', ...slip.lines.map(({ what, value }) => `  ${what}: ${value}`), '');
  else if (status !== undefined) lines.push('Inspection: give --model-year to judge it.', '');
  lines.push(`Why it has not run (${conditions.label})`);
  if (attempts.length === 0) lines.push('  no engine start is seen in the recordings');
  for (const { path, result } of attempts) {
    const { attempt, verdict, blocker, results } = result;
    lines.push(
      `  ${path}, start at ${minutes(attempt.startS)}: ${
        blocker !== undefined
          ? `blocked first by ${blocker.condition.id} at ${minutes(blocker.atS ?? attempt.startS)}: ${blocker.words}`
          : verdict === 'conditions-met'
            ? 'all conditions met'
            : 'not blocked as far as can be seen'
      }`,
    );
    for (const each of results)
      if (each.outcome === 'unknown') lines.push(`    not known: ${each.condition.id}: ${each.words}`);
  }
  if (plan !== undefined) {
    lines.push('', 'When it will');
    for (const { startMs, probability, cumulative, temperatureK, pattern, notes } of plan.attempts) {
      const wall = wallTime(startMs, options.zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone);
      lines.push(
        `  ${dateInWords(wall)} ${clockInWords(wall)}, ${Math.round(temperatureK - 273.15)} °C: ${Math.round(100 * probability)} %, by then ${Math.round(100 * cumulative)} %: ${pattern.join('; ')}`,
        ...notes.map((note) => `    ${note}`),
      );
    }
    lines.push(...plan.words.map((text) => `  ${text}`), 'Avoid', ...plan.avoid.map((text) => `  ${text}`));
  }
  if (outlook !== undefined) lines.push('', `Engine-off test: ${outlook}`);
  lines.push('', LOCAL_RULES_CAUTION);
  printText(lines.join('\n'));
}
