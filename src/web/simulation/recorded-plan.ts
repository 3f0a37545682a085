/** A recording made a plan to play: its steps, its commands, its day, so that the drawing shows what was recorded. */
import { type Conditions as DayConditions, findConditions } from '../../diagnosis/priors/conditions.ts';
import type { ChannelName, Phase, ProcedureKind, Recording, RecordingNotes } from '../../recording/recording.ts';
import type { Series } from '../../simulation/inputs.ts';
import type { Procedure, Step } from '../../simulation/procedure.ts';
import type { Conditions } from '../../simulation/scenario.ts';
import { IDLE_MANIFOLD_PA } from '../../simulation/typical-scenarios.ts';
import type { Car } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { AFTER_DRIVE_HEAT_W, FILL_FLOW_M3_PER_S } from './procedures.ts';
import { type Commands, type RecordedChannels, recordedCommands } from './recorded-commands.ts';

export interface RecordedPlan {
  /** Tells one recording, as it is read now, from another. */
  readonly id: string;
  readonly procedure: Procedure;
  readonly conditions: Conditions;
  readonly fillFraction: number;
  /** What the first draw came to, for the flow of the purge valve to be matched with it; absent where nothing was drawn. */
  readonly draw?: RecordedDraw;
}

export interface RecordedDraw {
  readonly lengthS: number;
  readonly endGaugePa: number;
  /** What the car had when it was recorded, as far as it is known. */
  readonly faults: readonly Fault[];
}

export interface RecordedEvent extends RecordedChannels {
  readonly id: string;
  readonly label: string;
  readonly procedure: ProcedureKind;
  readonly phases: readonly Phase[];
  readonly notes?: RecordingNotes;
}

/** Time of a recording at which a played run of it begins [s], and when it ends. */
export interface PlayedSpan {
  readonly fromS: number;
  readonly toS: number;
  /** False where the recording goes on after it. */
  readonly isWhole: boolean;
}

/** A recording of test after test is played to here; a drag could not follow more. Judgement. */
const MOST_PHASES = 24;
/** An engine at fewer turns stands [1/min]. */
const RUNNING_RPM = 200;
/** Points of what the manifold did; each is a stop of the integration. Judgement. */
const MANIFOLD_POINTS = 60;
/** Samples that the day's conditions are read from. */
const DAY_SAMPLES = 4000;
/** A draw that hardly pulled has no target that could be told from it [Pa]. Judgement. */
const LEAST_TARGET_PA = 100;
/** Samples that a pressure at the start is the middle of, and one at the end the mean of. */
const START_SAMPLES = 9;
const END_SAMPLES = 3;
const FULL_FRACTION = 0.99;

const DAY_CHANNELS = [
  'barometricPa',
  'ambientTemperatureK',
  'intakeTemperatureK',
  'fuelTemperatureK',
  'fuelLevel',
] as const satisfies readonly ChannelName[];

export function playedSpan(phases: readonly Phase[]): PlayedSpan | undefined {
  const last = phases[Math.min(phases.length, MOST_PHASES) - 1];
  if (last === undefined) return undefined;
  return { fromS: phases[0]!.fromS, toS: last.toS, isWhole: phases.length <= MOST_PHASES };
}

/** The day of a recording as the finding takes it: read where it was recorded, assumed where not. */
export function recordedDay(car: Car, event: RecordedEvent): DayConditions {
  const n = event.timeS.length;
  const stride = Math.max(1, Math.ceil(n / DAY_SAMPLES));
  const thin = (values: ArrayLike<number>): Float64Array =>
    Float64Array.from({ length: Math.ceil(n / stride) }, (_, i) => values[i * stride]!);
  const channels: Partial<Record<ChannelName, Float64Array>> = {};
  for (const name of DAY_CHANNELS) {
    const values = event.channels[name];
    if (values !== undefined) channels[name] = thin(values);
  }
  const recording: Recording = {
    label: event.label,
    timeS: thin(event.timeS),
    channels,
    notes: { ...event.notes, procedure: event.procedure },
  };
  return findConditions(car, recording);
}

