/**
 * What the trims say of each cause, worked out in rounds: all causes of a round on the same stretch of data, so that they
 * compare, and one cause at a time, so that no update waits for all of them.
 */
import type { Cause } from '../causes/catalogue.ts';
import { fillQuantities } from '../fit/parameter.ts';
import type { Observations } from '../likelihood/observations.ts';
import { type TrimData, trimData, trimLogEvidence, VAPOUR_SHARE } from '../likelihood/trims.ts';
import { QUANTITY_COUNT } from '../model/quantities.ts';
import { type PurgeFlows, runTwoSpace } from '../model/two-space.ts';
import type { Prepared } from '../prepare.ts';
import type { Track } from './track.ts';

/** Points at most: trims wander over tens of seconds, so finer ones say the same again. */
const MOST_POINTS = 40;

interface Round {
  readonly prepared: Prepared;
  readonly data: TrimData;
  readonly timeS: Float64Array;
  /** Observations to a point. */
  readonly group: number;
  readonly found: Map<string, number>;
}

export class TrimRounds {
  private done: ReadonlyMap<string, number> = new Map();
  private running: Round | undefined;

  /** ln density under a cause, by the last whole round; 0 before the first. */
  logEvidence(key: string): number {
    return this.done.get(key) ?? 0;
  }

  /**
   * Goes on with the round by one cause, or begins one.
   *
   * @param causes by key: the causes together and the track that stands for their flows
   * @returns steps of the model that it took
   */
  advance(
    prepared: Prepared,
    causes: ReadonlyMap<string, { readonly causes: readonly Cause[]; readonly track: Track }>,
  ): number {
    this.running ??= begin(prepared);
    const round = this.running;
    if (!round) return 0;
    for (const [key, standing] of causes) {
      if (round.found.has(key)) continue;
      round.found.set(key, evidence(round, standing.causes, standing.track));
      return round.prepared.drive.stepCount;
    }
    this.done = round.found;
    this.running = undefined;
    return 0;
  }
}

function begin(prepared: Prepared): Round | undefined {
  const o = prepared.observations;
  const group = Math.max(1, Math.ceil(o.timeS.length / MOST_POINTS));
  const timeS = grouped(o.timeS, group);
  const points: Observations = { ...o, timeS };
  const data = trimData(prepared.recording, points, prepared.conditions.ambientTemperatureK);
  return data && { prepared, data, timeS, group, found: new Map() };
}

function evidence(round: Round, causes: readonly Cause[], track: Track): number {
  const { prepared } = round;
  const q = new Float64Array(QUANTITY_COUNT);
  fillQuantities(track.problem.parameters, track.z, 0, prepared.base, q);
  const n = prepared.observations.timeS.length;
  const fine = { purge: new Float64Array(n), vapourFromTank: new Float64Array(n) };
  runTwoSpace(q, prepared.drive, new Float64Array(n), fine);
  const flows: PurgeFlows = {
    purge: grouped(fine.purge, round.group),
    vapourFromTank: grouped(fine.vapourFromTank, round.group),
  };
  const share = causes.some((c) => c.id === 'canister_saturated') ? VAPOUR_SHARE.saturated : VAPOUR_SHARE.healthy;
  return trimLogEvidence(round.data, round.timeS, flows, share);
}

/** Means of so many neighbours each. */
function grouped(x: Float64Array, size: number): Float64Array {
  return Float64Array.from({ length: Math.ceil(x.length / size) }, (_, g) => {
    const part = x.subarray(g * size, (g + 1) * size);
    return part.reduce((s, v) => s + v, 0) / part.length;
  });
}
