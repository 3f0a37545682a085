import { SETTLE_S } from './phases-vacuum-draw.ts';
import type { PhaseKind, Recording } from './recording.ts';

/** A draw without commands must reach at least this far below the start, Pa (judgement: 2 inH2O). */
const LEAST_DRAW_PA = 500;
/** A pull slower than this is no draw, s. */
const LONGEST_DRAW_S = 120;
/** The draw ends where the fall becomes slower than this share of its average. */
const END_SHARE = 0.2;
/** A release loses at least half of the vacuum at many times the speed of the hold. */
const RELEASE_SHARE = 0.5;
const RELEASE_WINDOW_S = 5;
/** Of the depth: nearer than this to the start the draw has not begun, or the release is over. */
const NEAR_SHARE = 0.08;

interface Draw {
  readonly from: number;
  readonly end: number;
  readonly release: number;
  readonly over: number;
}

function median3(values: Float64Array): Float64Array {
  return values.map((value, i) => {
    const a = values[i - 1];
    const c = values[i + 1];
    if (a === undefined || c === undefined || Number.isNaN(a + value + c)) return value;
    return Math.max(Math.min(a, value), Math.min(Math.max(a, value), c));
  });
}

/** Takes gaps out: positions of the samples that have a pressure. */
function present(values: Float64Array): number[] {
  const at: number[] = [];
  values.forEach((value, i) => {
    if (!Number.isNaN(value)) at.push(i);
  });
  return at;
}

function findDraw(t: readonly number[], p: readonly number[], start: number): Draw | undefined {
  let base = p[start]!;
  let top = start;
  for (let i = start + 1; i < p.length; i++) {
    // The level from which the pull starts follows slow drifts upwards and waits otherwise.
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
    return followDraw(t, p, top, base);
  }
  return undefined;
}

function followDraw(t: readonly number[], p: readonly number[], top: number, base: number): Draw {
  let end = top + 1;
  const fall = (from: number, to: number): number => (p[from]! - p[to]!) / Math.max(1e-9, t[to]! - t[from]!);
  for (let i = top + 2; i < p.length; i++) {
    // The slope over the last seconds against the average since the start.
    let back = i - 1;
    while (back > top && t[i]! - t[back]! < 1.5) back--;
    if (p[i]! < p[end]!) end = i;
    if (base - p[i]! > LEAST_DRAW_PA / 2 && fall(back, i) < END_SHARE * fall(top, i)) break;
  }
  const depth = base - p[end]!;
  let release = p.length;
  for (let i = end + 1; i < p.length && release === p.length; i++) {
    let ahead = i;
    while (ahead + 1 < p.length && t[ahead + 1]! - t[i]! <= RELEASE_WINDOW_S) ahead++;
    const rise = p[ahead]! - p[i]!;
    const speed = rise / Math.max(1e-9, t[ahead]! - t[i]!);
    const before = (p[i]! - p[end]!) / Math.max(1, t[i]! - t[end]!);
    if (rise > RELEASE_SHARE * (base - p[i]!) && base - p[i]! > 0.15 * depth && speed > 4 * Math.max(before, 0))
      release = i;
    // A gross leak: the vacuum is gone without any release.
    else if (base - p[i]! < NEAR_SHARE * depth) break;
  }
  release = sharpen(t, p, release);
  let over = release;
  while (over < p.length && base - p[over]! > NEAR_SHARE * depth) over++;
  if (release === p.length) {
    over = end;
    while (over < p.length && base - p[over]! > NEAR_SHARE * depth) over++;
    return { from: top, end, release: over, over };
  }
  return { from: top, end, release, over };
}

/** The release begins at the first fast interval within the window that showed it. */
function sharpen(t: readonly number[], p: readonly number[], release: number): number {
  const speed = (k: number): number => (p[k + 1]! - p[k]!) / Math.max(1e-9, t[k + 1]! - t[k]!);
  let fastest = 0;
  let last = release;
  for (let k = release; k + 1 < p.length && t[k]! - t[release]! <= RELEASE_WINDOW_S; k++) {
    fastest = Math.max(fastest, speed(k));
    last = k;
  }
  for (let k = release; k <= last; k++) if (speed(k) > 0.3 * fastest) return k + 1;
  return release;
}

/** Draws, holds and releases told from the pressure alone; everything else is baseline before and rest after. */
export function labelPressureOnly(recording: Recording): PhaseKind[] {
  const n = recording.timeS.length;
  const labels = new Array<PhaseKind>(n).fill('rest');
  const pressure = recording.channels.tankPressureGaugePa;
  if (!pressure) return labels;
  const at = present(pressure);
  const smooth = median3(pressure);
  const t = at.map((i) => recording.timeS[i]!);
  const p = at.map((i) => smooth[i]!);
  const place = (k: number): number => at[k] ?? n;
  let from = 0;
  for (let draw = findDraw(t, p, from); draw; draw = findDraw(t, p, from)) {
    labels.fill('baseline', from === 0 ? 0 : place(from), place(draw.from));
    labels.fill('draw', place(draw.from), place(draw.end));
    labels.fill('hold', place(draw.end), place(draw.release));
    const settled = t.findIndex((time) => time >= t[draw.end]! + SETTLE_S);
    labels.fill('settle', place(draw.end), settled < 0 ? n : Math.min(place(settled), place(draw.release)));
    labels.fill('release', place(draw.release), place(draw.over));
    from = draw.over;
    if (from >= p.length - 2) break;
  }
  return labels;
}