/**
 * The plan that plays a recording.
 *
 * @param car the car that was recorded
 * @param faults what it had, as far as it is known
 * @param event the recording with its phases and what the technician noted
 * @param day its conditions, from `recordedDay`
 * @returns steps on the recording's own clock, from its first phase on; undefined without phases
 */
export function recordedPlan(
  car: Car,
  faults: readonly Fault[],
  event: RecordedEvent,
  day: DayConditions,
): RecordedPlan | undefined {
  const { procedure, channels, notes } = event;
  const phases = event.phases.slice(0, MOST_PHASES);
  const span = playedSpan(phases);
  if (span === undefined) return undefined;
  const commands = recordedCommands(event, procedure, phases, car.onBoardRefuellingRecovery ?? true);
  const steps = phases.flatMap((phase, i) => stepsOf(event, phase, commands[i]!, span.fromS));
  const isShutAtFirst = valueAt(commands[0]?.ventClosed) > 0.5;
  const startPa =
    isShutAtFirst || car.layout === 'sealed-tank'
      ? startPressure(event, channels.tankPressureGaugePa, span.fromS, phases[0]!.toS)
      : undefined;
  const runs = steps.some((step) => step.engineRunning);
  const keyOff = phases.find(({ kind }) => kind === 'vented' || kind === 'sealed');
  const draw = drawOf(event, phases, faults);
  return {
    id: event.id,
    fillFraction: day.fuelLevel,
    ...(draw === undefined ? {} : { draw }),
    procedure: { kind: procedure, words: event.label, steps },
    conditions: {
      ambientAbsPa: day.ambientAbsPa,
      ambientTemperatureK: day.ambientTemperatureK,
      start: { fuelTemperatureK: day.fuelTemperatureK, ...(startPa === undefined ? {} : { tankGaugePa: startPa }) },
      ...(runs ? { manifoldAbsPa: manifold(event, span) } : {}),
      ...(procedure === 'refuelling' ? { fillFlowM3PerS: fillFlow(event, notes) } : {}),
      ...(procedure === 'engine-off' && keyOff !== undefined
        ? {
            fuelHeatW: {
              timeS: AFTER_DRIVE_HEAT_W.timeS.map((t) => t + keyOff.fromS - span.fromS),
              value: AFTER_DRIVE_HEAT_W.value,
            },
          }
        : {}),
    },
  };
}

function drawOf(event: RecordedEvent, phases: readonly Phase[], faults: readonly Fault[]): RecordedDraw | undefined {
  const draw = event.procedure === 'vacuum-draw' ? phases.find(({ kind }) => kind === 'draw') : undefined;
  if (draw === undefined) return undefined;
  const endGaugePa = meanOf(event, event.channels.tankPressureGaugePa, draw.fromS, draw.toS, 'last') ?? 0;
  return endGaugePa > -LEAST_TARGET_PA ? undefined : { lengthS: draw.toS - draw.fromS, endGaugePa, faults };
}

const valueAt = (plan: Commands[keyof Commands]): number => (typeof plan === 'number' ? plan : (plan?.[0]?.value ?? 0));

/**
 * A draw ends, as in the car, when its vacuum is reached, and a filling when the tank is full; what is left of the time
 * is waited for, so that all that follows stands where it was recorded.
 */
function stepsOf(event: RecordedEvent, phase: Phase, commands: Commands, zeroS: number): readonly Step[] {
  const longestS = phase.toS - phase.fromS;
  if (longestS <= 0) return [];
  const endsAtS = phase.toS - zeroS;
  const engineRunning = isRunning(event, phase);
  const step: Step = { phase: phase.kind, commands, longestS, endsAtS, engineRunning };
  const { tankPressureGaugePa } = event.channels;
  if (phase.kind === 'draw' && event.procedure === 'vacuum-draw') {
    const target =
      event.notes?.drawTargetGaugePa ?? meanOf(event, tankPressureGaugePa, phase.fromS, phase.toS, 'last') ?? 0;
    if (target > -LEAST_TARGET_PA) return [step];
    const what = { kind: 'reading', sensor: 'tankPressure' } as const;
    return [
      { ...step, endsWhen: [{ what, is: 'below', value: target, outcome: 'target vacuum reached' }] },
      { ...step, phase: 'settle', longestS: 0, commands: { purgeDuty: 0, ventClosed: 1 } },
    ];
  }
  if (phase.kind === 'filling') {
    const what = { kind: 'fillFraction', space: 'tank' } as const;
    return [
      {
        ...step,
        endsWhen: [{ what, is: 'above', value: FULL_FRACTION, outcome: 'nozzle shut off by fuel at the spout' }],
      },
      { ...step, phase: 'filled', longestS: 0, commands: { nozzleOn: 0 } },
    ];
  }
  return [step];
}

