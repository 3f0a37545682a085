import type { Recording } from './recording.ts';

/** A draw without commands must reach at least this far below the start, Pa (judgement: 2 inH2O). */
const LEAST_DRAW_PA = 500;
/** A pull slower than this is no draw, s. */
const LONGEST_DRAW_S = 120;
/** The draw ends where the fall becomes slower than this share of its average. */
const END_SHARE = 0.2;
/** A release loses at least half of the vacuum at many times the speed of the hold. */
const RELEASE_SHARE = 0.5;
const RELEASE_WINDOW_S = 5;
/** Of the rise in that time: below it the pressure is still on the line of the hold. */
const ONSET_OF_RELEASE = 0.2;
/** The hold's own speed is taken over so long, s. */
const HOLD_WINDOW_S = 10;
/** Of the depth: less vacuum than this is left when a release can no longer be told from noise. */
const LEAST_LEFT_SHARE = 0.06;
/** Of the depth: nearer than this to the start the release is over. */
const NEAR_SHARE = 0.08;
/** The level before the draw is taken over so long, but for the last seconds, in which the pull may have begun, s. */
const BASE_S = 20;
const BASE_BEFORE_S = 3;
/** Of the depth: a draw begins where the pressure was last so near the level before it. */
const ONSET_SHARE = 0.03;

/** A draw as positions in the pressure: its start, its deepest, where the vent opened, where that was over. */
export interface Draw {
  readonly from: number;
  readonly end: number;
  readonly release: number;
  readonly over: number;
  /** Pressure before it, and how far it went below that, Pa. */
  readonly basePa: number;
  readonly depthPa: number;
}

/** A pressure without its gaps and single spikes, and the place of each sample in the recording. */
export interface BarePressure {
  readonly at: readonly number[];
  readonly t: readonly number[];
  readonly p: readonly number[];
}

function median3(values: Float64Array): Float64Array {
  return values.map((value, i) => {
    const a = values[i - 1];
    const c = values[i + 1];
    if (a === undefined || c === undefined || Number.isNaN(a + value + c)) return value;
    return Math.max(Math.min(a, value), Math.min(Math.max(a, value), c));
  });
}

export function barePressure({ timeS, channels }: Recording): BarePressure | undefined {
  const pressure = channels.tankPressureGaugePa;
  if (!pressure) return undefined;
  const at: number[] = [];
  pressure.forEach((value, i) => {
    if (!Number.isNaN(value)) at.push(i);
  });
  const smooth = median3(pressure);
  return { at, t: at.map((i) => timeS[i]!), p: at.map((i) => smooth[i]!) };
}

/** The next draw at or after `start`, looked for before `stop`. */
export function findDraw({ t, p }: BarePressure, start: number, stop: number = p.length): Draw | undefined {
  if (start >= stop) return undefined;
  let base = p[start]!;
  let top = start;
  for (let i = start + 1; i < stop; i++) {
    // The level from which the pull starts follows slow drifts and waits while the pressure falls.
    if (p[i]! >= base - 0.2 * LEAST_DRAW_PA) {
      base = 0.8 * base + 0.2 * p[i]!;
      top = i;
      continue;
    }
    if (t[i]! - t[top]! > LONGEST_DRAW_S) {
      base = p[i]!;
      top = i;
      continue;
    }
    // A fall that ends above ambient lets pressure out, as after refuelling.
    if (p[i]! > base - LEAST_DRAW_PA || p[i]! > -LEAST_DRAW_PA / 2) continue;
    return followDraw(t, p, start, top, stop);
  }
  return undefined;
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** The pressure in the seconds before a draw that is under way at `top`. */
function levelBefore(t: readonly number[], p: readonly number[], start: number, top: number): number {
  const before: number[] = [];
  for (let i = top; i >= start && t[top]! - t[i]! < BASE_S; i--)
    if (t[top]! - t[i]! > BASE_BEFORE_S) before.push(p[i]!);
  return before.length > 0 ? median(before) : p[top]!;
}

function followDraw(t: readonly number[], p: readonly number[], start: number, top: number, stop: number): Draw {
  let end = top + 1;
  const base = levelBefore(t, p, start, top);
  const fall = (from: number, to: number): number => (p[from]! - p[to]!) / Math.max(1e-9, t[to]! - t[from]!);
  for (let i = top + 2; i < stop; i++) {
    // The slope over the last seconds against the average since the start.
    let back = i - 1;
    while (back > top && t[i]! - t[back]! < 1.5) back--;
    if (p[i]! < p[end]!) end = i;
    if (base - p[i]! > LEAST_DRAW_PA / 2 && fall(back, i) < END_SHARE * fall(top, i)) break;
  }
  const depth = base - p[end]!;
  let from = top;
  while (from > start && p[from]! < base - ONSET_SHARE * depth) from--;
  const release = releaseAfter(t, p, { end, base, depth }, stop);
  let over = release === stop ? end : release;
  while (over < stop && base - p[over]! > NEAR_SHARE * depth) over++;
  return { from, end, release: release === stop ? over : release, over, basePa: base, depthPa: depth };
}

/** Where the vacuum goes all at once; `stop` when it never does. */
function releaseAfter(
  t: readonly number[],
  p: readonly number[],
  { end, base, depth }: { end: number; base: number; depth: number },
  stop: number,
): number {
  for (let i = end + 1, back = end; i < stop; i++) {
    const left = base - p[i]!;
    // A gross leak: the vacuum is gone without any release.
    if (left < LEAST_LEFT_SHARE * depth) return stop;
    let ahead = i;
    while (ahead + 1 < stop && t[ahead + 1]! - t[i]! <= RELEASE_WINDOW_S) ahead++;
    const rise = p[ahead]! - p[i]!;
    const speed = rise / Math.max(1e-9, t[ahead]! - t[i]!);
    while (t[i]! - t[back]! > HOLD_WINDOW_S) back++;
    const before = (p[i]! - p[back]!) / Math.max(1, t[i]! - t[back]!);
    if (rise > RELEASE_SHARE * left && speed > 4 * Math.max(before, 0)) {
      // The vent opened where the pressure last lay on the line of the hold.
      while (ahead > i && p[ahead - 1]! > p[i]! + ONSET_OF_RELEASE * rise) ahead--;
      return ahead;
    }
  }
  return stop;
}

/** All draws of a pressure, in order. */
export function findDraws(bare: BarePressure): Draw[] {
  const found: Draw[] = [];
  let from = 0;
  for (let draw = findDraw(bare, from); draw; draw = findDraw(bare, from)) {
    found.push(draw);
    from = draw.over;
    if (from >= bare.p.length - 2) break;
  }
  return found;
}
