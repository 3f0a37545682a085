/** A simulated recording boiled down to what a likelihood looks at: pressures at set points of its phases. */

import type { Scenario } from '../../simulation/scenario.ts';
import { simulate } from '../../simulation/simulate.ts';

/** Points of the hold, as shares of its length. */
const HOLD_POINTS = [0, 0.1, 0.2, 0.35, 0.5, 0.75, 1];
/** Points of the release [s after it began]. */
const RELEASE_S = [1, 3, 8];
/**
 * What a pressure at a point may differ by for other reasons than the cause: sensor, vapour volume, evaporation and slow
 * error of the model together [Pa]; and the same as a share of the pressure. Judgement, after the finding's own noise model.
 */
const POINT_SD_PA = 70;
const POINT_SHARE = 0.08;
/** Spread of the time that the draw takes, as a share: purge flow and volume are known roughly. Judgement. */
const DRAW_SHARE = 0.25;

export interface Features {
  readonly value: readonly number[];
  readonly sd: readonly number[];
}

/** Undefined where the simulation fails: nothing is claimed then. */
export function featuresOf(scenario: Scenario): Features | undefined {
  const { recording, steps, failure } = simulate(scenario);
  const pressure = recording.channels.tankPressureGaugePa;
  if (failure !== undefined || pressure === undefined) return undefined;
  const at = (timeS: number): number => {
    const i = recording.timeS.findIndex((t) => t >= timeS);
    return pressure[i < 0 ? pressure.length - 1 : i] ?? 0;
  };
  const value: number[] = [];
  const sd: number[] = [];
  const point = (pa: number) => {
    value.push(pa);
    sd.push(Math.hypot(POINT_SD_PA, POINT_SHARE * pa));
  };
  const draw = steps.find(({ phase }) => phase === 'draw');
  if (draw) {
    point(at(draw.fromS - 1));
    const duration = Math.max(1, draw.toS - draw.fromS);
    value.push(Math.log(duration));
    sd.push(DRAW_SHARE);
  }
  const hold = steps.find(({ phase }) => phase === 'hold');
  if (hold) for (const share of HOLD_POINTS) point(at(hold.fromS + share * (hold.toS - hold.fromS)));
  const release = steps.findLast(({ phase }) => phase === 'release');
  if (release) for (const after of RELEASE_S) point(at(release.fromS + after));
  return { value, sd };
}

/** Points of one phase go together; so many of them count as one. Judgement. */
const TOGETHER = 3;

/** Squared distance in standard deviations, points that go together not counted twice. */
export function distance(a: Features, b: Features): number {
  let sum = 0;
  for (let i = 0; i < a.value.length; i++) {
    const d = a.value[i]! - b.value[i]!;
    sum += (d * d) / (0.5 * (a.sd[i]! ** 2 + b.sd[i]! ** 2));
  }
  return sum / TOGETHER;
}