function isRunning(event: RecordedEvent, { kind, fromS, toS }: Phase): boolean {
  const rpm = meanOf(event, event.channels.engineSpeedRpm, fromS, toS, 'all');
  if (rpm !== undefined) return rpm > RUNNING_RPM;
  if (kind === 'idle' || kind === 'purge' || kind === 'draw') return true;
  return event.procedure !== 'engine-off' && event.procedure !== 'refuelling' && event.procedure !== 'pump-run';
}

/** Middle of the first readings: a logger's very first may be from before. */
function startPressure(
  { timeS }: RecordedChannels,
  values: ArrayLike<number> | undefined,
  fromS: number,
  toS: number,
): number | undefined {
  const found: number[] = [];
  for (let i = 0; values !== undefined && i < values.length && timeS[i]! <= toS && found.length < START_SAMPLES; i++) {
    if (timeS[i]! >= fromS && Number.isFinite(values[i]!)) found.push(values[i]!);
  }
  return found.sort((a, b) => a - b)[found.length >> 1];
}

/** Mean of the finite values between two times: of all, or of the last few. */
function meanOf(
  { timeS }: RecordedChannels,
  values: ArrayLike<number> | undefined,
  fromS: number,
  toS: number,
  which: 'all' | 'last',
): number | undefined {
  const found: number[] = [];
  for (let i = 0; values !== undefined && i < values.length && timeS[i]! <= toS; i++) {
    if (timeS[i]! < fromS || !Number.isFinite(values[i]!)) continue;
    found.push(values[i]!);
  }
  const used = which === 'last' ? found.slice(-END_SAMPLES) : found;
  return used.length === 0 ? undefined : used.reduce((sum, v) => sum + v, 0) / used.length;
}

/** What the manifold did, as means over equal stretches; an idling engine's where it was not recorded. */
function manifold(event: RecordedEvent, { fromS, toS }: PlayedSpan): Series {
  const values = event.channels.manifoldAbsPa;
  if (values === undefined) return IDLE_MANIFOLD_PA;
  const sums = new Float64Array(MANIFOLD_POINTS);
  const counts = new Uint32Array(MANIFOLD_POINTS);
  const widthS = (toS - fromS) / MANIFOLD_POINTS;
  for (let i = 0; i < values.length && event.timeS[i]! <= toS; i++) {
    if (event.timeS[i]! < fromS || !Number.isFinite(values[i]!)) continue;
    const k = Math.min(MANIFOLD_POINTS - 1, Math.floor((event.timeS[i]! - fromS) / widthS));
    sums[k]! += values[i]!;
    counts[k]!++;
  }
  const kept = [...counts.keys()].filter((k) => counts[k]! > 0);
  if (kept.length === 0) return IDLE_MANIFOLD_PA;
  return { timeS: kept.map((k) => (k + 0.5) * widthS), value: kept.map((k) => sums[k]! / counts[k]!) };
}

/** Litres over seconds where both are known, else the rate that was noted or recorded, else a usual one. */
function fillFlow(event: RecordedEvent, notes: RecordingNotes | undefined): number {
  const fillings = event.phases.filter(({ kind }) => kind === 'filling');
  const fillingS = fillings.reduce((sum, { fromS, toS }) => sum + toS - fromS, 0);
  if (notes?.filledM3 !== undefined && fillingS > 0) return notes.filledM3 / fillingS;
  if (notes?.fillFlowM3PerS !== undefined) return notes.fillFlowM3PerS;
  const { fillFlowM3PerS } = event.channels;
  const first = fillings[0];
  const recorded = first && meanOf(event, fillFlowM3PerS, first.fromS, first.toS, 'all');
  return recorded !== undefined && recorded > 0 ? recorded : FILL_FLOW_M3_PER_S;
}
