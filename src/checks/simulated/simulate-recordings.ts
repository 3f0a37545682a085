/**
 * Recordings that could be made, as checks: every root cause that is still believed is played through each of them, like
 * traces are put together as one outcome, and what an outcome says of the causes follows from how alike the traces are.
 */

import type { Interval } from '../../diagnosis/finding.ts';
import { IDLE_MANIFOLD_PA, MILD_DAY, typicalScenario } from '../../simulation/typical-scenarios.ts';
import type { LayoutId } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import type { RootCauseId } from '../root-causes.ts';
import { CANDIDATES, type Candidate, DRAWN_LAYOUTS, type RecordingId } from './candidates.ts';
import { faultsOf } from './faults-of.ts';
import { distance, type Features, featuresOf } from './features.ts';

export interface SimulatedRecording {
  readonly id: RecordingId;
  /** By outcome, the causes that it mostly comes from. */
  readonly outcomes: readonly { readonly id: string; readonly causes: readonly RootCauseId[] }[];
  /** Chance of each outcome by root cause, for those that were played. */
  readonly chances: Readonly<Partial<Record<RootCauseId, readonly number[]>>>;
}

export interface RecordingQuestion {
  readonly layout: LayoutId;
  /** Root causes still believed, most probable first. */
  readonly causes: readonly { readonly id: RootCauseId; readonly probability: number }[];
  /** Size of the hole as far as it is known; absent: what brings cars in. */
  readonly diameterMm?: Interval;
}

/** Causes that are played; less probable ones would not change what is worth recording. */
const MOST_CAUSES = 8;
const LEAST_PROBABILITY = 0.01;
/** Holes that bring a car in [mm]: the middles of thirds of a log-normal of median 0.75 and spread 0.9. Judgement. */
const USUAL_MM: Interval = { median: 0.75, lo90: 0.17, hi90: 3.3 };
/** Traces nearer than this, in squared standard deviations, are one outcome. */
const ALIKE = 6;
const MOST_OUTCOMES = 6;
/** 1 Hz and a looser integration are enough for a dozen points of a trace. */
const SAMPLING = { rateHz: 1, jitter: 0, pressureStepPa: 0, noisePa: 0, seed: 1 } as const;
const RELATIVE_TOLERANCE = 1e-3;

interface Played {
  readonly cause: RootCauseId;
  readonly share: number;
  readonly features: Features;
}

/** Sizes at the middles of the interval's thirds [m]. */
function sizesOf({ median, lo90, hi90 }: Interval): number[] {
  const up = Math.log(hi90 / median) / 1.645;
  const down = Math.log(median / Math.max(0.02, lo90)) / 1.645;
  // the sixth, the half and the five sixths of a normal lie at -0.967, 0 and 0.967
  return [median * Math.exp(-0.967 * down), median, median * Math.exp(0.967 * up)].map((mm) => mm * 1e-3);
}

/** One recording after the other, so that a caller can stop in between; some tenths of a second each. */
export function* simulateRecordings(question: RecordingQuestion): Generator<SimulatedRecording> {
  if (!DRAWN_LAYOUTS.includes(question.layout)) return;
  const causes = question.causes.filter(({ probability }) => probability >= LEAST_PROBABILITY).slice(0, MOST_CAUSES);
  const sizes = sizesOf(question.diameterMm ?? USUAL_MM);
  for (const candidate of CANDIDATES) {
    const played = causes.flatMap(({ id }): Played[] =>
      faultsOf(id, sizes).flatMap(({ fault, share }) => {
        const features = play(question.layout, candidate, fault);
        return features ? [{ cause: id, share, features }] : [];
      }),
    );
    if (played.length > 0)
      yield asCheck(candidate, played, new Map(causes.map(({ id, probability }) => [id, probability])));
  }
}

function play(layout: LayoutId, candidate: Candidate, fault: Fault | undefined): Features | undefined {
  const faults = [...(fault ? [fault] : []), ...(candidate.made ? [candidate.made] : [])];
  const scenario = typicalScenario(layout, faults, candidate.change);
  return featuresOf({
    ...scenario,
    procedure: candidate.procedure,
    // a draw by the engine at idle on a mild day, whatever else the car's own test is
    conditions: {
      ...MILD_DAY,
      manifoldAbsPa: IDLE_MANIFOLD_PA,
      start: { ...MILD_DAY.start, ...candidate.start },
    },
    sampling: SAMPLING,
    relativeTolerance: RELATIVE_TOLERANCE,
  });
}

function asCheck(
  candidate: Candidate,
  played: readonly Played[],
  probability: ReadonlyMap<RootCauseId, number>,
): SimulatedRecording {
  // the trace of the likeliest cause leads; the next that is unlike all leaders leads an outcome of its own
  const weight = (p: Played) => p.share * (probability.get(p.cause) ?? 0);
  const leaders: Played[] = [];
  for (const p of [...played].sort((a, b) => weight(b) - weight(a))) {
    if (leaders.length >= MOST_OUTCOMES) break;
    if (leaders.every((leader) => distance(leader.features, p.features) > ALIKE)) leaders.push(p);
  }
  const chances: Partial<Record<RootCauseId, number[]>> = {};
  for (const p of played) {
    const far = leaders.map((leader) => distance(leader.features, p.features));
    const least = Math.min(...far);
    const near = far.map((d) => Math.exp(-0.5 * (d - least)));
    const total = near.reduce((a, b) => a + b, 0);
    const own = chances[p.cause] ?? leaders.map(() => 0);
    chances[p.cause] = own;
    near.forEach((x, o) => {
      own[o]! += (p.share * x) / total;
    });
  }
  for (const own of Object.values(chances)) {
    const total = own.reduce((a, b) => a + b, 0);
    own.forEach((x, o) => {
      own[o] = x / total;
    });
  }
  const outcomes = leaders.map((leader, o) => ({
    id: `trace ${o + 1}`,
    causes: (Object.keys(chances) as RootCauseId[]).filter(
      (id) => chances[id]![o]! === Math.max(...chances[id]!) || id === leader.cause,
    ),
  }));
  return { id: candidate.id, outcomes, chances };
}

/** Information that a recording is expected to give about the cause [bit]. */
export function expectedBits({ chances, outcomes }: SimulatedRecording, causes: RecordingQuestion['causes']): number {
  const known = causes.filter(({ id }) => chances[id] !== undefined);
  const total = known.reduce((sum, { probability }) => sum + probability, 0);
  if (total <= 0) return 0;
  let bits = 0;
  outcomes.forEach((_, o) => {
    const mix = known.reduce((sum, { id, probability }) => sum + (probability / total) * chances[id]![o]!, 0);
    for (const { id, probability } of known) {
      const x = chances[id]![o]!;
      if (x > 0) bits += (probability / total) * x * Math.log2(x / mix);
    }
  });
  // causes that were not played learn nothing
  return Math.max(0, bits) * total;
}
