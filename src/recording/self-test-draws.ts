/**
 * Whether pressure, or pressure and purge, show a self-test by vacuum. A drive pulls on the tank too, more so where its vent
 * path is plugged; a self-test is told from it by what its procedure does: from about ambient the tank is drawn down once, at
 * most a few times, by a kilopascal or more, and is then left alone. The figures are judgement.
 */
import type { Series } from './bus/pick-pressure.ts';
import { shutTimes } from './bus/vent-from-draw.ts';
import { type BarePressure, barePressure, type Draw, findDraws } from './phases-pressure-only.ts';
import type { Recording, ShutTime } from './recording.ts';

/** Self-tests draw to 1.2 to 2.5 kPa (5 to 10 inH2O, common practice); Pa. */
const LEAST_DEPTH_PA = 1000;
/** Of the depth: the level before the draw lies so near ambient, a sensor's zero error and warm fuel included. */
const LARGEST_BASE_SHARE = 0.4;
/** Of the depth: so much further may the pressure go after the draw (noise, cooling gas). */
const FURTHER_SHARE = 0.15;
/** A draw that was let go at once was no test, s. */
const LEAST_HOLD_S = 8;
/** No self-test pulls for longer, s. */
const LONGEST_DRAW_S = 120;
const MOST_TRIES = 3;

function isLeftAlone({ t, p }: BarePressure, { end, release, depthPa }: Draw): boolean {
  const last = Math.min(release, p.length) - 1;
  if (t[last]! - t[end]! < LEAST_HOLD_S) return false;
  for (let i = end; i <= last; i++) if (p[i]! < p[end]! - FURTHER_SHARE * depthPa) return false;
  return true;
}

/** The draws of a self-test, or none where the pressure does not look like one. */
export function selfTestDraws(recording: Recording): readonly Draw[] {
  const bare = barePressure(recording);
  if (!bare) return [];
  const draws = findDraws(bare);
  const [first] = draws;
  // A recording of a test begins with the vent open.
  if (!first || draws.length > MOST_TRIES || bare.p[0]! < first.basePa - LARGEST_BASE_SHARE * first.depthPa) return [];
  const all = draws.every(
    (draw) =>
      draw.depthPa >= LEAST_DEPTH_PA &&
      Math.abs(draw.basePa) < LARGEST_BASE_SHARE * draw.depthPa &&
      isLeftAlone(bare, draw),
  );
  return all ? draws : [];
}

/** When the vent was shut for self-tests, from pressure and purge; none where a drive would look alike. */
export function shutForSelfTest(pressure: Series, purge: Series): readonly ShutTime[] {
  const shut = shutTimes(pressure, purge);
  const within = (series: Series, fromS: number, toS: number): number[] =>
    Array.from(series.values).filter((_, i) => series.timeS[i]! >= fromS && series.timeS[i]! <= toS);
  const endS = pressure.timeS.at(-1) ?? 0;
  const isTest = ({ fromS, toS = endS }: ShutTime): boolean => {
    const purgedUntil = Math.max(
      fromS,
      ...Array.from(purge.timeS).filter((t, i) => t >= fromS && t <= toS && purge.values[i]! > 0),
    );
    const held = within(pressure, fromS, toS);
    const before = held[0] ?? Number.NaN;
    const depth = before - Math.min(...held);
    return (
      purgedUntil - fromS <= LONGEST_DRAW_S &&
      toS - purgedUntil >= LEAST_HOLD_S &&
      Math.abs(before) < LARGEST_BASE_SHARE * depth
    );
  };
  return shut.length <= MOST_TRIES && shut.every(isTest) ? shut : [];
}
