/**
 * The vent valve's command is among no data items of the standard, but whoever says that a recording is a vacuum draw says
 * with it that the vent was shut: from when the purge began until the vacuum goes all at once.
 */
import type { ShutTime } from '../recording.ts';
import type { Series } from './pick-pressure.ts';

/** A purge that pulls less than this draws nothing down, Pa (judgement: 2 inH2O). */
const LEAST_DRAW_PA = 500;
const LEAST_DUTY = 0.002;
/** The vent is open when so much of the vacuum goes within so long (judgement). */
const RELEASE_SHARE = 0.4;
const RELEASE_S = 3;
/** It leaves the line of the hold by this share of the vacuum within so long (judgement: over the sensor's noise). */
const ONSET_SHARE = 0.04;
const ONSET_S = 0.3;

function indexAt(timeS: Float64Array, at: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeS[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** When the vent was shut, from purge and pressure of a vacuum draw. */
export function shutTimes(pressure: Series, purge: Series): ShutTime[] {
  const found: ShutTime[] = [];
  const { timeS, values } = pressure;
  let i = 0;
  while (i < purge.timeS.length) {
    if (!(purge.values[i]! > LEAST_DUTY)) {
      i++;
      continue;
    }
    const fromS = i === 0 ? purge.timeS[0]! : 0.5 * (purge.timeS[i - 1]! + purge.timeS[i]!);
    while (i < purge.timeS.length && purge.values[i]! > LEAST_DUTY) i++;
    const purgedS = purge.timeS[Math.min(i, purge.timeS.length - 1)]!;
    const start = values[Math.max(0, indexAt(timeS, fromS) - 1)];
    let deepest = Number.POSITIVE_INFINITY;
    for (let k = indexAt(timeS, fromS); k < timeS.length && timeS[k]! <= purgedS; k++)
      deepest = Math.min(deepest, values[k]!);
    if (start === undefined || start - deepest < LEAST_DRAW_PA) continue;
    const toS = releaseAfter(pressure, purgedS, start);
    found.push(toS === undefined ? { fromS } : { fromS, toS });
    if (toS === undefined) break;
    while (i < purge.timeS.length && purge.timeS[i]! < toS) i++;
  }
  return found;
}

/** First time after the draw at which the vacuum goes all at once. */
function releaseAfter({ timeS, values }: Series, afterS: number, restPa: number): number | undefined {
  for (let k = indexAt(timeS, afterS), ahead = k; k < timeS.length; k++) {
    const vacuum = restPa - values[k]!;
    if (vacuum < LEAST_DRAW_PA / 2) continue;
    while (ahead < timeS.length && timeS[ahead]! - timeS[k]! < RELEASE_S) ahead++;
    const then = values[Math.min(ahead, timeS.length - 1)]!;
    if (then - values[k]! < RELEASE_SHARE * vacuum) continue;
    // The opening is where the pressure leaves the line of the hold, not where it rises most steeply.
    let onset = k;
    for (let before = k; onset < ahead; onset++) {
      while (timeS[onset]! - timeS[before]! > ONSET_S) before++;
      if (values[onset]! - values[before]! > ONSET_SHARE * vacuum) break;
    }
    return timeS[Math.max(k, onset - 1)]!;
  }
  return undefined;
}
